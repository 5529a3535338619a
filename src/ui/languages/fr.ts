import type { Words } from '../language.js';
import { formatCount, formatNumber } from '../numbers.js';

/** `a`, `a et b`, `a, b et c`. */
function list(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} et ${parts.at(-1) ?? ''}`;
}

/** A count with its noun: in French nought and one are singular. */
function counted(count: number, one: string, many: string): string {
  return `${count} ${count < 2 ? one : many}`;
}

/** As a sentence begins. */
function upperFirst(text: string): string {
  return text.charAt(0).toLocaleUpperCase('fr') + text.slice(1);
}

/** What begins a sentence as it stands within one; abbreviations such as EP stay. */
function lowerFirst(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text.charAt(0).toLocaleLowerCase('fr') + text.slice(1) : text;
}

const OF: Readonly<Record<string, string>> = { 'le ': 'du ', 'les ': 'des ', 'la ': 'de la ', 'l’': 'de l’' };

/** Places with their articles after `de`, such as `du pont et de la largeur de tête`. */
function of(places: string): string {
  const said = places.replaceAll(
    /(^| et |, )(les? |la |l’)/g,
    (_all, before: string, article: string) => before + (OF[article] ?? ''),
  );
  return said === places ? `de ${places}` : said;
}

/** Whoever sent the invitation, after a verb or `à`. */
function whom(practice: string): string {
  return practice === '' ? 'votre opticien' : practice;
}

// Measurements, as the trade calls them. Within sentences they have their article.

const measurements: Words['measurements'] = {
  binocularPd: {
    name: 'Écart pupillaire binoculaire, de loin',
    shortName: 'EP de loin',
    inSentences: 'l’EP de loin',
    alsoCalled: ['EP', 'écart pupillaire', 'écart interpupillaire', 'distance interpupillaire', 'EIP', 'DIP', 'PD'],
    definition: 'Distance entre les centres des deux pupilles quand les deux yeux regardent au loin, droit devant.',
    howTaken:
      'Réglet sur le nez, à bout de bras, vos yeux à la hauteur de ceux du porteur\u202f: placez le zéro sur une pupille pendant que cet œil regarde votre œil d’en face, puis lisez à l’autre pupille pendant que l’autre œil regarde votre autre œil.',
    caution: 'Gardez le bout du réglet loin des yeux.',
    withSquint:
      'Mesurez chaque œil en couvrant l’autre, depuis le milieu du nez, et écrivez la somme\u202f: les deux yeux ne regardent jamais le même point.',
  },
  monocularPd: {
    name: 'Demi-écart pupillaire de chaque œil',
    shortName: 'Demi-EP',
    inSentences: 'le demi-EP',
    alsoCalled: ['demi-écart', '½ EP', 'EP monoculaire', 'écart monoculaire', 'demi-écart de loin', 'PD'],
    definition: 'Distance horizontale de la ligne médiane du nez au centre d’une pupille, les yeux regardant au loin.',
    howTaken: 'Du milieu du nez à chaque pupille, cet œil regardant votre œil d’en face.',
    caution:
      'Lisez chaque œil\u202f: la moitié de l’écart binoculaire n’est pas une mesure. Gardez le bout du réglet loin des yeux.',
    withSquint: 'Mesurez chaque œil en couvrant l’autre, pour que l’œil que vous lisez soit celui qui vous regarde.',
  },
  nearPd: {
    name: 'Écart de centrage de près',
    shortName: 'EP de près',
    inSentences: 'l’EP de près',
    alsoCalled: ['écart pupillaire de près', 'écart de près', 'EP VP', 'EP en vision de près', 'PD'],
    definition:
      'Distance entre les deux points du plan des verres par lesquels les yeux regardent à la distance de travail.',
    howTaken:
      'Réglet dans le plan des verres, un seul de vos yeux ouvert à la distance de travail, les deux yeux du porteur le regardant.',
    caution: 'Gardez le bout du réglet loin des yeux.',
    withSquint:
      'Mesurez chaque œil en couvrant l’autre, votre œil ouvert à la distance de travail face au nez, et écrivez la somme.',
  },
  monocularNearPd: {
    name: 'Demi-écart de centrage de près',
    shortName: 'Demi-EP de près',
    inSentences: 'le demi-EP de près',
    alsoCalled: ['demi-écart de près', '½ EP de près', 'EP monoculaire de près', 'demi-EP VP', 'PD'],
    definition:
      'Distance horizontale de la ligne médiane du nez au point du plan des verres par lequel un œil regarde à la distance de travail.',
    howTaken: 'Comme l’écart de près, du milieu du nez à chaque pupille, votre œil ouvert juste face au nez.',
    caution: 'Lisez chaque œil\u202f: la moitié du tout n’est pas une mesure. Gardez le bout du réglet loin des yeux.',
    withSquint: 'Mesurez chaque œil en couvrant l’autre, votre œil ouvert à la distance de travail juste face au nez.',
  },
  lidAperture: {
    name: 'Ouverture palpébrale',
    shortName: 'Ouverture palpébrale',
    inSentences: 'l’ouverture palpébrale',
    alsoCalled: ['fente palpébrale', 'ouverture des paupières', 'paupières'],
    definition:
      'Hauteur du bord de la paupière inférieure à celui de la supérieure, sur la verticale du centre de la pupille, l’œil regardant droit devant.',
    howTaken: 'Réglet tenu verticalement à côté de l’œil\u202f; le porteur regarde droit devant, le front détendu.',
    caution:
      'Une paupière basse, ou plus basse que l’autre, est une raison de regarder de nouveau ou d’orienter, jamais un constat de cette fiche. Gardez le réglet loin de l’œil.',
    withSquint: null,
  },
  pupilDiameter: {
    name: 'Diamètre pupillaire',
    shortName: 'Diamètre pupillaire',
    inSentences: 'le diamètre pupillaire',
    alsoCalled: ['diamètre de la pupille', 'taille de la pupille', 'pupille'],
    definition: 'Diamètre horizontal de la pupille dans la lumière notée à côté.',
    howTaken:
      'Pupillomètre à encoches ou réglet à côté de l’œil, le porteur regardant au loin dans la lumière pour laquelle les lunettes sont faites\u202f; comparez ou lisez la largeur.',
    caution:
      'Notez la lumière\u202f: sans elle, le nombre dit peu. Des pupilles inégales que personne n’avait remarquées sont une raison d’orienter. Gardez l’instrument loin de l’œil.',
    withSquint: null,
  },
  irisDiameter: {
    name: 'Diamètre visible de l’iris',
    shortName: 'Diamètre de l’iris',
    inSentences: 'le diamètre de l’iris',
    alsoCalled: ['DHIV', 'iris', 'diamètre cornéen', 'blanc à blanc'],
    definition:
      'Diamètre horizontal de l’iris visible, d’un bord à l’autre\u202f; il varie si peu d’une personne à l’autre qu’il contrôle l’échelle.',
    howTaken: 'Réglet horizontal devant un œil, juste sous la pupille\u202f: d’un bord à l’autre de la partie colorée.',
    caution: 'Gardez le bout du réglet loin des yeux.',
    withSquint: null,
  },
  headWidth: {
    name: 'Largeur de tête',
    shortName: 'Largeur de tête',
    inSentences: 'la largeur de tête',
    alsoCalled: ['largeur aux oreilles', 'écart des oreilles'],
    definition:
      'Distance entre les deux points d’oreille, où les branches reposent au sommet de la racine des oreilles.',
    howTaken: 'Compas céphalique par le dessus, touchant la tête juste au-dessus des oreilles, sans appuyer.',
    caution: 'Gardez les pointes du compas loin des yeux.',
    withSquint: null,
  },
  templeWidth: {
    name: 'Largeur aux tempes',
    shortName: 'Largeur aux tempes',
    inSentences: 'la largeur aux tempes',
    alsoCalled: ['largeur temporale', 'largeur des tempes', 'écart temporal'],
    definition: 'Largeur de la tête aux tempes, 25 mm derrière le plan arrière de la face de la monture.',
    howTaken: 'Compas céphalique par l’avant, 25 mm derrière la future face, en touchant sans appuyer.',
    caution: 'Gardez les pointes du compas loin des yeux.',
    withSquint: null,
  },
  apicalRadius: {
    name: 'Rayon apical',
    shortName: 'Rayon apical',
    inSentences: 'le rayon apical',
    alsoCalled: ['rayon du nez', 'rayon du pont', 'rayon de courbure du pont'],
    definition: 'Rayon de l’arc qui épouse le mieux le sommet du nez, vu de face, là où le pont va porter.',
    howTaken:
      'Posez les gabarits de rayon sur le nez, du plus grand au plus petit, et notez chacun\u202f: loose (large), fits (juste) ou tight (serré)\u202f; écrivez chaque taille essayée.',
    caution: 'Approchez le gabarit par le bas, gardez ses coins loin des yeux et n’appuyez pas.',
    withSquint: null,
  },
  distanceBetweenRims10: {
    name: 'Écart entre cercles, 10 mm sous la crête',
    shortName: 'Cercles à 10 mm',
    inSentences: 'l’écart entre cercles à 10 mm',
    alsoCalled: ['écart entre cercles', 'base du nez', 'largeur du nez', 'DBR'],
    definition: 'Largeur du nez entre les futurs appuis des cercles, 10 mm sous la crête.',
    howTaken: 'Gabarit facial ou compas en travers du nez, 10 mm sous la crête, en touchant sans appuyer.',
    caution:
      'Les pointes sont près des deux yeux\u202f: approchez l’instrument par le bas et posez votre main sur la joue.',
    withSquint: null,
  },
  distanceBetweenRims15: {
    name: 'Écart entre cercles, 15 mm sous la crête',
    shortName: 'Cercles à 15 mm',
    inSentences: 'l’écart entre cercles à 15 mm',
    alsoCalled: ['écart entre cercles', 'base du nez', 'largeur du nez', 'DBR'],
    definition: 'Largeur du nez entre les futurs appuis des cercles, 15 mm sous la crête.',
    howTaken: 'Comme à 10 mm, 5 mm plus bas\u202f; le résultat doit être plus large.',
    caution:
      'Les pointes sont près des deux yeux\u202f: approchez l’instrument par le bas et posez votre main sur la joue.',
    withSquint: null,
  },
  frontalAngle: {
    name: 'Angle frontal',
    shortName: 'Angle frontal',
    inSentences: 'l’angle frontal',
    alsoCalled: ['angle de face', 'angle du nez de face'],
    definition: 'Angle entre la verticale et le flanc du nez, vu de face.',
    howTaken: 'Rapporteur à plat devant le nez, son bras le long d’un flanc\u202f; lisez chaque côté, la tête droite.',
    caution: 'Faites fermer les yeux pendant la mise en place, et gardez le bras sous le coin interne de l’œil.',
    withSquint: null,
  },
  splayAngle: {
    name: 'Angle d’évasement',
    shortName: 'Angle d’évasement',
    inSentences: 'l’angle d’évasement',
    alsoCalled: ['angle d’ouverture', 'angle transversal', 'évasement du nez'],
    definition: 'Angle entre la ligne d’avant en arrière et le flanc du nez, vu du dessus.',
    howTaken: 'Rapporteur horizontal devant le nez, son bras le long d’un flanc, lu du dessus.',
    caution: 'Faites fermer les yeux pendant la mise en place, et gardez le bras sous le coin interne de l’œil.',
    withSquint: null,
  },
  crestHeight: {
    name: 'Hauteur de crête',
    shortName: 'Hauteur de crête',
    inSentences: 'la hauteur de crête',
    alsoCalled: ['hauteur du pont', 'hauteur de nez', 'hauteur d’appui'],
    definition:
      'Hauteur de la crête du nez au-dessus du bord de la paupière inférieure d’un œil\u202f; négative si la crête est plus bas.',
    howTaken:
      'Tête droite, le porteur regardant droit devant\u202f: du niveau de chaque paupière inférieure jusqu’à l’endroit où le pont va porter.',
    caution: 'Écrivez le signe d’une crête basse. Gardez le bout du réglet loin des yeux.',
    withSquint: null,
  },
  bridgeProjection: {
    name: 'Saillie du pont',
    shortName: 'Saillie du pont',
    inSentences: 'la saillie du pont',
    alsoCalled: ['projection du pont', 'avancée du pont', 'projection'],
    definition:
      'Distance du plan des cils vers l’avant jusqu’à la crête\u202f; négative si la crête est derrière les cils.',
    howTaken: 'De profil, les cils au plus en avant\u202f: de combien la crête est devant ou derrière eux.',
    caution: 'Écrivez le signe. Rien ne doit toucher les cils\u202f; gardez le bout du réglet loin des yeux.',
    withSquint: null,
  },
  lengthToBend: {
    name: 'Longueur au coude',
    shortName: 'Longueur au coude',
    inSentences: 'la longueur au coude',
    alsoCalled: ['longueur utile', 'face-coude', 'longueur de branche au coude', 'LTB'],
    definition: 'Distance du plan de la face jusqu’au point d’oreille, où commence le coude de la branche.',
    howTaken: 'Réglet le long de la tête, du plan de la face au sommet de la racine de chaque oreille.',
    caution: 'Gardez le bout avant du réglet à l’extérieur de l’œil.',
    withSquint: null,
  },
  lengthToTangent: {
    name: 'Longueur à la tangente',
    shortName: 'Long. à la tangente',
    inSentences: 'la longueur à la tangente',
    alsoCalled: ['longueur tangente', 'face-tangente', 'LTT'],
    definition: 'Distance du plan de la face jusqu’au point où la branche touche d’abord la courbe de l’oreille.',
    howTaken:
      'Comme la longueur au coude, mais jusqu’où la branche touche l’avant de la racine de l’oreille\u202f; utile pour les branches à ressort.',
    caution: 'Gardez le bout avant du réglet à l’extérieur de l’œil.',
    withSquint: null,
  },
  lengthOfDrop: {
    name: 'Longueur de la crosse',
    shortName: 'Longueur de crosse',
    inSentences: 'la longueur de crosse',
    alsoCalled: ['longueur d’embout', 'manchon', 'spatule', 'retombée', 'crosse'],
    definition: 'Longueur de la branche derrière son coude, du point d’oreille au bout.',
    howTaken: 'Mètre ruban ou réglet souple derrière l’oreille, du point d’oreille jusqu’où le bout finira sur l’os.',
    caution: 'Cherchez d’abord du doigt un appareil auditif, une cicatrice ou un point sensible derrière l’oreille.',
    withSquint: null,
  },
  angleOfSide: {
    name: 'Angle de branche',
    shortName: 'Angle de branche',
    inSentences: 'l’angle de branche',
    alsoCalled: ['inclinaison de branche', 'angle face-branche', 'angle des branches'],
    definition:
      'Angle, dans le plan vertical, entre une branche et la normale au plan des verres\u202f; positif si la branche rapproche des joues le bas des cercles.',
    howTaken:
      'Rapporteur à chaque tempe\u202f: un bras perpendiculaire à la future face, l’autre vers le point d’oreille.',
    caution: 'Gardez le bras de l’instrument à l’extérieur de l’œil.',
    withSquint: null,
  },
  downwardAngleOfDrop: {
    name: 'Angle de plongée de la crosse',
    shortName: 'Plongée de crosse',
    inSentences: 'la plongée de crosse',
    alsoCalled: ['angle de plongée', 'angle du coude', 'plongée'],
    definition: 'Angle, vu de profil, dont la crosse descend par rapport à la branche.',
    howTaken:
      'Rapporteur au point d’oreille, un bras le long de la branche, l’autre dans le sillon derrière l’oreille.',
    caution: 'Cherchez d’abord du doigt un appareil auditif, une cicatrice ou un point sensible derrière l’oreille.',
    withSquint: null,
  },
  inwardAngleOfDrop: {
    name: 'Angle de rentrée de la crosse',
    shortName: 'Rentrée de crosse',
    inSentences: 'la rentrée de crosse',
    alsoCalled: ['angle de rentrée', 'inclinaison interne de la crosse', 'rentrée'],
    definition: 'Angle dont la crosse rentre vers le crâne, vu de derrière\u202f; négatif si elle doit s’en écarter.',
    howTaken: 'De derrière, tête droite\u202f: rapporteur contre l’os derrière chaque oreille.',
    caution: 'Cherchez d’abord du doigt un appareil auditif, une cicatrice ou un point sensible derrière l’oreille.',
    withSquint: null,
  },
  earPointDifference: {
    name: 'Dénivelé des points d’oreille',
    shortName: 'Dénivelé d’oreilles',
    inSentences: 'le dénivelé des oreilles',
    alsoCalled: ['hauteur des oreilles', 'différence des oreilles', 'points d’oreille'],
    definition:
      'De combien le point d’oreille droit est plus haut que le gauche, tête de niveau\u202f; négatif si le gauche est plus haut.',
    howTaken:
      'Tête droite et pupilles de niveau\u202f: posez une face droite avec ses branches sur le visage et lisez de combien une branche reste au-dessus de son point d’oreille quand l’autre repose.',
    caution: 'Écrivez le signe\u202f: positif si l’oreille droite est la plus haute.',
    withSquint: null,
  },
  boxLensWidth: {
    name: 'Calibre (largeur boxing du verre)',
    shortName: 'Calibre',
    inSentences: 'le calibre',
    alsoCalled: ['A', 'cote A', 'largeur boxing', 'largeur de verre', 'largeur du verre', 'taille de verre'],
    definition: 'Largeur du plus petit rectangle droit autour d’un verre de la monture choisie.',
    howTaken: 'Réglet sur le verre de la monture choisie, de drageoir à drageoir\u202f; comparez avec le marquage.',
    caution: null,
    withSquint: null,
  },
  boxLensHeight: {
    name: 'Hauteur boxing du verre',
    shortName: 'Hauteur boxing',
    inSentences: 'la hauteur boxing',
    alsoCalled: ['B', 'cote B', 'hauteur de verre', 'hauteur du verre', 'hauteur de calibre', 'taille de verre'],
    definition: 'Hauteur du plus petit rectangle droit autour d’un verre de la monture choisie.',
    howTaken: 'Réglet vertical sur le verre de la monture choisie, du point le plus bas au plus haut du drageoir.',
    caution: null,
    withSquint: null,
  },
  distanceBetweenLenses: {
    name: 'Pont de la monture (distance entre verres)',
    shortName: 'Pont de la monture',
    inSentences: 'le pont de la monture',
    alsoCalled: ['pont', 'D', 'cote D', 'nez', 'distance entre verres', 'DBL'],
    definition: 'Plus petit écart horizontal entre les rectangles des deux verres.',
    howTaken:
      'Réglet sur le pont de la monture choisie, entre les bords nasaux des deux verres, là où ils sont le plus proches.',
    caution: null,
    withSquint: null,
  },
  overallSideLength: {
    name: 'Longueur totale de branche',
    shortName: 'Longueur de branche',
    inSentences: 'la longueur de branche',
    alsoCalled: ['longueur totale', 'branche', 'longueur des branches'],
    definition: 'Longueur d’une branche du milieu de sa charnière au bout, le long de la branche, la crosse redressée.',
    howTaken:
      'Le long de la branche de la monture choisie, depuis la vis de la charnière\u202f; le stock va de 5 en 5 mm.',
    caution: null,
    withSquint: null,
  },
  fittingHeight: {
    name: 'Hauteur de montage',
    shortName: 'Hauteur de montage',
    inSentences: 'la hauteur de montage',
    alsoCalled: ['hauteur pupillaire', 'hauteur de centrage', 'hauteur de segment', 'hauteur', 'hauteur de pastille'],
    definition:
      'Hauteur du centre de la pupille au-dessus du bas du rectangle du verre, le porteur regardant droit devant.',
    howTaken:
      'Vos yeux à la hauteur de ceux du porteur\u202f: marquez le centre de la pupille sur chaque verre, puis lisez du point le plus bas du drageoir jusqu’à la marque.',
    caution:
      'Seulement avec la monture choisie, ajustée sur le visage. Marquez le verre au feutre, jamais avec une pointe.',
    withSquint: 'Mesurez chaque œil en couvrant l’autre, pour que l’œil que vous marquez soit celui qui vous regarde.',
  },
  backVertexDistance: {
    name: 'Distance verre-œil',
    shortName: 'Distance verre-œil',
    inSentences: 'la distance verre-œil',
    alsoCalled: ['DVO', 'distance vertex', 'distance verre-cornée', 'vertex', 'distance verre œil'],
    definition: 'Distance de la face arrière du verre à l’avant de la cornée, le long de la ligne du regard.',
    howTaken:
      'De profil, avec un réglet horizontal à côté de la monture. Avec un instrument posé sur la paupière fermée, ajoutez l’épaisseur de la paupière.',
    caution:
      'Seulement avec la monture choisie, ajustée sur le visage. Rien ne doit toucher l’œil ouvert\u202f; sur la paupière, l’instrument repose sans appuyer.',
    withSquint: null,
  },
  pantoscopicAngle: {
    name: 'Angle pantoscopique',
    shortName: 'Angle pantoscopique',
    inSentences: 'l’angle pantoscopique',
    alsoCalled: ['inclinaison', 'inclinaison pantoscopique', 'panto', 'angle d’inclinaison'],
    definition:
      'Angle, dans le plan vertical, entre la normale au verre et le regard droit devant\u202f; positif si le bas des cercles est plus près des joues.',
    howTaken: 'Inclinomètre à fil à plomb contre la face, de profil, la tête du porteur dans son port naturel.',
    caution: 'Seulement avec la monture choisie, ajustée sur le visage.',
    withSquint: null,
  },
  faceFormAngle: {
    name: 'Angle de galbe',
    shortName: 'Angle de galbe',
    inSentences: 'l’angle de galbe',
    alsoCalled: ['galbe', 'courbure de la face', 'angle de courbure'],
    definition:
      'Angle entre le plan de la face et le plan d’un verre, vu du dessus\u202f; positif si le verre tourne en arrière vers la tempe.',
    howTaken:
      'Posez la monture choisie sur un rapporteur, vue du dessus, et lisez de combien un verre tourne par rapport à la ligne de la face.',
    caution: null,
    withSquint: null,
  },
};

// The first screen.

const agreement: Words['agreement'] = {
  heading: 'Accord des deux opérateurs',
  places: {
    mm: (count) => counted(count, 'longueur', 'longueurs'),
    deg: (count) => counted(count, 'angle', 'angles'),
  },
  differences: (places, who, mean, interval, limits) =>
    `${places}, ${who}\u202f: ${mean} en moyenne (95\u202f%\u202f: de ${interval.low} à ${interval.high})\u202f; 19 différences sur 20 sont entre ${limits.low} et ${limits.high}.`,
  biased: 'L’un des deux lit partout plus que l’autre\u202f: comparez comment chacun tient l’instrument.',
  repeats: (name, coefficient, count) =>
    `${name} a lu deux fois ${counted(count, 'ligne', 'lignes')}\u202f: dans 19 cas sur 20, deux relevés sont à moins de ${coefficient} l’un de l’autre.`,
  note: 'Un seul porteur, une seule fiche\u202f: cela ne prouve rien sur les opérateurs.',
};

const crash: Words['crash'] = {
  heading: 'Glabella s’est arrêtée',
  what: 'Une erreur imprévue est survenue. Vos relevés sont encore là et restent gardés dans ce navigateur.',
  readings: 'Vos relevés',
  copy: 'Copier les relevés',
  copied: 'Copié.',
  copyFailed: 'Le navigateur n’a pas permis la copie\u202f: sélectionnez le texte ci-dessus et copiez-le.',
  again: 'Rouvrir la fiche',
};

const demo: Words['demo'] = {
  load: 'Montrer le porteur inventé',
  onSheet: 'Porteur inventé\u202f: Tobin Quillfeather, magasin Lantern Yard.',
  rendered: 'Une photo de synthèse, et des relevés avec deux méprises.',
  kept: 'Votre propre séance est gardée telle quelle.',
  leave: 'Revenir à ma séance',
  pictureName: 'Porteur inventé (photo de synthèse)',
};

const desk: Words['desk'] = {
  opening: 'Ouverture des séances gardées ici…',
  sessions: 'Séances',
  nextWearer: 'Porteur suivant',
  help: 'Aide',
  before: 'La séance précédente est gardée dans la liste.',
  backToBefore: 'Y revenir',
  dismiss: 'Fermer',
  notKept: 'Ce qui est saisi maintenant n’est que sur cet écran.',
  tryAgain: 'Essayer encore de le garder',
  saveAsFile: 'Enregistrer dans un fichier',
  leaveAllTheSame: 'Quitter quand même',
  leaving: 'Tout serait perdu. Enregistrez d’abord un fichier, ou quittez quand même.',
  contested: 'Cette séance a été modifiée dans une autre fenêtre.',
  removedElsewhere: 'Cette séance a été supprimée dans une autre fenêtre.',
  contestedMore: 'Ce que vous saisissez ici n’est pas gardé avant votre choix.',
  showOther: 'Montrer ce qui y est écrit',
  keepMine: 'Garder la mienne comme séance à part',
  history: 'Toutes les saisies',
  recorded: {
    picture: (when) => `Ce que la caméra a dit le ${when} est gardé avec la séance\u202f; sa photo ne l’est pas.`,
    sweep: (when) => `Ce que le balayage du ${when} a dit est gardé avec la séance\u202f; ses images ne le sont pas.`,
    alone: (when) => `Estimations préalables\u202f: le porteur a pris les photos seul le ${when}, sans surveillance.`,
    aloneMore:
      'Personne n’a vu si la carte était à plat ni où regardaient les yeux. Mesurez à la main avant toute fabrication.',
    frames: (used, taken) => `${counted(used, 'image utilisée', 'images utilisées')} sur ${taken}.`,
  },
};

const doubtSource: Words['doubtSource'] = {
  'card-size': 'taille réelle de la carte',
  'card-edges': 'position des bords de la carte dans la photo',
  'iris-edges': 'position des bords de l’iris dans la photo',
  'lid-edges': 'position des bords des paupières dans la photo',
  'contact-depth': 'distance de la peau touchée en avant des yeux',
  camera: 'champ et distorsion de la caméra',
  'head-pose': 'orientation de la tête',
  'iris-size': 'largeur des iris de ce porteur',
  gaze: 'direction du regard',
  midline: 'position de la ligne médiane du nez',
  'head-shape': 'écart entre cette tête et la tête ajustée',
  'between-frames': 'dispersion entre les images',
};

const finding: Words['finding'] = {
  ofOne: { agrees: 'concorde', disagrees: 'diverge', 'cannot-tell': 'sans conclusion' },
  ofBoth: { agrees: 'concordent', disagrees: 'divergent', 'cannot-tell': 'sans conclusion' },
  within: 'dans la tolérance',
  outside: 'hors tolérance, même avec l’incertitude des deux\u202f: à relire',
  tooWide: {
    picture: (doubt, tolerance) => `±\u00a0${doubt} d’une seule photo est trop large pour ±\u00a0${tolerance}`,
    sweep: (doubt, tolerance) => `±\u00a0${doubt} d’un seul balayage est trop large pour ±\u00a0${tolerance}`,
  },
  setLidMarks: (reason) => `${reason}\u202f; placez les repères des paupières à la loupe`,
  between: (needed) => `trop proche de la limite\u202f: ±\u00a0${needed} trancherait`,
  handUnsure: (needed) =>
    `le relevé manuel est trop incertain\u202f; à ±\u00a0${needed} près il trancherait\u202f: à relire`,
};

const footer: Words['footer'] = {
  heading: 'Avant de vous y fier',
  cautions: [
    'Un second relevé, pas une mesure clinique\u202f: il ne remplace pas les mesures que l’adaptation exige.',
    'Les règles locales priment, et c’est la personne habilitée à délivrer qui décide.',
    'Enfants\u202f: mesurez-les selon vos règles locales et votre formation\u202f; ne décidez pas sur une photo.',
    'Strabisme\u202f: les deux yeux ne fixent jamais ensemble. Mesurez chaque œil en couvrant l’autre.',
    'Les verres forts et progressifs demandent les mesures prévues par leur fabricant, quoi que dise la photo.',
  ],
  privacy:
    'Rien ne quitte cet appareil de soi-même\u202f: pas de compte, et pas de serveur qui reçoive quoi que ce soit.',
  privacyMore:
    'Ce que vous saisissez est gardé dans ce navigateur jusqu’à ce que vous supprimiez sa séance\u202f; une photo seulement si le porteur l’accepte, et les profils de caméra jusqu’à ce que vous les supprimiez.',
};

const frameFailure: Words['frameFailure'] = {
  'no-face': 'aucun visage visible',
  'several-faces': 'plusieurs visages visibles',
  'no-card': 'carte non visible',
  'several-cards': 'plusieurs cartes visibles',
  'card-not-flat': 'carte pliée, ou coin caché',
  'card-tilted': 'carte trop penchée',
  'head-turned': 'visage trop tourné',
  'eyes-closed': 'yeux fermés',
  'iris-not-found': 'bord de l’iris non visible',
  blurred: 'image floue',
  'too-dark': 'image trop sombre',
  implausible: 'la carte et les yeux ne s’accordent pas',
  'too-far': 'trop loin de la caméra',
  'picture-unsupported': 'le fichier ne s’ouvre pas',
  'picture-broken': 'le fichier ne s’ouvre pas',
  'picture-too-large': 'le fichier ne s’ouvre pas',
  'video-unsupported': 'image illisible',
  'video-broken': 'image illisible',
  'camera-refused': 'pas de caméra',
  'camera-missing': 'pas de caméra',
  'camera-busy': 'pas de caméra',
  'camera-unplugged': 'pas de caméra',
  'camera-silent': 'pas de caméra',
  'camera-unsupported': 'pas de caméra',
  'model-not-loadable': 'examen impossible',
  'vision-not-loadable': 'examen impossible',
  'vision-stopped': 'examen impossible',
};

const hand: Words['hand'] = {
  another: (name) => `Autre relevé\u202f: ${name}`,
  tried: (name) => `${name}\u202f: la dernière taille saisie`,
  verdicts: { loose: 'large', fits: 'juste', tight: 'serré' },
  several: (scales, steps) => `${scales.join('\u202f; ')}${steps === '' ? '' : `\u202f; chacun ${steps}`}`,
  repeats: (several, mean, range, deviation) =>
    `${several}\u202f: moyenne ${mean}, étendue ${range}, écart-type ${deviation}`,
  farOff: (values) =>
    values.length < 2
      ? `${values.join('')} est loin des autres\u202f: à relire`
      : `${list(values)} sont loin des autres\u202f: à relire`,
  scattered: 'plus dispersé que d’ordinaire pour un seul opérateur\u202f: relisez une fois',
  trials: (value, low, high) => `${value}, entre ${low} et ${high}`,
  untried: (low, high, size) => `entre ${low} et ${high}, ${size} n’a pas été essayé`,
  earlier: 'saisie antérieure',
  andEarlier: (count) => `et ${counted(count, 'antérieure', 'antérieures')}`,
  earlierBy: (by, when) => (by === '' ? when : `${by}, ${when}`),
  otherRead: (reader, value) => `${reader}\u202f: ${value}`,
  differBy: (difference) => `les opérateurs diffèrent de ${difference}`,
  confirmed: (by) => (by === '' ? 'confirmé' : `confirmé par ${by}`),
};

const header: Words['header'] = {
  name: 'Glabella',
  whatItIs: 'Un second relevé du visage, d’après une photo ou un court balayage.',
  actions: 'Fiche',
  keys: 'Touches',
  settings: 'Réglages',
  practice: 'Magasin',
  order: 'Bon de commande',
  printCard: 'Carte à imprimer',
  printSheet: 'Imprimer la fiche',
  skipToReadings: 'Aller aux relevés',
};

const helpButton: Words['helpButton'] = {
  openFor: (name) => `Aide pour ${name}\u202f: comment et où mesurer`,
  button: 'Aide',
  sign: '?',
};

const holding: Words['holding'] = {
  heading: 'Comment tenir la carte',
  steps: [
    'Toute carte au format bancaire, ou la carte imprimée. À plat contre le front\u202f; si les cheveux gênent, au-dessus ou au-dessous de la bouche.',
    'Grand côté horizontal, les quatre bords libres\u202f: tenez-la par un petit côté, du bout de deux doigts.',
    'Caméra à la hauteur des yeux, à 40 à 60 cm environ, visage droit vers elle, lumière de face.',
  ],
  cautions: [
    'Les bords d’une carte sont coupants\u202f: gardez-les loin des yeux et tendez la carte à plat.',
    'Le porteur ne doit pas regarder de lampe ni le soleil.',
  ],
};

const language: Words['language'] = {
  choose: 'Langue',
  failed: (name) =>
    `La langue ${name} n’a pas pu être chargée. Connectez-vous une fois au réseau et choisissez-la de nouveau.`,
};

const lengthFailure: Words['lengthFailure'] = {
  noLength: 'Saisissez une longueur en mm, par exemple 400. D’ici là, 400 mm compte.',
  beyond: (lowest, highest) => `Saisissez une longueur entre ${lowest} et ${highest} mm. D’ici là, 400 mm compte.`,
  print: {
    noLength:
      'Saisissez la longueur mesurée en mm, par exemple 149,5. D’ici là, l’impression est supposée à taille réelle.',
    otherUnit: {
      cm: (mm) => `Étaient-ce des centimètres\u202f? Alors saisissez ${mm} mm.`,
      inch: (mm) => `Étaient-ce des pouces\u202f? Alors saisissez ${mm} mm.`,
    },
    beyond: (measured, lowest, highest) =>
      `${measured} mm ne peut pas être corrigé\u202f: une impression utilisable montre de ${lowest} à ${highest} mm. Imprimez de nouveau à 100\u202f%.`,
  },
};

const EYES = { R: 'de l’œil droit', L: 'de l’œil gauche', both: 'des deux yeux' };
const PARTS = {
  landmarks: 'les points du visage',
  card: 'la recherche de la carte',
  sweep: 'la mesure des balayages',
};

const measuringFailure: Words['measuringFailure'] = {
  'no-face': {
    what: 'Aucun visage n’a été trouvé dans cette photo.',
    next: 'Placez le porteur face à la caméra, lumière de face, tout le visage dans le cadre, et reprenez une photo.',
  },
  'several-faces': (count) => ({
    what: `Il y a ${count} visages dans cette photo.`,
    next: 'Prenez le porteur seul\u202f; attention aux visages sur les affiches et dans les miroirs.',
  }),
  'no-card': {
    what: 'Un visage a été trouvé, mais pas de carte.',
    next: 'Tenez une carte au format bancaire à plat contre le front, grand côté horizontal, les quatre bords libres et bien distincts de la peau. Ou utilisez la carte à repères imprimée.',
  },
  'several-cards': {
    what: 'Plus d’une carte a été trouvée.',
    next: 'N’en gardez qu’une et reprenez une photo.',
  },
  'card-not-flat': (offPx) => ({
    what: `Le contour n’est pas celui d’une carte plane\u202f: il s’en écarte de ${offPx} pixels.`,
    next: 'Prenez une carte non pliée, gardez les doigts loin des coins, ou placez les coins à la main.',
  }),
  'card-tilted': (degrees, limit) => ({
    what: `La carte penche de ${degrees}° par rapport à la caméra\u202f; on peut mesurer jusqu’à ${limit}°.`,
    next: 'Posez la carte à plat sur la peau, tenez la tête droite et mettez la caméra à la hauteur des yeux.',
  }),
  'head-turned': (degrees, limit) => ({
    what: `Le visage est tourné de ${degrees}°\u202f; on peut mesurer jusqu’à ${limit}°.`,
    next: 'Tournez le nez vers la caméra, la tête de niveau, et reprenez une photo.',
  }),
  'eyes-closed': (side) => ({
    what: `Une paupière couvre l’iris ${EYES[side]}.`,
    next: 'Demandez des yeux ouverts et détendus, et reprenez une photo après un clignement.',
  }),
  'iris-not-found': (side) => ({
    what: `Le bord de l’iris ${EYES[side]} n’a pas pu être distingué.`,
    next: 'Retirez les lunettes, écartez les reflets des yeux, ajoutez de la lumière de face, ou approchez-vous.',
  }),
  blurred: (widthPx, limitPx) => ({
    what: `La photo n’est pas nette\u202f: les bords font ${widthPx} pixels de large, on peut mesurer jusqu’à ${limitPx}.`,
    next: 'Essuyez l’objectif, attendez la mise au point, ne bougez pas, ajoutez de la lumière.',
  }),
  'too-dark': {
    what: 'Le visage est trop sombre pour être mesuré.',
    next: 'Éclairez le visage de face, pas de derrière\u202f; ne laissez jamais le porteur regarder une lampe.',
  },
  implausible: (mm) => ({
    what: `La carte et les yeux ne s’accordent pas\u202f: les iris feraient ${mm} mm, et presque tous font de 10,5 à 13.`,
    next: 'Regardez si les coins de la carte et les cercles sont à leur place, déplacez ce qui ne l’est pas, ou reprenez une photo avec une carte au format bancaire.',
  }),
  'too-far': (pixelsPerMm, needed) => ({
    what: `Le visage est trop petit dans la photo\u202f: ${pixelsPerMm} pixels par millimètre, il en faut ${needed}.`,
    next: 'Approchez-vous (40 à 60 cm environ avec une webcam), ou prenez une photo de plus haute résolution.',
  }),
  'picture-disguised': {
    what: 'Ce fichier n’est pas une photo qui s’ouvre, quoi que dise son nom.',
    next: 'Copiez-le de nouveau depuis son origine, ou prenez-en un autre.',
  },
  'picture-unsupported': (type) => ({
    what:
      type === ''
        ? 'Ce fichier n’est pas une photo qui s’ouvre ici.'
        : `Les fichiers de type ${type} ne s’ouvrent pas ici.`,
    next: 'Utilisez une photo JPEG, PNG ou WebP\u202f; les téléphones savent enregistrer ou partager en JPEG.',
  }),
  'picture-broken': {
    what: 'Ce fichier photo est endommagé ou incomplet.',
    next: 'Copiez-le de nouveau depuis son origine, ou prenez-en un autre.',
  },
  'video-unsupported': {
    what: 'Cette vidéo ne peut pas être lue ici.',
    next: 'Choisissez une vidéo mp4 ou webm, ou plusieurs photos.',
  },
  'video-broken': {
    what: 'Cette vidéo est endommagée ou vide.',
    next: 'Choisissez un autre fichier, ou filmez de nouveau.',
  },
  'picture-too-large': (megapixels, limit) => ({
    what: `Cette photo a ${megapixels} mégapixels\u202f; on peut en ouvrir jusqu’à ${limit}.`,
    next: 'Enregistrez-la plus petite (12 mégapixels suffisent largement) ou recadrez-la sur la tête et la carte.',
  }),
  'camera-refused': {
    what: 'Le navigateur n’a pas été autorisé à utiliser la caméra.',
    next: 'Autorisez la caméra pour cette page dans la barre d’adresse et réessayez, ou choisissez un fichier photo.',
  },
  'camera-missing': {
    what: 'Aucune caméra n’a été trouvée.',
    next: 'Branchez-en une et réessayez, ou choisissez un fichier photo.',
  },
  'camera-busy': {
    what: 'La caméra est utilisée ailleurs.',
    next: 'Fermez les autres programmes et pages qui montrent son image, comme les appels vidéo, puis réessayez.',
  },
  'camera-unplugged': {
    what: 'La caméra a été débranchée ou éteinte.',
    next: 'Rebranchez-la, ou choisissez une autre caméra.',
  },
  'camera-silent': {
    what: 'Aucune image ne vient de la caméra.',
    next: 'Ouvrez son cache ou allumez-la, et fermez les autres programmes et pages qui pourraient l’utiliser, comme les appels vidéo.',
  },
  'camera-unsupported': {
    what: 'Ce navigateur ne peut pas utiliser de caméra sur cette page.',
    next: 'Ouvrez la page en https ou sur cet ordinateur même, ou choisissez un fichier photo.',
  },
  'model-not-loadable': {
    what: 'Le modèle des points du visage n’a pas pu être chargé.',
    next: 'Rechargez la page. Si vous avez choisi votre propre paquet, revenez à celui d’origine dans les réglages.',
  },
  'vision-not-loadable': (part) => ({
    what: `Chargement impossible\u202f: ${PARTS[part]}. WebAssembly est peut-être désactivé.`,
    next: 'Rechargez la page, ou utilisez un navigateur récent avec WebAssembly autorisé. Les relevés manuels fonctionnent sans.',
  }),
  'vision-stopped': (part) => ({
    what: `Arrêt pendant le travail sur cette photo\u202f: ${PARTS[part]}.`,
    next: 'Réessayez avec la photo\u202f; tout repart de zéro. Une photo plus petite demande moins de mémoire.',
  }),
};

const misfit: Words['misfit'] = {
  heading: 'Ce qui ne s’accorde pas',
  fits: 'Rien ne ressort parmi les relevés.',
  basis:
    'Un pourcentage est la part de cette seule cause parmi tout ce qui a pu se passer, avec des fréquences de méprises choisies\u202f; il est plutôt trop bas. Rien ne change avant que vous ne l’acceptiez.',
  unexplained: 'Aucune méprise courante ne l’explique\u202f: relisez.',
  unsure: 'Ce peut être autre chose\u202f: relisez.',
  refused: (place, why) => `${place}\u202f: ${lowerFirst(why)}`,
  doesNotAddUp: (place) => `${place}\u202f: R et L ne font pas le tout\u202f: relisez les trois.`,
  disagrees: (place, ownHand, camera) => `${place}\u202f: ${ownHand} à la main, ${camera} par la caméra.`,
  readersDiffer: (place, own, other, otherReader) =>
    `${place}\u202f: ${own} sur cette fiche, ${other} pour ${otherReader === '' ? 'l’autre opérateur' : otherReader}. C’est plus que l’écart admis entre deux opérateurs.`,
  farOff: (place, count, farOff, others) =>
    `${place}\u202f: ${farOff} ${count < 2 ? 'est' : 'sont'} loin des autres répétitions (${others}).`,
  unusual: (place, value, low, high) =>
    `${place}\u202f: ${value} est inhabituel (la plupart des adultes\u202f: de ${low} à ${high}).`,
  ways: {
    disagrees: 'Relisez, ou regardez les points dans la photo.',
    readersDiffer: 'Que les deux relisent, chacun sans le nombre de l’autre.',
    farOffRepeat: 'Relisez, et retirez le nombre mal lu.',
    unusual: 'Rien ne le contredit, et il existe des visages inhabituels\u202f: regardez encore.',
  },
};

const news: Words['news'] = {
  misfit: (place, what) => `${place}\u202f: ${what}.`,
};

const notes: Words['notes'] = {
  heading: 'Porteur et notes',
  wearer: 'Porteur',
  wearerNote: 'comme vous le nommez',
  squint: 'Strabisme\u202f: les deux yeux ne fixent jamais ensemble',
  squintChanges: (names) => `À mesurer en couvrant l’autre œil\u202f: ${names}.`,
  light: 'Lumière pour les diamètres pupillaires',
  noLight: 'non notée',
  lights: { bright: 'vive', room: 'lumière de la pièce', dim: 'faible' },
  lightMissing: 'Un diamètre pupillaire dit peu sans la lumière dans laquelle il a été lu.',
  remark: 'Remarque',
};

const offline: Words['offline'] = {
  part: 'Usage sans réseau',
  complete: 'Prêt pour l’usage sans réseau.',
  fetching: (kept, all) => `Préparation de l’usage sans réseau\u202f: ${kept} Mo sur ${all}`,
  incomplete: (kept, all) => `Pas encore prêt pour l’usage sans réseau\u202f: ${kept} Mo sur ${all} sont là.`,
  why: {
    network: 'La connexion s’est coupée. Cela reprend de soi-même quand elle revient.',
    storage: 'Cet appareil n’a plus de place. Faites-en, puis continuez. Avec le réseau, tout marche comme avant.',
    'other-build': 'Une version plus récente est sur le serveur. Elle sera proposée ici dès son arrivée.',
  },
  goOn: 'Continuer maintenant',
  partMissing: 'Cette partie de Glabella n’a pas pu être chargée. Rien de ce qui est saisi n’est perdu.',
  loadAgain: 'Recharger',
  newer: {
    waiting: 'Une version plus récente de Glabella est là.',
    taken: 'Une version plus récente de Glabella a été prise dans une autre fenêtre.',
    whatGoes:
      'La page est rechargée pour cela\u202f: ce qui est saisi reste, une photo ou un balayage à l’écran disparaît.',
    take: 'La prendre maintenant',
  },
};

const pictureAdvice: Words['pictureAdvice'] = {
  comeNearer: (pixelsPerMm) => `Approchez-vous\u202f: le visage n’a que ${pixelsPerMm} pixels par millimètre.`,
  cardCovered: {
    top: 'Le bord supérieur de la carte (tel qu’on le voit dans la photo) est difficile à voir\u202f: écartez doigts et cheveux, et faites-le ressortir de ce qui est derrière.',
    right:
      'Le bord droit de la carte (tel qu’on le voit dans la photo) est difficile à voir\u202f: écartez doigts et cheveux, et faites-le ressortir de ce qui est derrière.',
    bottom:
      'Le bord inférieur de la carte (tel qu’on le voit dans la photo) est difficile à voir\u202f: écartez doigts et cheveux, et faites-le ressortir de ce qui est derrière.',
    left: 'Le bord gauche de la carte (tel qu’on le voit dans la photo) est difficile à voir\u202f: écartez doigts et cheveux, et faites-le ressortir de ce qui est derrière.',
  },
  turnToCamera: (degrees) => `Tournez le nez vers la caméra\u202f: il pointe à ${degrees}° de côté.`,
  levelCard: (degrees) => `Tenez le grand côté de la carte horizontal\u202f: il penche de ${degrees}°.`,
  cardOnForehead:
    'Tenez la carte sur le front si possible\u202f: c’est là qu’on sait le mieux de combien elle est en avant des yeux.',
  checkPoints: {
    card: 'Regardez les coins de la carte à la loupe\u202f: le bord était difficile à voir.',
    irisR: 'Regardez l’iris droit à la loupe\u202f: le bord était difficile à voir.',
    irisL: 'Regardez l’iris gauche à la loupe\u202f: le bord était difficile à voir.',
  },
};

const picture: Words['picture'] = {
  heading: 'Photo',
  take: 'Prendre une photo',
  takeAnother: 'Prendre une autre photo',
  choose: 'Choisir un fichier photo',
  chooseAnother: 'Choisir un autre fichier',
  dropHere:
    'ou déposez ou collez-en une ici (JPEG, PNG ou WebP). Plusieurs photos (dans l’ordre de leurs noms), ou une vidéo, sont mesurées comme un balayage.',
  letGo: 'Lâchez pour mesurer cette photo, ou celles-ci comme un balayage',
  cancel: 'Arrêter',
  putAway: 'Ranger la photo',
  face: 'Visage',
  wholePicture: 'Photo entière',
  wholePictureOf: (name) => `Photo entière\u202f: ${name}`,
  viewOf: 'Vue',
  undo: 'Annuler',
  redo: 'Rétablir',
  reset: 'Revenir à ce qui a été trouvé',
  placeByHand: 'Placer les coins à la main',
  cornersPlaced: 'Les coins sont en place',
  placing: 'Glissez chaque coin du cadre là où les bords droits de la carte se croiseraient, puis confirmez.',
  eye: { R: 'Œil droit (R)', L: 'Œil gauche (L)' },
  found: 'Carte, deux iris, paupières et ligne médiane trouvés.',
  corrected: 'Corrigé à la main.',
  handleHint:
    'Glissez un point qui n’est pas à sa place, ou allez-y avec Tab\u202f: les flèches le déplacent de 1 pixel, avec Maj de 0,1 pixel.',
  keyHeading: 'Ce que signifient les lignes',
  key: 'Cadre plein, la carte\u202f; cercles, les bords de l’iris\u202f; petites barres, les bords des paupières\u202f; ligne tiretée, la ligne médiane du nez\u202f; triangles, les côtés de la tête et des tempes.',
  gaze: 'Le porteur regardait',
  gazeCamera: 'dans la caméra',
  gazeFar: 'au loin',
  gazeNote: 'Avec «\u202fdans la caméra\u202f», les pupilles sont plus rapprochées\u202f; l’EP de loin en est déduit.',
  facts: 'Ce que cette photo dit encore',
  nearPd: 'EP de près',
  nearPdFor: (mm) => `pour ${mm} mm`,
  irisDiameter: 'Diamètre de l’iris',
  distance: 'Distance à la caméra',
  turned: 'Tête tournée',
  turnedBy: (aside, nod, towards) => `${aside}° de côté, ${nod}° vers le ${towards === 'up' ? 'haut' : 'bas'}`,
  scale: 'Échelle',
  pixelsPerMm: (value) => `${value} pixels par mm`,
  irisCheck: {
    usual: 'comme les iris en général\u202f: l’échelle est plausible',
    unusual: 'inhabituel pour un iris\u202f: regardez de nouveau la carte et les cercles',
  },
  better: 'Ce qui rendrait la prochaine photo meilleure',
};

const progress: Words['progress'] = {
  opening: 'Ouverture de la photo',
  'loading-landmarks': 'Chargement des points du visage',
  'loading-card': 'Chargement de la recherche de la carte',
  'finding-face': 'Recherche du visage',
  'finding-card': 'Recherche de la carte et des bords de l’iris',
};

const reader: Words['reader'] = {
  legend: 'Qui relève',
  first: 'Premier opérateur',
  second: 'Second opérateur',
  name: { first: 'Nom du premier opérateur', second: 'Nom du second opérateur' },
  namePlaceholder: 'nom',
  coveredFrom: {
    first: 'La fiche du second opérateur est cachée\u202f; chacune de ses lignes apparaît dès que la vôtre est saisie.',
    second:
      'La fiche du premier opérateur est cachée\u202f; chacune de ses lignes apparaît dès que la vôtre est saisie.',
  },
};

const readingFailure: Words['readingFailure'] = {
  notANumber: (typed) => `«\u202f${typed}\u202f» n’est pas un nombre.`,
  hints: {
    otherUnit: {
      mm: 'Saisissez-le en mm, sans écrire l’unité.',
      deg: 'Saisissez-le en degrés, sans écrire l’unité.',
    },
    ownUnit: 'N’écrivez pas l’unité.',
    ownUnitBehind: (number) => `N’écrivez pas l’unité\u202f: ${number}.`,
    joined: 'Mettez une espace entre les répétitions, comme 63 63,5 62,5.',
    digits: 'Saisissez des chiffres avec au plus une virgule ou un point, comme 63,5.',
  },
  onScale: (scale, value) => `${scale} sur l’échelle vaut ${value}.`,
  notPositive: 'Un relevé doit être supérieur à zéro. Saisissez le nombre que montre l’instrument.',
  impossible: (value, low, high) =>
    `${value} est impossible\u202f: un tel relevé est entre ${low} et ${high}. Regardez de nouveau l’instrument.`,
  notATrial: (typed) => `«\u202f${typed}\u202f» n’est pas un essai.`,
  howTrialsAreTyped:
    'Saisissez chaque taille suivie de loose (large), fits (juste) ou tight (serré), comme 10 loose 9 fits 8 tight.',
  tooMany: (count, limit) =>
    `Il y a ici ${count} nombres, et ${limit} au plus sont acceptés. Retirez ceux qui n’ont rien à y faire.`,
  writtenTwice: (size, one, other) =>
    `${size} est noté «\u202f${one}\u202f» et «\u202f${other}\u202f». Essayez de nouveau.`,
  contradiction: (smaller, asSmaller, larger, asLarger) =>
    `${smaller} est noté «\u202f${asSmaller}\u202f» et ${larger} «\u202f${asLarger}\u202f», mais une taille plus petite ne peut pas être plus large. Essayez de nouveau les deux.`,
  oneSided: {
    loose: (next) => `Toutes les tailles étaient trop larges. Essayez ensuite ${next}.`,
    tight: (next) => `Toutes les tailles étaient trop serrées. Essayez ensuite ${next}.`,
  },
};

const ruler: Words['ruler'] = {
  lane: (side, difference, low, high, tolerance) =>
    `${side === null ? '' : side === 'R' ? 'Droite\u202f: ' : 'Gauche\u202f: '}main moins caméra ${difference} mm, intervalle à 95\u202f% de ${low} à ${high} mm, tolérance plus ou moins ${tolerance} mm`,
};

const search: Words['search'] = {
  label: 'Aller à une mesure',
  none: 'Aucune mesure de ce nom n’est sur la fiche.',
  count: (count) => counted(count, 'mesure', 'mesures'),
};

const sheet: Words['sheet'] = {
  heading: 'Relevés',
  caption:
    'Relevés manuels, estimations de la caméra et constats\u202f; longueurs en millimètres, angles en degrés. R est la droite du porteur, L sa gauche.',
  measurement: 'Mesure',
  hand: 'Main',
  camera: 'Caméra ± 95\u202f%',
  cameraShort: 'Caméra',
  difference: 'Main − caméra',
  drawn: 'Dessiner main et caméra',
  toleranceIs: (value, sourceStatus) => `tolérance ± ${value}, ${sourceStatus}`,
  finding: 'Constat',
  groups: { eyes: 'Yeux', head: 'Tête', nose: 'Nez', sides: 'Branches', frame: 'Avec la monture portée' },
  groupCount: (filled, all) => `${filled} sur ${all} saisis`,
  groupMisfits: (count) => counted(count, 'relevé douteux', 'relevés douteux'),
  side: { R: 'R', L: 'L' },
  sideHead: { R: 'R\u202f:', L: 'L\u202f:' },
  sideWord: { R: 'à droite', L: 'à gauche' },
  eyesSum: (sum) => `R + L = ${sum}`,
  covered: 'caché jusqu’à la saisie de votre relevé',
  coveredBoth: 'caché jusqu’à la saisie de R et L',
  coveredShort: 'caché',
  details: 'Détails',
  detailsOf: (name) => `Détails\u202f: ${name}\u202f; définition, incertitude et tolérance`,
  handField: (name, unit) => `${name}, relevé manuel en ${unit === 'mm' ? 'mm' : 'degrés'}`,
  cameraCell: (name) => `${name}, caméra`,
  disagrees: 'diverge de la caméra',
  preFitting: 'estimation préalable',
  notIndependent:
    'Ces relevés ont été faits après l’affichage des estimations\u202f: les deux ne sont donc pas indépendants.',
  howTaken: 'À la main\u202f:',
  step: (resolution) => `À lire à ${resolution} près.`,
  squint: 'En cas de strabisme\u202f:',
  squintChanges: (how) => `En cas de strabisme\u202f: ${lowerFirst(how)}`,
  notComparable: 'La valeur de la caméra est écartée\u202f: elle suppose que les deux yeux regardent le même point.',
  definedBy: (cited, sourceStatus) => `Définition d’après ${cited} (${sourceStatus}).`,
  share: 'part',
  source: 'source',
  findingsCount: (agree, disagree, cannotTell) =>
    `Constats\u202f: ${agree} ${agree < 2 ? 'concorde' : 'concordent'}, ${disagree} ${disagree < 2 ? 'diverge' : 'divergent'}, ${cannotTell} sans conclusion.`,
  findingOf: (name, word, reason) => `${name}\u202f: ${word}. ${upperFirst(reason)}.`,
  doubtHeading: 'D’où vient cette incertitude',
  doubtCovered: 'La valeur de la caméra est encore cachée. Son incertitude sera montrée avec elle.',
  toleranceHeading: 'La tolérance et sa source',
  usualHeading: 'Ce qui est habituel',
  usual: (mean, low, high) => `Adultes\u202f: ${mean} en moyenne, 19 sur 20 entre ${low} et ${high}`,
  usualSides: (difference) => `Droite et gauche diffèrent de moins de ${difference} dans 19 cas sur 20`,
  reader: (deviation) => `Un opérateur qui relit se disperse de ± ${deviation} (un écart-type)`,
  sourced: (what, sourceStatus, cited) => `${what} (${sourceStatus})\u202f: ${cited}.`,
  definitionHeading: 'Ce qui est mesuré',
  total: 'Ensemble, un écart-type',
  alone: {
    offer: 'Pas encore de relevé manuel\u202f?',
    show: 'Montrer les estimations seules',
    cover: 'Les cacher de nouveau',
    mark: 'Estimations préalables',
    note: 'Ce que dit la caméra, sans relevé manuel à côté. Non contrôlé\u202f: ne commandez pas d’après cela.',
  },
  whatUnsureSweepDecides:
    'Ce balayage n’est pas plus sûr qu’une photo. Il ne peut contredire une ligne que si la différence dépasse sa propre incertitude.',
  whatSweepDecides:
    'Un balayage tranche surtout l’EP de loin et le demi-EP de chaque œil. Il ne peut contredire les autres lignes que si la différence dépasse sa propre incertitude.',
  whatDecides:
    'Une photo tranche l’EP de loin, et le plus souvent l’ouverture palpébrale. Elle ne peut que contredire les autres lignes, et seulement si la différence dépasse sa propre incertitude.',
  unitHint: 'Longueurs en millimètres, angles en degrés\u202f; R est la droite du porteur, L sa gauche.',
  howTyped:
    'Saisissez ce que montre l’échelle. Les répétitions vont dans le même champ, séparées par une espace\u202f; les tailles essayées, chacune suivie de loose (large), fits (juste) ou tight (serré), ou de l, f, t.',
  touchHint: 'Saisissez ce que montre l’échelle\u202f; le bouton à côté d’un champ ajoute un autre relevé du même.',
  keysHint:
    'Entrée va au champ suivant, Maj et Entrée au précédent\u202f; les flèches montent et descendent, / trouve une mesure par son nom.',
};

/** How sure the cause is, as an adverb. */
function surely(slip: { readonly isProbable: boolean }): string {
  return slip.isProbable ? 'probablement' : 'peut-être';
}

function amountNeeded({ amount, gauge }: { readonly amount: string | null; readonly gauge: string | null }): string {
  if (amount === null) return 'ce qu’un instrument exige d’ajouter';
  return gauge === null
    ? `les ${amount} qu’un instrument exige d’ajouter`
    : `les ${amount} que l’instrument «\u202f${gauge}\u202f» exige d’ajouter`;
}

/** Verb of what is added: one amount unknown, or so many millimetres. */
function was({ amount }: { readonly amount: string | null }): string {
  return amount === null ? 'a' : 'ont';
}

const slip: Words['slip'] = {
  under: (percent) => `moins de ${percent}`,
  over: (percent) => `plus de ${percent}`,
  clauses: {
    'digits-swapped': (one) => `pour ${one.places}, deux chiffres ont ${surely(one)} été intervertis`,
    'rows-swapped': (one) =>
      one.rows === null
        ? `les nombres ${of(one.places)} ont ${surely(one)} été échangés`
        : `les lignes ${of(one.rows)} ont ${surely(one)} été échangées, à droite et à gauche`,
    'row-repeated': (one) =>
      `pour ${one.places}, le nombre de la ligne du dessus ou du dessous a ${surely(one)} été écrit une seconde fois`,
    'sides-swapped': (one) => `pour ${one.places}, droite et gauche ont ${surely(one)} été échangées`,
    'offset-forgotten': (one) =>
      `pour ${one.places}, ${amountNeeded(one)} ${was(one)} ${surely(one)} été ${one.amount === null ? 'oublié' : 'oubliés'}`,
    'offset-twice': (one) =>
      `pour ${one.places}, ${amountNeeded(one)} ${was(one)} ${surely(one)} été ${one.amount === null ? 'ajouté' : 'ajoutés'} deux fois`,
    'near-for-distance': (one) => `pour ${one.places}, l’écart de près a ${surely(one)} été écrit`,
    'distance-for-near': (one) => `pour ${one.places}, l’écart de loin a ${surely(one)} été écrit`,
    'half-for-whole': (one) => `pour ${one.places}, l’écart d’un seul œil a ${surely(one)} été écrit`,
    'whole-for-half': (one) => `pour ${one.places}, l’écart des deux yeux a ${surely(one)} été écrit`,
    halved: (one) => `pour ${one.places}, la moitié du tout a ${surely(one)} été écrite au lieu d’une mesure`,
    'point-moved': (one) => `pour ${one.places}, la virgule a ${surely(one)} été déplacée ou perdue`,
    centimetres: (one) => `pour ${one.places}, des centimètres ont ${surely(one)} été écrits`,
    inches: (one) => `pour ${one.places}, des pouces ont ${surely(one)} été écrits`,
    'ten-off': (one) => `pour ${one.places}, la dizaine a ${surely(one)} été mal lue`,
    'digit-wrong': (one) => `pour ${one.places}, un chiffre a ${surely(one)} été mal écrit`,
    'sign-lost': (one) => `pour ${one.places}, le signe a ${surely(one)} été mal écrit`,
  },
  explained: (clause, instead, probability) => `${upperFirst(clause)}\u202f: ${instead} (${probability}).`,
  explainedByTwo: (one, insteadOfOne, other, insteadOfOther, probability) =>
    `Deux causes (${probability})\u202f: ${one} (${insteadOfOne}), et ${other} (${insteadOfOther}).`,
  instead: (written, restored) => `${written} au lieu de ${restored}`,
  insteadAt: (place, instead) => `${place} ${instead}`,
  nextSame: (value, probability) => `Ensuite\u202f: la même cause, mais ${value} (${probability}).`,
  next: (causes, probability) => `Ensuite\u202f: ${causes} (${probability}).`,
  nextCause: (places, phrase, value) =>
    `${places === null ? '' : `${places}, `}${phrase}${value === null ? '' : `, alors ${value}`}`,
  phrases: {
    'digits-swapped': 'deux chiffres intervertis',
    'sides-swapped': 'droite et gauche échangées',
    'offset-forgotten': 'sans ce qu’un instrument exige d’ajouter',
    'offset-twice': 'ce que l’instrument exige ajouté deux fois',
    'near-for-distance': 'l’écart de près écrit pour celui de loin',
    'distance-for-near': 'l’écart de loin écrit pour celui de près',
    'half-for-whole': 'l’écart d’un œil écrit pour les deux',
    'whole-for-half': 'l’écart des deux yeux écrit pour un seul',
    halved: 'la moitié du tout écrite',
    'point-moved': 'virgule déplacée ou perdue',
    centimetres: 'écrit en centimètres',
    inches: 'écrit en pouces',
    'rows-swapped': 'deux lignes échangées',
    'row-repeated': 'le nombre de la ligne voisine écrit une seconde fois',
    'ten-off': 'dizaine mal lue',
    'digit-wrong': 'un chiffre faux',
    'sign-lost': 'signe faux',
  },
  readAgain: (place) => `Relire ${place}`,
  valueFor: (value, place) => `${value} pour ${place}`,
  offer: (used, kept) => `Prendre ${used}, garder trace de ${kept}`,
  offerPlace: (place) => ` (${place})`,
  probably: (value, inShort) => `probable${value === null ? '' : ` ${value}`}\u202f: ${inShort}`,
  marks: {
    'does-not-add-up': 'R et L ne font pas le tout',
    suspected: 'ne s’accorde pas',
    inDoubt: 'douteux',
    disagrees: 'diverge',
    'readers-differ': 'les opérateurs diffèrent',
    'far-off-repeat': 'une répétition loin des autres',
    unusual: 'inhabituel\u202f: regardez encore',
    refused: {
      impossible: 'impossible',
      'not-positive': 'impossible',
      'trials-contradict': 'les essais se contredisent',
      'not-a-number': 'pas un nombre',
      'not-a-trial': 'pas un essai',
      'too-many-repeats': 'trop de nombres',
    },
  },
};

const slipsInShort: Words['slipsInShort'] = {
  'digits-swapped': 'chiffres intervertis',
  'sides-swapped': 'droite et gauche échangées',
  'offset-forgotten': 'ajout de l’instrument oublié',
  'offset-twice': 'ajout de l’instrument compté deux fois',
  'near-for-distance': 'près pour loin',
  'distance-for-near': 'loin pour près',
  'half-for-whole': 'un œil pour les deux',
  'whole-for-half': 'deux yeux pour un',
  halved: 'moitié du tout',
  'point-moved': 'virgule',
  centimetres: 'en centimètres',
  inches: 'en pouces',
  'rows-swapped': 'deux lignes échangées',
  'row-repeated': 'ligne voisine répétée',
  'ten-off': 'dizaine fausse',
  'digit-wrong': 'un chiffre faux',
  'sign-lost': 'signe faux',
};

const status: Words['status'] = {
  long: {
    verified: 'vu dans la source',
    'verified-secondary': 'vu dans un texte qui rapporte la source',
    computed: 'calculé sur des données ouvertes',
    derived: 'déduit de la source',
    'common-practice': 'usage courant',
    'from-memory': 'de mémoire, non vérifié',
    chosen: 'choisi pour cette application',
  },
  short: {
    verified: 'publié',
    'verified-secondary': 'publié',
    computed: 'calculé',
    derived: 'déduit',
    'common-practice': 'd’usage',
    'from-memory': 'non vérifié',
    chosen: 'choisi',
  },
};

const store: Words['store'] = {
  refused: {
    what: 'Ce navigateur ne laisse pas la page garder quoi que ce soit.',
    next: 'C’est souvent le cas des fenêtres privées. Ce qui est saisi dure jusqu’à la fermeture de la page\u202f: enregistrez un fichier, ou ouvrez Glabella dans une fenêtre ordinaire.',
  },
  full: {
    what: 'Il n’y a plus de place sur cet appareil.',
    next: 'Enregistrez les séances dans un fichier et supprimez les anciennes, ou faites de la place sur l’appareil.',
  },
  broken: {
    what: 'Les séances gardées sont inaccessibles.',
    next: 'Ce qui est saisi n’est qu’à l’écran\u202f: enregistrez un fichier. Puis rechargez cette page.',
  },
  newer: {
    what: 'Les séances d’ici ont été gardées par une version plus récente de Glabella.',
    next: 'Rechargez cette page en ligne, pour que la version plus récente arrive. Rien n’a été changé.',
  },
  locked: {
    what: 'Les séances gardées sont verrouillées.',
    next: 'Déverrouillez-les avec la phrase secrète.',
  },
  missing: {
    what: 'Cette séance n’est plus ici.',
    next: 'Elle a été supprimée, peut-être dans une autre fenêtre.',
  },
  unreadable: {
    what: 'Cette séance n’est plus lisible.',
    next: 'Ce qu’il en reste peut être enregistré dans un fichier. Les autres séances ne sont pas touchées.',
  },
  changedElsewhere: {
    what: 'Cette séance a été modifiée dans une autre fenêtre depuis son ouverture ici.',
    next: 'Rien n’a été écrasé.',
  },
};

const strip: Words['strip'] = {
  gauge: (name) => `relevé avec ${name}`,
  step: (resolution) => `à ${resolution} près`,
  misfits: (count) => (count < 2 ? `${count} chose ne s’accorde pas` : `${count} choses ne s’accordent pas`),
  show: 'Montrer',
  showMisfits: 'Montrer ce qui ne s’accorde pas',
};

const sweepAdvice: Words['sweepAdvice'] = {
  hardlyTurned: (turned, useful) =>
    `La tête a à peine tourné\u202f: de ${turned}° d’un bout à l’autre, et ${useful}° sont utiles. Sans cela, le balayage ne dit guère plus qu’une photo.`,
  turnFurther: (turned, useful) =>
    `Tournez davantage la tête\u202f: d’un bout à l’autre elle a tourné de ${turned}°, et ${useful}° sont utiles.`,
  leanMore: (farther, useful) =>
    `Penchez-vous davantage\u202f: l’image la plus lointaine n’est que de ${farther} plus loin que la plus proche, et ${useful} sont utiles.`,
  moreFrames: (used, useful) =>
    `Plus d’images\u202f: ${counted(used, 'image a pu être utilisée', 'images ont pu être utilisées')}, et ${useful} sont utiles. Allez lentement, dans une bonne lumière.`,
  cardSlipped: (frame) =>
    `La carte a glissé à l’image ${frame}, ou ces images sont d’un autre porteur\u202f: tenez la carte fermement, un doigt sur la tête, et sans autre visage.`,
  eyesElsewhere:
    'Les deux yeux sur l’objectif\u202f: carte et yeux ont bougé comme s’ils avaient regardé ailleurs, ce qui rend ici chaque EP moins sûr.',
};

function tooFewFrames(usable: number, needed: number): string {
  return `Seulement ${counted(usable, 'image a pu être utilisée', 'images ont pu être utilisées')}, et un balayage en demande ${needed}.`;
}

const TAKE_SWEEP_AGAIN =
  'Refaites le balayage, lentement, avec toute la carte et les deux yeux dans le cadre et la lumière de face. Ou mesurez la meilleure image seule.';

const sweepFailure: Words['sweepFailure'] = {
  tooFewLeft: (usable, needed) => ({
    what: `Après ce qui a été écarté, seulement ${counted(usable, 'image a pu être utilisée', 'images ont pu être utilisées')}, et un balayage en demande ${needed}.`,
    next: 'Remettez des images écartées, ou mesurez la meilleure image comme une photo.',
  }),
  tooFew: (usable, needed) => ({ what: tooFewFrames(usable, needed), next: TAKE_SWEEP_AGAIN }),
  tooFewAs: (usable, needed, others, why) => ({
    what: `${tooFewFrames(usable, needed)} ${others < 2 ? 'L’autre' : 'La plupart des autres'}\u202f: ${why}.`,
    next: TAKE_SWEEP_AGAIN,
  }),
  cardNotStill: (longestRun, needed) => ({
    what: `La carte n’est jamais restée immobile sur le visage\u202f: au plus ${counted(longestRun, 'image de suite va', 'images de suite vont')} ensemble, et il en faut ${needed}.`,
    next: 'Tenez la carte fermement, un doigt de la même main sur la tête, et bougez tête et carte d’un seul bloc. Ou mesurez la meilleure image seule.',
  }),
  differentSizes: {
    what: 'Ces photos ont des tailles différentes\u202f: elles n’ont pas été prises par une seule caméra en une fois.',
    next: 'Ne choisissez que les photos d’un même balayage, ni recadrées ni tournées, ou la meilleure seule.',
  },
  mostly: (why) => `Les images de ce balayage n’ont pas pu être mesurées. La plupart\u202f: ${why}.`,
};

const sweepGap: Words['sweepGap'] = {
  'turned-R': 'tête tournée à droite',
  'turned-L': 'tête tournée à gauche',
  distance: 'plus près et plus loin',
  frames: 'plus d’images',
};

const STANDINGS = {
  used: 'utilisée',
  slipped: 'carte glissée',
  misfit: 'ne s’accorde pas',
  'left-out': 'écartée',
  'not-measured': 'en cours de mesure',
};

const sweep: Words['sweep'] = {
  take: 'Faire un balayage',
  takeAnother: 'Faire un autre balayage',
  heading: 'Faire un balayage',
  what: 'Quelques secondes pendant lesquelles le porteur tourne lentement la tête et se penche un peu plus près et plus loin. Beaucoup d’images tranchent mieux qu’une seule photo.',
  rules: {
    still: 'La carte reste où elle est sur le visage, tenue fermement\u202f: tête et carte bougent d’un seul bloc.',
    camera:
      'Les deux yeux sur l’objectif de la caméra, tout le temps. Le repère se voit du coin de l’œil, ou lisez-le à haute voix.',
    far: 'Les deux yeux au-delà de la caméra, sur quelque chose de lointain, tout le temps. Dites à haute voix où va le repère.',
    slow: 'Lentement\u202f: environ 15° de chaque côté, puis une largeur de main plus près et plus loin.',
  },
  start: 'Commencer le balayage',
  goOn: 'Continuer le balayage',
  close: 'Fermer',
  measureNow: (count) => (count < 2 ? 'Mesurer avec cette image' : `Mesurer avec ces ${count} images`),
  key: 'Cercle, où aller\u202f; point, où est la tête\u202f; petits traits, les images prises.',
  right: 'droite',
  left: 'gauche',
  near: 'près',
  far: 'loin',
  steps: {
    hold: 'Visage vers la caméra, les yeux là où on vous l’a demandé.',
    'turn-R': 'Tournez lentement la tête à droite.',
    'turn-L': 'Tournez lentement la tête à gauche.',
    'to-middle': 'Revenez lentement au milieu.',
    nearer: 'Penchez-vous un peu plus près.',
    farther: 'Reculez un peu.',
    back: 'Revenez où vous étiez.',
  },
  ready: {
    camera: 'Prêt quand le porteur tient la carte et regarde dans l’objectif.',
    far: 'Prêt quand le porteur tient la carte et regarde au loin, au-delà de la caméra.',
  },
  working: 'Laissez la carte où elle est\u202f; les images sont examinées.',
  enough: 'C’est assez. Le porteur peut se reposer\u202f; les dernières images sont examinées.',
  looking: 'Examen des images',
  short: (gaps) => `Pas encore assez\u202f: ${gaps}. Tenez la carte comme avant et continuez.`,
  hardlyTurned: (gaps) =>
    `La tête a à peine tourné. Il manque encore\u202f: ${gaps}. Tenez la carte comme avant et continuez.`,
  lessSure: 'C’est moins qu’utile\u202f: le résultat sera moins sûr.',
  firstFrame: 'Ne bougez ni la carte ni les yeux\u202f; cela commence quand la première image a été examinée.',
  trouble: (reason) => `Les dernières images n’ont pas pu être utilisées\u202f: ${reason}.`,
  needed: 'Ce qu’il faut au balayage',
  has: 'assez',
  lacks: 'manque encore',
  turned: { R: 'Tournée à droite', L: 'Tournée à gauche' },
  distance: 'Plus près et plus loin',
  frames: 'Images',
  degreesOf: (is, wanted) => `${is}° sur ${wanted}°`,
  percentOf: (is, wanted) => `${is} sur ${wanted}`,
  framesOf: (is, wanted) => `${is} sur ${wanted}`,
  workingThrough: (done, all) => `Traitement des images\u202f: ${done} sur ${all}`,
  openingVideo: 'Ouverture de la vidéo',
  lookingAt: 'Examen des images du balayage.',
  measuring: 'Mesure de toutes les images ensemble',
  renewing: 'Nouvelle mesure\u202f; les nombres affichés sont ceux d’avant.',
  stop: 'Arrêter ici',
  putAway: 'Ranger le balayage',
  dismiss: 'Fermer cette note',
  backTo: { picture: 'Revenir à la photo précédente', sweep: 'Revenir au balayage précédent' },
  earlier: {
    picture:
      'Un balayage est en cours\u202f: les valeurs de la caméra affichées sont encore celles de la photo précédente.',
    sweep:
      'Un nouveau balayage est en cours\u202f: les valeurs de la caméra affichées sont encore celles du balayage précédent.',
  },
  dropped: (count) =>
    `Le balayage a été arrêté et ${count < 2 ? 'son image abandonnée' : `ses ${count} images abandonnées`}. Rien d’autre n’a changé.`,
  bestAlone: 'Mesurer la meilleure image comme une photo',
  framesOfFailed: 'Ce que sont devenues les images',
  used: (used, all) => `${counted(used, 'image utilisée', 'images utilisées')} sur ${all}.`,
  slipped: (frame) => `La carte a glissé à l’image ${frame}\u202f; le reste a été écarté.`,
  strip: 'Images du balayage',
  stripHint:
    'Choisissez une image pour la regarder (les flèches passent de l’une à l’autre). Écartez ce qui ne vous inspire pas confiance.',
  frame: (number) => `Image ${number}`,
  useFrame: (number) => `Utiliser l’image ${number}`,
  noPicture: 'Cette image ne peut pas être montrée.',
  facing: {
    R: (degrees) => `tournée de ${degrees}° à droite`,
    L: (degrees) => `tournée de ${degrees}° à gauche`,
    straight: 'droit devant',
  },
  standings: STANDINGS,
  standingsOfFailed: { ...STANDINGS, 'not-measured': 'tout trouvé' },
  standingsLong: {
    used: 'Utilisée.',
    slipped: 'Non utilisée\u202f: la carte était ailleurs sur le visage que dans la plupart des images.',
    misfit:
      'Non utilisée\u202f: elle ne s’accorde pas aux autres. Un clignement, un flou, ou des yeux qui regardaient ailleurs.',
    'left-out': 'Écartée par vous.',
    'not-measured': 'Pas encore mesurée.',
  },
  foundOnly: 'Tout y a été trouvé, mais le balayage n’a pas de nombres.',
  facts: 'Ce que ce balayage dit encore',
  from: (low, high) => `de ${low} à ${high}`,
  turnedFromTo: (right, left) => `de ${right}° à droite à ${left}° à gauche`,
  turnedOneSide: {
    R: (low, high) => `de ${low}° à ${high}° à droite`,
    L: (low, high) => `de ${low}° à ${high}° à gauche`,
  },
  better: 'Ce qui rendrait le prochain balayage meilleur',
  found: (headline) => `Balayage mesuré. ${headline}`,
};

// The parts that come after the first screen.

const HOLD_SHEET = 'Tenez la mire imprimée plus près, à plat, dans plus de lumière, sans doigts sur le motif.';

const boardFailure: Words['boardFailure'] = {
  noBoard: { what: 'La mire de caméra n’a pas été trouvée.', next: HOLD_SHEET },
  littleOfBoard: (found, needed) => ({
    what: `Trop peu de la mire a été trouvé\u202f: ${counted(found, 'coin', 'coins')}, et il en faut ${needed}.`,
    next: HOLD_SHEET,
  }),
  leftOut: 'écartée\u202f: mire non trouvée',
  tooFewViews: (views, needed) => ({
    what: `${counted(views, 'vue utilisable ne suffit pas', 'vues utilisables ne suffisent pas')}\u202f: un profil en demande ${needed}.`,
    next: 'Prenez-en ou ajoutez-en d’autres, avec la mire à d’autres endroits et inclinaisons.',
  }),
  differentSizes: {
    what: 'Les photos ont des tailles différentes\u202f: elles ne sont pas d’une seule caméra à une seule résolution.',
    next: 'Ne choisissez que des photos d’une même taille, non recadrées.',
  },
  tooAlike: {
    what: 'Toutes les vues se ressemblent trop pour en déduire l’objectif.',
    next: 'Inclinez la mire de tous les côtés, et tenez-la plus près et plus loin.',
  },
  misfit: (rmsPx, limitPx) => ({
    what: `Les coins s’ajustent mal\u202f: écart de ${rmsPx} pixels, pour une limite de ${limitPx}. La mire est pliée, ou les photos viennent de plusieurs caméras ou zooms.`,
    next: 'Prenez des photos d’une seule caméra à un seul zoom, la mire fixée sur un support rigide et plat. Puis recommencez.',
  }),
};

const boardVerdict: Words['boardVerdict'] = {
  'no-sheet': 'La mire n’est pas visible\u202f: montrez-la en entier, sans reflet.',
  moving: 'Ne bougez plus.',
  'nothing-new': 'Cette vue y est déjà\u202f: allez où est le contour.',
  'worth-taking': 'Prise.',
  taken: 'Prise.',
  blurred: 'Pas nette\u202f: ne bougez plus, attendez la mise au point, plus de lumière.',
};

function wouldBring(what: string, { from, to }: { readonly from: string; readonly to: string }): string {
  return `${what} ferait passer de ${from} à environ ${to}.`;
}

const budget: Words['budget'] = {
  helps: 'Ce qui aiderait le plus\u202f:',
  legend: 'Barres et pourcentages sont des parts de la variance\u202f; les longueurs, un écart-type de chaque source.',
  smallSources: (count) => counted(count, 'source plus petite', 'plus petites ensemble'),
  noRemedy: 'Aucune mesure isolée ne rendrait ceci bien plus sûr.',
  remedies: {
    'take-sweep': (facts) => wouldBring('Un balayage', facts),
    'make-profile': (facts) => wouldBring('Un profil de cette caméra', facts),
    'come-nearer': (facts) => wouldBring(`S’approcher à environ ${facts.distanceCm} cm de la caméra`, facts),
    'card-on-forehead': (facts) => wouldBring('Tenir la carte sur le front', facts),
    'card-nearer-eyes': (facts) =>
      wouldBring('Tenir la carte plus près des yeux, juste au-dessus des sourcils,', facts),
    'use-bought-card': (facts) => wouldBring('Une carte du commerce au lieu de la carte imprimée', facts),
    'place-lids-by-hand': (facts) => wouldBring('Placer les repères des paupières à la loupe', facts),
    'place-midline-by-hand': (facts) => wouldBring('Placer la ligne médiane à la loupe', facts),
    'repeat-sweep': (facts) => wouldBring('Un second balayage, avec la moyenne des deux,', facts),
    'repeat-picture': (facts) => wouldBring('Une seconde photo, avec la moyenne des deux,', facts),
  },
};

const camera: Words['camera'] = {
  heading: 'Prendre une photo',
  device: 'Caméra',
  unnamed: (index) => `Caméra ${index}`,
  opening: 'Ouverture de la caméra. Le navigateur demandera peut-être une autorisation.',
  mirrored: 'L’aperçu est inversé, comme dans un miroir\u202f; la photo ne l’est pas.',
  gaze: {
    camera: 'Demandez au porteur de regarder dans l’objectif.',
    far: 'Demandez au porteur de regarder au loin, au-delà de la caméra.',
  },
  start: 'Prendre la photo dans 3 secondes',
  stop: 'Arrêter le compte à rebours',
  inSeconds: (seconds) => `${seconds}`,
  hold: 'Ne bougez plus.',
  taken: 'Photo prise.',
  again: 'Réessayer la caméra',
  close: 'Fermer',
};

type Conflicting = Parameters<Words['conflict']['with']['camera']>[0];

function follows({ from, expected, place, written }: Conflicting): string {
  return `d’après ${from ?? 'les autres relevés'}, on attend environ ${expected} pour ${place}\u202f; ${written} est écrit.`;
}

function alone(facts: Conflicting): string {
  return upperFirst(follows(facts));
}

function sumMade({ right, left, sum, whole, isNear }: Parameters<Words['conflict']['eyesSum']>[0]): string {
  return `${isNear ? 'De près, ' : ''}R ${right} et L ${left} font ${sum} mm\u202f; ${whole} est écrit`;
}

const conflict: Words['conflict'] = {
  with: {
    'eyes-sum': alone,
    'near-eyes-sum': alone,
    'near-from-far': alone,
    'nose-flanks': alone,
    'sides-alike': alone,
    'side-sum': (facts) => `Une branche est aussi longue que son trajet au coude et sa crosse\u202f: ${follows(facts)}`,
    'tangent-before-bend': (facts) => `La tangente vient un peu avant le coude\u202f: ${follows(facts)}`,
    'temples-in-head': (facts) => `Les tempes suivent la tête\u202f: ${follows(facts)}`,
    'frame-around-pd': (facts) =>
      `Les centres de la monture sont en général à peu près aussi écartés que les yeux\u202f: ${follows(facts)}`,
    'eye-heights': (facts) =>
      `Si un œil est plus haut, les hauteurs de crête et de montage le montrent\u202f: ${follows(facts)}`,
    'ear-heights': (facts) => `La branche de l’oreille la plus haute est plus plate\u202f: ${follows(facts)}`,
    'lean-of-front': (facts) => `La face penche à peu près comme l’angle de ses branches\u202f: ${follows(facts)}`,
    camera: ({ expected, place, written }) =>
      `La caméra dit environ ${expected} pour ${place}\u202f; ${written} est écrit.`,
    population: ({ expected, place, written }) =>
      `${upperFirst(written)} pour ${place} est rare\u202f: environ ${expected} est habituel.`,
  },
  eyesSum: (facts) => `${sumMade(facts)} pour les deux yeux.`,
  eyesDoNotAddUp: (facts) => `${sumMade(facts)}\u202f: relisez les trois.`,
  temples: (templePlace, temple, headPlace, head) =>
    `Les tempes sont plus étroites que la tête, mais ${temple} est écrit pour ${templePlace} et ${head} pour ${headPlace}.`,
  sides: (place, right, left) =>
    `${upperFirst(place)}\u202f: ${right}, et ${left} pour L\u202f; droite et gauche diffèrent rarement autant.`,
  doesNotFit: (place, written) => `${upperFirst(place)}\u202f: ${written} ne s’accorde pas au reste.`,
  allElse: (expected, place, written) =>
    `Tout le reste indique environ ${expected} pour ${place}\u202f; ${written} est écrit.`,
  nothing: 'rien',
  meanOfBoth: (value) => `${value} (moyenne des deux opérateurs)`,
  placeWith: (place, values) => `${place} (${values})`,
  placeWithMean: (place, value) => `${place} (${value}, moyenne des deux opérateurs)`,
};

const costSaying: Words['costSaying'] = {
  where: (places, from) => `${places}, ${from}`,
  whereHead: (place) => `${place}\u202f:`,
  numbers: (apart, numbers) => `${apart}\u202f: ${numbers}`,
  handLessCamera: 'main moins caméra',
  handLessSweep: 'main moins balayage',
  readerLess: (other) => (other === '' ? 'cet opérateur moins l’autre' : `cet opérateur moins ${other}`),
  writtenLessMeant: 'écrit moins ce qui était probablement voulu',
  withoutPrism: 'pas de prisme, car ces verres n’ont aucune puissance dans cette direction.',
  inPlane: {
    distance: (what) => `${what}.`,
    near: (what) => `dans des verres faits pour la vision de près, ${what}.`,
    segments: (what) => `à travers les segments, ${what}.`,
  },
  interval: (low, high) => ` (de ${low} à ${high})`,
  bases: { in: 'base interne', out: 'base externe', up: 'base supérieure', down: 'base inférieure' },
  beforeRight: (base) => `${base} devant R`,
  directions: { horizontal: 'horizontal', vertical: 'vertical' },
  prism: ({ amount, way, interval, allowed, rule }) => `${amount} ${way}${interval} pour ${allowed} admis${rule}`,
  ruleOfShift: (mm, power) => ` (${mm} mm à ${power} D)`,
  position: {
    betweenSegments: (amount, interval, allowed) =>
      `la distance entre les segments est fausse de ${amount} mm${interval} (${allowed} mm admis)`,
    fittingPoint: {
      horizontal: (side, amount, interval, allowed) =>
        `le point de montage ${side} est décalé de ${amount} mm${interval} sur le côté (${allowed} mm admis)`,
      vertical: (side, amount, interval, allowed) =>
        `le point de montage ${side} est décalé de ${amount} mm${interval} en hauteur (${allowed} mm admis)`,
    },
    segment: {
      horizontal: (side, amount, interval, allowed) =>
        `le segment ${side} est décalé de ${amount} mm${interval} sur le côté (${allowed} mm admis)`,
      vertical: (side, amount, interval, allowed) =>
        `le segment ${side} est décalé de ${amount} mm${interval} en hauteur (${allowed} mm admis)`,
    },
  },
  acts: {
    stronger: (side, power, change, interval) => `${side} ${power} agit ${change} D plus fort${interval}`,
    weaker: (side, power, change, interval) => `${side} ${power} agit ${change} D plus faible${interval}`,
  },
  powers: (acts, halfStep) => `${acts}. Un demi-pas de prescription est de ${halfStep} D.`,
  noPrism: 'aucun',
  through: (eyes) => `Avec le prisme prescrit\u202f: ${eyes}.`,
  without: {
    'not-through-lenses': (what) => `${what}\u202f: sans effet à travers les verres.`,
    'inset-of-design': (what) => `${what}\u202f: les verres progressifs apportent leur propre inset.`,
    'tilt-not-worked-out': (what) =>
      `${what}\u202f: l’inclinaison change un peu les verres forts\u202f; ce n’est pas calculé ici.`,
  },
  vertex: {
    asTested: 'comme à l’examen',
    farther: (mm) => `${mm} mm plus loin qu’à l’examen`,
    nearer: (mm) => `${mm} mm plus près qu’à l’examen`,
    matters: (where, actsAs, compensated) =>
      `${where}\u202f: agit comme environ ${actsAs}\u202f; ${compensated} agirait comme prescrit`,
    doesNotMatter: (where) => `${where}\u202f: sans importance`,
  },
};

const cost: Words['cost'] = {
  heading: 'Ce que cela coûte à ce porteur',
  noPrescription:
    'Saisissez la prescription, et vous saurez ici ce que signifie, à travers elle, une différence entre deux relevés.',
  unfinished: 'Dès que la prescription est lisible, vous saurez ici ce que signifie une différence.',
  standard: 'Jugé d’après',
  valuesFromMemory: ' (valeurs de mémoire)',
  readAgain: '\u202f; à relire quand même',
  fromMemoryMark: 'De mémoire\u202f: vérifiez avant de vous y fier.',
  unequal:
    'Le traitement par la norme des verres de puissances inégales n’a pas été vu\u202f: la moyenne des deux est prise. Rien ici ne remplace le texte de la norme.',
  none: 'Aucune seconde valeur n’est encore à côté d’un relevé manuel\u202f: ni de la caméra, ni d’un autre opérateur, ni d’une méprise probable.',
  differences: 'Les différences sur cette fiche',
  verdicts: {
    negligible: 'sans importance',
    within: 'dans la norme',
    beyond: 'hors de la norme',
    open: 'peut-être hors de la norme',
  },
  powerVerdicts: {
    negligible: 'sans importance',
    within: 'moins d’un demi-pas',
    beyond: 'un demi-pas ou plus',
    open: 'peut-être un demi-pas ou plus',
  },
  room: 'De combien chaque relevé peut être faux',
  eyesDiffer: (tighter) => `les yeux diffèrent\u202f: au plus le double de celui de ${tighter} seul`,
  roomCaption:
    'Millimètres jusqu’à la limite de la norme (pour la distance verre-œil\u202f: jusqu’à ce que la puissance change d’un demi-pas)',
  anyAmount: 'illimité',
  overTen: 'plus de 10',
  frame: 'Dans la monture choisie',
  frameCaption: 'Ce que l’atelier calcule d’après les relevés tels quels',
  frameNeeds: 'Le décentrement et le diamètre découlent du calibre, du pont et de l’EP.',
  rows: {
    inward: 'Décentrement interne',
    up: 'Décentrement vers le haut',
    blank: 'Plus petit diamètre',
    inset: 'Inset de près',
    vertex: 'Distance verre-œil',
  },
  halved: 'L’EP de chaque œil est pris comme la moitié du tout\u202f: mesurez chaque œil.',
  insetNote: (workingMm) =>
    `L’inset de près vaut pour ${formatNumber(workingMm, 0)} mm et la puissance le long de l’horizontale.`,
  insetOfDesign: 'Les verres progressifs apportent leur propre inset.',
  effectiveDiameter: 'Diamètre effectif de la forme du verre',
  effectiveDiameterNote: 'mm\u202f: deux fois le plus long trajet du milieu du rectangle au bord',
  diameterNoNumber: 'Saisissez une longueur en mm, par exemple 56.',
  diameterBeyond: (lowest, highest) => `Saisissez une longueur entre ${lowest} et ${highest} mm.`,
  diameterMisfit: (lowestMm, highestMm) =>
    `Cela ne s’accorde pas au rectangle\u202f: de ${formatNumber(Math.ceil(lowestMm), 0)} à ${formatNumber(Math.floor(highestMm), 0)} mm sont possibles.`,
  blankOfBox:
    'Plus petit diamètre d’après les coins du rectangle, donc au plus cela\u202f; le diamètre effectif le rend exact.',
  cautions: 'À surveiller avec ces verres',
};

const entryFailure: Words['entryFailure'] = {
  missing: 'Reste à saisir.',
  notANumber: (typed) =>
    `«\u202f${typed}\u202f» n’est pas un nombre\u202f: saisissez des chiffres avec au plus une virgule ou un point.`,
  signMissing: (value) => `Plus ou moins\u202f? Saisissez +${value} ou −${value}.`,
  negativeAdd: 'Une addition n’est jamais négative.',
  negativePrism: 'Un prisme n’est jamais négatif\u202f: choisissez la base opposée.',
  noStep: (value) => `${value} n’est pas un quart de dioptrie. Regardez de nouveau la prescription.`,
  beyond: {
    mm: (value, lowest, highest) => `${value} n’est pas entre ${lowest} et ${highest} mm.`,
    dioptres: (value, lowest, highest) => `${value} n’est pas entre ${lowest} et ${highest} dioptries.`,
  },
  axisOfZero: 'Un axe de 0 s’écrit 180.',
  noAxis: (value) => `${value} n’est pas un axe\u202f: saisissez un nombre entier de 1 à 180.`,
  axisWithoutCylinder: 'Un axe, mais pas de cylindre\u202f: l’un des deux est faux.',
};

const gaugeProblem: Words['gaugeProblem'] = {
  noName: 'Donnez-lui un nom que vous reconnaîtrez.',
  noNumber: 'Saisissez un nombre.',
  notANumber: (typed) =>
    `«\u202f${typed}\u202f» n’est pas un nombre\u202f: des chiffres avec au plus une virgule ou un point.`,
  notPositive: (typed) => `«\u202f${typed}\u202f» n’est pas un pas\u202f: saisissez un nombre supérieur à zéro.`,
  beyondLimit: (typed, limit) => `${typed} est plus que n’en a aucun instrument pour visages\u202f: ${limit} au plus.`,
  tooLarge: 'C’est trop grand.',
  servesNothing: 'Choisissez au moins une mesure.',
  mixedUnits: 'Des longueurs et des angles ensemble\u202f: faites-en deux instruments, un par échelle.',
  inFuture: 'Ce jour est à venir\u202f: le dernier contrôle date d’aujourd’hui ou d’avant.',
};

const GET_AGAIN = 'Procurez-vous-le de nouveau. Rien n’a été importé.';

const handOn: Words['handOn'] = {
  heading: (count) => (count < 2 ? 'Transmettre cette séance' : `Transmettre ${count} séances`),
  headingAll: 'Transmettre toutes les séances',
  close: 'Fermer',
  as: 'Sous forme de',
  format: {
    'session-file': 'Fichier de séances (JSON)',
    backup: 'Sauvegarde avec phrase secrète (age)',
    table: 'Tableur (CSV)',
  },
  formatNote: {
    'session-file':
      'Tout sauf les photos\u202f: relevés, historiques, constats. Glabella sur un autre poste peut l’importer. Quiconque a le fichier peut le lire.',
    backup:
      'La même chose, chiffrée\u202f: seule la phrase secrète l’ouvre, ici ou avec tout programme qui lit les fichiers age.',
    table:
      'Une ligne par séance, pour les tableurs. Il ne peut pas être importé de nouveau. Quiconque a le fichier peut le lire.',
  },
  decimalSign: 'Signe décimal',
  point: 'point (62.5), virgules entre les cellules',
  comma: 'virgule (62,5), points-virgules entre les cellules',
  make: 'Créer le fichier',
  making: 'Création du fichier.',
  sealing: 'Chiffrement du fichier. Les quelques secondes sont voulues.',
  made: (count, fileName) =>
    `${counted(count, 'séance remise', 'séances remises')} au navigateur sous le nom ${fileName}.`,
  leftOut: (count) =>
    count < 2 ? `${count} séance illisible n’y est pas.` : `${count} séances illisibles n’y sont pas.`,
  bringHeading: 'Importer un fichier',
  bringWhat:
    'Un fichier de séances, ou une sauvegarde avec phrase secrète. La réponse d’un porteur à distance convient aussi.',
  drop: 'Déposez le fichier ici, ou choisissez-le.',
  choose: 'Choisir un fichier',
  chooseAnother: 'Choisir un autre fichier',
  file: (name) => `Fichier\u202f: ${name}`,
  readingFile: 'Lecture du fichier.',
  opening: 'Ouverture du fichier. Les quelques secondes sont voulues.',
  needsPassphrase: 'Ce fichier est chiffré avec une phrase secrète.',
  open: 'Ouvrir',
  brought: (counts) => {
    const parts = [
      counts.added > 0 && counted(counts.added, 'ajoutée', 'ajoutées'),
      counts.renewed > 0 && counted(counts.renewed, 'continuée', 'continuées'),
      counts.beside > 0 && counted(counts.beside, 'gardée à côté', 'gardées à côté'),
      counts.same > 0 && `${counts.same} déjà ici`,
    ].filter((part) => part !== false);
    return parts.length === 0 ? 'Il n’y a aucune séance dans ce fichier.' : `Séances\u202f: ${parts.join(', ')}.`;
  },
  besideWhy:
    'Gardée à côté\u202f: modifiée ici et aussi dans le fichier. Les deux sont maintenant dans la liste\u202f; comparez-les.',
  failure: {
    notText: {
      what: 'Ce n’est pas un texte écrit par Glabella.',
      next: 'Choisissez un fichier de séances (.json) ou une sauvegarde (.age).',
    },
    notJson: {
      what: 'Ce n’est pas un fichier de séances.',
      next: 'Choisissez un fichier de séances (.json) ou une sauvegarde (.age). Si c’en était un, procurez-vous-le de nouveau\u202f: il a pu être tronqué.',
    },
    notASessionFile: {
      what: 'Ce fichier contient autre chose que des séances.',
      next: 'Choisissez un fichier de séances (.json) ou une sauvegarde (.age).',
    },
    newer: (version) => ({
      what: `Ce fichier a été écrit par une version plus récente de Glabella (format ${version}).`,
      next: 'Rechargez cette page en ligne, pour que la version plus récente arrive. Rien n’a été importé.',
    }),
    damaged: (place) => ({
      what: place === '' ? 'Ce fichier est endommagé.' : `Ce fichier est endommagé à ${place}.`,
      next: GET_AGAIN,
    }),
    damagedSession: (number, place) => ({
      what:
        place === ''
          ? `La séance ${number} de ce fichier est endommagée.`
          : `La séance ${number} de ce fichier est endommagée à ${place}.`,
      next: GET_AGAIN,
    }),
    tooLarge: (megabytes, limit) => ({
      what: `Ce fichier est trop grand\u202f: ${megabytes} Mo, et ${limit} Mo est le maximum.`,
      next: 'Transmettez moins de séances à la fois.',
    }),
    fileGone: {
      what: 'Le fichier ne peut pas être lu.',
      next: 'Il a peut-être été déplacé ou modifié. Choisissez-le de nouveau.',
    },
    notSealed: {
      what: 'Ce n’est pas un fichier chiffré.',
      next: 'Choisissez une sauvegarde (.age).',
    },
    truncated: {
      what: 'Ce fichier se termine trop tôt.',
      next: GET_AGAIN,
    },
    altered: {
      what: 'Ce fichier n’est plus tel qu’il a été chiffré.',
      next: 'Il a été tronqué ou modifié. Procurez-vous-le de nouveau. Rien n’a été importé.',
    },
    wrongPassphrase: {
      what: 'La phrase secrète n’ouvre pas ce fichier.',
      next: 'Attention aux majuscules et aux espaces, et réessayez. Si elle est sûrement juste, le fichier est endommagé.',
    },
    sealedToKey: {
      what: 'Ce fichier est chiffré pour une clé, et aucune phrase secrète ne l’ouvre.',
      next: 'La réponse d’un porteur à distance ne s’ouvre qu’avec la clé du magasin qui l’a demandée.',
    },
    tooCostly: {
      what: 'Ce fichier est chiffré de telle sorte qu’un navigateur ne peut pas l’ouvrir.',
      next: 'Ouvrez-le avec un programme pour fichiers age, et importez le fichier de séances qui en sort.',
    },
  },
  passphrase: 'Phrase secrète',
  again: 'La même encore une fois',
  show: 'Montrer ce qui est saisi',
  strength: {
    empty: '',
    'too-short': (least) => `Trop courte\u202f: au moins ${least} lettres.`,
    weak: 'Faible\u202f: elle peut être devinée. Prenez quatre ou cinq mots sans rapport entre eux.',
    fair: 'Correcte. Plus longue, c’est mieux\u202f: ajoutez un mot.',
    good: 'Bonne, si personne d’autre n’y penserait.',
  },
  problem: {
    empty: 'Saisissez une phrase secrète.',
    'too-short': 'Cette phrase secrète est trop courte.',
    'not-the-same': 'Les deux ne sont pas identiques.',
  },
  cannotRestore:
    'Personne ne peut la retrouver. Sans elle, tout ce qui est chiffré est perdu\u202f: notez-la et gardez-la en lieu sûr.',
  sealingNotLoadable: {
    what: 'Ce qui chiffre les fichiers n’a pas pu être chargé.',
    next: 'Connectez-vous au réseau et réessayez.',
  },
  sealingUnsupported: {
    what: 'Ce navigateur ne peut pas chiffrer de fichiers ici.',
    next: 'Utilisez un navigateur plus récent, et ouvrez Glabella en https.',
  },
  noPassphrase: {
    what: 'Il n’y a pas de phrase secrète.',
    next: 'Saisissez-en une.',
  },
};

const handle: Words['handle'] = {
  cardCorners: [
    'Coin de la carte, en haut à gauche',
    'Coin de la carte, en haut à droite',
    'Coin de la carte, en bas à droite',
    'Coin de la carte, en bas à gauche',
  ],
  irisCentre: { R: 'Centre de l’iris, œil droit', L: 'Centre de l’iris, œil gauche' },
  irisEdge: { R: 'Bord de l’iris, œil droit', L: 'Bord de l’iris, œil gauche' },
  lidUpper: { R: 'Bord de la paupière supérieure, œil droit', L: 'Bord de la paupière supérieure, œil gauche' },
  lidLower: { R: 'Bord de la paupière inférieure, œil droit', L: 'Bord de la paupière inférieure, œil gauche' },
  midline: 'Ligne médiane du nez',
  position: (x, y) => `${x} pixels vers la droite, ${y} pixels vers le bas`,
};

const help: Words['help'] = {
  heading: 'Aide',
  close: 'Fermer',
  contents: 'Sommaire',
  backToContents: 'Tous les sujets',
  search: 'Trouver une mesure',
  none: 'Aucune mesure ne porte ce nom.',
  topics: 'En général',
  previous: (name) => `Avant\u202f: ${name}`,
  next: (name) => `Ensuite\u202f: ${name}`,
  neighbours: 'Mesures précédente et suivante',
  print: 'Imprimer cette page',

  views: {
    front: 'De face.',
    eye: 'Les yeux, de face.',
    nose: 'De face\u202f; le trait épais est le nez, là où un pont y porte.',
    side: 'Du côté droit du porteur.',
    above: 'Du dessus, le visage en bas de l’image.',
    section: 'Du dessus, au niveau de la crête du nez\u202f; le visage est en bas de l’image.',
    behind: 'De derrière\u202f: ici la droite du porteur est à droite.',
    'frame-front': 'La monture comme on la voit sur le visage, de face.',
    'frame-above': 'La monture du dessus, sa face en bas de l’image.',
    'frame-side': 'Une branche droite seule\u202f; sa face est à droite de l’image.',
  },
  rightIsDrawn: 'Le côté droit est dessiné\u202f; le gauche se mesure de même.',
  key: 'Les flèches montrent ce qui est mesuré, les tirets à partir d’où. Pas à l’échelle.',

  caution: 'Attention',
  alsoCalled: (names) => `Autres noms\u202f: ${names}.`,
  howTaken: 'Comment mesurer',
  byTrial: 'Cela se trouve par essais\u202f: notez chaque taille avec loose (large), fits (juste) ou tight (serré).',
  signed: 'La valeur peut être inférieure à zéro\u202f: le signe moins fait partie du relevé.',
  sides: {
    each: 'R et L se mesurent chacun pour soi, la droite du porteur (R) d’abord.',
    one: 'C’est un seul nombre pour les deux côtés.',
  },
  tolerance: 'Tolérance',
  toleranceIs: (value, sourceStatus, cited) => `± ${value} (${sourceStatus})\u202f: ${cited}.`,
  toleranceNote: 'Jusque-là, deux relevés peuvent différer sans que cela compte. Un magasin peut fixer la sienne.',
  camera: 'Ce que la caméra peut en dire',
  noCamera: 'Rien. Ceci se mesure seulement à la main\u202f; le relevé n’est comparé qu’aux autres relevés.',
  cameraAlways: 'Elle donne sa propre valeur à chaque photo et à chaque balayage, avec l’incertitude à côté.',
  cameraSometimes: {
    pupilDiameter:
      'Elle donne une valeur quand la pupille se distingue de l’iris. La lumière de la photo décide de la largeur de la pupille.',
    rims: 'Elle donne une valeur grossière quand la carte laisse le nez libre. Cela ne signale que les grosses erreurs.',
  },
  cameraOfIris: 'Elle donne une valeur, qui dit surtout si l’échelle de la photo est juste.',
  cameraErrors: (what) =>
    `Sur des têtes de synthèse, la moitié des photos étaient à moins de ${what.picture.half} mm de la vérité, 95 sur 100 à moins de ${what.picture.most} mm. Avec un balayage, c’était ${what.sweep.half} et ${what.sweep.most} mm. Les personnes diffèrent des têtes de synthèse.`,
  squint: 'En cas de strabisme',
  noSquintCamera: 'La valeur de la caméra est alors écartée, car les deux yeux ne regardent jamais le même point.',

  general: {
    about: {
      heading: 'Ce que Glabella est, et ce qu’elle n’est pas',
      text: [
        'Glabella est un second relevé. Vous mesurez à la main\u202f; elle compare vos nombres entre eux et à une photo, et dit où ils ne s’accordent pas.',
        'Elle ne décide rien et ne change d’elle-même aucun nombre. On commande ce que vous avez confirmé.',
      ],
      cautions: [
        'Ce n’est pas une mesure clinique et elle n’en remplace aucune. Elle ne dit rien de la santé d’un œil.',
        'Les règles locales priment, et c’est la personne habilitée à délivrer qui décide. Enfants, strabismes et verres forts ou progressifs se mesurent selon vos règles et votre formation.',
        'Ce qui paraît inhabituel à un œil, une paupière ou une pupille est une raison de regarder de nouveau ou d’orienter.',
      ],
    },
    card: {
      heading: 'Comment tenir la carte',
      text: [
        'Toute carte au format bancaire convient, ou la carte imprimée. Elle est à plat contre le front, son grand côté horizontal.',
        'Si les cheveux gênent, elle se place au-dessus ou au-dessous de la bouche. Les quatre bords restent libres\u202f: on tient un petit côté du bout de deux doigts.',
        'La caméra est à la hauteur des yeux, à 40 à 60 cm. On retire les lunettes pour la photo.',
        'Dans un balayage, tête et carte bougent d’un seul bloc\u202f: la carte ne doit pas glisser.',
      ],
      cautions: [
        'Les bords d’une carte sont coupants. Gardez-les loin des yeux, et tendez la carte à plat.',
        'Personne ne tourne la tête plus loin qu’il n’est confortable.',
      ],
    },
    light: {
      heading: 'La lumière',
      text: [
        'Le mieux est une lumière égale venant de face\u202f: une fenêtre ou un mur clair devant le porteur.',
        'Une fenêtre claire derrière le porteur assombrit trop le visage. Les reflets sur la carte cachent ses bords\u202f; inclinez la lampe, pas la carte.',
        'Les iris foncés demandent plus de lumière de face, jusqu’à ce que leurs bords soient visibles.',
        'La pupille change avec la lumière\u202f: notez la lumière à côté d’un diamètre pupillaire.',
      ],
      cautions: ['Pas de lampe dans les yeux, pas de flash près du visage, et personne ne regarde le soleil.'],
    },
    gauges: {
      heading: 'Instruments près des yeux',
      text: [
        'Dites ce que vous allez faire avant d’approcher du visage. Posez votre main sur la joue ou le sourcil, pour qu’elle suive la tête.',
        'Nettoyez ce qui touche la peau, avant et après.',
        'Un instrument dont l’échelle ne commence pas à zéro se note sous Magasin\u202f: la fiche fait alors le calcul.',
      ],
      cautions: [
        'Gardez réglets, compas et autres instruments loin des yeux. Approchez-les par le bas ou le côté, jamais droit vers un œil.',
        'Rien ne doit toucher un œil ouvert ni ses cils, et l’on n’appuie jamais.',
      ],
    },
    privacy: {
      heading: 'Ce qui reste sur cet appareil',
      text: [
        'Les photos sont mesurées dans ce navigateur. Il n’y a ni compte ni serveur qui reçoive quoi que ce soit.',
        'Les séances sont gardées dans ce navigateur jusqu’à ce que vous les supprimiez\u202f; les photos seulement si le porteur l’accepte, et pour un temps limité.',
        'Rien ne quitte l’appareil, sauf les fichiers que vous transmettez vous-même et ce que vous imprimez.',
        'Qui peut voir et garder les données d’un porteur relève de vos règles locales.',
      ],
      cautions: [
        'Quiconque utilise ce navigateur peut voir ce qui y est gardé, sauf si vous avez mis un verrou. Verrouillez l’appareil quand vous le quittez.',
      ],
    },
  },
};

const differences: Words['differences'] = {
  heading: 'Main et caméra',
  close: 'Fermer',
  print: 'Imprimer',
  intro:
    'La valeur de la caméra est la ligne du milieu. Plus un relevé à la main en est proche, mieux les deux s’accordent\u202f; ce qui reste dans la bande ombrée est sans importance.',
  none: 'Rien n’est encore en regard de la caméra\u202f: il faut une photo mesurée, et des relevés à la main de ce qu’elle montre.',
  noneCovered:
    'Rien n’est encore en regard de la caméra\u202f: ses valeurs restent couvertes jusqu’à ce que vos relevés soient saisis.',
  stillCovered: (count) =>
    count < 2
      ? '1 ligne manque ici\u202f: sa valeur de caméra est couverte jusqu’à votre relevé.'
      : `${count} lignes manquent ici\u202f: leurs valeurs de caméra sont couvertes jusqu’à vos relevés.`,
  scale: 'Échelle',
  scales: { unit: 'telle que mesurée', tolerance: 'en tolérances' },
  scaleNote: { unit: 'Main moins caméra', tolerance: 'Main moins caméra, en tolérances de la ligne' },
  lessByHand: 'moins à la main',
  moreByHand: 'plus à la main',
  lengths: 'Longueurs, mm',
  angles: 'Angles, degrés',
  key: {
    heading: 'Ce qui est dessiné',
    camera: 'caméra, 95\u202f%',
    hand: 'main, 95\u202f%',
    off: 'main, en désaccord',
    repeat: 'une répétition',
    tolerance: 'tolérance',
    beyond: 'au-delà de l’échelle',
  },
  goTo: (name) => `${name}\u202f: aller à sa ligne`,
  lane: ({ name, difference, hand, camera: seen, tolerance, finding: found, repeats }) =>
    `${name}\u202f: main moins caméra ${difference}, main plus ou moins ${hand}, caméra plus ou moins ${seen}, tolérance plus ou moins ${tolerance}\u202f: ${found}.${
      repeats.length > 1 ? ` Répétitions\u202f: ${repeats.join('\u202f; ')}.` : ''
    }`,
  table: 'La même chose en tableau',
  columns: {
    measurement: 'Mesure',
    hand: 'Main ± 95\u202f%',
    camera: 'Caméra ± 95\u202f%',
    difference: 'Main − caméra',
    interval: 'Intervalle à 95\u202f%',
    tolerance: 'Tolérance',
    finding: 'Constat',
  },
  fromTo: (low, high) => `de ${low} à ${high}`,
  repeats: {
    heading: 'Répétitions',
    intro:
      'Chaque relevé du même endroit, autour de leur moyenne. Le crochet est l’étendue que gardent, dans 19 cas sur 20, les répétitions d’un opérateur exercé.',
    said: (range, allowed) => `étendue ${range}, admise ${allowed}`,
    beyond: 'au-delà de l’étendue admise\u202f: relisez',
    farOff: (value) => `${value} est loin des autres`,
    lane: (name, who, values, said) => `${name}, ${who}\u202f: ${values.join('\u202f; ')}\u202f; ${said}.`,
    keys: { value: 'un relevé', farOff: 'loin des autres', room: 'étendue admise' },
    columns: {
      place: 'Mesure',
      reader: 'Opérateur',
      values: 'Relevés',
      range: 'Étendue',
      room: 'Admise',
      mean: 'Moyenne',
    },
  },
  doubts: {
    heading: 'De quoi est faite l’incertitude de la caméra',
    intro:
      'Les plus grandes incertitudes d’abord, en demi-largeurs à 95\u202f% comptées en tolérances. Une barre qui finit à gauche du trait est assez sûre pour décider de sa ligne.',
    sure: 'assez sûr',
    tooWide: 'trop large pour dire qu’il y a accord',
    halfWidth: (text) => `± ${text}`,
    mostly: (from, share) => `surtout\u202f: ${from} (${share})`,
    then: (from, share) => `puis\u202f: ${from} (${share})`,
    lane: (name, halfWidth, tolerance, made) =>
      `${name}\u202f: caméra plus ou moins ${halfWidth}, tolérance plus ou moins ${tolerance}\u202f; ${made}.`,
    line: '1 tolérance',
    more: (count) => (count < 2 ? 'et 1 plus sûre' : `et ${count} plus sûres`),
  },
  of: (name) => (name === '' ? 'Sans nom' : name),
  printedOn: (day) => `Imprimé le ${day}.`,
};

const history: Words['history'] = {
  heading: 'Historique de toutes les saisies',
  close: 'Fermer',
  what: 'Rien de ce qui a été saisi n’est jamais retiré. Ce qui a été remplacé plus tard est barré.',
  none: 'Rien n’a encore été saisi.',
  print: 'Imprimer l’historique',
  table: 'Saisies, les plus anciennes d’abord',
  when: 'Quand',
  reader: 'Opérateur',
  place: 'Mesure',
  text: 'Saisie',
  noTime: 'non noté',
  emptied: 'vidé',
  replaced: 'remplacé plus tard',
  continued: 'complété plus tard',
  covered: 'caché jusqu’au relevé d’ici',
  of: (wearer) => (wearer === '' ? 'Séance sans nom' : wearer),
  printedOn: (when) => `Imprimé le ${when}`,
  count: (count) => counted(count, 'saisie', 'saisies'),
};

const RELOAD_ONLINE = 'Rechargez cette page en ligne, pour que la version plus récente arrive.';
const ASK_ONCE_MORE = 'Demandez au porteur de l’envoyer de nouveau, en pièce jointe.';

const invitations: Words['invitations'] = {
  open: 'Inviter un porteur à distance',
  heading: 'Porteurs à distance',
  close: 'Fermer',
  what: 'Un porteur qui ne peut pas venir ouvre un lien sur un téléphone, est guidé pour les photos et renvoie un fichier chiffré. Déposez-le sur la liste ou la fiche\u202f: ses estimations ne sont que préalables, prises sans surveillance.',

  make: {
    heading: 'Nouvelle invitation',
    wearer: 'Pour qui',
    wearerNote: 'Reste ici\u202f; ce n’est pas dans le lien.',
    practice: 'Votre magasin, tel que le porteur le lit',
    language: 'Langue de la page du porteur',
    days: 'Valable',
    daysOf: (days) => counted(days, 'jour', 'jours'),
    pictures: 'Demander deux photos, découpées autour des yeux et de la carte',
    picturesNote: 'Le porteur peut refuser. Elles sont gardées avec la séance et supprimées après 90 jours.',
    address: 'Adresse de cette application, telle qu’un téléphone l’atteint',
    addressLocal: 'Un téléphone ne peut pas atteindre cette adresse\u202f: elle ne désigne que cet ordinateur.',
    addressInsecure: 'La caméra d’un téléphone ne marche qu’à une adresse qui commence par https.',
    addressWrong: 'Ce n’est pas une adresse. Elle commence par https.',
    now: 'Créer l’invitation',
    making: 'Création de l’invitation.',
  },

  made: {
    heading: (wearer) => (wearer === '' ? 'Invitation créée' : `Invitation pour ${wearer}`),
    link: 'Lien',
    copyLink: 'Copier le lien',
    qr: 'Code QR avec le lien de cette invitation',
    scan: 'À scanner avec le téléphone, ou à envoyer comme lien.',
    message: 'Texte à envoyer',
    copyMessage: 'Copier le texte',
    copied: 'Copié.',
    copyFailed: 'La copie a été refusée. Sélectionnez le texte et copiez-le à la main.',
    secret: 'Envoyez-le au seul porteur\u202f: quiconque a le lien peut y répondre.',
    another: 'Autre invitation',
    languageMissing: 'Le texte dans cette langue n’a pas pu être chargé\u202f; il est en anglais.',
  },
  message: (practiceName, link, date) =>
    [
      practiceName === ''
        ? 'Votre opticien vous demande une première estimation pour vos lunettes.'
        : `${practiceName} vous demande une première estimation pour vos lunettes.`,
      'Veuillez ouvrir ce lien sur votre téléphone. Il vous faut une carte au format bancaire, une bonne lumière et environ cinq minutes\u202f:',
      link,
      `Le lien est valable jusqu’au ${date}. À la fin, vous recevez un fichier chiffré. Veuillez nous le renvoyer en pièce jointe.`,
    ].join('\n\n'),

  list: {
    heading: 'Invitations',
    none: 'Aucune invitation n’a encore été créée.',
    noName: 'Sans nom',
    status: {
      out: (date) => `ouverte jusqu’au ${date}`,
      answered: (date) => `réponse reçue le ${date}`,
      expired: (date) => `expirée le ${date}`,
      withdrawn: (date) => `retirée le ${date}`,
    },
    made: (date) => `créée le ${date}`,
    show: (wearer) => `Montrer le lien pour ${wearer}`,
    withdraw: (wearer) => `Retirer l’invitation pour ${wearer}`,
    remove: (wearer) => `Supprimer l’invitation pour ${wearer}`,
    showShort: 'Montrer',
    withdrawShort: 'Retirer',
    removeShort: 'Supprimer',
    withdrawn: 'L’invitation a été retirée\u202f: une réponse est désormais refusée.',
    removed: 'L’invitation a été supprimée.',
    bringIn: 'Importer une réponse',
  },

  key: {
    heading: 'La clé',
    what: 'Les réponses sont chiffrées pour une clé qui n’est que sur cet appareil. Qui la perd ne peut plus les ouvrir.',
    none: 'Elle est créée avec la première invitation.',
    inUse: (date) => `En service depuis le ${date}.`,
    older: (count) =>
      count < 2
        ? 'Une ancienne clé ouvre encore les réponses aux invitations précédentes.'
        : `${count} anciennes clés ouvrent encore les réponses aux invitations précédentes.`,
    backUp: 'Sauvegarder',
    backUpWhat:
      'Un fichier avec toutes les clés, chiffré par une phrase secrète. Gardez-le ailleurs que sur cet appareil.',
    backUpNow: 'Créer la sauvegarde',
    backedUp: (name) => `La sauvegarde a été remise au navigateur sous le nom ${name}.`,
    bringBack: 'Restaurer',
    bringBackWhat: 'Les clés d’une sauvegarde s’ajoutent à celles d’ici\u202f; aucune n’est perdue.',
    chooseBackup: 'Choisir la sauvegarde',
    chosen: (name) => `Fichier\u202f: ${name}`,
    bringBackNow: 'Restaurer les clés',
    broughtBack: (count) =>
      count < 2 ? `${count === 0 ? 'Aucune' : 'Une'} clé est maintenant ici.` : `${count} clés sont maintenant ici.`,
    replace: 'Remplacer',
    replaceWhat:
      'Les nouvelles invitations sont faites avec une nouvelle clé. L’ancienne ouvre encore les réponses aux invitations précédentes. Faites-le si quelqu’un d’autre a pu obtenir la clé\u202f; retirez alors aussi les invitations ouvertes.',
    replaceNow: 'Créer une nouvelle clé',
    replaced: 'Une nouvelle clé est en service. Sauvegardez-la.',
    cancel: 'Annuler',
    working: 'En cours. Les quelques secondes sont voulues.',
  },

  answer: {
    heading: 'Réponse d’un porteur à distance',
    what: 'Choisissez le fichier que le porteur a envoyé, ou déposez-le ici.',
    choose: 'Choisir le fichier',
    chooseAnother: 'Choisir un autre fichier',
    reading: 'Ouverture de la réponse.',
    file: (name) => `Fichier\u202f: ${name}`,
    withoutPictures: 'La réponse a été importée, mais ses photos n’ont pas pu être gardées.',
    openSession: 'Ouvrir la séance',
    close: 'Fermer',
  },

  aloneMark: 'pris seul',
  aloneMarkLong: 'pris sans surveillance',
  conditions: {
    glassesOn: 'Le porteur a gardé des lunettes.',
    unevenLight: 'Le porteur n’avait pas de lumière égale venant de face.',
    cardNotFlat: 'Le porteur dit que la carte n’était pas à plat.',
    remark: (sentences) => `Réponse à distance. ${sentences.join(' ')}`,
  },

  failure: {
    notLoadable: {
      what: 'Ce qui ouvre les réponses n’a pas pu être chargé.',
      next: 'Connectez-vous au réseau et réessayez.',
    },
    unsupported: {
      what: 'Ce navigateur ne peut ni créer ni utiliser de clés ici.',
      next: 'Utilisez un navigateur plus récent, et ouvrez Glabella en https.',
    },
    noAnswer: {
      what: 'Ce fichier n’est pas la réponse d’un porteur à distance.',
      next: 'Choisissez le fichier que le porteur a envoyé\u202f; son nom commence par glabella-answer.',
    },
    noAnswerPassphrase: {
      what: 'Ce fichier est chiffré avec une phrase secrète\u202f: ce n’est donc pas la réponse d’un porteur à distance.',
      next: 'Importez-le comme sauvegarde, ou choisissez le fichier que le porteur a envoyé.',
    },
    tooLarge: (megabytes, limit) => ({
      what: `Ce fichier est trop grand pour une réponse\u202f: ${megabytes} Mo, et ${limit} Mo est le maximum.`,
      next: 'Choisissez le fichier que le porteur a envoyé\u202f; son nom commence par glabella-answer.',
    }),
    fileGone: {
      what: 'Le fichier ne peut pas être lu.',
      next: 'Il a peut-être été déplacé ou modifié. Choisissez-le de nouveau.',
    },
    truncated: { what: 'Le fichier se termine trop tôt\u202f: il a été tronqué en chemin.', next: ASK_ONCE_MORE },
    altered: {
      what: 'Le fichier n’est plus tel qu’il a été chiffré\u202f: quelque chose l’a modifié en chemin.',
      next: ASK_ONCE_MORE,
    },
    forAnotherKey: {
      what: 'Aucune clé de cet appareil n’ouvre le fichier.',
      next: 'Si l’invitation a été créée sur un autre appareil, ouvrez la réponse là-bas, ou restaurez les clés depuis sa sauvegarde. Sinon, elle est pour un autre magasin.',
    },
    noSuchInvitation: {
      what: 'Le fichier ne répond à aucune invitation de votre liste.',
      next: 'Elle a peut-être été supprimée, ou créée sur un autre appareil. Invitez le porteur de nouveau.',
    },
    replayed: (when) => ({
      what: `Cette même réponse a déjà été importée, le ${when}.`,
      next: 'Sa séance est dans la liste. Rien n’a été changé.',
    }),
    invitationAnswered: (when) => ({
      what: `Une autre réponse à la même invitation a été importée le ${when}.`,
      next: 'Seule la première compte. Pour que le porteur reprenne des photos, créez une nouvelle invitation.',
    }),
    invitationWithdrawn: (when) => ({
      what: `L’invitation a été retirée le ${when}.`,
      next: 'Si vous voulez quand même une réponse, créez une nouvelle invitation.',
    }),
    expired: (date) => ({
      what: `L’invitation a expiré le ${date}, et la réponse arrive trop tard.`,
      next: 'Créez une nouvelle invitation.',
    }),
    newerVersion: { what: 'La réponse a été écrite par une version plus récente de Glabella.', next: RELOAD_ONLINE },
    unreadable: {
      what: 'Le fichier s’ouvre, mais son contenu ne peut pas être juste.',
      next: 'Demandez au porteur de rouvrir l’invitation et d’envoyer une nouvelle réponse.',
    },
    linkTooLong: (letters, limit) => ({
      what: `Le lien aurait ${letters} caractères, et un code QR pour téléphones en contient ${limit}.`,
      next: 'Raccourcissez le nom du magasin ou l’adresse.',
    }),
    keysDamaged: {
      what: 'Les clés de cet appareil ne sont plus lisibles.',
      next: 'Restaurez-les depuis leur sauvegarde.',
    },
    noBackup: {
      what: 'Ce fichier n’est pas une sauvegarde de clés.',
      next: 'Choisissez le fichier créé ici comme sauvegarde\u202f; son nom commence par glabella-keys.',
    },
    backupNewer: { what: 'La sauvegarde a été écrite par une version plus récente de Glabella.', next: RELOAD_ONLINE },
    badRecipient: {
      what: 'La clé de cet appareil ne fonctionne pas.',
      next: 'Remplacez-la, et créez de nouveau l’invitation.',
    },
  },
};

const keptPicture: Words['keptPicture'] = {
  heading: 'Photos gardées',
  notByDefault: 'La photo disparaît quand on quitte cette séance, sauf si le porteur accepte qu’elle soit gardée.',
  keep: 'Garder cette photo',
  formHeading: 'Garder cette photo\u202f?',
  cancel: 'Ne pas la garder',
  readOut: 'Lisez ceci au porteur\u202f:',
  consent: (days) =>
    `Une partie de votre photo est gardée sur cet appareil\u202f: vos yeux, la racine de votre nez, les côtés de votre tête, et la carte, dont la face est masquée pour que rien n’y soit lisible. Elle est gardée pour que les mesures puissent être revues si quelque chose ne s’accorde pas. Elle ne quitte jamais cet appareil. Après ${counted(days, 'jour', 'jours')}, elle est supprimée d’elle-même. Vous pouvez la faire supprimer à tout moment avant cela, et un refus ne change rien à vos lunettes.`,
  howLong: 'Gardée pendant',
  days: (days) => counted(days, 'jour', 'jours'),
  agrees: 'Le porteur a entendu ceci et accepte',
  agreeFirst: 'Cochez que le porteur accepte, ou ne la gardez pas.',
  keepNow: 'La garder',
  making: 'Masquage de la carte et enregistrement de la photo.',
  done: (day) => `La photo est gardée jusqu’au ${day}.`,
  noCard: {
    what: 'La photo n’a pas été gardée.',
    next: 'Les coins de la carte ne sont pas placés autour d’elle\u202f: sa face n’a donc pas pu être masquée. Placez-les d’abord.',
  },
  takenOn: (when) => `Photo du ${when}`,
  keptUntil: (day, days) => {
    if (days < 0) return `gardée jusqu’au ${day}\u202f: elle est supprimée dès que possible`;
    if (days === 0) return 'gardée jusqu’à aujourd’hui';
    return `gardée jusqu’au ${day}, encore ${counted(days, 'jour', 'jours')}`;
  },
  agreed: (when) => `Le porteur a accepté ceci le ${when}\u202f:`,
  wording: 'Ce que le porteur a accepté',
  remove: 'Supprimer maintenant',
  removeOf: (when) => `Supprimer maintenant la photo du ${when}`,
  removed: 'La photo a été supprimée.',
};

const lensCaution: Words['lensCaution'] = {
  strong: (power, prismOfMm) =>
    `Verres forts (${power})\u202f: un millimètre fait ${prismOfMm}. Commandez avec le demi-EP de chaque œil, les hauteurs et la distance verre-œil.`,
  progressive:
    'Verres progressifs\u202f: hauteurs et demi-EP de chaque œil seulement avec la monture choisie, ajustée sur le visage.',
  multifocal:
    'Verres à double et triple foyer\u202f: hauteurs seulement avec la monture choisie, ajustée sur le visage.',
  missing: (places) => `Il manque encore\u202f: ${list(places)}.`,
};

const live: Words['live'] = {
  hints: {
    'no-face': 'Tout le visage dans l’image.',
    'more-light': 'Plus de lumière sur le visage, de face.',
    farther: 'Un peu plus loin de la caméra.',
    'into-frame': 'Plus au milieu de l’image.',
    nearer: 'Un peu plus près de la caméra.',
    'no-card': 'La carte à plat contre le front.',
    'face-turned': {
      R: 'Tourner le visage un peu vers la droite.',
      L: 'Tourner le visage un peu vers la gauche.',
    },
    chin: {
      up: 'Le menton un peu plus haut, ou la caméra plus bas.',
      down: 'Le menton un peu plus bas, ou la caméra plus haut.',
    },
    'card-leans': 'La carte penche\u202f: à plat sur la peau.',
    'card-level': {
      R: 'Carte de niveau\u202f: lever son bout droit.',
      L: 'Carte de niveau\u202f: lever son bout gauche.',
    },
    'card-hidden': {
      top: 'Laisser libre le bord supérieur de la carte.',
      bottom: 'Laisser libre le bord inférieur de la carte.',
      R: 'Laisser libre le bord droit de la carte.',
      L: 'Laisser libre le bord gauche de la carte.',
    },
    'eyes-closed': 'Les yeux grands ouverts.',
    sharper: 'Pas encore net\u202f: attendre un peu, ou essuyer l’objectif.',
    'eyes-hidden': 'Sans lunettes, et sans reflets sur les yeux.',
    'light-from-front': {
      R: 'Lumière de face\u202f: la moitié droite du visage est sombre.',
      L: 'Lumière de face\u202f: la moitié gauche du visage est sombre.',
    },
    'hold-still': 'Ne plus bouger.',
    look: { camera: 'Regarder dans l’objectif.', far: 'Regarder au loin, au-delà de la caméra.' },
    'all-right': {
      'by-itself': 'Ne plus bouger\u202f: la photo se prend.',
      'by-hand': 'Tout est bon\u202f: prenez la photo.',
    },
  },
  sides: 'La droite et la gauche sont celles du porteur.',
  starting: 'Le guidage démarre. Une photo peut déjà être prise.',
  lost: 'Une photo peut être prise sans guidage.',
  readout: 'Ce que voit la caméra',
  distance: 'Distance',
  centimetres: (cm) => `${cm} cm`,
  sureness: 'EP sûr à',
  plusMinus: (mm) => `± ${mm} mm`,
  millimetres: (mm) => `${mm} mm`,
  frames: 'Images',
  nothing: '–',
  byItself: 'Prendre d’elle-même dès que tout est bon',
  shutter: 'Prendre la photo maintenant',
  keys: 'Espace ou Entrée prend la photo.',
  goesOn: {
    'camera-busy': 'Un nouvel essai a lieu toutes les quelques secondes.',
    'camera-silent': 'Un nouvel essai a lieu toutes les quelques secondes.',
    'camera-unplugged': 'La suite vient d’elle-même dès que la caméra est revenue.',
    'camera-missing': 'La suite vient d’elle-même dès qu’il y en a une.',
    'camera-refused': 'La suite vient d’elle-même dès que l’accès est autorisé.',
  },
};

const lock: Words['lock'] = {
  heading: 'Verrou des séances gardées',
  close: 'Fermer',
  what: 'Avec un verrou, tout ce qui est gardé ici est chiffré sur cet appareil\u202f: séances, photos, clé pour les porteurs à distance. Qui ouvre Glabella doit d’abord saisir la phrase secrète.',
  whatNot: 'Les fichiers déjà transmis ne sont pas verrouillés par lui.',
  reading: 'Recherche d’un verrou.',
  none: 'Il n’y a pas de verrou.',
  isOpen: 'Il y a un verrou. Il est ouvert dans cette fenêtre.',
  set: 'Choisir une phrase secrète',
  change: 'Changer la phrase secrète',
  remove: 'Retirer le verrou',
  removeWhat: 'Tout est de nouveau gardé sans chiffrement.',
  removeNow: 'Retirer le verrou maintenant',
  cancel: 'Annuler',
  setNow: 'Verrouiller avec cette phrase secrète',
  changeNow: 'Utiliser désormais cette phrase secrète',
  sealing: 'Chiffrement de tout ce qui est gardé. Laissez cette page ouverte.',
  unsealing: 'Déchiffrement de tout ce qui est gardé. Laissez cette page ouverte.',
  wasSet:
    'Tout ce qui est gardé est maintenant chiffré. Le verrou est ouvert dans cette fenêtre jusqu’à ce que vous la verrouilliez ou la fermiez.',
  wasChanged: 'La nouvelle phrase secrète compte désormais.',
  wasRemoved: 'Le verrou a été retiré.',
  handOnFirst: 'Transmettez d’abord une sauvegarde\u202f: si la phrase secrète est perdue, il ne reste qu’elle.',
  lockedHeading: 'Verrouillé',
  lockedWhat: 'Les séances de cet appareil sont verrouillées.',
  unlock: 'Déverrouiller',
  unlocking: 'Déverrouillage. Les quelques secondes sont voulues.',
  wrongPassphrase: {
    what: 'La phrase secrète n’ouvre pas le verrou.',
    next: 'Attention aux majuscules et aux espaces, et réessayez.',
  },
  forgotten:
    'Si la phrase secrète est oubliée, personne ne peut ouvrir ce qui est gardé ici. Une sauvegarde transmise auparavant peut être importée ailleurs.',
  lockNow: 'Verrouiller maintenant',
  open: 'Verrou',
};

const orderDoubt: Words['orderDoubt'] = {
  cameraDisagrees: (place, reason) => `${place}\u202f: la caméra diverge (${reason}).`,
  cameraCannotTell: (places) => `La caméra n’a pu ni confirmer ni contredire\u202f: ${places}.`,
  refused: (place, typed, why) => `${place}\u202f: «\u202f${typed}\u202f» n’est pas commandé. ${why}`,
  readersDiffer: (place) =>
    `${place}\u202f: les deux opérateurs diffèrent trop\u202f; ce n’est pas commandé avant que les deux relisent.`,
  otherOnly: (who, places) => `Relevé par ${who} seul, et non commandé\u202f: ${places}.`,
  otherReader: 'l’autre opérateur',
  unconfirmed: (places) => `Saisi, mais non confirmé et donc non commandé\u202f: ${places}.`,
  gaugeNever: (gauge, places) =>
    `Aucun contrôle n’est noté pour l’instrument «\u202f${gauge}\u202f», utilisé pour\u202f: ${places}.`,
  gaugeOld: (gauge, days, places) =>
    `L’instrument «\u202f${gauge}\u202f» a été contrôlé pour la dernière fois ${counted(days, 'jour', 'jours')} avant la confirmation\u202f; il a servi pour\u202f: ${places}.`,
  nameless: 'Une partie a été confirmée avant la saisie d’un nom\u202f: retirez-la et confirmez-la de nouveau.',
  squint: (names) =>
    `En cas de strabisme, chaque œil se mesure en couvrant l’autre\u202f: assurez-vous-en pour ${names}.`,
  pupilWithoutLight: 'La lumière dans laquelle les diamètres pupillaires ont été lus n’est pas notée.',
  frameIncomplete: (places) =>
    `Un verre progressif ne peut pas être fait sans ces mesures, et elles ne sont pas dans la commande\u202f: ${places}.`,
  suspected: (sentence, places) => `${sentence} Non commandé avant d’être éclairci\u202f: ${places}.`,
};

const order: Words['order'] = {
  heading: 'Bon de commande',
  close: 'Fermer',
  intro:
    'Seuls vont à l’atelier les nombres que vous confirmez et que rien sur la fiche ne contredit. Une confirmation prend fin dès que le nombre change.',

  confirming: 'Confirmer les relevés',
  readerName: 'Confirmé par',
  readerNameNote: 'Figure sur la commande à côté de ce que vous confirmez désormais.',
  nothingIn: 'Aucun relevé n’est encore saisi. Saisissez d’abord les relevés sur la fiche.',
  confirm: 'Confirmer',
  confirmOf: (place) => `Confirmer\u202f: ${place}`,
  withdraw: 'Retirer',
  withdrawOf: (place) => `Retirer la confirmation\u202f: ${place}`,
  confirmAll: 'Confirmer tout ce qui n’a aucun point ouvert',
  confirmAllCount: (count) => `Confirmer tout ce qui n’a aucun point ouvert (${count})`,
  withdrawAll: 'Tout retirer',
  goTo: 'Aller au champ',
  goToOf: (place) => `Aller au champ\u202f: ${place}`,
  doubt: (amount) => `± ${amount}`,
  doubtNote: 'Derrière chaque valeur\u202f: sa propre incertitude (95\u202f%).',
  confirmed: 'Confirmé.',
  confirmedBy: (who) => `Confirmé par ${who}${who.endsWith('.') ? '' : '.'}`,
  leftOut: 'Confirmé, mais laissé hors de la commande tant que cela ne s’accorde pas.',
  cameraAgrees: 'La caméra concorde.',
  cameraCannotTell: 'La caméra ne peut pas trancher.',
  covered: 'La valeur de la caméra est encore cachée.',
  repeats: (count) => `Moyenne de ${counted(count, 'relevé', 'relevés')}.`,
  trials: (low, high) => `Juste\u202f; la vraie taille est entre ${low} et ${high}.`,
  suspectedWith: (places) => `Ne s’accorde pas avec d’autres\u202f: ${places}.`,
  joined: 'Les deux opérateurs ensemble.',
  scale: (sum) => `Échelle\u202f: ${sum}.`,
  countConfirmed: (confirmed, all) => `${counted(confirmed, 'relevé confirmé', 'relevés confirmés')} sur ${all}.`,

  preview: 'Ce qui est commandé',
  print: 'Imprimer la commande',
  printNote: 'Imprime ce seul bon, en A4 ou Letter.',
  savePdf: 'Enregistrer en PDF',
  saveData: 'Enregistrer les nombres pour l’atelier (JSON)',
  saving: 'Création du fichier.',
  saved: (name) => `${name} a été créé.`,
  saveFailed: 'Le fichier n’a pas pu être créé. Rechargez la page et réessayez.',

  invented: 'Porteur inventé\u202f: rien de ceci n’est à fabriquer.',
  title: 'Bon de commande',
  wearer: 'Porteur',
  date: 'Date',
  readers: 'Relevé et confirmé par',
  nobody: 'aucun nom donné',
  confirmation: (by, day, from, until) => `${by}, ${day}, ${until === null ? from : `de ${from} à ${until}`}`,
  marked: (mark, confirmation) => `${mark}\u202f: ${confirmation}`,
  secondReading: (name) => (name === '' ? 'aussi par un second opérateur' : `second relevé par ${name}`),
  prescription: 'Prescription',
  prescriptionFor: (kind) => `Prescription, ${kind}`,
  prescriptionNote: 'Notation d’après BS 2738-3, de mémoire.',
  prescribedAt: (mm) => `Trouvée à une distance verre-œil de ${mm} mm.`,
  noVertex: 'Distance verre-œil de la prescription\u202f: non notée.',
  noPrescription: 'Aucune prescription n’a été saisie.',
  badPrescription: 'La prescription de la fiche n’est pas encore lisible\u202f: elle n’est donc pas commandée.',
  parts: {
    centration: 'Centrage',
    frame: 'Monture',
    bridge: 'Pont',
    sides: 'Branches et tête',
    eyes: 'Yeux, pour information',
  },
  measurement: 'Mesure',
  side: 'Côté',
  value: 'Valeur',
  doubtHead: '95\u202f%',
  confirmedHead: 'par',
  continued: (caption) => `${caption}, suite`,
  footer: (wearer, page, pages) =>
    wearer === ''
      ? `Bon de commande, page ${page} sur ${pages}`
      : `Bon de commande, ${wearer}, page ${page} sur ${pages}`,
  lettersMissing: (mark) =>
    `${mark} tient lieu d’un caractère que ce fichier ne peut pas montrer. La page imprimée le montre.`,
  sideNames: { R: 'droite', L: 'gauche' },
  workedOut: 'Calculé d’après ces nombres',
  workedOutNote: 'Usage courant\u202f; non mesuré. Décentrement depuis le centre boxing.',
  blankNote: (from) => `Plus petit diamètre d’après ${from}, avec 2 mm pour le bord.`,
  blankFrom: {
    'effective-diameter': 'le diamètre effectif',
    box: 'les coins du rectangle, donc au plus cela',
  },
  boxedCentreDistance: 'Distance des centres boxing',
  decentration: 'Décentrement',
  blank: 'Plus petit diamètre',
  blankOf: {
    'effective-diameter': (mm) => `${mm} mm`,
    box: (mm) => `au plus ${mm} mm`,
  },
  inward: (mm) => `${mm} mm vers l’intérieur`,
  outward: (mm) => `${mm} mm vers l’extérieur`,
  up: (mm) => `${mm} mm vers le haut`,
  down: (mm) => `${mm} mm vers le bas`,
  centred: 'aucun',
  level: 'aucun en hauteur',
  notes: 'Notes',
  squint: 'Strabisme\u202f: les deux yeux ne fixent jamais ensemble.',
  unsupervised: 'Ce que dit la caméra a été pris à distance, sans surveillance.',
  light: (light) => `Diamètres pupillaires lus dans cette lumière\u202f: ${light}.`,
  doubts: 'Points ouverts',
  noDoubts: 'Rien n’est ouvert.',
  nothingOrdered: 'Aucune mesure n’est encore commandée.',
  noReadings: 'Aucun relevé n’est saisi.',
  signature: 'Signature',
  cautions: 'Avant la fabrication',
  ownCautions: [
    'Les valeurs à la main et par la caméra ne sont pas des mesures cliniques\u202f; qui signe a regardé chacune d’elles.',
    'R est la droite du porteur, L sa gauche. Longueurs en millimètres, angles en degrés.',
    'Derrière chaque valeur\u202f: sa propre incertitude (95\u202f%).',
  ],
};

const overSessions: Words['overSessions'] = {
  open: 'Instruments et opérateurs',
  heading: 'Instruments et opérateurs',
  actions: 'Instruments et opérateurs',
  back: 'Retour aux séances',
  intro:
    'Main moins caméra, sur toutes les séances gardées. Chaque point est un relevé à la main à côté de ce que la caméra a dit du même endroit.',
  caution:
    'Ce que tous font de même peut être l’écart de la caméra elle-même. Ce que l’un fait autrement que les autres ne vient guère de la caméra.',
  reading: 'Lecture des séances gardées.',
  workingOut: 'Calcul en cours.',
  none: 'Rien à comparer encore\u202f: il faut des séances gardées où l’on a lu à la main ce que la caméra a mesuré aussi.',
  measurement: 'Mesure',
  option: (name, sessionCount) => `${name} (${counted(sessionCount, 'séance', 'séances')})`,
  by: 'Séparer par',
  bys: { gauge: 'instrument', reader: 'opérateur' },
  camera: 'Valeurs de caméra de',
  cameras: { any: 'photos et balayages', picture: 'photos', sweep: 'balayages' },
  countFarOff: 'Compter ce qui est très éloigné',
  plainScale: 'Échelle simple',
  noName: 'Aucun nom saisi',
  summary: (name, from, pairs, sessionCount) =>
    `${name}, ${from}\u202f: ${counted(pairs, 'relevé', 'relevés')} de ${counted(sessionCount, 'séance', 'séances')}.`,
  covered: (count) =>
    count < 2
      ? '1 relevé manque ici\u202f: la valeur de caméra à côté est encore couverte.'
      : `${count} relevés manquent ici\u202f: les valeurs de caméra à côté sont encore couvertes.`,
  print: 'Imprimer',
  overview: {
    gauge: 'Tous les instruments',
    reader: 'Tous les opérateurs',
    note: 'La barre épaisse montre où est la moyenne (95\u202f%), la fine où sont 19 différences sur 20. La ligne du milieu est la caméra.',
    lane: (name, mean, limits) =>
      `${name}\u202f: moyenne ${mean}${limits === null ? '' : `\u202f; limites d’accord ${limits}`}.`,
    count: (count) => counted(count, 'visite', 'visites'),
    tooFew: (names) => `Trop peu de visites pour dire quelque chose\u202f: ${names.join(', ')}.`,
    nameAndVisits: (name, count) => `${name} (${counted(count, 'visite', 'visites')})`,
  },
  bias: (by, count, { way, amount, low, high }) => {
    const over = `Sur ${counted(count, 'visite', 'visites')}, ${by === 'gauge' ? 'cet instrument' : 'cet opérateur'}`;
    return way === 'none'
      ? `${over} lit comme la caméra\u202f: ${amount} en moyenne (95\u202f%\u202f: de ${low} à ${high}).`
      : `${over} lit ${amount} de ${way === 'more' ? 'plus' : 'moins'} que la caméra (95\u202f%\u202f: de ${low} à ${high}).`;
  },
  others: (_by, only, { way, amount, low, high }) =>
    way === 'none'
      ? `Aucune différence visible avec ${only ?? 'tous les autres'}\u202f: ${amount} (95\u202f%\u202f: de ${low} à ${high}).`
      : `C’est ${amount} de ${way === 'more' ? 'plus' : 'moins'} que ${only ?? 'tous les autres'} (95\u202f%\u202f: de ${low} à ${high}). Ce que la caméra fait de même pour tous ne l’explique pas.`,
  limits: (low, high, known) =>
    `19 différences sur 20 sont entre ${low} et ${high}\u202f; chaque limite est connue à ±\u00a0${known} près.`,
  beyond: (count, all, tolerance) =>
    count === 0
      ? `Aucune sur ${all} n’est hors de la tolérance de ±\u00a0${tolerance}.`
      : `${count} sur ${all} ${count < 2 ? 'est' : 'sont'} hors de la tolérance de ±\u00a0${tolerance}.`,
  drift: ({ way, amount, low, high }, days) =>
    way === 'none'
      ? `Aucune dérive visible sur ${counted(days, 'jour', 'jours')}\u202f: ${amount} en 30 jours (95\u202f%\u202f: de ${low} à ${high}).`
      : `Il y a une dérive\u202f: ${amount} de ${way === 'more' ? 'plus' : 'moins'} tous les 30 jours (95\u202f%\u202f: de ${low} à ${high}), sur ${counted(days, 'jour', 'jours')}.`,
  scatter: (seen, expected) =>
    `Les différences se dispersent de ${seen} (un écart-type)\u202f; les incertitudes de la main et de la caméra en expliquent ${expected}.`,
  farOff: (count) =>
    count < 2
      ? '1 relevé est très éloigné, comme le sont les erreurs, et n’est pas compté.'
      : `${count} relevés sont très éloignés, comme le sont les erreurs, et ne sont pas comptés.`,
  tooFewForLimits: (needed) => `Les limites d’accord demandent ${needed} visites.`,
  tooFewForDrift: (needed, days) => `Une dérive demande ${needed} visites, sur au moins ${days} jours.`,
  check: {
    gauge: 'Comparez-le à quelque chose de taille connue avant de changer quoi que ce soit.',
    reader: 'Comparez comment chacun tient l’instrument avant de changer quoi que ce soit.',
  },
  againstMean: 'Selon la taille',
  overTime: 'Dans le temps',
  difference: (unit) => `main − caméra, ${unit}`,
  mean: (unit) => `moyenne de la main et de la caméra, ${unit}`,
  day: 'jour de la visite',
  points: (name) => `Différences de ${name}, l’une après l’autre par jour`,
  point: ({ day, wearer: name, side, hand: byHand, camera: seen, difference, isFarOff }) =>
    `${day}, ${name}${side === null ? '' : side === 'R' ? ', à droite' : ', à gauche'}\u202f: main ${byHand}, caméra ${seen}, différence ${difference}${isFarOff ? ', très éloignée' : ''}`,
  noWearer: 'sans nom',
  pointHint: 'Pointez le dessin, ou parcourez-le avec les flèches\u202f; Entrée ouvre la séance.',
  openSession: 'Ouvrir cette séance',
  key: {
    heading: 'Ce qui est dessiné',
    right: 'à droite',
    left: 'à gauche',
    reading: 'un relevé',
    farOff: 'très éloigné, non compté',
    mean: 'moyenne, et ses 95\u202f%',
    limits: 'limites d’accord, et leurs 95\u202f%',
    drift: 'dérive, et ses 95\u202f%',
    tolerance: 'tolérance',
  },
  table: 'La même chose en tableau',
  columns: {
    gauge: 'Instrument',
    reader: 'Opérateur',
    visits: 'Visites',
    readings: 'Relevés',
    mean: 'Moyenne (95\u202f%)',
    lower: 'Limite basse (95\u202f%)',
    upper: 'Limite haute (95\u202f%)',
    others: 'Contre les autres (95\u202f%)',
    drift: 'En 30 jours (95\u202f%)',
    farOff: 'Très éloignés',
  },
  withInterval: (value, low, high) => `${value} (de ${low} à ${high})`,
  fromTo: (low, high) => `de ${low} à ${high}`,
  method:
    'Limites d’accord d’après Bland et Altman (1986, 1999, 2007)\u202f; droite et gauche, et les deux opérateurs, d’une même visite comptent pour un dans les intervalles. Dérive d’après Theil et Sen (1968).',
};

const paper: Words['paper'] = {
  printed: (when) => `Imprimé le ${when}.`,
  wearer: (wearer) => `Porteur\u202f: ${wearer}.`,
  readBy: (who) => `Relevé par ${who}.`,
  alsoReadBy: (who) => `Relevé une seconde fois par ${who}.`,
  squint: 'Strabisme\u202f: les lignes concernées étaient à mesurer en couvrant l’autre œil.',
  light: (light) => `Pupilles lues en ${light}.`,
  lights: { bright: 'lumière vive', room: 'lumière de la pièce', dim: 'lumière faible' },
  remark: (remark) => `Remarque\u202f: ${remark}`,
  looked: (where) => `Le porteur regardait ${where}.`,
  bought: 'Carte\u202f: une carte du commerce au format ID-1.',
  markerCard: (length) => `Carte\u202f: la carte à repères imprimée, sa ligne de 150 mm mesurée à ${length} mm.`,
  sweep: (used, all) =>
    `Valeurs de la caméra d’un balayage, ${counted(used, 'image utilisée', 'images utilisées')} sur ${all}.`,
  markerCardUnmeasured: 'Carte\u202f: la carte à repères imprimée, sa ligne de 150 mm non mesurée.',
};

const position: Words['position'] = {
  middle: 'Tenez la mire au milieu, face à la caméra.',
  nearer: 'Plus près, jusqu’à ce que la mire remplisse le grand contour.',
  farther: 'Plus loin, dans le petit contour.',
  'left-top': 'Dans le coin supérieur droit.',
  'right-top': 'Dans le coin supérieur gauche.',
  'right-bottom': 'Dans le coin inférieur gauche.',
  'left-bottom': 'Dans le coin inférieur droit.',
  'tilted-left': 'Au milieu, son côté droit incliné vers la caméra.',
  'tilted-right': 'Au milieu, son côté gauche incliné vers la caméra.',
  'tilted-top': 'Au milieu, son côté supérieur incliné vers la caméra.',
  'tilted-bottom': 'Au milieu, son côté inférieur incliné vers la caméra.',
  upright: 'Au milieu, mise en hauteur par un quart de tour.',
};

const practiceProblems: Words['practiceProblems'] = {
  tolerance: (typed, counts) =>
    `«\u202f${typed}\u202f» n’est pas une tolérance\u202f: saisissez un nombre supérieur à zéro, ou rien. D’ici là, ± ${counts} compte.`,
  tooWide: (typed, limit, counts) =>
    `± ${typed} ne trouverait jamais rien\u202f: ± ${limit} au plus. D’ici là, ± ${counts} compte.`,
  unfinished: 'Cet instrument n’est pas encore gardé\u202f: gardez-le, ou annulez.',
  notKept: 'Pas encore gardé\u202f: voyez ce qui est dit à côté des champs.',
  noDate: 'Ce n’est pas encore un jour du calendrier\u202f: terminez-le, ou videz le champ.',
};

const practice: Words['practice'] = {
  heading: 'Magasin',
  close: 'Fermer',
  intro: 'Ce qui appartient au comptoir et reste d’un porteur à l’autre.',

  rows: 'Lignes de la fiche, et ordre dans lequel vous mesurez',
  rowsNote:
    'Une ligne masquée garde ce qui y a été saisi, mais ne participe à aucun contrôle. Votre propre tolérance remplace celle du catalogue.',
  shown: (name) => `Montrer\u202f: ${name}`,
  showAll: (block) => `Tout montrer\u202f: ${block}`,
  hideAll: (block) => `Tout masquer\u202f: ${block}`,
  all: 'Tout montrer',
  none: 'Tout masquer',
  toleranceOf: (name, unit) => `Tolérance propre, ${name}, ${unit}`,
  catalogueTolerance: (value, sourceStatus, cited) => `Catalogue\u202f: ± ${value} (${sourceStatus})\u202f: ${cited}.`,
  ownTolerance: (value) => `Propre\u202f: ± ${value}.`,
  gaugeOf: (name) => `Instrument utilisé pour ${name}`,
  plainRule: 'échelle simple, lue telle quelle',
  shownCount: (shown, all) =>
    shown === all ? `les ${all} montrées` : `${counted(shown, 'montrée', 'montrées')} sur ${all}`,

  orderNote: 'Entrée parcourt les champs dans l’ordre de ces blocs.',
  up: (block) => `Monter\u202f: ${block}`,
  down: (block) => `Descendre\u202f: ${block}`,
  moved: (block, place, all) => `${block}\u202f: maintenant le bloc ${place} sur ${all}.`,

  gauges: 'Instruments',
  gaugesNote:
    'Vous saisissez ce que montre l’échelle\u202f; la fiche ajoute ce qu’il faut ajouter, retire ce qu’on sait en trop, et montre les deux. Les relevés déjà sur la fiche sont recalculés.',
  noGauges: 'Pas encore d’instrument\u202f: chaque échelle est lue telle quelle.',
  addGauge: 'Ajouter un instrument',
  edit: 'Modifier',
  editOf: (name) => `Modifier ${name}`,
  remove: 'Supprimer',
  removeOf: (name) => `Supprimer ${name}`,
  removed: (name) => `Supprimé\u202f: ${name}. Ses lignes sont de nouveau lues avec une échelle simple.`,
  bringBack: 'Le rétablir',
  broughtBack: (name) => `Rétabli\u202f: ${name}.`,
  kept: (name) => `Gardé\u202f: ${name}.`,
  inUseFor: (names) => `Utilisé pour ${names}.`,
  notInUse: 'Non utilisé\u202f: choisissez-le dans les lignes ci-dessus.',
  facts: {
    step: (amount) => `Pas de ${amount}`,
    offset: (amount) => `${amount} à ajouter`,
    noOffset: 'commence à zéro',
    bias: (amount) => `connu pour lire ${amount} de trop`,
    biasBelow: (amount) => `connu pour lire ${amount} de moins`,
  },
  checkedOn: (day) => `Contrôlé le ${day}.`,
  neverChecked: 'Aucun contrôle noté\u202f: comparez-le à un bon réglet, et notez le jour.',
  overdue: (day, limitDays) =>
    `Dernier contrôle le ${day}, il y a plus de ${counted(limitDays, 'jour', 'jours')}\u202f: contrôlez-le de nouveau avant de vous y fier.`,
  examples: 'Exemples à reprendre',
  exampleNames: {
    'pd-rule': 'Réglet à EP',
    'end-rule': 'Réglet lu depuis son bout',
    'head-calipers': 'Compas céphalique',
    'angle-gauge': 'Rapporteur',
  },
  examplesNote: 'Exemples inventés\u202f: comparez-les à vos propres instruments.',
  takeOver: 'Reprendre',
  takeOverOf: (name) => `Reprendre ${name}`,
  takenOver: (name) => `Repris\u202f: ${name}. Comparez ses nombres à votre propre instrument.`,

  form: { add: 'Un instrument', edit: (name) => `Modifier ${name}` },
  name: 'Nom',
  nameNote: 'Comme vous l’appelez, par exemple «\u202fgabarit de pont\u202f».',
  servesLegend: 'Il sert pour',
  servesNote: 'Des longueurs ou des angles, pas les deux\u202f: une échelle a une seule unité.',
  unitsOf: { mm: 'Longueurs', deg: 'Angles' },
  resolution: 'Pas de son échelle',
  resolutionNote: 'Le plus petit pas que vous lisez.',
  zeroOffset: 'À ajouter à chaque relevé',
  zeroOffsetNote: '0 pour un instrument qui commence à zéro.',
  bias: 'À retirer de chaque relevé',
  biasNote:
    'De combien il lit de trop, d’après son dernier contrôle\u202f; négatif s’il lit de moins, 0 si rien n’est connu.',
  checked: 'Dernier contrôle le',
  checkedNote: 'Laissez vide si personne ne l’a noté.',
  inUnit: (label, unit) => `${label}, ${unit}`,
  example: 'Exemple\u202f:',
  unitNames: { mm: 'mm', deg: 'degrés' },
  exampleSum: (scale, sum, unit) => `l’échelle montre ${scale}\u202f: ${sum} ${unit}.`,
  noExample: 'Un exemple du calcul apparaît ici dès que les nombres sont utilisables.',
  keep: 'Garder cet instrument',
  cancel: 'Annuler',

  standard: 'Norme pour le prisme d’un équipement monté',
  standardSource: (sourceStatus, cited) => `Valeurs ${sourceStatus}\u202f: ${cited}.`,
};

const prescriptionQuestion: Words['prescriptionQuestion'] = {
  signLost: (right, left) => `R ${right} et L ${left}\u202f: un signe s’est-il perdu\u202f?`,
  eyesDiffer: (dioptres) =>
    `Les yeux diffèrent de ${dioptres} dioptries dans une direction. Chacun est-il dans sa ligne\u202f?`,
  cylinderSigns:
    'Un cylindre est écrit en plus, l’autre en moins. Les deux viennent-ils de la même prescription\u202f?',
  cylinderLarge: {
    R: (power) => `Le cylindre droit de ${power} est exceptionnellement fort.`,
    L: (power) => `Le cylindre gauche de ${power} est exceptionnellement fort.`,
  },
  additionsDiffer: (right, left) => `Les additions diffèrent\u202f: R ${right}, L ${left}.`,
  prismLarge: {
    R: (amount) => `Le prisme droit de ${amount} est exceptionnellement fort.`,
    L: (amount) => `Le prisme gauche de ${amount} est exceptionnellement fort.`,
  },
  verticalCancel:
    'Les deux bases vont dans le même sens, supérieures ou inférieures\u202f: les prismes s’annulent entre les yeux.',
  horizontalCancel: 'Une base interne, l’autre externe\u202f: les prismes s’annulent entre les yeux.',
  vertexMissing: (power) => `À ${power}, la distance de l’examen compte\u202f: demandez-la.`,
  eighths: (places) => `Les huitièmes de dioptrie sont rarement prescrits\u202f: ${list(places)}.`,
};

const prescription: Words['prescription'] = {
  heading: 'Prescription',
  caption: 'Ce qui est prescrit, œil droit au-dessus du gauche',
  eye: 'Œil',
  fields: {
    sphere: 'Sphère',
    cylinder: 'Cylindre',
    axis: 'Axe',
    add: 'Addition',
    prismHorizontal: 'Prisme interne ou externe',
    baseHorizontal: 'Base interne ou externe',
    prismVertical: 'Prisme supérieur ou inférieur',
    baseVertical: 'Base supérieure ou inférieure',
  },
  sideNames: { R: 'œil droit', L: 'œil gauche' },
  placeName: (field, side) => `${field}, ${side}`,
  prism: {
    in: (amount) => `${amount} base interne`,
    out: (amount) => `${amount} base externe`,
    up: (amount) => `${amount} base supérieure`,
    down: (amount) => `${amount} base inférieure`,
  },
  prismDioptres: 'dioptries prismatiques',
  add: (power) => `Add ${power}`,
  columns: { horizontal: 'Prisme int./ext.', vertical: 'Prisme sup./inf.' },
  eyes: { R: 'Droit', L: 'Gauche' },
  bases: { '': 'base', in: 'interne', out: 'externe', up: 'supérieure', down: 'inférieure' },
  vertexDistance: 'Distance verre-œil de l’examen',
  vertexNote: 'mm\u202f; vide si elle n’est pas écrite',
  kind: 'Type de verre',
  kinds: {
    'single-vision': 'unifocal',
    multifocal: 'double ou triple foyer',
    progressive: 'progressif',
  },
  hint: 'Les puissances ont besoin d’un signe (ou «\u202fplan\u202f»)\u202f; cylindre en plus ou en moins. Entrée avance, Maj et Entrée recule.',
  stillNeeded: (places) => `Reste à saisir\u202f: ${list(places)}.`,
  otherForm: 'même verre\u202f:',
  check: 'À revoir\u202f:',
};

const print: Words['print'] = {
  heading: 'Carte à imprimer',
  close: 'Fermer',
  intro:
    'Une carte à repères se trouve plus sûrement qu’une carte du commerce. Imprimez-la à 100\u202f%, jamais «\u202fajustée à la page\u202f», sur du papier mat et rigide, découpez-la, et mesurez la ligne graduée de la même feuille.',
  paper: 'Papier',
  a4: 'A4',
  letter: 'Letter',
  markerCard: 'Carte à repères (PDF)',
  printCheck: 'Contrôle d’impression (PDF)',
  board: 'Mire de caméra (PDF)',
  printCheckNote:
    'Le contrôle d’impression a un contour où poser une vraie carte, pour essayer une imprimante ou une carte.',
  boardNote:
    'La mire de caméra sert à créer un profil de caméra (dans les réglages)\u202f: collez la page entière sur un support rigide et plat. Sa taille ne compte pas, on n’y mesure donc rien.',
  making: 'Création du PDF.',
  failed: 'Le PDF n’a pas pu être créé. Rechargez la page et réessayez.',
  caution: 'Arrondissez les coins après la découpe\u202f: les bords de la carte viennent près des yeux.',
};

const profileFile: Words['profileFile'] = {
  noProfile: 'Ce fichier n’est pas un profil de caméra. Choisissez un fichier exporté ici.',
  newerVersion: (version, known) =>
    `Ce profil a été écrit par une version ultérieure de Glabella (version ${version} du format\u202f; celle-ci connaît ${known}). Utilisez celle-là, ou refaites le profil.`,
  damaged:
    'Ce fichier de profil est endommagé\u202f: il se termine trop tôt ou a été modifié. Exportez-le de nouveau depuis son origine.',
  numberDamaged:
    'Ce fichier de profil est endommagé\u202f: un de ses nombres ne peut pas être juste. Exportez-le de nouveau depuis son origine.',
};

const profileWeakness: Words['profileWeakness'] = {
  fewViews: (views, wanted) => `Seulement ${counted(views, 'vue', 'vues')}\u202f: ${wanted} ou plus, c’est mieux.`,
  littleCoverage: (share, wanted) =>
    `La mire a été vue dans ${share} du cadre\u202f; il en faut ${wanted}\u202f: tenez-la partout dans l’image.`,
  corners: {
    'left-top': 'supérieur gauche',
    'right-top': 'supérieur droit',
    'right-bottom': 'inférieur droit',
    'left-bottom': 'inférieur gauche',
  },
  cornersUncovered: (corners) =>
    corners.length < 2
      ? `L’objectif n’est que supposé dans le coin ${list(corners)}\u202f: tenez-y la mire.`
      : `L’objectif n’est que supposé dans les coins ${list(corners)}\u202f: tenez-y la mire.`,
  littleTilt: {
    across: (degrees, wanted) =>
      `Trop peu inclinée (${degrees}° sur ${wanted}°)\u202f: tenez la mire avec son côté gauche ou droit plus près, puis l’autre.`,
    down: (degrees, wanted) =>
      `Trop peu inclinée (${degrees}° sur ${wanted}°)\u202f: tenez la mire avec son côté supérieur ou inférieur plus près, puis l’autre.`,
  },
  oneDistance: 'Toutes les vues sont à peu près de la même distance\u202f: prenez-en de plus près et de plus loin.',
  focalLengthDoubtful: (share, wanted) =>
    `La focale n’est connue qu’à ${share} près (un écart-type), et il faut ${wanted}\u202f: prenez plus de vues, plus inclinées.`,
  poorFit: (rmsPx, wantedPx) =>
    `Les coins s’ajustent mal (${rmsPx} px, et il faut moins de ${wantedPx} px)\u202f: la mire est pliée, ou les photos viennent de plusieurs caméras ou zooms.`,
};

const profile: Words['profile'] = {
  heading: 'Créer un profil de caméra',
  close: 'Fermer',
  intro:
    'Un profil de caméra dit comment cette caméra dessine\u202f: son champ, et comment son objectif courbe les lignes. Avec lui, les nombres sont plus sûrs. Sans lui tout marche, avec des intervalles plus larges.',
  before: [
    'Imprimez la mire de caméra (sous «\u202fCarte à imprimer\u202f») et fixez la page entière sur un support rigide et plat. Une mire pliée fait un profil faux\u202f; sa taille ne compte pas.',
    'Utilisez la caméra comme elle le sera avec les porteurs\u202f: même résolution, même zoom, pas d’effets d’arrière-plan.',
    'Lumière égale, pas de reflet sur la mire. Cela prend environ deux minutes.',
  ],
  useCamera: 'Utiliser la caméra',
  printSheet: 'Imprimer la mire de caméra',
  clearLeftOut: 'Effacer les photos écartées',
  usePictures: 'Choisir des photos de la mire',
  picturesNote:
    'Depuis le disque\u202f: huit photos ou plus d’une seule caméra, à une seule résolution, non recadrées, avec la mire à divers endroits, inclinaisons et distances.',
  back: 'Retour',

  gettingReady: 'Préparation pour voir la mire. La première fois prend un moment.',
  mirrored: 'L’aperçu est inversé, comme dans un miroir. Une vue est prise d’elle-même quand vous ne bougez plus.',
  viewCount: (count) => counted(count, 'vue prise', 'vues prises'),
  makeNow: (count) => (count < 2 ? 'Créer le profil avec cette vue' : `Créer le profil avec ces ${count} vues`),
  needed: (missing) => `Au moins ${counted(missing, 'vue', 'vues')} de plus.`,
  skip: 'Passer cette position',
  takeBack: 'Retirer la dernière vue',
  startAgain: 'Recommencer',
  moreViews: 'Prendre plus de vues',
  morePictures: 'Ajouter des photos',
  enough: 'Assez de vues.',
  covered: (percent) => `${percent} du cadre couvert`,
  weakHeading: 'Ce qui est faible',
  notWeak: 'Rien n’est faible.',

  files: 'Photos de la mire',
  lookingAt: (done, all) => `Examen de la photo ${done} sur ${all}`,
  cornersFound: (count, all) => `${counted(count, 'coin trouvé', 'coins trouvés')} sur ${all}`,
  otherSize: 'écartée\u202f: pas de la taille de la plupart des photos',
  usable: (count, all) => `${counted(count, 'photo utilisable', 'photos utilisables')} sur ${all}.`,
  tooMany: (limit) => `Plus de ${limit} n’apporte rien\u202f: seules les ${limit} premières ont été examinées.`,
  fileName: (widthPx, heightPx) => `Photos de ${widthPx} × ${heightPx}`,

  making: 'Calcul du profil.',
  result: 'Le profil',
  fieldOfView: 'Champ, en largeur',
  focalLength: 'Focale',
  axis: 'L’axe optique rencontre l’image à',
  distortion: 'Distorsion',
  radial: 'radiale k1, k2, k3',
  tangential: 'tangentielle p1, p2',
  fit: 'Ajustement (rms)',
  fitIn: (rms, views) => `${rms} px sur ${counted(views, 'vue', 'vues')}`,
  resolution: 'Résolution',
  doubt: '± est la moitié de l’intervalle à 95\u202f%.',
  name: 'Nom du profil',
  nameLimit: (letters) => `Jusqu’à ${counted(letters, 'lettre', 'lettres')}.`,
  emptyName: 'Sans nom, il ne peut pas être gardé\u202f: on ne le distinguerait pas des autres. Saisissez-en un.',
  emptyRename: 'Un profil a besoin d’un nom\u202f: saisissez-en un, ou annulez.',
  keep: 'Garder le profil',
  unnamedCamera: 'Caméra',

  section: 'Profil de caméra',
  counts: 'Profil pour les photos de fichiers',
  none: 'Aucun',
  countsNote:
    'Ne le choisissez que si les fichiers sont des photos non recadrées de cette caméra. Les photos et balayages pris ici utilisent d’eux-mêmes le profil le plus récent de leur propre caméra, ou aucun.',
  shelf: 'Profils gardés',
  noProfiles: 'Aucun profil n’a encore été créé.',
  facts: (resolution, day) => `${resolution}, créé le ${day}`,
  ofCamera: (label) => `Caméra\u202f: ${label}.`,
  ofFiles:
    'Créé depuis des fichiers, donc d’aucune caméra d’ici\u202f: il ne compte que là où il est choisi pour les fichiers.',
  quality: (focal, rms, coverage) => `focale ± ${focal}, ajustement ${rms} px, ${coverage} du cadre couvert`,
  rename: 'Renommer',
  renameOf: (name) => `Renommer ${name}`,
  newName: 'Nouveau nom',
  saveName: 'Enregistrer le nom',
  cancel: 'Annuler',
  exportOne: 'Exporter',
  exportOf: (name) => `Exporter ${name}`,
  remove: 'Supprimer',
  removeOf: (name) => `Supprimer ${name}`,
  removed: (name) => `${name} a été supprimé.`,
  bringBack: 'Le rétablir',
  makeOne: 'Créer un profil de caméra',
  importOne: 'Importer un profil',
  imported: (name) =>
    `${name} a été importé. Il compte pour les photos de sa propre caméra, et pour les fichiers dès qu’il est choisi ci-dessus.`,
  renamed: (name) => `Le profil s’appelle maintenant ${name}.`,
  broughtBack: (name) => `${name} est rétabli.`,
  keptForFiles: (name) => `${name} est gardé et compte désormais pour les photos de fichiers.`,
  keptForCamera: (name) => `${name} est gardé et compte désormais pour les photos de sa propre caméra.`,
  notKept:
    'Ce navigateur n’a pas pu garder les profils\u202f: sa mémoire est pleine, ou interdite. Rien n’est encore perdu, mais ils ne durent que jusqu’à la fermeture de cette page\u202f: exportez-les maintenant.',
  fileStem: 'glabella-profil-camera',

  fact: 'Profil de caméra',
  noneOfCamera: 'Pas de profil de cette caméra',
  notCounting: (profileRatio) =>
    `ne compte pas ici\u202f: il a été fait pour des photos en ${profileRatio}, et celle-ci a d’autres proportions`,
  paper: (name) => `Profil de caméra\u202f: ${name}.`,
};

/** Records, counted. */
function dossiers(count: number): string {
  return `${formatCount(count)} ${count < 2 ? 'dossier' : 'dossiers'}`;
}

const audit: Words['audit'] = {
  open: 'Passer des dossiers en revue',
  openSelected: 'Passer en revue',
  heading: 'Beaucoup de dossiers à la fois',
  actions: 'Dossiers',
  toSessions: 'Séances',
  toSheet: 'Revenir à la fiche',
  intro:
    'Chaque dossier est examiné comme une fiche\u202f: ce qui ne s’accorde pas, ce qui s’est sans doute passé et quel nombre était voulu. Rien n’est modifié, et rien ne quitte cet appareil.',

  drop: 'Déposez ici un tableau de dossiers (CSV), ou choisissez-le.',
  dropAnother: 'Déposez ici un autre tableau, ou choisissez-le.',
  choose: 'Choisir un tableau',
  chooseAnother: 'Choisir un autre tableau',
  kept: (count) =>
    count === 1
      ? 'Passer en revue la séance gardée ici'
      : `Passer en revue les ${formatCount(count)} séances gardées ici`,
  keptNone: 'Aucune séance n’est encore gardée ici.',
  unreadable: (count) =>
    count < 2
      ? `${count} séance est illisible et a été laissée de côté.`
      : `${formatCount(count)} séances sont illisibles et ont été laissées de côté.`,

  format: {
    open: 'Comment le tableau doit être fait',
    rules:
      'Un dossier par ligne. La première ligne nomme les colonnes, dans n’importe quel ordre\u202f; toutes peuvent manquer sauf un relevé, et des cellules peuvent être vides. Point ou virgule décimale\u202f; virgules, points-virgules ou tabulations entre les cellules\u202f; UTF-8.',
    table: 'Colonnes d’un tableau de dossiers',
    column: 'Colonne',
    holds: 'Ce qu’elle contient',
    record: 'le nom que vous donnez au dossier',
    reading:
      'ce qui a été relevé, par exemple l’EP\u202f; plusieurs répétitions dans une cellule, séparées par des espaces',
    offset: 'ce que l’instrument demande d’ajouter\u202f; le relevé est alors ce que montrait l’échelle',
    camera: 'ce qu’en dit la caméra',
    cameraUncertainty: 'un écart-type de cette valeur\u202f; les deux ou aucune',
    workingDistance: 'des verres à ce qui est regardé de près, en mm\u202f; 400 si elle manque',
    allReadings: 'Les noms de tous les relevés',
    saveExample: 'Enregistrer un exemple',
    tryExample: 'Passer l’exemple en revue',
    example: 'L’exemple a quatre dossiers inventés\u202f; deux contiennent des méprises.',
  },

  reading: 'Lecture et vérification du tableau.',
  readingSessions: (count, of) =>
    `${formatCount(count)} ${of < 2 ? 'séance' : 'séances'} sur ${formatCount(of)} en revue\u202f; lecture des suivantes.`,
  progress: (count, flagged) =>
    `${dossiers(count)} en revue, ${formatCount(flagged)} ${flagged < 2 ? 'signalé' : 'signalés'} jusqu’ici.`,
  stop: 'Arrêter',

  result: (flagged, all) =>
    flagged < 2
      ? all < 2
        ? 'Dans le seul dossier, quelque chose ne s’accorde pas.'
        : `Dans ${formatCount(flagged)} dossier sur ${formatCount(all)}, quelque chose ne s’accorde pas.`
      : `Dans ${formatCount(flagged)} dossiers sur ${formatCount(all)}, quelque chose ne s’accorde pas.`,
  none: (all) =>
    all < 2
      ? 'Le seul dossier n’a pas été signalé\u202f; cela ne prouve pas qu’il soit juste.'
      : `Aucun des ${formatCount(all)} dossiers n’a été signalé\u202f; cela ne prouve pas qu’ils soient justes.`,
  noneWhy:
    'Une méprise se voit là où d’autres relevés du même dossier la contredisent. S’il y en a peu, elle peut rester cachée\u202f; et un relevé faux mais vraisemblable ne se voit jamais.',
  stopped: (count, flagged) =>
    `Arrêté après ${dossiers(count)}\u202f: ${formatCount(flagged)} ${flagged < 2 ? 'signalé' : 'signalés'}. Les autres n’ont pas été passés en revue.`,
  ofTable: (name, time) => `${name}, en revue à ${time}.`,
  ofSessions: (count, isPart, time) =>
    `${isPart ? `${formatCount(count)} ${count < 2 ? 'séance choisie' : 'séances choisies'}` : count < 2 ? 'La seule séance gardée ici' : `Les ${formatCount(count)} séances gardées ici`}, en revue à ${time}.`,

  kinds: {
    refused: 'impossible',
    suspected: 'sans doute faux',
    disagrees: 'la caméra diverge',
    'readers-differ': 'opérateurs en désaccord',
    'far-off-repeat': 'répétition écartée',
    'does-not-add-up': 'somme fausse',
    unusual: 'seulement inhabituel',
  },

  tools: 'Ce qui est montré',
  search: 'Chercher',
  searchHint: 'nom, ligne, relevé, méprise, nombre',
  only: 'Seulement ceux-ci',
  counted: (name, count) => `${name} (${formatCount(count)})`,
  slip: 'Méprise',
  anySlip: 'toutes ou aucune',
  measurement: 'Relevé',
  anyMeasurement: 'tous',
  sortBy: 'Trier par',
  ascending: 'Croissant',
  descending: 'Décroissant',
  turnOrder: 'Inverser l’ordre',

  listed: (count, all) =>
    count === all
      ? `${formatCount(all)} ${all < 2 ? 'signalé' : 'signalés'}.`
      : `${formatCount(count)} sur ${formatCount(all)} ${all < 2 ? 'signalé' : 'signalés'}.`,
  noneFound: 'Rien de signalé ne correspond. Cherchez moins, ou retirez un filtre.',
  showAll: 'Montrer tout ce qui est signalé',

  pages: 'Pages de la liste',
  rows: (from, to, of) => `${formatCount(from)} à ${formatCount(to)} sur ${formatCount(of)}`,
  page: { first: 'Première', previous: 'Précédente', next: 'Suivante', last: 'Dernière' },

  table: 'Dossiers signalés',
  column: {
    place: 'Dossier',
    measurement: 'Relevé',
    written: 'Écrit',
    restored: 'Sans doute voulu',
    probability: 'Certitude',
    why: 'Pourquoi',
  },
  noName: 'Sans nom',
  line: (line) => `Ligne ${line}`,
  perhaps: (value) => `peut-être ${value}`,
  cause: (slips, probability) => `${slips}, ${probability}`,
  noSlip: 'aucune méprise courante',
  details: (count) => (count < 2 ? 'Détails' : `Les ${count} constats`),
  detailsOf: (count, record) => (count < 2 ? `Détails de ${record}` : `Les ${count} constats de ${record}`),
  wrongHere: (probability) => `Quelque chose est faux ici\u202f: ${probability}.`,
  gone: 'Supprimée depuis',
  openSession: 'Ouvrir cette séance',
  basis:
    'Certitude\u202f: la probabilité que quelque chose y soit faux, et après une méprise la probabilité de cette seule cause, avec des fréquences de méprises choisies\u202f; les deux sont plutôt trop basses.',

  save: 'Enregistrer ce qui est montré',
  saveCsv: 'En CSV',
  saveJson: 'En JSON',
  saveNote: 'Les noms des dossiers vont dans le fichier\u202f: quiconque l’a peut les lire.',
  making: (done, all) => `Écriture du fichier\u202f: ${formatCount(done)} sur ${formatCount(all)}.`,
  saved: (count, fileName) =>
    count < 2
      ? `${dossiers(count)} a été remis au navigateur sous le nom ${fileName}.`
      : `${dossiers(count)} ont été remis au navigateur sous le nom ${fileName}.`,

  refused: (problems) =>
    problems < 2
      ? 'Le tableau est refusé pour une erreur. Aucun dossier n’a été passé en revue.'
      : `Le tableau est refusé pour ${formatCount(problems)} erreurs. Aucun dossier n’a été passé en revue.`,
  refusedNext: 'Corrigez-le à ces endroits, enregistrez-le en CSV et choisissez-le de nouveau.',
  problems: 'Erreurs du tableau',
  problemPlace: 'Où',
  problem: 'Ce qui est faux, et que faire',
  moreProblems: (count) =>
    count < 2
      ? '1 autre erreur n’est pas montrée\u202f: corrigez d’abord celles-ci.'
      : `${formatCount(count)} autres erreurs ne sont pas montrées\u202f: corrigez d’abord celles-ci.`,
  fileUnreadable: {
    what: 'Le fichier est illisible.',
    next: 'Il a peut-être été déplacé ou modifié depuis. Choisissez-le de nouveau.',
  },
  auditStopped: {
    what: 'Ce qui passe les dossiers en revue n’a pas pu être chargé, ou s’est arrêté.',
    next: 'Rechargez cette page en étant connecté, fermez d’autres onglets si la mémoire manque, et essayez encore.',
  },
};

const recordProblem: Words['recordProblem'] = {
  file: 'Le fichier',
  line: (line) => `Ligne ${line}`,
  cell: (line, column, name) => `Ligne ${line}, colonne ${column}${name === '' ? '' : ` (${name})`}`,
  tooLarge: (megabytes, limit) =>
    `Le fichier fait ${megabytes} Mo\u202f; on peut en lire jusqu’à ${limit}. Partagez-le en plusieurs.`,
  utf16: 'Le fichier est en UTF-16. Enregistrez-le en CSV, en UTF-8.',
  notUtf8: 'Un caractère n’est pas en UTF-8. Enregistrez le fichier en CSV, en UTF-8.',
  nul: 'Il y a un octet NUL\u202f: ce n’est pas du texte en UTF-8. Enregistrez le fichier en CSV, en UTF-8.',
  empty: 'Le fichier est vide.',
  noHeader: (text) =>
    `La première ligne doit nommer les colonnes, mais contient «\u202f${text}\u202f». Mettez au-dessus une ligne avec leurs noms.`,
  unknownColumn: (name) => `Aucune colonne ne s’appelle «\u202f${name}\u202f». Renommez-la ou retirez-la.`,
  nearestColumn: (name, nearest) => `Aucune colonne ne s’appelle «\u202f${name}\u202f». Est-ce ${nearest}\u202f?`,
  unnamedColumn: 'Cette colonne n’a pas de nom. Nommez-la ou retirez-la.',
  duplicateColumn: (first) => `Ce nom est déjà celui de la colonne ${first}. Retirez l’une des deux.`,
  partnerMissing: (partner) => `À cette colonne il faut la colonne ${partner}.`,
  noReadings: 'Aucune colonne ne contient de relevé. Nommez-en au moins une.',
  noRecords: 'Il n’y a aucun dossier sous la ligne des noms. Écrivez-en un par ligne.',
  quotation:
    'Un guillemet n’est pas fermé, ou ne termine pas son champ\u202f; rien ne peut être lu ensuite. Fermez-le, ou doublez-le s’il fait partie du texte.',
  tooManyFields: (found, expected) =>
    `La ligne a ${counted(found, 'champ', 'champs')}, celle des noms ${expected}. Si des virgules séparent les champs, un nombre à virgule décimale demande des guillemets.`,
  tooFewFields: (found, expected) =>
    `La ligne a ${counted(found, 'champ', 'champs')}, celle des noms ${expected}. Les cellules vides demandent aussi leurs séparateurs.`,
  badNumber: (text) =>
    `«\u202f${text}\u202f» n’est pas un nombre. N’écrivez que des chiffres, et laissez la cellule vide si rien n’a été relevé.`,
  severalNumbers: (text) => `«\u202f${text}\u202f»\u202f: plusieurs nombres là où un seul est possible. Gardez-en un.`,
  notPositive: (text) => `«\u202f${text}\u202f» n’est pas au-dessus de zéro. Corrigez-le, ou videz la cellule.`,
  uncertaintyMissing:
    'Cette cellule est vide, mais l’estimation de la caméra est là\u202f: il lui faut son incertitude. Écrivez-la, ou videz les deux cellules.',
  estimateMissing:
    'Cette cellule est vide, mais l’incertitude de l’estimation de la caméra est là. Écrivez l’estimation, ou videz les deux cellules.',
};

const sessions: Words['sessions'] = {
  heading: 'Séances gardées',
  actions: 'Séances',
  begin: 'Nouvelle séance',
  backToSheet: 'Revenir à la fiche',
  handOnAll: 'Tout transmettre',
  bringIn: 'Importer un fichier',

  reading: 'Lecture des séances gardées.',
  none: 'Aucune séance n’est encore gardée. Commencez-en une\u202f: tout ce qui est saisi est gardé ici de soi-même.',
  noneFound: 'Aucune séance ne correspond. Cherchez moins, ou retirez un filtre.',
  showAll: 'Montrer toutes les séances',

  search: 'Chercher',
  searchHint: 'porteur, remarque, opérateur, EP, jour',
  origin: 'Prise',
  anywhere: 'partout',
  atTheDesk: 'au comptoir',
  atADistance: 'à distance',
  filters: 'Seulement où',
  filter: {
    misfits: 'quelque chose ne s’accorde pas',
    disagrees: 'la caméra diverge',
    'cannot-tell': 'la caméra ne peut pas trancher',
    'without-camera': 'aucune photo n’a été mesurée',
    open: 'des relevés attendent confirmation',
    confirmed: 'tout est confirmé',
    empty: 'rien n’est écrit',
  },
  filterCount: (filter, count) => `${filter} (${count})`,
  count: (count) => `${counted(count, 'séance', 'séances')}.`,
  countOf: (count, all) => `${counted(count, 'séance', 'séances')} sur ${all}.`,

  table: 'Séances',
  column: {
    wearer: 'Porteur',
    when: 'Quand',
    readers: 'Opérateurs',
    pd: 'EP',
    origin: 'Prise',
    state: 'État',
  },
  sortBy: 'Trier par',
  ascending: 'Croissant',
  descending: 'Décroissant',
  turnOrder: 'Inverser l’ordre',

  noName: 'Sans nom',
  openNow: 'sur la fiche maintenant',
  when: (day, time) => `${day}, ${time}`,
  changed: (when) => `modifiée\u202f: ${when}`,
  pd: (typed) => `${typed} mm`,
  desk: 'Au comptoir',
  distant: 'À distance, sans surveillance',
  state: {
    misfits: (count) => (count < 2 ? `${count} chose ne s’accorde pas` : `${count} choses ne s’accordent pas`),
    disagrees: (count) => (count < 2 ? 'La caméra diverge une fois' : `La caméra diverge ${count} fois`),
    open: (confirmed, written) => `Ouverte\u202f: ${counted(confirmed, 'confirmé', 'confirmés')} sur ${written}`,
    confirmed: (count) => (count < 2 ? 'Le seul relevé est confirmé' : `Les ${count} sont confirmés`),
    empty: 'Rien d’écrit',
  },
  showMore: (count) => `En montrer ${count} de plus`,

  select: (wearer, when) => `Sélectionner ${wearer}, ${when}`,
  selectAll: (count) => (count < 2 ? 'Sélectionner la séance de la liste' : `Sélectionner les ${count} de la liste`),
  selected: (count) => counted(count, 'séance sélectionnée', 'séances sélectionnées'),
  selection: 'La sélection',
  handOn: 'Transmettre',
  remove: 'Supprimer',
  letGo: 'Ne rien sélectionner',

  unreadable: (count) =>
    count < 2
      ? 'Une séance gardée n’est plus lisible. Les autres ne sont pas touchées.'
      : `${count} séances gardées ne sont plus lisibles. Les autres ne sont pas touchées.`,
  saveUnreadable: 'Enregistrer ce qui reste dans un fichier',
  unreadableSaved:
    'Ce qui reste a été remis au navigateur dans un fichier. Vous pouvez le montrer à qui s’occupe de Glabella.',
  removeUnreadable: 'Supprimer ce qui est illisible',
  unreadableStem: 'glabella-illisible',

  removal: {
    heading: (count) => (count < 2 ? 'Supprimer cette séance\u202f?' : `Supprimer ces ${count} séances\u202f?`),
    unreadableHeading: 'Supprimer ce qui est illisible\u202f?',
    cancel: 'Garder',
    what: 'Ceci disparaît pour de bon, sans retour possible\u202f:',
    goes: [
      'tous les relevés, les remarques et la prescription',
      'l’historique de chaque saisie',
      'ce que la caméra a dit, et les photos gardées',
    ],
    stays: 'Les fichiers déjà transmis restent où ils sont.',
    exportFirst: 'Transmettre d’abord',
    andMore: (count) => `et ${counted(count, 'autre', 'autres')}`,
    now: (count) => (count < 2 ? 'Supprimer pour de bon' : `En supprimer ${count} pour de bon`),
    done: (count) => (count < 2 ? 'La séance a été supprimée.' : `${count} séances ont été supprimées.`),
    unreadableDone: 'Ce qui était illisible a été supprimé.',
  },
};

const settings: Words['settings'] = {
  heading: 'Réglages',
  close: 'Fermer',
  reading: 'Relevé',
  covered: 'Cacher la valeur de la caméra jusqu’à la saisie du relevé manuel de sa ligne',
  coveredNote: 'Deux relevés ne sont indépendants que si le second opérateur ne connaît pas le premier.',
  workingDistance: 'Distance de travail pour l’EP de près, mm',
  workingDistanceNote: 'Du plan des verres à ce qui est regardé.',
  card: 'La carte',
  bought: 'Une carte du commerce au format ID-1 (carte bancaire, de santé ou de fidélité)',
  printed: 'La carte à repères imprimée',
  checkLength: 'Longueur mesurée de la ligne de 150 mm sur la feuille de la carte à repères, mm',
  checkLengthNote:
    'Les imprimantes changent l’échelle sans le dire. Mesurez la ligne avec un bon réglet et saisissez ce qu’il montre.',
  scaled: (percent) =>
    `Cette impression est à ${percent} de la taille réelle\u202f; les estimations en tiennent compte.`,
  trueSize: 'Cette impression est à taille réelle.',
  unchecked: 'Pas encore mesurée\u202f: l’impression est supposée à taille réelle.',
  picture: 'La photo',
  advanced: 'Avancé\u202f: un autre paquet de points du visage',
  bundleNote:
    'Glabella apporte ses propres points du visage. Si vous avez le paquet «\u202fface landmarker\u202f» de l’éditeur (un fichier .task), il peut servir à la place. Il n’est lu que sur cet appareil.',
  bundle: 'Choisir un paquet de points',
  bundleLoading: 'Lecture du paquet.',
  bundleUsed: (name) => `En service à partir de la prochaine photo\u202f: ${name}.`,
  bundleBack: 'Revenir aux points d’origine',
  builtIn: 'Les points d’origine sont en service.',
};

const standard: Words['standard'] = {
  offered: (name, edition) => `${name} (${edition})`,
  allFromMemory: (offered) => `${offered}, valeurs de mémoire`,
  progressiveFromMemory: (offered) => `${offered}, pour les progressifs de mémoire`,
};

// The page of a distant wearer: plain words for a layperson with a phone.

const PICTURE_UNUSED = 'Cette photo n’a pas pu être utilisée.';
const PICTURES_UNUSED = { what: 'Les photos n’ont pas pu être utilisées.', next: 'Réessayez.' };
const NO_CAMERA_PICTURE = 'La caméra ne donne pas d’image.';
const NOT_LOADED = 'Quelque chose n’a pas pu être chargé.';

const wearer: Words['wearer'] = {
  title: 'Première estimation pour vos lunettes',
  step: (number, all) => `Étape ${number} sur ${all}`,
  back: 'Retour',
  more: 'En savoir plus sur cette page',
  readAloud: 'Lire à haute voix',

  welcome: {
    heading: (practiceName) =>
      practiceName === ''
        ? 'Votre opticien vous demande une première estimation'
        : `${practiceName} vous demande une première estimation`,
    what: 'Avec la caméra de votre téléphone et une simple carte, cette page estime l’écart entre vos yeux. Cela prend environ cinq minutes.',
    points: (practiceName) => [
      'Les photos sont examinées sur votre téléphone. Elles ne le quittent pas d’elles-mêmes.',
      `À la fin, il y a un fichier chiffré. Personne d’autre que ${whom(practiceName)} ne peut l’ouvrir, et c’est vous qui l’envoyez.`,
      'Rien d’autre ne quitte votre téléphone, et rien n’y est gardé.',
      'C’est une estimation, pas une mesure. Votre opticien mesure à la main avant de faire des verres.',
    ],
    pictures: 'On vous demandera si deux photos découpées peuvent être jointes. Vous pouvez dire non.',
    expires: (date) => `L’invitation est valable jusqu’au ${date}.`,
    loads: (megabytes) => `Environ ${megabytes} Mo seront chargés. Le mieux est le Wi-Fi.`,
    begin: 'Commencer',
  },

  steps: {
    card: {
      heading: 'Prenez une carte',
      points: [
        'Toute carte de la taille d’une carte bancaire convient\u202f: carte de bibliothèque, carte de fidélité.',
        'Elle doit être rigide et plate.',
        'Protégez les numéros et les noms\u202f: le côté qui n’en a pas est tourné vers la caméra. Ou couvrez-les de papier.',
      ],
      caution: '',
      done: 'J’ai une carte',
      cannot: '',
    },
    printedCard: {
      heading: 'Prenez la carte imprimée',
      points: [
        'Prenez la carte imprimée que votre opticien vous a donnée.',
        'Elle doit être plate, pas pliée.',
        'Le motif imprimé est tourné vers la caméra.',
      ],
      caution: '',
      done: 'J’ai la carte',
      cannot: '',
    },
    face: {
      heading: 'Dégagez votre visage',
      points: [
        'Retirez vos lunettes. Les lentilles de contact peuvent rester.',
        'Écartez les cheveux du front et des yeux.',
      ],
      caution: '',
      done: 'J’ai retiré mes lunettes',
      cannot: 'Je garde mes lunettes',
    },
    light: {
      heading: 'Trouvez une bonne lumière',
      points: [
        'Asseyez-vous face à une fenêtre, de jour. Une pièce claire convient aussi.',
        'La lumière vient de face. Il n’y a pas de fenêtre claire derrière vous.',
      ],
      caution: 'Ne regardez jamais le soleil ni une lampe.',
      done: 'La lumière est bonne',
      cannot: 'Je n’ai pas cette lumière',
    },
    distance: {
      heading: 'Installez le téléphone',
      points: [
        'Posez le téléphone debout contre un support stable, à la hauteur de vos yeux.',
        'Asseyez-vous à une distance d’un demi-bras à un bras.',
        'Pas de support\u202f? Tenez-le d’une main, à la hauteur de vos yeux.',
      ],
      caution: '',
      done: 'Le téléphone est prêt',
      cannot: '',
    },
    hold: {
      heading: 'Tenez la carte contre votre front',
      points: [
        'Posez-la à plat sur le front, le grand côté horizontal.',
        'Tenez-la par un petit côté, du bout de deux doigts. Ses quatre bords sont visibles.',
        'Les cheveux gênent\u202f? Tenez-la à plat au-dessus ou au-dessous de la bouche.',
      ],
      caution: 'Gardez les bords de la carte loin de vos yeux.',
      done: 'Elle est à plat',
      cannot: 'Elle n’est pas à plat',
    },
    gaze: {
      heading: 'Regardez dans l’objectif',
      points: [
        'Regardez le petit objectif au bord de l’écran, pas votre propre image.',
        'Vous tournerez lentement la tête\u202f: à droite, à gauche, puis un peu plus près et en arrière. La page vous dit quand.',
        'Vos yeux restent tout le temps sur l’objectif. Carte et tête bougent ensemble.',
      ],
      caution: '',
      done: 'Ouvrir la caméra',
      cannot: '',
      permission:
        'Votre navigateur demandera l’accès à la caméra. Veuillez l’autoriser\u202f: les photos restent sur votre téléphone.',
    },
  },

  camera: {
    heading: 'Prenez les photos',
    opening: 'Ouverture de la caméra. Veuillez l’autoriser quand votre navigateur le demande.',
    ready: 'Tenez la carte contre votre front, regardez dans l’objectif, et appuyez sur Démarrer.',
    start: 'Démarrer',
    stop: 'Arrêter',
    goOn: 'Continuer',
    again: 'Réessayer',
    useThese: 'Utiliser ce qu’il y a',
    startsIn: (seconds) => `Début dans ${seconds}`,
    firstFrame: 'Ne bougez pas. Cela commence dans un instant.',
    loading: (percent) => `Chargement\u202f: ${percent}. Veuillez patienter.`,
    loadingAll: 'Chargement. Veuillez patienter.',
    steps: {
      hold: 'Ne bougez pas et regardez dans l’objectif.',
      'turn-R': 'Tournez lentement la tête à droite.',
      'turn-L': 'Tournez lentement la tête à gauche.',
      'to-middle': 'Revenez lentement au milieu.',
      nearer: 'Approchez-vous un peu.',
      farther: 'Reculez un peu.',
      back: 'Revenez où vous étiez.',
    },
    working: 'Vous pouvez vous reposer. Les photos sont examinées.',
    measuring: 'Vous pouvez vous reposer. L’estimation est calculée.',
    short: 'Pas encore assez. Tenez la carte comme avant et appuyez sur Continuer.',
    gaps: {
      'turned-R': 'Tournez la tête un peu plus à droite.',
      'turned-L': 'Tournez la tête un peu plus à gauche.',
      distance: 'Approchez-vous un peu, puis reculez.',
      frames: 'Allez lentement, pour qu’il y ait assez de photos.',
    },
    looked: (done, all) => `${counted(done, 'photo examinée', 'photos examinées')} sur ${all}`,
    mirrored: 'Vous vous voyez comme dans un miroir.',
  },

  hints: {
    'no-face': 'Votre visage n’est pas visible. Venez au milieu de l’image.',
    'several-faces': 'Il y a un autre visage dans l’image. Il ne doit y avoir que le vôtre.',
    'no-card': 'La carte n’est pas visible. Laissez ses quatre bords libres.',
    'several-cards': 'Il y a plus d’une carte. Rangez les autres.',
    'card-not-flat': 'La carte est pliée, ou un doigt cache un coin.',
    'card-tilted': 'La carte penche. Posez-la à plat sur le front.',
    'head-turned': 'Votre tête est trop tournée. Regardez vers la caméra.',
    'eyes-closed': 'Ouvrez grand les yeux, s’il vous plaît.',
    'iris-not-found': 'Vos yeux ne se voient pas bien. Tournez-vous vers la lumière.',
    blurred: 'L’image est floue. Bougez plus lentement.',
    'too-dark': 'Il fait trop sombre. Tournez le visage vers la fenêtre.',
    implausible: 'La carte semble avoir une autre taille. Prenez-en une au format bancaire.',
    'too-far': 'Approchez-vous de la caméra.',
    'picture-unsupported': PICTURE_UNUSED,
    'picture-broken': PICTURE_UNUSED,
    'picture-too-large': PICTURE_UNUSED,
    'video-unsupported': PICTURE_UNUSED,
    'video-broken': PICTURE_UNUSED,
    'camera-refused': NO_CAMERA_PICTURE,
    'camera-missing': NO_CAMERA_PICTURE,
    'camera-busy': NO_CAMERA_PICTURE,
    'camera-unplugged': NO_CAMERA_PICTURE,
    'camera-silent': NO_CAMERA_PICTURE,
    'camera-unsupported': NO_CAMERA_PICTURE,
    'model-not-loadable': NOT_LOADED,
    'vision-not-loadable': NOT_LOADED,
    'vision-stopped': 'Cette photo n’a pas pu être examinée.',
  },

  failure: {
    'too-few-frames': {
      what: 'Trop peu de photos ont pu être utilisées.',
      next: 'Réessayez, lentement, avec toute la carte et les deux yeux dans l’image, et la lumière de face.',
    },
    'card-not-still': {
      what: 'La carte n’est pas restée à sa place.',
      next: 'Réessayez. Tenez-la fermement, un doigt de la même main sur la tête.',
    },
    'frames-of-different-size': {
      what: 'Le téléphone a été tourné entre-temps.',
      next: 'Laissez-le comme il est, et réessayez.',
    },
    'no-face': {
      what: 'Votre visage n’a pas été trouvé.',
      next: 'Asseyez-vous pour que tout votre visage soit dans l’image, avec la lumière de face, et réessayez.',
    },
    'several-faces': {
      what: 'Il y avait plus d’un visage dans l’image.',
      next: 'Il ne doit y avoir que vous dans l’image. Attention aux affiches et aux miroirs derrière vous. Puis réessayez.',
    },
    'no-card': {
      what: 'La carte n’a pas été trouvée.',
      next: 'Tenez-la à plat sur le front, les quatre bords libres. Une carte plus claire ou plus foncée que votre peau est préférable.',
    },
    'several-cards': {
      what: 'Il y avait plus d’une carte dans l’image.',
      next: 'Rangez les autres et réessayez.',
    },
    'card-not-flat': {
      what: 'La carte était pliée, ou un doigt cachait un coin.',
      next: 'Prenez une carte plate, tenez-la par un petit côté, et réessayez.',
    },
    'card-tilted': {
      what: 'La carte penchait trop.',
      next: 'Posez-la à plat sur le front, tenez la tête droite, et mettez le téléphone à la hauteur de vos yeux.',
    },
    'head-turned': {
      what: 'Votre tête était trop tournée.',
      next: 'Placez-vous face à la caméra. Quand vous tournez, tournez seulement un peu. Puis réessayez.',
    },
    'eyes-closed': {
      what: 'Vos yeux étaient fermés.',
      next: 'Clignez une fois, puis gardez-les ouverts, et réessayez.',
    },
    'iris-not-found': {
      what: 'Vos yeux ne se voyaient pas bien.',
      next: 'Retirez vos lunettes, tournez-vous vers la lumière, approchez-vous un peu, et réessayez.',
    },
    blurred: {
      what: 'Les photos étaient floues.',
      next: 'Essuyez l’objectif du téléphone, bougez lentement, trouvez plus de lumière, et réessayez.',
    },
    'too-dark': {
      what: 'Il faisait trop sombre.',
      next: 'Asseyez-vous face à une fenêtre et réessayez. Ne regardez pas de lampe.',
    },
    implausible: {
      what: 'La carte et vos yeux ne s’accordent pas.',
      next: 'Prenez une autre carte, au format bancaire, tenez-la à plat sur le front, et réessayez.',
    },
    'too-far': {
      what: 'Vous étiez trop loin.',
      next: 'Approchez-vous, à environ un demi-bras, et réessayez.',
    },
    'picture-unsupported': PICTURES_UNUSED,
    'picture-broken': PICTURES_UNUSED,
    'picture-too-large': { what: 'Les photos sont trop grandes.', next: 'Essayez avec un autre téléphone.' },
    'video-unsupported': PICTURES_UNUSED,
    'video-broken': PICTURES_UNUSED,
    'camera-refused': {
      what: 'La caméra n’a pas été autorisée.',
      next: 'Autorisez la caméra pour cette page dans les réglages du navigateur\u202f: le plus souvent derrière le signe à côté de l’adresse. Puis réessayez.',
    },
    'camera-missing': {
      what: 'Aucune caméra n’a été trouvée.',
      next: 'Ouvrez le lien sur un téléphone, ou sur un ordinateur avec caméra.',
    },
    'camera-busy': {
      what: 'La caméra est déjà utilisée.',
      next: 'Fermez les autres applications qui utilisent la caméra, comme les appels, et réessayez.',
    },
    'camera-unplugged': { what: 'La caméra a été éteinte.', next: 'Réessayez.' },
    'camera-silent': {
      what: 'Aucune image ne vient de la caméra.',
      next: 'Fermez les autres applications qui utilisent la caméra, comme les appels. La suite vient d’elle-même, ou réessayez.',
    },
    'camera-unsupported': {
      what: 'Ce navigateur ne peut pas utiliser la caméra.',
      next: 'Ouvrez le lien dans le navigateur de votre téléphone, pas dans une autre application.',
    },
    'model-not-loadable': {
      what: 'Ce qui examine les photos n’a pas pu être chargé.',
      next: 'Vérifiez votre connexion internet et réessayez.',
    },
    'vision-not-loadable': {
      what: 'Ce qui examine les photos n’a pas pu être chargé.',
      next: 'Vérifiez votre connexion internet et réessayez. Si cela continue, ouvrez le lien dans un autre navigateur.',
    },
    'vision-stopped': {
      what: 'Votre téléphone a cessé d’examiner les photos.',
      next: 'Fermez les autres applications et réessayez.',
    },
  },
  noNetwork: {
    what: 'Il n’y a pas de connexion internet.',
    next: 'Connectez-vous à internet et réessayez.',
  },

  refused: {
    heading: 'Ce lien ne fonctionne pas',
    noInvitation: {
      what: 'Ce n’est pas une invitation.',
      next: 'Ouvrez le lien exactement comme votre opticien l’a envoyé.',
    },
    damaged: {
      what: 'Le lien n’est pas complet.',
      next: 'Ouvrez-le depuis le message même, ou copiez-le en entier. Si cela n’aide pas, demandez à votre opticien de le renvoyer.',
    },
    newer: {
      what: 'L’invitation a été créée par une version plus récente de cette page.',
      next: 'Connectez-vous à internet et rechargez la page.',
    },
    expired: (date, practiceName) => ({
      what: `L’invitation était valable jusqu’au ${date}.`,
      next: `Demandez-en une nouvelle à ${whom(practiceName)}.`,
    }),
    unsupported: {
      what: 'Ce navigateur ne sait pas faire ce qu’il faut.',
      next: 'Ouvrez le lien dans le navigateur de votre téléphone, dans sa dernière version, et pas dans une autre application.',
    },
    insecure: {
      what: 'Cette page n’est pas venue par une connexion sûre et n’a donc pas le droit d’utiliser la caméra.',
      next: 'Demandez à votre opticien un lien qui commence par https.',
    },
    loadAgain: 'Recharger la page',
  },

  result: {
    heading: 'Les photos sont prises',
    good: 'Elles sont assez bonnes.',
    better: 'Elles sont utilisables. Elles pourraient être meilleures\u202f:',
    single: 'Une seule photo a pu être utilisée. Tourner lentement la tête améliorerait l’estimation.',
    noNumbers: 'Votre opticien lit les nombres. Ils ne sont pas montrés ici.',
    again: 'Les reprendre',
    done: 'Créer le fichier',
    askPictures: 'Deux photos peuvent-elles être jointes\u202f?',
    pictures: 'Oui, joindre deux photos',
    picturesNote: 'Si vous ne cochez rien, aucune photo n’est envoyée.',
    consent: (practiceName, days) =>
      `J’accepte que deux photos soient jointes au fichier chiffré destiné à ${whom(practiceName)}, pour contrôler l’estimation. Elles sont découpées\u202f: les yeux, les côtés de la tête, et la carte, dont la face est rendue illisible. Elles sont supprimées au plus tard après ${counted(days, 'jour', 'jours')}, et avant cela dès que je le demande.`,
    noPicture: 'Aucune photo n’a pu être découpée. Le fichier est créé sans photos.',
  },

  advice: {
    'turn-further': 'Tournez la tête un peu plus des deux côtés.',
    'lean-more': 'Approchez-vous un peu, et reculez un peu plus.',
    'more-frames': 'Allez plus lentement, dans une bonne lumière.',
    'card-slipped': 'Tenez la carte fermement. Elle a glissé entre-temps.',
    'come-nearer': 'Approchez-vous de la caméra.',
    'eyes-elsewhere': 'Gardez tout le temps les yeux sur l’objectif.',
    'card-covered': 'Écartez doigts et cheveux des bords de la carte.',
    'turn-to-camera': 'Placez-vous face à la caméra.',
    'level-card': 'Tenez le grand côté de la carte horizontal.',
    'card-on-forehead': 'Tenez la carte sur le front, si vous le pouvez.',
    'check-points': 'Trouvez plus de lumière de face.',
  },
  conditions: {
    glasses: 'Sans lunettes, c’est plus exact.',
    light: 'Plus de lumière de face rend l’estimation plus exacte.',
    flat: 'Une carte bien à plat rend l’estimation plus exacte.',
  },

  file: {
    heading: 'Envoyez le fichier',
    making: 'Création du fichier.',
    ready: (practiceName) => `Le fichier est prêt. Personne d’autre que ${whom(practiceName)} ne peut l’ouvrir.`,
    withPictures: (count) => (count < 2 ? 'Une photo y est jointe.' : `${count} photos y sont jointes.`),
    withoutPictures: 'Aucune photo n’y est jointe.',
    how: (practiceName) =>
      `Envoyez-le à ${whom(practiceName)}\u202f: en pièce jointe, par la même voie que l’invitation.`,
    share: 'Envoyer le fichier',
    save: 'Enregistrer le fichier',
    saved: (name) =>
      `Le fichier a été enregistré sous le nom ${name}. Vous le trouvez dans vos téléchargements. Joignez-le à votre message.`,
    shared: 'Le fichier a été transmis. Assurez-vous que votre message est bien parti.',
    shareFailed: {
      what: 'Le fichier n’a pas pu être transmis d’ici.',
      next: 'Enregistrez-le, et joignez-le à votre message.',
    },
    keepOpen: 'Si vous fermez cette page avant d’envoyer ou d’enregistrer le fichier, il est perdu.',
    over: 'Vous pouvez maintenant fermer cette page. Elle ne garde rien sur votre téléphone.',
    shareTitle: 'Réponse à mon opticien',
    failed: {
      notLoadable: {
        what: 'Ce qui chiffre le fichier n’a pas pu être chargé.',
        next: 'Vérifiez votre connexion internet et réessayez.',
      },
      unsupported: {
        what: 'Ce navigateur ne peut pas chiffrer le fichier.',
        next: 'Ouvrez le lien dans le navigateur de votre téléphone, dans sa dernière version, et recommencez.',
      },
      noRecipient: {
        what: 'L’invitation n’a pas de clé qui fonctionne.',
        next: 'Demandez une nouvelle invitation à votre opticien.',
      },
    },
    again: 'Réessayer',
  },

  crash: {
    heading: 'Un problème est survenu',
    what: 'Cela n’aurait pas dû arriver. Rien n’a été envoyé.',
    again: 'Recommencer',
  },
};

/** What the tables cite in English, in French; what is not here is said as it is cited. */
const CITED: Readonly<Record<string, string>> = {
  '1.0 mm for each eye (ANSI Z80.1, progressive lenses), both eyes together; ANSI Z80.1-2015 allows a mounted pair 2.5 mm, and two methods of reading by hand lie 1.7 mm apart (95 % limits, 90 people, DOI 10.22038/rcm.2026.95415.1588)':
    '1,0 mm par œil (ANSI Z80.1, verres progressifs), les deux yeux ensemble\u202f; ANSI Z80.1-2015 admet 2,5 mm pour un équipement monté, et deux méthodes de relevé manuel diffèrent de 1,7 mm (limites à 95\u202f%, 90 personnes, DOI 10.22038/rcm.2026.95415.1588)',
  'ANSI Z80.1, progressive lenses: 1.0 mm horizontally at each fitting point':
    'ANSI Z80.1, verres progressifs\u202f: 1,0 mm horizontalement à chaque point de montage',
  'as for the far distance: 1.0 mm for each eye (ANSI Z80.1), both eyes together':
    'comme de loin\u202f: 1,0 mm par œil (ANSI Z80.1), les deux yeux ensemble',
  'as for the far distance: 1.0 mm for each eye (ANSI Z80.1, progressive lenses)':
    'comme de loin\u202f: 1,0 mm par œil (ANSI Z80.1, verres progressifs)',
  'two steps of the rule': 'deux pas du réglet',
  'two steps of the gauge; half a millimetre is less than one trained reading can decide (0.65 mm, 95 %)':
    'deux pas de l’instrument\u202f; un demi-millimètre est moins que ce qu’un relevé exercé peut trancher (0,65 mm, 95\u202f%)',
  'half of the normal range 10.8 to 12.8 mm (Hashemi et al. 2015, J Curr Ophthalmol 27:21-24)':
    'la moitié de l’étendue normale de 10,8 à 12,8 mm (Hashemi et al. 2015, J Curr Ophthalmol 27:21-24)',
  'sides are bent to fit within this': 'les branches se règlent dans cette marge',
  'one step of the radius gauges': 'un pas des gabarits de rayon',
  'pads are bent by about this; 1 mm is less than one trained reading can decide (1.13 mm, 95 %)':
    'les plaquettes se règlent d’à peu près autant\u202f; 1 mm est moins que ce qu’un relevé exercé peut trancher (1,13 mm, 95\u202f%)',
  'one step of gauges that are marked every 5 degrees': 'un pas des instruments gradués de 5 en 5 degrés',
  'shifts the front by less than 2 mm; 1 mm is less than one trained reading can decide (1.13 mm, 95 %)':
    'déplace la face de moins de 2 mm\u202f; 1 mm est moins que ce qu’un relevé exercé peut trancher (1,13 mm, 95\u202f%)',
  'a bend is moved by about this at the fitting; stock sides come in steps of 5 mm, half of one is 2.5 mm':
    'un coude se déplace d’à peu près autant à l’ajustage\u202f; les branches de stock vont de 5 en 5 mm, dont la moitié est 2,5 mm',
  'just above what one trained reading can decide (2.04 degrees, 95 %)':
    'juste au-dessus de ce qu’un relevé exercé peut trancher (2,04 degrés, 95\u202f%)',
  'one step of gauges that are marked every 5 degrees; drops are bent at the fitting':
    'un pas des instruments gradués de 5 en 5 degrés\u202f; les crosses se règlent à l’ajustage',
  'over a head of 150 mm it tilts the front by 0.8 degrees, which the eye begins to see':
    'sur une tête de 150 mm, cela penche la face de 0,8 degré, ce que l’œil commence à voir',
  'frames may differ from their marking by 0.5 mm (ISO 12870, from memory), which one trained reading cannot quite decide (0.57 mm, 95 %): two steps of the rule':
    'une monture peut différer de son marquage de 0,5 mm (ISO 12870, de mémoire), ce qu’un relevé exercé ne peut pas tout à fait trancher (0,57 mm, 95\u202f%)\u202f: deux pas du réglet',
  'sides may differ from their marking by 2.0 mm (ISO 12870, from memory), which one trained reading cannot quite decide (2.04 mm, 95 %)':
    'une branche peut différer de son marquage de 2,0 mm (ISO 12870, de mémoire), ce qu’un relevé exercé ne peut pas tout à fait trancher (2,04 mm, 95\u202f%)',
  'ANSI Z80.1, progressive lenses: 1.0 mm vertically at the fitting cross':
    'ANSI Z80.1, verres progressifs\u202f: 1,0 mm verticalement à la croix de montage',
  '2 mm change the effect of an 8 D lens by 0.13 D (effect F squared times distance)':
    '2 mm changent l’effet d’un verre de 8 D de 0,13 D (effet\u202f: carré de F fois la distance)',
  'just above what one trained reading can decide (2.04 degrees, 95 %); a front is bent more coarsely than that':
    'juste au-dessus de ce qu’un relevé exercé peut trancher (2,04 degrés, 95\u202f%)\u202f; une face se règle moins finement que cela',
  'McMahon, Irving, Lee 2012, Optom Vis Sci 89(6):901-907: repeated readings of a trained examiner, limits -1.04 to 1.20 mm, divided by 2 x 1.96 x sqrt 2':
    'McMahon, Irving, Lee 2012, Optom Vis Sci 89(6):901-907\u202f: relevés répétés d’un examinateur exercé, limites de -1,04 à 1,20 mm, divisées par 2 x 1,96 x racine de 2',
  'taken as for the binocular distance (McMahon et al. 2012): the midline is one more thing to judge, the second pupil one less':
    'pris comme pour l’écart binoculaire (McMahon et al. 2012)\u202f: la ligne médiane est une chose de plus à juger, la seconde pupille une de moins',
  'taken as for the far distance (McMahon et al. 2012)': 'pris comme de loin (McMahon et al. 2012)',
  'lids move and the rule is held free; about as a PD rule. Ruler against slit lamp differ by 0.12 mm in the mean (Nemet 2015, J Craniofac Surg)':
    'les paupières bougent et le réglet est tenu librement\u202f; à peu près comme un réglet à EP. Réglet et lampe à fente diffèrent de 0,12 mm en moyenne (Nemet 2015, J Craniofac Surg)',
  'a still edge on both sides, but the pupil breathes by some tenths of a millimetre: a little less than a PD':
    'un bord fixe des deux côtés, mais la pupille varie de quelques dixièmes de millimètre\u202f: un peu moins qu’un EP',
  'two still edges under one rule: a little less than a PD':
    'deux bords fixes sous un seul réglet\u202f: un peu moins qu’un EP',
  'calipers on soft skin and hair: 95 % of repeats within 3 mm':
    'compas sur peau souple et cheveux\u202f: 95\u202f% des répétitions à moins de 3 mm',
  'gauges stand 1 mm apart: two trained readers mostly choose the same one':
    'les gabarits vont de 1 en 1 mm\u202f: deux opérateurs exercés choisissent le plus souvent le même',
  'points on soft skin, with the height below the crest to judge: about a rule reading and a little more':
    'pointes sur peau souple, avec la hauteur sous la crête à juger\u202f: un relevé au réglet et un peu plus',
  'as at 10 mm below the crest': 'comme à 10 mm sous la crête',
  'an arm of about 20 mm laid along soft skin: half a millimetre at its end is 1.4 degrees':
    'un bras d’environ 20 mm posé le long d’une peau souple\u202f: un demi-millimètre à son bout fait 1,4 degré',
  'as the frontal angle': 'comme l’angle frontal',
  'two levels to judge, lid and crest: about a rule reading and a little more':
    'deux niveaux à juger, paupière et crête\u202f: un relevé au réglet et un peu plus',
  'two levels to judge, lashes and crest: about a rule reading and a little more':
    'deux niveaux à juger, cils et crête\u202f: un relevé au réglet et un peu plus',
  'the ear point is a place on a curve: 95 % of repeats within 2 mm':
    'le point d’oreille est un endroit sur une courbe\u202f: 95\u202f% des répétitions à moins de 2 mm',
  '95 mm of side: 1.7 mm at the ear point is one degree':
    '95 mm de branche\u202f: 1,7 mm au point d’oreille fait un degré',
  'short arm along a curved groove: 95 % of repeats within 4 degrees':
    'bras court le long d’un sillon courbe\u202f: 95\u202f% des répétitions à moins de 4 degrés',
  'half of the scatter of two lengths at the ears (1 mm each): both ends are seen against one straight edge':
    'la moitié de la dispersion de deux longueurs aux oreilles (1 mm chacune)\u202f: les deux bouts se voient contre un seul bord droit',
  'a rule on a still, hard frame: half of a step of the rule':
    'un réglet sur une monture rigide et immobile\u202f: la moitié d’un pas du réglet',
  'a bent side is followed by hand; stock comes in steps of 5 mm':
    'une branche courbe se suit à la main\u202f; le stock va de 5 en 5 mm',
  'a PD reading (0.404 mm) and a little more for the mark on the lens':
    'un relevé d’EP (0,404 mm) et un peu plus pour la marque sur le verre',
  'two levels to judge, lens and cornea: about a rule reading and a little more':
    'deux niveaux à juger, verre et cornée\u202f: un relevé au réglet et un peu plus',
  'the head is never held quite alike: 95 % of repeats within 2 degrees':
    'la tête n’est jamais tenue tout à fait pareil\u202f: 95\u202f% des répétitions à moins de 2 degrés',
  'a curved front against a protractor: 95 % of repeats within 2 degrees':
    'une face courbe contre un rapporteur\u202f: 95\u202f% des répétitions à moins de 2 degrés',
  '6068 adults of 17 to 58 years, men and women pooled, ANSUR II 2012 (Gordon et al., Natick/TR-15/007)':
    '6068 adultes de 17 à 58 ans, hommes et femmes ensemble, ANSUR II 2012 (Gordon et al., Natick/TR-15/007)',
  'half of the binocular distance; its spread joined with half of the 1.92 mm by which sides differ (32 people, classroom data)':
    'la moitié de l’écart binoculaire\u202f; sa dispersion jointe à la moitié des 1,92 mm dont les côtés diffèrent (32 personnes, données de cours)',
  'binocular distance brought to 400 mm with NCD = P W / (W + 27)':
    'écart binoculaire ramené à 400 mm par NCD = P W / (W + 27)',
  'distance of each eye brought to 400 mm with 400 / 427': 'écart de chaque œil ramené à 400 mm par 400 / 427',
  '76 young adults in primary gaze, Read et al. 2006, DOI 10.1097/01.opx.0000236811.78177.97':
    '76 jeunes adultes, regard droit devant, Read et al. 2006, DOI 10.1097/01.opx.0000236811.78177.97',
  'in room light, between 3.0 to 4.7 mm in bright light (379 people, Sanchis-Gimeno et al. 2012) and 4.03 mm (sd 0.9) at 16 lx (91 people, DOI 10.5301/ejo.5001027)':
    'à la lumière d’une pièce, entre 3,0 à 4,7 mm en lumière vive (379 personnes, Sanchis-Gimeno et al. 2012) et 4,03 mm (écart-type 0,9) à 16 lx (91 personnes, DOI 10.5301/ejo.5001027)',
  '390 people, Ruefer, Schroeder, Erb 2005, Cornea 24(3):259-261, DOI 10.1097/01.ico.0000148312.01805.53':
    '390 personnes, Ruefer, Schroeder, Erb 2005, Cornea 24(3):259-261, DOI 10.1097/01.ico.0000148312.01805.53',
  'mean of men 154.2 (sd 9.1) and women 145.4 (sd 8.9), Maseedupalli et al. 2023, DOI 10.4103/ijo.IJO_954_22; both pooled half and half':
    'moyenne des hommes 154,2 (écart-type 9,1) et des femmes 145,4 (écart-type 8,9), Maseedupalli et al. 2023, DOI 10.4103/ijo.IJO_954_22\u202f; réunis moitié-moitié',
  'the usual 110 to 150 mm taken as two standard deviations each way':
    'les 110 à 150 mm habituels pris comme deux écarts-types de chaque côté',
  'within the usual 6 to 12 mm (from memory); 8.5 rather than 9 so that the widths that follow lie within their usual ranges too':
    'dans les 6 à 12 mm habituels (de mémoire)\u202f; 8,5 plutôt que 9 pour que les largeurs qui en découlent restent aussi dans leur étendue habituelle',
  'follows from the means and spreads of apical radius and frontal angle: 2 (r + (h - r) sin phi) / cos phi at h = 10 mm, flanks that touch the arc of the crest':
    'découle des moyennes et dispersions du rayon apical et de l’angle frontal\u202f: 2 (r + (h - r) sin phi) / cos phi à h = 10 mm, flancs tangents à l’arc de la crête',
  'follows from the means and spreads of apical radius and frontal angle: 2 (r + (h - r) sin phi) / cos phi at h = 15 mm, flanks that touch the arc of the crest':
    'découle des moyennes et dispersions du rayon apical et de l’angle frontal\u202f: 2 (r + (h - r) sin phi) / cos phi à h = 15 mm, flancs tangents à l’arc de la crête',
  'within the usual 15 to 35 degrees (from memory), towards its lower half so that the nose widths that follow lie within their usual ranges too':
    'dans les 15 à 35 degrés habituels (de mémoire), vers la moitié basse pour que les largeurs du nez qui en découlent restent aussi dans leur étendue habituelle',
  'the usual 15 to 40 degrees (from memory) taken as two standard deviations each way':
    'les 15 à 40 degrés habituels (de mémoire) pris comme deux écarts-types de chaque côté',
  'the usual 0 to 9 mm, lower on low bridges (from memory), taken as about two standard deviations each way':
    'les 0 à 9 mm habituels, moins sur les ponts bas (de mémoire), pris comme environ deux écarts-types de chaque côté',
  'the usual -4 to 6 mm (from memory) taken as two standard deviations each way':
    'les -4 à 6 mm habituels (de mémoire) pris comme deux écarts-types de chaque côté',
  'the middle of the usual 80 to 110 mm (from memory), which is taken as two and a half standard deviations each way':
    'le milieu des 80 à 110 mm habituels (de mémoire), pris comme deux écarts-types et demi de chaque côté',
  'the middle of the usual 75 to 105 mm (from memory), which is taken as two and a half standard deviations each way':
    'le milieu des 75 à 105 mm habituels (de mémoire), pris comme deux écarts-types et demi de chaque côté',
  'the middle of the usual 30 to 50 mm (from memory), which is taken as two standard deviations each way':
    'le milieu des 30 à 50 mm habituels (de mémoire), pris comme deux écarts-types de chaque côté',
  'the usual 0 to 15 degrees (from memory) taken as about two standard deviations each way':
    'les 0 à 15 degrés habituels (de mémoire) pris comme environ deux écarts-types de chaque côté',
  'the usual 35 to 60 degrees (from memory) taken as two standard deviations each way':
    'les 35 à 60 degrés habituels (de mémoire) pris comme deux écarts-types de chaque côté',
  'the usual 0 to 20 degrees (from memory) taken as two standard deviations each way':
    'les 0 à 20 degrés habituels (de mémoire) pris comme deux écarts-types de chaque côté',
  'half of the people within 1.3 mm, one in twenty beyond 4 mm':
    'la moitié des personnes à moins de 1,3 mm, une sur vingt au-delà de 4 mm',
  'adult frames, mostly marked 46 to 56': 'montures d’adultes, le plus souvent marquées de 46 à 56',
  'adult frames from narrow (28 mm) to deep (48 mm)': 'montures d’adultes, de basses (28 mm) à hautes (48 mm)',
  'adult frames, mostly marked 14 to 22': 'montures d’adultes, le plus souvent marquées de 14 à 22',
  'length to bend and length of drop added, their spreads joined; the middle of the usual 120 to 150 mm':
    'longueur au coude et longueur de crosse additionnées, leurs dispersions jointes\u202f; le milieu des 120 à 150 mm habituels',
  'a box of 38 mm with the pupil 2 mm above its middle; deeper and narrower frames 15 to 27 mm':
    'un rectangle de 38 mm avec la pupille 2 mm au-dessus du milieu\u202f; montures plus hautes et plus basses de 15 à 27 mm',
  'the usual 10 to 16 mm, mostly 12 to 14 (from memory), taken as two standard deviations each way':
    'les 10 à 16 mm habituels, le plus souvent 12 à 14 (de mémoire), pris comme deux écarts-types de chaque côté',
  'usual 8, from 5 to 12 degrees (from memory), a little wider than one standard deviation each way':
    'habituellement 8, de 5 à 12 degrés (de mémoire), un peu plus large qu’un écart-type de chaque côté',
  'the usual 0 to 10 degrees of ordinary fronts (from memory); wrapped fronts go up to 25':
    'les 0 à 10 degrés habituels des faces ordinaires (de mémoire)\u202f; les faces galbées vont jusqu’à 25',
  '32 people, classroom data of 1998 by untrained readers, whose own scatter is in it':
    '32 personnes, données de cours de 1998 d’opérateurs non exercés, dont la propre dispersion y est comprise',
  'as far, 1.92 mm brought to 400 mm with 400 / 427': 'comme de loin, 1,92 mm ramenés à 400 mm par 400 / 427',
  '2 mm between the lids are a sign of a drooping lid (More than meets the eye, Plast Aesthet Res 2021;8:1): taken as three standard deviations':
    '2 mm entre les paupières sont le signe d’une paupière tombante (More than meets the eye, Plast Aesthet Res 2021;8:1)\u202f: pris comme trois écarts-types',
  'difference without regard to side 0.19 mm (sd 0.26), 91 people, infrared pupillometry, DOI 10.5301/ejo.5001027: root of the sum of squares':
    'différence sans égard au côté 0,19 mm (écart-type 0,26), 91 personnes, pupillométrie infrarouge, DOI 10.5301/ejo.5001027\u202f: racine de la somme des carrés',
  'few noses are quite straight: nine in ten within one step of 5 degrees':
    'peu de nez sont tout à fait droits\u202f: neuf sur dix à un pas de 5 degrés près',
  'eyes of unequal height: two in three within 1 mm, the first difference that a fitter notices':
    'yeux de hauteur inégale\u202f: deux sur trois à moins de 1 mm, première différence que remarque un ajusteur',
  'ears seldom sit quite alike: nineteen in twenty within 4 mm':
    'les oreilles sont rarement tout à fait pareilles\u202f: dix-neuf sur vingt à moins de 4 mm',
  'as the length to bend': 'comme la longueur au coude',
  'ear points that differ by 2 mm in height give 1.2 degrees over 95 mm; the rest for the sides themselves':
    'des points d’oreille qui diffèrent de 2 mm en hauteur font 1,2 degré sur 95 mm\u202f; le reste pour les branches mêmes',
  'nine in ten within 7 degrees, a little more than one step of the gauges':
    'neuf sur dix à moins de 7 degrés, un peu plus qu’un pas des instruments',
  'nine in ten within one step of 5 degrees': 'neuf sur dix à un pas de 5 degrés près',
  'the same unequal height of the eyes as in the crest height':
    'la même inégalité de hauteur des yeux que dans la hauteur de crête',
  'one eye more forward than the other: nineteen in twenty within 1.4 mm; 2 mm and more are looked at in a clinic':
    'un œil plus en avant que l’autre\u202f: dix-neuf sur vingt à moins de 1,4 mm\u202f; à partir de 2 mm, on examine en clinique',
  'ISO 13666, interpupillary distance, own wording': 'ISO 13666, écart interpupillaire, nos propres termes',
  'ISO 13666, monocular centration distance, own wording':
    'ISO 13666, écart de centrage monoculaire, nos propres termes',
  'textbooks of dispensing optics, own wording': 'manuels d’optique-lunetterie, nos propres termes',
  'palpebral aperture in primary gaze, Read et al. 2006, own wording':
    'ouverture palpébrale, regard droit devant, Read et al. 2006, nos propres termes',
  'common practice, own wording': 'usage courant, nos propres termes',
  'white-to-white diameter, Ruefer et al. 2005, own wording':
    'diamètre de blanc à blanc, Ruefer et al. 2005, nos propres termes',
  'BS 3521-2 / ISO 7998, own wording': 'BS 3521-2 / ISO 7998, nos propres termes',
  'BS 3521-2 / ISO 7998, distance between rims, own wording':
    'BS 3521-2 / ISO 7998, écart entre cercles, nos propres termes',
  'BS 3521-2 / ISO 7998, bridge height, own wording': 'BS 3521-2 / ISO 7998, hauteur du pont, nos propres termes',
  'BS 3521-2 / ISO 7998, projection, own wording': 'BS 3521-2 / ISO 7998, saillie, nos propres termes',
  'BS 3521-2 / ISO 7998, front to bend, own wording': 'BS 3521-2 / ISO 7998, longueur face-coude, nos propres termes',
  'ISO 8624, horizontal boxed lens size, own wording':
    'ISO 8624, dimension horizontale boxing du verre, nos propres termes',
  'ISO 8624, vertical boxed lens size, own wording':
    'ISO 8624, dimension verticale boxing du verre, nos propres termes',
  'ISO 8624:2011, clause 2, own wording': 'ISO 8624:2011, article 2, nos propres termes',
  'ISO 13666, fitting point height, own wording': 'ISO 13666, hauteur du point de montage, nos propres termes',
  'ISO 13666, vertex distance, own wording': 'ISO 13666, distance verre-œil, nos propres termes',
  'ISO 13666, as-worn pantoscopic angle, own wording': 'ISO 13666, angle pantoscopique porté, nos propres termes',
  'ISO 13666, face form angle, own wording': 'ISO 13666, angle de galbe, nos propres termes',
  'ANSI Z80.1-2015, mounted pairs, as three summaries report it; the editions of 1999 and 2010 agree, that of 2020 was not compared':
    'ANSI Z80.1-2015, équipements montés, tel que trois résumés le rapportent\u202f; les éditions de 1999 et 2010 concordent, celle de 2020 n’a pas été comparée',
  'ANSI Z80.1-1999, progressive lenses, as a summary reports it; the power limit of 3.375 D of later editions is from memory':
    'ANSI Z80.1-1999, verres progressifs, tel qu’un résumé le rapporte\u202f; la limite de puissance de 3,375 D des éditions ultérieures est de mémoire',
  'ANSI Z80.1, segments (2015) and fitting points (1999), as summaries report them':
    'ANSI Z80.1, segments (2015) et points de montage (1999), tels que des résumés les rapportent',
  'ISO 21987 (2009, 2017), table of prism imbalance, from memory':
    'ISO 21987 (2009, 2017), tableau du déséquilibre prismatique, de mémoire',
  'ISO 21987 (2009, 2017), fitting point, from memory': 'ISO 21987 (2009, 2017), point de montage, de mémoire',
};

const source: Words['source'] = {
  cited: (text) => CITED[text] ?? text,
};

const shortcut: Words['shortcut'] = {
  heading: 'Touches',
  close: 'Fermer',
  intro: 'Tout s’atteint aussi avec la touche Tab. Ces touches sont plus courtes.',
  groups: {
    anywhere: 'Partout',
    readings: 'Dans un relevé',
    search: 'Dans la recherche d’une mesure',
    prescription: 'Dans la prescription',
    picture: 'Sur un point de la photo',
    sessions: 'Dans la liste des séances',
    plots: 'Dans les dessins d’un instrument ou d’un opérateur',
    dialogs: 'Dans un dialogue',
  },
  does: {
    list: 'Afficher ces touches',
    undo: 'Annuler la dernière étape',
    redo: 'La rétablir',
    search: 'Aller à une mesure par son nom',
    nextReading: 'Inscrire et passer au suivant',
    previousReading: 'Inscrire et revenir au précédent',
    rowBelow: 'Inscrire et passer à la ligne du dessous',
    rowAbove: 'Inscrire et passer à la ligne du dessus',
    nextFound: 'Résultat suivant',
    previousFound: 'Résultat précédent',
    goToFound: 'Aller au résultat marqué',
    leaveSearch: 'Quitter la recherche',
    nextPlace: 'Champ suivant',
    previousPlace: 'Champ précédent',
    movePoint: 'Le déplacer de 1 pixel',
    movePointFinely: 'Le déplacer de 0,1 pixel',
    intoSessions: 'De la recherche à la liste',
    nextSession: 'Séance suivante',
    previousSession: 'Séance précédente',
    firstSession: 'Première séance',
    lastSession: 'Dernière séance',
    nextDifference: 'Relevé suivant par jour',
    previousDifference: 'Relevé précédent',
    tenDifferencesOn: 'Dix relevés plus loin',
    tenDifferencesBack: 'Dix relevés plus tôt',
    firstDifference: 'Premier relevé',
    lastDifference: 'Dernier relevé',
    openDifference: 'Ouvrir sa séance',
    closeDialog: 'Fermer le dialogue',
  },
  keys: {
    command: 'Ctrl',
    shift: 'Maj',
    enter: 'Entrée',
    escape: 'Échap',
    home: 'Début',
    end: 'Fin',
    pageup: 'Page haut',
    pagedown: 'Page bas',
    arrowup: 'Flèche haut',
    arrowdown: 'Flèche bas',
    arrowleft: 'Flèche gauche',
    arrowright: 'Flèche droite',
  },
  or: 'ou',
  apple: 'Sur un clavier Apple, Commande remplace Ctrl.',
  undoNote:
    'Ce qui est saisi dans un champ forme une seule étape tant que vous ne quittez pas ce champ. Jusqu’à 200 étapes sont gardées tant que la séance est ouverte\u202f; rien n’en est enregistré. Les relevés inscrits ne sont jamais retirés\u202f: ce qui revient par annulation est inscrit une nouvelle fois, et l’autre reste sur la fiche.',
  undoNot:
    'Ne s’annulent pas\u202f: les réglages du magasin et de cet appareil, ni ce qui l’a quitté, comme les fichiers enregistrés.',
  single: 'Accepter des caractères seuls comme touches',
  singleNote:
    'Désactivez cette option si vous dictez\u202f: les paroles les déclencheraient. F1 affiche cette liste dans tous les cas.',
};

const undo: Words['undo'] = {
  undo: 'Annuler',
  redo: 'Rétablir',
  group: 'Annuler et rétablir',
  nothing: { undo: 'Annuler\u202f: rien à annuler', redo: 'Rétablir\u202f: rien à rétablir' },
  undoes: (act) => `Annuler\u202f: ${act}`,
  redoes: (act) => `Rétablir\u202f: ${act}`,
  undone: (act) => `Annulé\u202f: ${act}.`,
  redone: (act) => `Rétabli\u202f: ${act}.`,
  reading: (name, text) => `${name} ${text}`,
  cleared: (name) => `${name}, effacé`,
  restoration: (names) => `correction\u202f: ${names}`,
  readerChosen: { first: 'fiche du premier opérateur ouverte', second: 'fiche du second opérateur ouverte' },
  readerNamed: { first: 'nom du premier opérateur', second: 'nom du second opérateur' },
  confirmed: (name) => `confirmation\u202f: ${name}`,
  confirmedMany: (count) => `confirmation de ${counted(count, 'relevé', 'relevés')}`,
  withdrawn: (name) => `retrait de la confirmation\u202f: ${name}`,
  withdrawnMany: (count) => `retrait de ${counted(count, 'confirmation', 'confirmations')}`,
  note: {
    wearer: 'nom ou numéro du porteur',
    light: 'lumière lors du relevé des pupilles',
    remark: 'remarque',
    squint: 'strabisme',
  },
  lensKind: 'type de verres',
  gauge: (name) => `instrument pour ${name}`,
  gaze: 'direction du regard du porteur',
  shownAlone: 'estimations montrées avant tout relevé',
  covered: 'estimations de nouveau couvertes',
  picture: 'photo',
  sweep: 'balayage',
  putAway: 'photo rangée',
  cornersBegun: 'pose des coins commencée',
  cornersPlaced: 'coins posés',
  moved: (handle) => `${handle}, déplacé`,
  reset: 'retour à ce qui a été trouvé',
  frameOut: (number) => `image ${number} écartée`,
  frameIn: (number) => `image ${number} reprise`,
};

export const words: Words = {
  grammar: { list },
  measurements,
  agreement,
  crash,
  demo,
  desk,
  doubtSource,
  finding,
  footer,
  frameFailure,
  hand,
  header,
  helpButton,
  holding,
  language,
  lengthFailure,
  measuringFailure,
  misfit,
  news,
  notes,
  offline,
  pictureAdvice,
  picture,
  progress,
  reader,
  readingFailure,
  ruler,
  search,
  sheet,
  slip,
  slipsInShort,
  status,
  store,
  strip,
  sweepAdvice,
  sweepFailure,
  sweepGap,
  sweep,
  audit,
  recordProblem,
  boardFailure,
  boardVerdict,
  budget,
  camera,
  conflict,
  costSaying,
  cost,
  differences,
  entryFailure,
  gaugeProblem,
  handOn,
  handle,
  help,
  history,
  invitations,
  keptPicture,
  lensCaution,
  live,
  lock,
  orderDoubt,
  order,
  overSessions,
  paper,
  position,
  practiceProblems,
  practice,
  prescriptionQuestion,
  prescription,
  print,
  profileFile,
  profileWeakness,
  profile,
  sessions,
  settings,
  shortcut,
  standard,
  undo,
  wearer,
  source,
};
