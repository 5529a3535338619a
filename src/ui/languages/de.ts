import type { Words } from '../language.js';
import { formatCount, formatNumber } from '../numbers.js';
import type { Saying } from '../saying.js';
import type { SlipFacts } from '../slip-words.js';
import type { ConflictFacts, SumFacts } from '../conflict-words.js';
import type { RemedyFacts } from '../budget-words.js';
/** What the tables give as sources, in German; names of standards and papers stay as they are. */
const SOURCES: Readonly<Record<string, string>> = {
  'two steps of the rule': 'zwei Schritte des Lineals',
  '1.0 mm for each eye (ANSI Z80.1, progressive lenses), both eyes together; ANSI Z80.1-2015 allows a mounted pair 2.5 mm, and two methods of reading by hand lie 1.7 mm apart (95 % limits, 90 people, DOI 10.22038/rcm.2026.95415.1588)':
    '1,0 mm je Auge (ANSI Z80.1, Gleitsichtgläser), beide Augen zusammen; ANSI Z80.1-2015 erlaubt einem verglasten Paar 2,5 mm, und zwei Verfahren von Hand liegen 1,7 mm auseinander (95-%-Grenzen, 90 Personen, DOI 10.22038/rcm.2026.95415.1588)',
  'ANSI Z80.1, progressive lenses: 1.0 mm horizontally at each fitting point':
    'ANSI Z80.1, Gleitsichtgläser: 1,0 mm waagerecht an jedem Anpasspunkt',
  'as for the far distance: 1.0 mm for each eye (ANSI Z80.1), both eyes together':
    'wie für die Ferne: 1,0 mm je Auge (ANSI Z80.1), beide Augen zusammen',
  'as for the far distance: 1.0 mm for each eye (ANSI Z80.1, progressive lenses)':
    'wie für die Ferne: 1,0 mm je Auge (ANSI Z80.1, Gleitsichtgläser)',
  'two steps of the gauge; half a millimetre is less than one trained reading can decide (0.65 mm, 95 %)':
    'zwei Schritte des Messmittels; ein halber Millimeter ist weniger, als eine geübte Messung entscheiden kann (0,65 mm, 95 %)',
  'half of the normal range 10.8 to 12.8 mm (Hashemi et al. 2015, J Curr Ophthalmol 27:21-24)':
    'die Hälfte des Normbereichs 10,8 bis 12,8 mm (Hashemi et al. 2015, J Curr Ophthalmol 27:21-24)',
  'sides are bent to fit within this': 'Bügel werden beim Anpassen um so viel gebogen',
  'one step of the radius gauges': 'ein Schritt der Radiuslehren',
  'pads are bent by about this; 1 mm is less than one trained reading can decide (1.13 mm, 95 %)':
    'Nasenpads werden um etwa so viel gebogen; 1 mm ist weniger, als eine geübte Messung entscheiden kann (1,13 mm, 95 %)',
  'one step of gauges that are marked every 5 degrees': 'ein Schritt von Messmitteln mit Strichen alle 5 Grad',
  'shifts the front by less than 2 mm; 1 mm is less than one trained reading can decide (1.13 mm, 95 %)':
    'verschiebt die Front um weniger als 2 mm; 1 mm ist weniger, als eine geübte Messung entscheiden kann (1,13 mm, 95 %)',
  'a bend is moved by about this at the fitting; stock sides come in steps of 5 mm, half of one is 2.5 mm':
    'der Knick wird beim Anpassen um etwa so viel versetzt; Lagerbügel gibt es in Schritten von 5 mm, die Hälfte davon sind 2,5 mm',
  'just above what one trained reading can decide (2.04 degrees, 95 %)':
    'knapp über dem, was eine geübte Messung entscheiden kann (2,04 Grad, 95 %)',
  'one step of gauges that are marked every 5 degrees; drops are bent at the fitting':
    'ein Schritt von Messmitteln mit Strichen alle 5 Grad; Bügelenden werden beim Anpassen gebogen',
  'over a head of 150 mm it tilts the front by 0.8 degrees, which the eye begins to see':
    'über einen Kopf von 150 mm neigt es die Front um 0,8 Grad; das beginnt das Auge zu sehen',
  'frames may differ from their marking by 0.5 mm (ISO 12870, from memory), which one trained reading cannot quite decide (0.57 mm, 95 %): two steps of the rule':
    'Fassungen dürfen um 0,5 mm von ihrer Prägung abweichen (ISO 12870, aus dem Gedächtnis), was eine geübte Messung nicht ganz entscheiden kann (0,57 mm, 95 %): zwei Schritte des Lineals',
  'sides may differ from their marking by 2.0 mm (ISO 12870, from memory), which one trained reading cannot quite decide (2.04 mm, 95 %)':
    'Bügel dürfen um 2,0 mm von ihrer Prägung abweichen (ISO 12870, aus dem Gedächtnis), was eine geübte Messung nicht ganz entscheiden kann (2,04 mm, 95 %)',
  'ANSI Z80.1, progressive lenses: 1.0 mm vertically at the fitting cross':
    'ANSI Z80.1, Gleitsichtgläser: 1,0 mm senkrecht am Zentrierkreuz',
  '2 mm change the effect of an 8 D lens by 0.13 D (effect F squared times distance)':
    '2 mm ändern die Wirkung eines Glases von 8 D um 0,13 D (Wirkung: F zum Quadrat mal Abstand)',
  'just above what one trained reading can decide (2.04 degrees, 95 %); a front is bent more coarsely than that':
    'knapp über dem, was eine geübte Messung entscheiden kann (2,04 Grad, 95 %); eine Front wird gröber gebogen',
  '6068 adults of 17 to 58 years, men and women pooled, ANSUR II 2012 (Gordon et al., Natick/TR-15/007)':
    '6068 Erwachsene von 17 bis 58 Jahren, Männer und Frauen zusammen, ANSUR II 2012 (Gordon et al., Natick/TR-15/007)',
  'half of the binocular distance; its spread joined with half of the 1.92 mm by which sides differ (32 people, classroom data)':
    'die Hälfte der beidäugigen PD; ihre Streuung vereint mit der Hälfte der 1,92 mm, um die sich die Seiten unterscheiden (32 Personen, Unterrichtsdaten)',
  'binocular distance brought to 400 mm with NCD = P W / (W + 27)':
    'beidäugige PD auf 400 mm umgerechnet mit Nah-PD = P W / (W + 27)',
  'distance of each eye brought to 400 mm with 400 / 427': 'PD je Auge auf 400 mm umgerechnet mit 400 / 427',
  '76 young adults in primary gaze, Read et al. 2006, DOI 10.1097/01.opx.0000236811.78177.97':
    '76 junge Erwachsene bei Blick geradeaus, Read et al. 2006, DOI 10.1097/01.opx.0000236811.78177.97',
  'in room light, between 3.0 to 4.7 mm in bright light (379 people, Sanchis-Gimeno et al. 2012) and 4.03 mm (sd 0.9) at 16 lx (91 people, DOI 10.5301/ejo.5001027)':
    'bei Raumlicht, zwischen 3,0 bis 4,7 mm bei hellem Licht (379 Personen, Sanchis-Gimeno et al. 2012) und 4,03 mm (Standardabweichung 0,9) bei 16 lx (91 Personen, DOI 10.5301/ejo.5001027)',
  '390 people, Ruefer, Schroeder, Erb 2005, Cornea 24(3):259-261, DOI 10.1097/01.ico.0000148312.01805.53':
    '390 Personen, Ruefer, Schroeder, Erb 2005, Cornea 24(3):259-261, DOI 10.1097/01.ico.0000148312.01805.53',
  'mean of men 154.2 (sd 9.1) and women 145.4 (sd 8.9), Maseedupalli et al. 2023, DOI 10.4103/ijo.IJO_954_22; both pooled half and half':
    'Mittel der Männer 154,2 (Standardabweichung 9,1) und der Frauen 145,4 (8,9), Maseedupalli et al. 2023, DOI 10.4103/ijo.IJO_954_22; beide je zur Hälfte zusammengefasst',
  'the usual 110 to 150 mm taken as two standard deviations each way':
    'die üblichen 110 bis 150 mm als zwei Standardabweichungen nach jeder Seite genommen',
  'within the usual 6 to 12 mm (from memory); 8.5 rather than 9 so that the widths that follow lie within their usual ranges too':
    'innerhalb der üblichen 6 bis 12 mm (aus dem Gedächtnis); 8,5 statt 9, damit auch die daraus folgenden Breiten im Üblichen liegen',
  'follows from the means and spreads of apical radius and frontal angle: 2 (r + (h - r) sin phi) / cos phi at h = 10 mm, flanks that touch the arc of the crest':
    'folgt aus Mitteln und Streuungen von Nasenrückenradius und Flankenwinkel von vorn: 2 (r + (h - r) sin phi) / cos phi bei h = 10 mm, Flanken als Tangenten an den Bogen des Nasenrückens',
  'follows from the means and spreads of apical radius and frontal angle: 2 (r + (h - r) sin phi) / cos phi at h = 15 mm, flanks that touch the arc of the crest':
    'folgt aus Mitteln und Streuungen von Nasenrückenradius und Flankenwinkel von vorn: 2 (r + (h - r) sin phi) / cos phi bei h = 15 mm, Flanken als Tangenten an den Bogen des Nasenrückens',
  'within the usual 15 to 35 degrees (from memory), towards its lower half so that the nose widths that follow lie within their usual ranges too':
    'innerhalb der üblichen 15 bis 35 Grad (aus dem Gedächtnis), eher in der unteren Hälfte, damit auch die daraus folgenden Nasenbreiten im Üblichen liegen',
  'the usual 15 to 40 degrees (from memory) taken as two standard deviations each way':
    'die üblichen 15 bis 40 Grad (aus dem Gedächtnis) als zwei Standardabweichungen nach jeder Seite genommen',
  'the usual 0 to 9 mm, lower on low bridges (from memory), taken as about two standard deviations each way':
    'die üblichen 0 bis 9 mm, weniger bei tiefer Nasenwurzel (aus dem Gedächtnis), als etwa zwei Standardabweichungen nach jeder Seite genommen',
  'the usual -4 to 6 mm (from memory) taken as two standard deviations each way':
    'die üblichen −4 bis 6 mm (aus dem Gedächtnis) als zwei Standardabweichungen nach jeder Seite genommen',
  'the middle of the usual 80 to 110 mm (from memory), which is taken as two and a half standard deviations each way':
    'die Mitte der üblichen 80 bis 110 mm (aus dem Gedächtnis), genommen als zweieinhalb Standardabweichungen nach jeder Seite',
  'the middle of the usual 75 to 105 mm (from memory), which is taken as two and a half standard deviations each way':
    'die Mitte der üblichen 75 bis 105 mm (aus dem Gedächtnis), genommen als zweieinhalb Standardabweichungen nach jeder Seite',
  'the middle of the usual 30 to 50 mm (from memory), which is taken as two standard deviations each way':
    'die Mitte der üblichen 30 bis 50 mm (aus dem Gedächtnis), genommen als zwei Standardabweichungen nach jeder Seite',
  'the usual 0 to 15 degrees (from memory) taken as about two standard deviations each way':
    'die üblichen 0 bis 15 Grad (aus dem Gedächtnis) als etwa zwei Standardabweichungen nach jeder Seite genommen',
  'the usual 35 to 60 degrees (from memory) taken as two standard deviations each way':
    'die üblichen 35 bis 60 Grad (aus dem Gedächtnis) als zwei Standardabweichungen nach jeder Seite genommen',
  'the usual 0 to 20 degrees (from memory) taken as two standard deviations each way':
    'die üblichen 0 bis 20 Grad (aus dem Gedächtnis) als zwei Standardabweichungen nach jeder Seite genommen',
  'half of the people within 1.3 mm, one in twenty beyond 4 mm':
    'die Hälfte der Menschen innerhalb von 1,3 mm, einer von zwanzig über 4 mm',
  'adult frames, mostly marked 46 to 56': 'Fassungen für Erwachsene, meist mit 46 bis 56 geprägt',
  'adult frames from narrow (28 mm) to deep (48 mm)': 'Fassungen für Erwachsene von schmal (28 mm) bis hoch (48 mm)',
  'adult frames, mostly marked 14 to 22': 'Fassungen für Erwachsene, meist mit 14 bis 22 geprägt',
  'length to bend and length of drop added, their spreads joined; the middle of the usual 120 to 150 mm':
    'Länge bis zum Bügelknick und Länge des Bügelendes addiert, ihre Streuungen vereint; die Mitte der üblichen 120 bis 150 mm',
  'a box of 38 mm with the pupil 2 mm above its middle; deeper and narrower frames 15 to 27 mm':
    'ein Kasten von 38 mm, die Pupille 2 mm über seiner Mitte; höhere und schmalere Fassungen 15 bis 27 mm',
  'the usual 10 to 16 mm, mostly 12 to 14 (from memory), taken as two standard deviations each way':
    'die üblichen 10 bis 16 mm, meist 12 bis 14 (aus dem Gedächtnis), als zwei Standardabweichungen nach jeder Seite genommen',
  'usual 8, from 5 to 12 degrees (from memory), a little wider than one standard deviation each way':
    'üblich 8, von 5 bis 12 Grad (aus dem Gedächtnis), etwas weiter als eine Standardabweichung nach jeder Seite',
  'the usual 0 to 10 degrees of ordinary fronts (from memory); wrapped fronts go up to 25':
    'die üblichen 0 bis 10 Grad gewöhnlicher Fronten (aus dem Gedächtnis); gebogene Fronten reichen bis 25',
  '32 people, classroom data of 1998 by untrained readers, whose own scatter is in it':
    '32 Personen, Unterrichtsdaten von 1998, von Ungeübten gemessen, deren eigene Streuung darin steckt',
  'as far, 1.92 mm brought to 400 mm with 400 / 427': 'wie in der Ferne, 1,92 mm auf 400 mm umgerechnet mit 400 / 427',
  '2 mm between the lids are a sign of a drooping lid (More than meets the eye, Plast Aesthet Res 2021;8:1): taken as three standard deviations':
    '2 mm zwischen den Lidern sind ein Zeichen eines hängenden Lids (More than meets the eye, Plast Aesthet Res 2021;8:1): als drei Standardabweichungen genommen',
  'difference without regard to side 0.19 mm (sd 0.26), 91 people, infrared pupillometry, DOI 10.5301/ejo.5001027: root of the sum of squares':
    'Unterschied ohne Rücksicht auf die Seite 0,19 mm (Standardabweichung 0,26), 91 Personen, Infrarot-Pupillometrie, DOI 10.5301/ejo.5001027: Wurzel der Quadratsumme',
  'few noses are quite straight: nine in ten within one step of 5 degrees':
    'wenige Nasen sind ganz gerade: neun von zehn innerhalb eines Schritts von 5 Grad',
  'eyes of unequal height: two in three within 1 mm, the first difference that a fitter notices':
    'ungleich hohe Augen: zwei von drei innerhalb von 1 mm, dem ersten Unterschied, der beim Anpassen auffällt',
  'ears seldom sit quite alike: nineteen in twenty within 4 mm':
    'Ohren sitzen selten ganz gleich: neunzehn von zwanzig innerhalb von 4 mm',
  'as the length to bend': 'wie die Länge bis zum Bügelknick',
  'ear points that differ by 2 mm in height give 1.2 degrees over 95 mm; the rest for the sides themselves':
    'Ohrpunkte mit 2 mm Höhenunterschied ergeben 1,2 Grad auf 95 mm; der Rest für die Bügel selbst',
  'nine in ten within 7 degrees, a little more than one step of the gauges':
    'neun von zehn innerhalb von 7 Grad, etwas mehr als ein Schritt der Messmittel',
  'nine in ten within one step of 5 degrees': 'neun von zehn innerhalb eines Schritts von 5 Grad',
  'the same unequal height of the eyes as in the crest height':
    'dieselbe ungleiche Höhe der Augen wie bei der Steghöhe',
  'one eye more forward than the other: nineteen in twenty within 1.4 mm; 2 mm and more are looked at in a clinic':
    'ein Auge weiter vorn als das andere: neunzehn von zwanzig innerhalb von 1,4 mm; ab 2 mm wird klinisch abgeklärt',
  'McMahon, Irving, Lee 2012, Optom Vis Sci 89(6):901-907: repeated readings of a trained examiner, limits -1.04 to 1.20 mm, divided by 2 x 1.96 x sqrt 2':
    'McMahon, Irving, Lee 2012, Optom Vis Sci 89(6):901-907: wiederholte Messungen einer geübten Person, Grenzen −1,04 bis 1,20 mm, geteilt durch 2 × 1,96 × Wurzel 2',
  'taken as for the binocular distance (McMahon et al. 2012): the midline is one more thing to judge, the second pupil one less':
    'genommen wie für die beidäugige PD (McMahon et al. 2012): Die Mittellinie ist mehr zu beurteilen, die zweite Pupille weniger',
  'taken as for the far distance (McMahon et al. 2012)': 'genommen wie für die Ferne (McMahon et al. 2012)',
  'lids move and the rule is held free; about as a PD rule. Ruler against slit lamp differ by 0.12 mm in the mean (Nemet 2015, J Craniofac Surg)':
    'Lider bewegen sich, und das Lineal wird frei gehalten; etwa wie ein PD-Lineal. Lineal und Spaltlampe unterscheiden sich im Mittel um 0,12 mm (Nemet 2015, J Craniofac Surg)',
  'a still edge on both sides, but the pupil breathes by some tenths of a millimetre: a little less than a PD':
    'ein ruhiger Rand auf beiden Seiten, aber die Pupille atmet um einige Zehntelmillimeter: etwas weniger als eine PD',
  'two still edges under one rule: a little less than a PD':
    'zwei ruhige Ränder unter einem Lineal: etwas weniger als eine PD',
  'calipers on soft skin and hair: 95 % of repeats within 3 mm':
    'Taster auf weicher Haut und Haar: 95 % der Wiederholungen innerhalb von 3 mm',
  'gauges stand 1 mm apart: two trained readers mostly choose the same one':
    'die Lehren liegen 1 mm auseinander: zwei Geübte wählen meist dieselbe',
  'points on soft skin, with the height below the crest to judge: about a rule reading and a little more':
    'Spitzen auf weicher Haut, dazu die Höhe unter der Stegauflage zu beurteilen: etwa wie am Lineal und etwas mehr',
  'as at 10 mm below the crest': 'wie 10 mm unter der Stegauflage',
  'an arm of about 20 mm laid along soft skin: half a millimetre at its end is 1.4 degrees':
    'ein Schenkel von etwa 20 mm an weicher Haut: ein halber Millimeter an seinem Ende sind 1,4 Grad',
  'as the frontal angle': 'wie der Flankenwinkel von vorn',
  'two levels to judge, lid and crest: about a rule reading and a little more':
    'zwei Höhen zu beurteilen, Lid und Stegauflage: etwa wie am Lineal und etwas mehr',
  'two levels to judge, lashes and crest: about a rule reading and a little more':
    'zwei Ebenen zu beurteilen, Wimpern und Stegauflage: etwa wie am Lineal und etwas mehr',
  'the ear point is a place on a curve: 95 % of repeats within 2 mm':
    'der Ohrpunkt ist eine Stelle auf einer Rundung: 95 % der Wiederholungen innerhalb von 2 mm',
  '95 mm of side: 1.7 mm at the ear point is one degree': '95 mm Bügel: 1,7 mm am Ohrpunkt sind ein Grad',
  'short arm along a curved groove: 95 % of repeats within 4 degrees':
    'kurzer Schenkel in einer gebogenen Furche: 95 % der Wiederholungen innerhalb von 4 Grad',
  'half of the scatter of two lengths at the ears (1 mm each): both ends are seen against one straight edge':
    'die Hälfte der Streuung zweier Längen an den Ohren (je 1 mm): beide Enden sind an einer geraden Kante zu sehen',
  'a rule on a still, hard frame: half of a step of the rule':
    'ein Lineal auf einer ruhigen, festen Fassung: ein halber Schritt des Lineals',
  'a bent side is followed by hand; stock comes in steps of 5 mm':
    'einem gebogenen Bügel wird von Hand gefolgt; Lagerware gibt es in Schritten von 5 mm',
  'a PD reading (0.404 mm) and a little more for the mark on the lens':
    'eine PD-Messung (0,404 mm) und etwas mehr für die Marke auf dem Glas',
  'two levels to judge, lens and cornea: about a rule reading and a little more':
    'zwei Ebenen zu beurteilen, Glas und Hornhaut: etwa wie am Lineal und etwas mehr',
  'the head is never held quite alike: 95 % of repeats within 2 degrees':
    'der Kopf wird nie ganz gleich gehalten: 95 % der Wiederholungen innerhalb von 2 Grad',
  'a curved front against a protractor: 95 % of repeats within 2 degrees':
    'eine gebogene Front an einem Winkelmesser: 95 % der Wiederholungen innerhalb von 2 Grad',
  'ISO 13666, interpupillary distance, own wording': 'ISO 13666, Pupillendistanz, eigener Wortlaut',
  'ISO 13666, monocular centration distance, own wording':
    'ISO 13666, monokularer Zentrierpunktabstand, eigener Wortlaut',
  'textbooks of dispensing optics, own wording': 'Lehrbüchern der Augenoptik, eigener Wortlaut',
  'palpebral aperture in primary gaze, Read et al. 2006, own wording':
    'Lidspalte bei Blick geradeaus, Read et al. 2006, eigener Wortlaut',
  'common practice, own wording': 'üblicher Praxis, eigener Wortlaut',
  'white-to-white diameter, Ruefer et al. 2005, own wording':
    'Hornhautdurchmesser (Weiß zu Weiß), Ruefer et al. 2005, eigener Wortlaut',
  'BS 3521-2 / ISO 7998, own wording': 'BS 3521-2 / ISO 7998, eigener Wortlaut',
  'BS 3521-2 / ISO 7998, bridge height, own wording': 'BS 3521-2 / ISO 7998, Steghöhe, eigener Wortlaut',
  'BS 3521-2 / ISO 7998, distance between rims, own wording':
    'BS 3521-2 / ISO 7998, Abstand der Ränder, eigener Wortlaut',
  'BS 3521-2 / ISO 7998, front to bend, own wording': 'BS 3521-2 / ISO 7998, Front bis Bügelknick, eigener Wortlaut',
  'BS 3521-2 / ISO 7998, projection, own wording': 'BS 3521-2 / ISO 7998, Stegvorsprung, eigener Wortlaut',
  'ISO 13666, as-worn pantoscopic angle, own wording': 'ISO 13666, Vorneigung in Gebrauchslage, eigener Wortlaut',
  'ISO 13666, face form angle, own wording': 'ISO 13666, Fassungsscheibenwinkel, eigener Wortlaut',
  'ISO 13666, fitting point height, own wording': 'ISO 13666, Höhe des Anpasspunkts, eigener Wortlaut',
  'ISO 13666, vertex distance, own wording': 'ISO 13666, Hornhautscheitelabstand, eigener Wortlaut',
  'ISO 8624, horizontal boxed lens size, own wording': 'ISO 8624, Scheibenlänge im Kastenmaß, eigener Wortlaut',
  'ISO 8624, vertical boxed lens size, own wording': 'ISO 8624, Scheibenhöhe im Kastenmaß, eigener Wortlaut',
  'ISO 8624:2011, clause 2, own wording': 'ISO 8624:2011, Abschnitt 2, eigener Wortlaut',
  'ANSI Z80.1-2015, mounted pairs, as three summaries report it; the editions of 1999 and 2010 agree, that of 2020 was not compared':
    'ANSI Z80.1-2015, verglaste Paare, wie drei Zusammenfassungen sie wiedergeben; die Ausgaben von 1999 und 2010 stimmen überein, die von 2020 wurde nicht verglichen',
  'ANSI Z80.1-1999, progressive lenses, as a summary reports it; the power limit of 3.375 D of later editions is from memory':
    'ANSI Z80.1-1999, Gleitsichtgläser, wie eine Zusammenfassung sie wiedergibt; die Stärkengrenze von 3,375 D späterer Ausgaben stammt aus dem Gedächtnis',
  'ANSI Z80.1, segments (2015) and fitting points (1999), as summaries report them':
    'ANSI Z80.1, Nahteile (2015) und Anpasspunkte (1999), wie Zusammenfassungen sie wiedergeben',
  'ISO 21987 (2009, 2017), table of prism imbalance, from memory':
    'ISO 21987 (2009, 2017), Tabelle der prismatischen Abweichung, aus dem Gedächtnis',
  'ISO 21987 (2009, 2017), fitting point, from memory': 'ISO 21987 (2009, 2017), Anpasspunkt, aus dem Gedächtnis',
};

/** `a`, `a und b`, `a, b und c` */
function list(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1) ?? ''}`;
}

/** As a sentence begins. */
function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A count with its noun in the nominative. */
function counted(count: number, one: string, several: string): string {
  return `${count} ${count === 1 ? one : several}`;
}

/** Records, counted. */
function recordsOf(count: number): string {
  return `${formatCount(count)} ${count === 1 ? 'Datensatz' : 'Datensätze'}`;
}

/** The same after `von`. */
function recordsIn(count: number): string {
  return `${formatCount(count)} ${count === 1 ? 'Datensatz' : 'Datensätzen'}`;
}

function frames(count: number): string {
  return counted(count, 'Einzelbild', 'Einzelbilder');
}

function things(count: number): string {
  return count === 1 ? '1 Angabe passt nicht' : `${count} Angaben passen nicht`;
}

function adverb({ isProbable }: SlipFacts): string {
  return isProbable ? 'wahrscheinlich' : 'vielleicht';
}

function were(slip: SlipFacts): string {
  return `${slip.count > 1 ? 'wurden' : 'wurde'} ${adverb(slip)}`;
}

function amountNeeded({ amount, gauge }: SlipFacts): string {
  const what = amount === null ? 'der Zuschlag' : `der Zuschlag von ${amount}`;
  return `${what} für ${gauge === null ? 'ein Messmittel' : `das Messmittel „${gauge}“`}`;
}

function follows({ from, expected, place, written }: ConflictFacts): string {
  return `Aus ${from ?? 'den anderen Messwerten'} folgt für ${place} etwa ${expected}; geschrieben steht ${written}.`;
}

function sumMade({ right, left, sum, whole, isNear }: SumFacts): string {
  return `${isNear ? 'Nähe: ' : ''}R ${right} und L ${left} ergeben ${sum} mm; geschrieben steht ${whole}`;
}

function wouldBring(what: string, { from, to }: RemedyFacts): string {
  return `${what} brächte dies von ${from} auf etwa ${to}.`;
}

function tooFew(usable: number, needed: number): string {
  return `Nur ${frames(usable)} ${usable === 1 ? 'war' : 'waren'} brauchbar; eine Bildfolge braucht ${needed}.`;
}

const TAKE_AGAIN =
  'Nehmen Sie die Bildfolge noch einmal auf: langsam, die ganze Karte und beide Augen im Bild, Licht von vorn. Oder messen Sie das beste Einzelbild allein.';

const HOLD_SHEET = 'Halten Sie das gedruckte Blatt näher, flach, in mehr Licht und ohne Finger auf dem Muster.';

const EYES = { R: 'des rechten Auges', L: 'des linken Auges', both: 'beider Augen' };
const PARTS = { landmarks: 'Die Gesichtspunkte', card: 'Die Kartensuche', sweep: 'Die Messung der Bildfolge' };

const AWAY_FROM_EYES = 'Halten Sie das Ende des Lineals von den Augen fern.';
const CALIPERS_AWAY = 'Halten Sie die Spitzen des Tasters von den Augen fern.';
const FEEL_BEHIND_EAR = 'Fühlen Sie zuerst, ob hinter dem Ohr ein Hörgerät, eine Narbe oder eine wunde Stelle ist.';
const CLOSE_TO_EYES =
  'Die Spitzen kommen beiden Augen nahe: Führen Sie das Messmittel von unten heran und stützen Sie die Hand auf der Wange ab.';
const EYES_CLOSED =
  'Lassen Sie die Augen schließen, während Sie das Messmittel anlegen, und halten Sie seinen Schenkel unterhalb des inneren Augenwinkels.';
const ADJUSTED_FRAME = 'Nur mit der gewählten Fassung, fertig angepasst, auf dem Gesicht.';

const STANDINGS = {
  used: 'verwendet',
  slipped: 'Karte verrutscht',
  misfit: 'passt nicht',
  'left-out': 'ausgelassen',
  'not-measured': 'wird gemessen',
};

/** In the accusative, as behind `an`. */
function toWhom(practice: string): string {
  return practice === '' ? 'Ihren Optiker' : practice;
}

/** As the subject of a sentence. */
function who(practice: string): string {
  return practice === '' ? 'Ihr Optiker' : practice;
}

const UNUSABLE = 'Dieses Bild war nicht brauchbar.';
const NO_CAMERA_PICTURE = 'Die Kamera liefert kein Bild.';
const SOMETHING_MISSING = 'Etwas konnte nicht geladen werden.';

/** All that the screen says, in German. */
export const words: Words = {
  grammar: { list },

  measurements: {
    binocularPd: {
      name: 'Pupillendistanz, beidäugig',
      shortName: 'PD, Ferne',
      inSentences: 'Fern-PD',
      alsoCalled: ['PD', 'Pupillenabstand', 'Augenabstand', 'Fern-PD', 'binokulare PD', 'Gesamt-PD'],
      definition: 'Abstand der Mitten beider Pupillen, während beide Augen geradeaus in die Ferne blicken.',
      howTaken:
        'Lineal auf der Nasenwurzel, in Armlänge und auf gleicher Augenhöhe: Null auf die eine Pupille, während dieses Auge in Ihr gegenüberliegendes blickt; dann die andere Pupille ablesen, während das andere Auge in Ihr anderes blickt.',
      caution: AWAY_FROM_EYES,
      withSquint:
        'Messen Sie jedes Auge bei abgedecktem anderen von der Mitte der Nasenwurzel aus und schreiben Sie die Summe: Beide Augen blicken nie auf dasselbe.',
    },
    monocularPd: {
      name: 'Pupillendistanz je Auge',
      shortName: 'PD je Auge',
      inSentences: 'Einzel-PD',
      alsoCalled: ['PD', 'Einzel-PD', 'monokulare PD', 'halbe PD', 'Pupillenabstand rechts links'],
      definition: 'Waagerechter Abstand von der Mitte der Nasenwurzel zur Mitte einer Pupille bei Blick in die Ferne.',
      howTaken: 'Von der Mitte der Nasenwurzel zu jeder Pupille, während dieses Auge in Ihr gegenüberliegendes blickt.',
      caution: `Messen Sie jedes Auge; die Hälfte der ganzen PD ist keine Messung. ${AWAY_FROM_EYES}`,
      withSquint:
        'Messen Sie jedes Auge bei abgedecktem anderen, damit das gemessene Auge auch das ist, das Sie ansieht.',
    },
    nearPd: {
      name: 'Zentrierabstand für die Nähe',
      shortName: 'PD, Nähe',
      inSentences: 'Nah-PD',
      alsoCalled: ['Nah-PD', 'Nahpupillendistanz', 'Pupillenabstand Nähe', 'Nahzentrierabstand'],
      definition: 'Abstand der beiden Punkte der Brillenebene, durch die die Augen in die Arbeitsentfernung blicken.',
      howTaken:
        'Lineal in der Brillenebene, eines Ihrer Augen offen in der Arbeitsentfernung; beide Augen der Person blicken hinein.',
      caution: AWAY_FROM_EYES,
      withSquint:
        'Messen Sie jedes Auge bei abgedecktem anderen, Ihr offenes Auge in der Arbeitsentfernung vor der Nasenwurzel, und schreiben Sie die Summe.',
    },
    monocularNearPd: {
      name: 'Zentrierabstand für die Nähe je Auge',
      shortName: 'PD je Auge, Nähe',
      inSentences: 'Einzel-PD Nähe',
      alsoCalled: ['Einzel-Nah-PD', 'monokulare Nah-PD', 'halbe Nah-PD'],
      definition:
        'Waagerechter Abstand von der Mitte der Nasenwurzel zu dem Punkt der Brillenebene, durch den ein Auge in die Arbeitsentfernung blickt.',
      howTaken:
        'Wie die Nah-PD, von der Mitte der Nasenwurzel zu jeder Pupille, Ihr offenes Auge genau vor der Nasenwurzel.',
      caution: `Messen Sie jedes Auge; die Hälfte des Ganzen ist keine Messung. ${AWAY_FROM_EYES}`,
      withSquint:
        'Messen Sie jedes Auge bei abgedecktem anderen, Ihr offenes Auge in der Arbeitsentfernung genau vor der Nasenwurzel.',
    },
    lidAperture: {
      name: 'Höhe der Lidspalte',
      shortName: 'Lidspalte',
      inSentences: 'Lidspalte',
      alsoCalled: ['Lidspaltenhöhe', 'Lidspaltenweite', 'Lidöffnung'],
      definition:
        'Höhe vom unteren zum oberen Lidrand auf der Senkrechten durch die Pupillenmitte bei Blick geradeaus.',
      howTaken: 'Lineal senkrecht neben dem Auge; die Person blickt geradeaus, die Stirn entspannt.',
      caution:
        'Ein tiefes Lid, oder eines tiefer als das andere, ist ein Grund, noch einmal hinzusehen oder zu überweisen, nie ein Befund dieses Messblatts. Halten Sie das Lineal vom Auge fern.',
      withSquint: null,
    },
    pupilDiameter: {
      name: 'Pupillendurchmesser',
      shortName: 'Pupillendurchmesser',
      inSentences: 'Pupillendurchmesser',
      alsoCalled: ['Pupillenweite', 'Pupillengröße'],
      definition: 'Waagerechter Durchmesser der Pupille bei dem Licht, das daneben vermerkt ist.',
      howTaken:
        'Pupillenlehre oder Lineal neben dem Auge; die Person blickt in die Ferne, bei dem Licht, für das die Brille ist. Vergleichen oder ablesen.',
      caution:
        'Vermerken Sie das Licht: Ohne es sagt die Zahl wenig. Ungleiche Pupillen, die bisher niemand bemerkt hat, sind ein Grund zu überweisen. Halten Sie das Messmittel vom Auge fern.',
      withSquint: null,
    },
    irisDiameter: {
      name: 'Sichtbarer Irisdurchmesser',
      shortName: 'Irisdurchmesser',
      inSentences: 'Irisdurchmesser',
      alsoCalled: ['HVID', 'Hornhautdurchmesser', 'Weiß zu Weiß'],
      definition:
        'Waagerechter Durchmesser der sichtbaren Iris von Rand zu Rand; er ist bei allen Menschen so ähnlich, dass er den Maßstab prüft.',
      howTaken: 'Lineal waagerecht vor einem Auge, knapp unter der Pupille: von Rand zu Rand des farbigen Teils.',
      caution: AWAY_FROM_EYES,
      withSquint: null,
    },
    headWidth: {
      name: 'Kopfbreite',
      shortName: 'Kopfbreite',
      inSentences: 'Kopfbreite',
      alsoCalled: ['Ohrpunktabstand', 'Ohrabstand'],
      definition: 'Abstand der beiden Ohrpunkte, an denen die Bügel auf den Ohrwurzeln aufliegen.',
      howTaken: 'Kopftaster von oben; er berührt den Kopf knapp über den Ohren, ohne zu drücken.',
      caution: CALIPERS_AWAY,
      withSquint: null,
    },
    templeWidth: {
      name: 'Schläfenbreite',
      shortName: 'Schläfenbreite',
      inSentences: 'Schläfenbreite',
      alsoCalled: [],
      definition: 'Breite des Kopfes an den Schläfen, 25 mm hinter der Rückseite der Fassungsfront.',
      howTaken: 'Kopftaster von vorn, 25 mm hinter dem künftigen Sitz der Front; berühren, nicht drücken.',
      caution: CALIPERS_AWAY,
      withSquint: null,
    },
    apicalRadius: {
      name: 'Radius des Nasenrückens',
      shortName: 'Nasenrückenradius',
      inSentences: 'Nasenrückenradius',
      alsoCalled: ['Stegradius', 'Scheitelradius'],
      definition:
        'Radius des Bogens, der von vorn gesehen am besten auf den Nasenrücken passt, dort, wo der Steg aufliegen wird.',
      howTaken:
        'Radiuslehren von der größeren zur kleineren auf die Nase setzen und jede vermerken: loose (locker), fits (passt) oder tight (eng); schreiben Sie jede probierte Größe auf.',
      caution: 'Führen Sie die Lehre von unten heran und halten Sie ihre Ecken von den Augen fern; drücken Sie nicht.',
      withSquint: null,
    },
    distanceBetweenRims10: {
      name: 'Nasenbreite, 10 mm unter der Stegauflage',
      shortName: 'Nasenbreite, 10 mm',
      inSentences: 'Nasenbreite bei 10 mm',
      alsoCalled: ['Stegweite', 'Stegbreite', 'Abstand der Ränder'],
      definition: 'Breite der Nase zwischen den künftigen Rändern der Fassung, 10 mm unter der Stegauflage.',
      howTaken: 'Nasenlehre oder Taster quer über die Nase, 10 mm unter der Stegauflage; berühren, nicht drücken.',
      caution: CLOSE_TO_EYES,
      withSquint: null,
    },
    distanceBetweenRims15: {
      name: 'Nasenbreite, 15 mm unter der Stegauflage',
      shortName: 'Nasenbreite, 15 mm',
      inSentences: 'Nasenbreite bei 15 mm',
      alsoCalled: ['Stegweite', 'Stegbreite', 'Abstand der Ränder'],
      definition: 'Breite der Nase zwischen den künftigen Rändern der Fassung, 15 mm unter der Stegauflage.',
      howTaken: 'Wie bei 10 mm, 5 mm tiefer; das Ergebnis muss größer sein.',
      caution: CLOSE_TO_EYES,
      withSquint: null,
    },
    frontalAngle: {
      name: 'Nasenflankenwinkel von vorn',
      shortName: 'Flankenwinkel, vorn',
      inSentences: 'Flankenwinkel von vorn',
      alsoCalled: ['Nasenwinkel', 'Frontalwinkel', 'frontaler Nasenwinkel'],
      definition: 'Winkel zwischen der Senkrechten und der Nasenflanke, von vorn gesehen.',
      howTaken:
        'Winkelmesser flach vor der Nase, sein Schenkel an einer Flanke; jede Seite bei aufrechtem Kopf ablesen.',
      caution: EYES_CLOSED,
      withSquint: null,
    },
    splayAngle: {
      name: 'Nasenflankenwinkel von oben',
      shortName: 'Flankenwinkel, oben',
      inSentences: 'Flankenwinkel von oben',
      alsoCalled: ['Nasenwinkel', 'Spreizwinkel', 'Öffnungswinkel'],
      definition: 'Winkel zwischen der Richtung von vorn nach hinten und der Nasenflanke, von oben gesehen.',
      howTaken: 'Winkelmesser waagerecht vor der Nase, sein Schenkel an einer Flanke, von oben abgelesen.',
      caution: EYES_CLOSED,
      withSquint: null,
    },
    crestHeight: {
      name: 'Steghöhe',
      shortName: 'Steghöhe',
      inSentences: 'Steghöhe',
      alsoCalled: ['Höhe der Stegauflage', 'Nasenrückenhöhe'],
      definition:
        'Höhe der Stegauflage auf dem Nasenrücken über dem Unterlidrand eines Auges; negativ, wo sie darunter liegt.',
      howTaken:
        'Kopf aufrecht, Blick geradeaus: von der Höhe jedes Unterlidrands hinauf bis dorthin, wo der Steg aufliegen wird.',
      caution: `Schreiben Sie das Vorzeichen einer tiefen Stegauflage. ${AWAY_FROM_EYES}`,
      withSquint: null,
    },
    bridgeProjection: {
      name: 'Stegvorsprung',
      shortName: 'Stegvorsprung',
      inSentences: 'Stegvorsprung',
      alsoCalled: ['Stegtiefe', 'Stegvorlage'],
      definition:
        'Abstand von der Ebene der Wimpern nach vorn zur Stegauflage; negativ, wo diese hinter den Wimpern liegt.',
      howTaken: 'Von der Seite, an den vordersten Wimpern: wie weit die Stegauflage vor oder hinter ihnen liegt.',
      caution: `Schreiben Sie das Vorzeichen. Nichts darf die Wimpern berühren. ${AWAY_FROM_EYES}`,
      withSquint: null,
    },
    lengthToBend: {
      name: 'Länge bis zum Bügelknick',
      shortName: 'Bis Bügelknick',
      inSentences: 'Länge bis Bügelknick',
      alsoCalled: ['Schaftlänge', 'Bügelauflagelänge', 'Bügelschaft', 'Ohrabstand'],
      definition: 'Abstand von der Ebene der Front nach hinten zum Ohrpunkt, an dem der Bügel sich zu biegen beginnt.',
      howTaken: 'Lineal an der Kopfseite, von der Ebene der Front bis oben auf die Wurzel jedes Ohrs.',
      caution: 'Halten Sie das vordere Ende des Lineals außen neben dem Auge.',
      withSquint: null,
    },
    lengthToTangent: {
      name: 'Länge bis zur Tangente',
      shortName: 'Bis Tangente',
      inSentences: 'Länge bis Tangente',
      alsoCalled: ['Tangentenlänge'],
      definition:
        'Abstand von der Ebene der Front nach hinten bis dorthin, wo der Bügel die Rundung des Ohrs zuerst berührt.',
      howTaken:
        'Wie die Länge bis zum Bügelknick, aber bis dorthin, wo der Bügel die Ohrwurzel vorn berührt; nötig für Gespinstbügel.',
      caution: 'Halten Sie das vordere Ende des Lineals außen neben dem Auge.',
      withSquint: null,
    },
    lengthOfDrop: {
      name: 'Länge des Bügelendes',
      shortName: 'Bügelende, Länge',
      inSentences: 'Länge des Bügelendes',
      alsoCalled: ['Endstück', 'Bügelend-Länge', 'Ohrbügellänge'],
      definition: 'Länge des Bügels hinter dem Knick, vom Ohrpunkt bis zur Spitze.',
      howTaken:
        'Maßband oder gebogenes Lineal hinter dem Ohr, vom Ohrpunkt hinunter bis dorthin, wo die Spitze auf dem Knochen enden wird.',
      caution: FEEL_BEHIND_EAR,
      withSquint: null,
    },
    angleOfSide: {
      name: 'Bügelneigung',
      shortName: 'Bügelneigung',
      inSentences: 'Bügelneigung',
      alsoCalled: ['Inklination', 'Inklinationswinkel', 'Bügelwinkel'],
      definition:
        'Winkel in der senkrechten Ebene zwischen einem Bügel und dem Lot auf die Glasebene; positiv, wo der Bügel die unteren Ränder den Wangen näher bringt.',
      howTaken:
        'Winkelmesser an jeder Schläfe: ein Schenkel rechtwinklig zur Front, wie sie sitzen wird, der andere zum Ohrpunkt.',
      caution: 'Halten Sie den Schenkel des Messmittels außen neben dem Auge.',
      withSquint: null,
    },
    downwardAngleOfDrop: {
      name: 'Neigung des Bügelendes nach unten',
      shortName: 'Bügelende, abwärts',
      inSentences: 'Bügelende abwärts',
      alsoCalled: ['Abwärtswinkel', 'Knickwinkel'],
      definition: 'Winkel, um den das Bügelende von der Seite gesehen aus der Richtung des Bügels nach unten biegt.',
      howTaken: 'Winkelmesser am Ohrpunkt, ein Schenkel am Bügel, der andere in der Furche hinter dem Ohr.',
      caution: FEEL_BEHIND_EAR,
      withSquint: null,
    },
    inwardAngleOfDrop: {
      name: 'Neigung des Bügelendes nach innen',
      shortName: 'Bügelende, einwärts',
      inSentences: 'Bügelende einwärts',
      alsoCalled: ['Einwärtswinkel'],
      definition:
        'Winkel, um den das Bügelende von hinten gesehen zum Schädel hin biegt; negativ, wo es nach außen biegen muss.',
      howTaken: 'Von hinten, Kopf aufrecht: Winkelmesser am Knochen hinter jedem Ohr.',
      caution: FEEL_BEHIND_EAR,
      withSquint: null,
    },
    earPointDifference: {
      name: 'Höhenunterschied der Ohrpunkte',
      shortName: 'Ohrpunkte',
      inSentences: 'Ohrpunktunterschied',
      alsoCalled: ['Ohrhöhe', 'Ohrhöhendifferenz'],
      definition:
        'Wie viel höher der rechte Ohrpunkt bei geradem Kopf liegt als der linke; negativ, wo der linke höher liegt.',
      howTaken:
        'Kopf aufrecht, Pupillen auf einer Höhe: Setzen Sie eine gerade Front mit Bügeln auf und lesen Sie ab, wie weit der eine Bügel über seinem Ohrpunkt steht, während der andere aufliegt.',
      caution: 'Schreiben Sie das Vorzeichen: positiv, wo das rechte Ohr das höhere ist.',
      withSquint: null,
    },
    boxLensWidth: {
      name: 'Scheibenlänge im Kastenmaß',
      shortName: 'Scheibenlänge',
      inSentences: 'Scheibenlänge',
      alsoCalled: ['Glasbreite', 'Scheibenbreite', 'Scheibengröße', 'Kastenmaß', 'A-Maß'],
      definition: 'Breite des kleinsten aufrechten Rechtecks um ein Glas der gewählten Fassung.',
      howTaken: 'Lineal über das Glas der gewählten Fassung, von Nut zu Nut; mit der Prägung vergleichen.',
      caution: null,
      withSquint: null,
    },
    boxLensHeight: {
      name: 'Scheibenhöhe im Kastenmaß',
      shortName: 'Scheibenhöhe',
      inSentences: 'Scheibenhöhe',
      alsoCalled: ['Glashöhe', 'Kastenmaß', 'B-Maß'],
      definition: 'Höhe des kleinsten aufrechten Rechtecks um ein Glas der gewählten Fassung.',
      howTaken: 'Lineal senkrecht über das Glas der gewählten Fassung, vom tiefsten zum höchsten Punkt der Nut.',
      caution: null,
      withSquint: null,
    },
    distanceBetweenLenses: {
      name: 'Abstand zwischen den Gläsern',
      shortName: 'Abstand der Gläser',
      inSentences: 'Abstand zwischen den Gläsern',
      alsoCalled: ['Stegweite', 'Brückenweite', 'Stegbreite', 'AzG', 'DBL'],
      definition: 'Kleinster waagerechter Abstand zwischen den Kästen beider Gläser.',
      howTaken:
        'Lineal über den Steg der gewählten Fassung, zwischen den Nasenseiten beider Gläser, wo sie sich am nächsten sind.',
      caution: null,
      withSquint: null,
    },
    overallSideLength: {
      name: 'Gesamtlänge des Bügels',
      shortName: 'Bügellänge',
      inSentences: 'Bügellänge',
      alsoCalled: ['Bügelgesamtlänge', 'Gesamtbügellänge'],
      definition: 'Länge eines Bügels von der Mitte des Scharniers bis zur Spitze, das Bügelende gestreckt gemessen.',
      howTaken:
        'Am Bügel der gewählten Fassung entlang ab der Scharnierschraube; Lagerware gibt es in Schritten von 5 mm.',
      caution: null,
      withSquint: null,
    },
    fittingHeight: {
      name: 'Einschleifhöhe',
      shortName: 'Einschleifhöhe',
      inSentences: 'Einschleifhöhe',
      alsoCalled: ['Durchblickhöhe', 'Durchblickshöhe', 'Pupillenhöhe', 'Segmenthöhe', 'Zentrierhöhe'],
      definition: 'Höhe der Pupillenmitte über der Unterkante des Glases im Kastenmaß bei Blick geradeaus.',
      howTaken:
        'Ihre Augen auf der Höhe der Augen der Person: Zeichnen Sie auf jedem Glas die Pupillenmitte an und lesen Sie vom tiefsten Punkt der Nut bis zur Marke ab.',
      caution: `${ADJUSTED_FRAME} Zeichnen Sie mit einem Filzstift an, nie mit einer Spitze.`,
      withSquint:
        'Messen Sie jedes Auge bei abgedecktem anderen, damit das angezeichnete Auge auch das ist, das Sie ansieht.',
    },
    backVertexDistance: {
      name: 'Hornhautscheitelabstand',
      shortName: 'HSA',
      inSentences: 'HSA',
      alsoCalled: ['HSA', 'Scheitelabstand'],
      definition: 'Abstand von der Rückseite des Brillenglases zur Vorderseite der Hornhaut entlang der Blicklinie.',
      howTaken:
        'Von der Seite, mit einem waagerecht gehaltenen Lineal neben der Fassung. Bei einem Taster auf dem geschlossenen Lid kommt die Dicke des Lids dazu.',
      caution: `${ADJUSTED_FRAME} Nichts darf das offene Auge berühren; ein Taster liegt auf dem Lid nur auf, ohne zu drücken.`,
      withSquint: null,
    },
    pantoscopicAngle: {
      name: 'Vorneigung',
      shortName: 'Vorneigung',
      inSentences: 'Vorneigung',
      alsoCalled: ['Vorneigungswinkel', 'pantoskopischer Winkel'],
      definition:
        'Winkel in der senkrechten Ebene zwischen dem Lot auf das Glas und der Blicklinie geradeaus; positiv, wo die unteren Ränder den Wangen näher liegen.',
      howTaken: 'Winkelmesser mit Lot an der Front, von der Seite, bei gewohnter Kopfhaltung der Person.',
      caution: ADJUSTED_FRAME,
      withSquint: null,
    },
    faceFormAngle: {
      name: 'Fassungsscheibenwinkel',
      shortName: 'Scheibenwinkel',
      inSentences: 'Fassungsscheibenwinkel',
      alsoCalled: ['FSW', 'Durchbiegung', 'Frontkrümmung'],
      definition:
        'Winkel zwischen der Ebene der Front und der Ebene eines Glases, von oben gesehen; positiv, wo sich das Glas zur Schläfe hin nach hinten dreht.',
      howTaken:
        'Legen Sie die gewählte Fassung von oben auf einen Winkelmesser und lesen Sie ab, wie weit sich ein Glas aus der Linie der Front dreht.',
      caution: null,
      withSquint: null,
    },
  },

  agreement: {
    heading: 'Wie beide Messenden übereinstimmen',
    places: {
      mm: (count) => counted(count, 'Länge', 'Längen'),
      deg: (count) => counted(count, 'Winkel', 'Winkel'),
    },
    differences: (places, readers, mean, interval, limits) =>
      `${places}, ${readers}: im Mittel ${mean} (95 %: ${interval.low} bis ${interval.high}); 19 von 20 Unterschieden liegen zwischen ${limits.low} und ${limits.high}.`,
    biased: 'Eine Seite misst durchweg mehr als die andere: Vergleichen Sie, wie beide das Messmittel halten.',
    repeats: (name, coefficient, count) =>
      `${name}: ${counted(count, 'Stelle', 'Stellen')} zweimal gemessen; zwei Messwerte liegen in 19 von 20 Fällen höchstens ${coefficient} auseinander.`,
    note: 'Von einer Person und einem Messblatt: Über die Messenden beweist das nichts.',
  },

  crash: {
    heading: 'Glabella ist stehen geblieben',
    what: 'Etwas ist schiefgegangen, das nicht geschehen dürfte. Ihre Messwerte sind noch da und in diesem Browser aufbewahrt.',
    readings: 'Ihre Messwerte',
    copy: 'Messwerte kopieren',
    copied: 'Kopiert.',
    copyFailed: 'Der Browser hat das Kopieren nicht erlaubt: Markieren Sie den Text oben und kopieren Sie ihn.',
    again: 'Messblatt wieder öffnen',
  },

  demo: {
    load: 'Erfundene Person zeigen',
    onSheet: 'Erfundene Person: Tobin Quillfeather, Lantern Yard practice.',
    rendered: 'Ein errechnetes Bild, und Messwerte mit zwei Versehen darin.',
    kept: 'Ihre eigene Sitzung bleibt, wie sie ist.',
    leave: 'Zurück zu meiner Sitzung',
    pictureName: 'Erfundene Person (errechnetes Bild)',
  },

  desk: {
    opening: 'Die hier aufbewahrten Sitzungen werden geöffnet …',
    sessions: 'Sitzungen',
    nextWearer: 'Nächste Person',
    help: 'Hilfe',
    history: 'Alle Einträge',
    before: 'Die vorige Sitzung steht in der Liste.',
    backToBefore: 'Dorthin zurück',
    dismiss: 'Ausblenden',
    notKept: 'Was Sie jetzt eingeben, steht nur auf diesem Bildschirm.',
    tryAgain: 'Noch einmal aufbewahren',
    saveAsFile: 'Als Datei speichern',
    leaveAllTheSame: 'Trotzdem verlassen',
    leaving: 'Dann wäre es verloren. Speichern Sie es zuerst als Datei, oder verlassen Sie es trotzdem.',
    contested: 'Diese Sitzung wurde in einem anderen Fenster geändert.',
    removedElsewhere: 'Diese Sitzung wurde in einem anderen Fenster entfernt.',
    contestedMore: 'Was Sie hier eingeben, wird erst aufbewahrt, wenn Sie gewählt haben.',
    showOther: 'Zeigen, was dort steht',
    keepMine: 'Meine als eigene Sitzung aufbewahren',
    recorded: {
      picture: (when) => `Die Kamerawerte vom ${when} sind mit der Sitzung aufbewahrt; das Bild nicht.`,
      sweep: (when) => `Die Werte der Bildfolge vom ${when} sind mit der Sitzung aufbewahrt; die Einzelbilder nicht.`,
      alone: (when) =>
        `Schätzwerte vor der Anpassung: Die Person hat die Bilder am ${when} allein und ohne Aufsicht aufgenommen.`,
      aloneMore:
        'Niemand hat gesehen, ob die Karte flach lag und wohin die Augen blickten. Messen Sie von Hand, bevor etwas gefertigt wird.',
      frames: (used, taken) => `${used} von ${frames(taken)}${taken === 1 ? '' : 'n'} verwendet.`,
    },
  },

  footer: {
    heading: 'Bevor Sie sich darauf verlassen',
    cautions: [
      'Eine zweite Messung, keine klinische: Sie ersetzt nicht die Messungen, die eine Anpassung verlangt.',
      'Die Vorschriften vor Ort gehen vor; es entscheidet, wer zur Abgabe befugt ist.',
      'Kinder: Messen Sie sie so, wie Vorschriften und Ausbildung es verlangen; entscheiden Sie nicht nach einem Bild.',
      'Schielen: Beide Augen fixieren nie gemeinsam. Messen Sie jedes Auge bei abgedecktem anderen.',
      'Starke Gläser und Gleitsichtgläser brauchen die Anpassmaße ihres Herstellers, was auch immer das Bild sagt.',
    ],
    privacy: 'Nichts verlässt dieses Gerät von selbst: kein Konto, und kein Server, der etwas erhält.',
    privacyMore:
      'Was Sie eingeben, bleibt in diesem Browser, bis Sie seine Sitzung löschen; ein Bild nur, wenn die Person zustimmt, und Kameraprofile, bis Sie sie löschen.',
  },

  hand: {
    another: (name) => `Weiterer Messwert: ${name}`,
    tried: (name) => `${name}: die zuletzt eingegebene Größe`,
    verdicts: { loose: 'locker', fits: 'passt', tight: 'eng' },
    several: (scales, steps) => `${scales.join('; ')}${steps === '' ? '' : `; jeweils ${steps}`}`,
    repeats: (several, mean, range, deviation) =>
      `${several}: Mittel ${mean}, Spannweite ${range}, Standardabweichung ${deviation}`,
    farOff: (values) =>
      `${list(values)} ${values.length === 1 ? 'liegt' : 'liegen'} weit von den anderen: noch einmal messen`,
    scattered: 'weiter auseinander, als eine Person sonst misst: noch einmal messen',
    trials: (value, low, high) => `${value}, zwischen ${low} und ${high}`,
    untried: (low, high, size) => `zwischen ${low} und ${high}; ${size} wurde nicht probiert`,
    earlier: 'früherer Eintrag',
    andEarlier: (count) => (count === 1 ? 'und 1 früherer' : `und ${count} frühere`),
    earlierBy: (by, when) => (by === '' ? when : `${by}, ${when}`),
    otherRead: (reader, value) => `${reader}: ${value}`,
    differBy: (difference) => `beide liegen ${difference} auseinander`,
    confirmed: (by) => (by === '' ? 'bestätigt' : `bestätigt: ${by}`),
  },

  header: {
    name: 'Glabella',
    whatItIs: 'Eine zweite Messung eines Gesichts, aus einem Bild oder einer kurzen Bildfolge.',
    actions: 'Messblatt',
    keys: 'Tasten',
    settings: 'Einstellungen',
    practice: 'Betrieb',
    order: 'Auftragsblatt',
    printCard: 'Karte zum Drucken',
    printSheet: 'Messblatt drucken',
    skipToReadings: 'Zu den Messwerten',
  },

  helpButton: {
    openFor: (name) => `Hilfe zu ${name}: wie und wo gemessen wird`,
    button: 'Hilfe',
    sign: '?',
  },

  holding: {
    heading: 'Wie die Karte gehalten wird',
    steps: [
      'Irgendeine Karte im Format einer Bankkarte, oder die gedruckte. Flach an die Stirn; ist Haar im Weg, über oder unter den Mund.',
      'Lange Kante waagerecht, alle vier Kanten frei: mit zwei Fingerspitzen an einer kurzen Seite halten.',
      'Kamera in Augenhöhe, etwa 40 bis 60 cm entfernt, Gesicht gerade zu ihr, Licht von vorn.',
    ],
    cautions: [
      'Die Kanten einer Karte sind scharf: Halten Sie sie von den Augen fern und reichen Sie die Karte flach.',
      'Die Person darf nicht in Lampen oder in die Sonne blicken.',
    ],
  },

  language: {
    choose: 'Sprache',
    failed: (name) =>
      `${name} konnte nicht geladen werden. Stellen Sie einmal eine Internetverbindung her und wählen Sie die Sprache noch einmal.`,
  },

  misfit: {
    heading: 'Was nicht passt',
    fits: 'An den Messwerten fällt nichts auf.',
    basis:
      'Ein Prozentwert ist der Anteil genau dieser Ursache an allem, was geschehen sein könnte, bei gewählten Häufigkeiten von Versehen; er ist eher zu niedrig. Nichts wird geändert, bis Sie es übernehmen.',
    unexplained: 'Kein übliches Versehen erklärt es: Messen Sie noch einmal.',
    unsure: 'Es kann etwas anderes sein: Messen Sie noch einmal.',
    refused: (place, why) => `${place}: ${why}`,
    doesNotAddUp: (place) => `${place}: R und L ergeben nicht das Ganze. Messen Sie alle drei noch einmal.`,
    disagrees: (place, hand, camera) => `${place}: ${hand} von Hand, ${camera} laut Kamera.`,
    readersDiffer: (place, own, other, otherReader) =>
      `${place}: ${own} auf diesem Messblatt, ${other} bei ${otherReader === '' ? 'der anderen Messung' : otherReader}. So weit sollten zwei Messende nicht auseinanderliegen.`,
    farOff: (place, count, farOff, others) =>
      `${place}: ${farOff} ${count === 1 ? 'liegt' : 'liegen'} weit von den anderen Wiederholungen (${others}).`,
    unusual: (place, value, low, high) =>
      `${place}: ${value} ist ungewöhnlich (die meisten Erwachsenen: ${low} bis ${high}).`,
    ways: {
      disagrees: 'Messen Sie noch einmal, oder prüfen Sie die Punkte im Bild.',
      readersDiffer: 'Beide messen noch einmal, jeder ohne die Zahl des anderen.',
      farOffRepeat: 'Messen Sie noch einmal und streichen Sie die falsch abgelesene Zahl.',
      unusual: 'Nichts widerspricht, und es gibt ungewöhnliche Gesichter: Sehen Sie noch einmal hin.',
    },
  },

  news: { misfit: (place, what) => `${place}: ${what}.` },

  notes: {
    heading: 'Person und Vermerke',
    wearer: 'Person',
    wearerNote: 'wie Sie sie nennen',
    squint: 'Schielen: Beide Augen fixieren nie gemeinsam',
    squintChanges: (names) => `Bei abgedecktem anderen Auge messen: ${names}.`,
    light: 'Licht für Pupillendurchmesser',
    noLight: 'nicht vermerkt',
    lights: { bright: 'hell', room: 'Raumlicht', dim: 'schwach' },
    lightMissing: 'Ein Pupillendurchmesser sagt wenig ohne das Licht, bei dem er gemessen wurde.',
    remark: 'Bemerkung',
  },

  offline: {
    part: 'Nutzung ohne Netz',
    complete: 'Bereit zur Nutzung ohne Netz.',
    fetching: (kept, all) => `Wird für die Nutzung ohne Netz vorbereitet: ${kept} von ${all} MB`,
    incomplete: (kept, all) => `Nicht bereit zur Nutzung ohne Netz: ${kept} von ${all} MB sind da.`,
    why: {
      network: 'Die Verbindung ist abgerissen. Es geht von selbst weiter, wenn sie wieder da ist.',
      storage:
        'Dieses Gerät nimmt nichts mehr auf. Schaffen Sie Platz und machen Sie dann weiter. Mit Netz geht alles wie zuvor.',
      'other-build': 'Auf dem Server liegt eine neuere Version. Sie wird hier angeboten, sobald sie da ist.',
    },
    goOn: 'Jetzt weitermachen',
    partMissing: 'Dieser Teil von Glabella konnte nicht geladen werden. Nichts Eingegebenes ist verloren.',
    loadAgain: 'Noch einmal laden',
    newer: {
      waiting: 'Eine neuere Version von Glabella ist da.',
      taken: 'In einem anderen Fenster wurde eine neuere Version von Glabella übernommen.',
      whatGoes:
        'Die Seite wird dafür neu geladen: Eingegebenes bleibt, ein Bild oder eine Bildfolge auf dem Bildschirm geht verloren.',
      take: 'Jetzt übernehmen',
    },
  },

  picture: {
    heading: 'Bild',
    take: 'Bild aufnehmen',
    takeAnother: 'Weiteres Bild aufnehmen',
    choose: 'Bilddatei wählen',
    chooseAnother: 'Andere Datei wählen',
    dropHere:
      'oder hier ablegen oder einfügen (JPEG, PNG oder WebP). Mehrere Bilder (in der Reihenfolge ihrer Namen) oder ein Video werden als Bildfolge gemessen.',
    letGo: 'Loslassen, um dieses Bild zu messen, oder mehrere als Bildfolge',
    cancel: 'Abbrechen',
    putAway: 'Bild weglegen',
    face: 'Gesicht',
    wholePicture: 'Ganzes Bild',
    wholePictureOf: (name) => `Ganzes Bild: ${name}`,
    viewOf: 'Ansicht',
    undo: 'Rückgängig',
    redo: 'Wiederholen',
    reset: 'Wie gefunden',
    placeByHand: 'Ecken von Hand setzen',
    cornersPlaced: 'Die Ecken sitzen',
    placing:
      'Ziehen Sie jede Ecke des Rahmens dorthin, wo sich die geraden Kanten der Karte treffen würden, und bestätigen Sie dann.',
    eye: { R: 'Rechtes Auge (R)', L: 'Linkes Auge (L)' },
    found: 'Karte, beide Iris, Lider und Mittellinie gefunden.',
    corrected: 'Von Hand korrigiert.',
    handleHint:
      'Ziehen Sie einen Punkt, der nicht richtig sitzt, oder gehen Sie mit Tab zu ihm: Pfeiltasten bewegen ihn um 1 Pixel, mit Umschalttaste um 0,1 Pixel.',
    keyHeading: 'Was die Linien bedeuten',
    key: 'Durchgezogener Rahmen: die Karte; Ringe: die Irisränder; kurze Striche: die Lidränder; gestrichelte Linie: die Mitte der Nasenwurzel; Dreiecke: die Seiten von Kopf und Schläfen.',
    gaze: 'Die Person blickte',
    gazeCamera: 'in die Kamera',
    gazeFar: 'in die Ferne',
    gazeNote: 'Bei „in die Kamera“ stehen die Pupillen näher beieinander; die Fern-PD wird daraus errechnet.',
    facts: 'Was dieses Bild sonst noch sagt',
    nearPd: 'Nah-PD',
    nearPdFor: (mm) => `für ${mm} mm`,
    irisDiameter: 'Irisdurchmesser',
    distance: 'Abstand zur Kamera',
    turned: 'Kopfdrehung',
    turnedBy: (aside, nod, towards) => `${aside}° zur Seite, ${nod}° nach ${towards === 'up' ? 'oben' : 'unten'}`,
    scale: 'Maßstab',
    pixelsPerMm: (value) => `${value} Pixel je mm`,
    irisCheck: {
      usual: 'wie Iris üblicherweise sind: Der Maßstab ist plausibel',
      unusual: 'ungewöhnlich für eine Iris: Prüfen Sie Karte und Ringe noch einmal',
    },
    better: 'Was das nächste Bild besser machen würde',
  },

  reader: {
    legend: 'Wer misst',
    first: 'Erste Messung',
    second: 'Zweite Messung',
    name: { first: 'Name zur ersten Messung', second: 'Name zur zweiten Messung' },
    namePlaceholder: 'Name',
    coveredFrom: {
      first: 'Die zweite Messung ist verdeckt; jede ihrer Zeilen erscheint, sobald Ihre eingegeben ist.',
      second: 'Die erste Messung ist verdeckt; jede ihrer Zeilen erscheint, sobald Ihre eingegeben ist.',
    },
  },

  ruler: {
    lane: (side, difference, low, high, tolerance) =>
      `${side === null ? '' : side === 'R' ? 'Rechts: ' : 'Links: '}Hand minus Kamera ${difference} mm, 95-%-Intervall ${low} bis ${high} mm, Toleranz plus oder minus ${tolerance} mm`,
  },

  search: {
    label: 'Zu einem Maß gehen',
    none: 'Kein Maß dieses Namens steht auf dem Messblatt.',
    count: (count) => counted(count, 'Maß', 'Maße'),
  },

  sheet: {
    heading: 'Messwerte',
    caption:
      'Messwerte von Hand, Schätzwerte der Kamera und Befunde; Längen in Millimetern, Winkel in Grad. R und L sind die Seiten der Person.',
    measurement: 'Maß',
    hand: 'Hand',
    camera: 'Kamera ± 95 %',
    cameraShort: 'Kamera',
    difference: 'Hand − Kamera',
    drawn: 'Hand gegen Kamera zeichnen',
    toleranceIs: (value, status) => `Toleranz ± ${value}, ${status}`,
    finding: 'Befund',
    groups: { eyes: 'Augen', head: 'Kopf', nose: 'Nase', sides: 'Bügel', frame: 'Mit Fassung' },
    groupCount: (filled, all) => `${filled} von ${all} eingegeben`,
    groupMisfits: (count) => (count === 1 ? '1 Messwert fraglich' : `${count} Messwerte fraglich`),
    side: { R: 'R', L: 'L' },
    sideHead: { R: 'R:', L: 'L:' },
    sideWord: { R: 'rechts', L: 'links' },
    eyesSum: (sum) => `R + L = ${sum}`,
    covered: 'verdeckt, bis Ihr Messwert da ist',
    coveredBoth: 'verdeckt, bis R und L da sind',
    coveredShort: 'verdeckt',
    details: 'Einzelheiten',
    detailsOf: (name) => `Einzelheiten zu ${name}: Definition, Unsicherheit und Toleranz`,
    handField: (name, unit) => `${name}, Messwert von Hand in ${unit === 'mm' ? 'mm' : 'Grad'}`,
    cameraCell: (name) => `${name}, Kamera`,
    disagrees: 'widerspricht der Kamera',
    preFitting: 'Schätzwert vor der Anpassung',
    notIndependent:
      'Diese Messwerte entstanden, nachdem die Schätzwerte gezeigt wurden; beide sind also nicht unabhängig voneinander.',
    howTaken: 'Von Hand:',
    step: (resolution) => `Ablesen auf ${resolution}.`,
    squint: 'Bei Schielen:',
    squintChanges: (how) => `Bei Schielen: ${how}`,
    notComparable: 'Der Wert der Kamera fehlt hier: Er setzt voraus, dass beide Augen auf dasselbe blicken.',
    definedBy: (source, status) => `Definition nach ${source} (${status}).`,
    share: 'Anteil',
    source: 'Quelle',
    findingsCount: (agree, disagree, cannotTell) =>
      `Befunde: ${agree} ${agree === 1 ? 'stimmt' : 'stimmen'} überein, ${disagree} ${disagree === 1 ? 'widerspricht' : 'widersprechen'}, ${cannotTell} unentschieden.`,
    findingOf: (name, word, reason) => `${name}: ${word}. ${upperFirst(reason)}.`,
    doubtHeading: 'Woher diese Unsicherheit kommt',
    doubtCovered: 'Der Wert der Kamera ist noch verdeckt. Seine Unsicherheit wird mit ihm gezeigt.',
    toleranceHeading: 'Toleranz und ihre Quelle',
    usualHeading: 'Was üblich ist',
    usual: (mean, low, high) => `Erwachsene: im Mittel ${mean}, 19 von 20 zwischen ${low} und ${high}`,
    usualSides: (difference) => `Rechts und links unterscheiden sich in 19 von 20 Fällen um weniger als ${difference}`,
    reader: (deviation) => `Wer noch einmal misst, streut um ± ${deviation} (eine Standardabweichung)`,
    sourced: (what, status, source) => `${what} (${status}): ${source}.`,
    definitionHeading: 'Was gemessen wird',
    total: 'Zusammen, eine Standardabweichung',
    alone: {
      offer: 'Noch keine Messwerte von Hand?',
      show: 'Nur die Schätzwerte zeigen',
      cover: 'Wieder verdecken',
      mark: 'Schätzwerte vor der Anpassung',
      note: 'Was die Kamera sagt, ohne Messwert von Hand daneben. Nicht geprüft: Bestellen Sie nicht danach.',
    },
    whatUnsureSweepDecides:
      'Diese Bildfolge ist nicht sicherer als ein Bild. Einer Zeile kann sie nur widersprechen, wo der Unterschied größer ist als ihre eigene Unsicherheit.',
    whatSweepDecides:
      'Eine Bildfolge entscheidet am besten über die Fern-PD und die PD je Auge. Den anderen Zeilen kann sie nur widersprechen, wo der Unterschied größer ist als ihre eigene Unsicherheit.',
    whatDecides:
      'Ein Bild entscheidet über die Fern-PD und meist über die Lidspalte. Den anderen Zeilen kann es nur widersprechen, und nur, wo der Unterschied größer ist als seine eigene Unsicherheit.',
    unitHint: 'Längen in Millimetern, Winkel in Grad; R und L sind die Seiten der Person.',
    howTyped:
      'Geben Sie ein, was die Skala zeigt. Wiederholungen stehen im selben Feld, mit einem Leerzeichen dazwischen; hinter probierten Größen steht jeweils loose (locker), fits (passt) oder tight (eng), kurz l, f, t.',
    touchHint:
      'Geben Sie ein, was die Skala zeigt; die Schaltfläche neben einem Feld fügt einen weiteren Messwert hinzu.',
    keysHint:
      'Die Eingabetaste geht zum nächsten Feld, mit Umschalttaste zurück; Pfeile gehen auf und ab, / findet ein Maß nach seinem Namen.',
  },

  slipsInShort: {
    'digits-swapped': 'zwei Ziffern vertauscht',
    'sides-swapped': 'rechts und links vertauscht',
    'offset-forgotten': 'Zuschlag vergessen',
    'offset-twice': 'Zuschlag doppelt',
    'near-for-distance': 'Nähe statt Ferne',
    'distance-for-near': 'Ferne statt Nähe',
    'half-for-whole': 'ein Auge statt beider',
    'whole-for-half': 'beide Augen statt eines',
    halved: 'Hälfte des Ganzen',
    'point-moved': 'Komma',
    centimetres: 'in Zentimetern',
    inches: 'in Zoll',
    'rows-swapped': 'zwei Zeilen vertauscht',
    'row-repeated': 'Nachbarzeile wiederholt',
    'ten-off': 'falscher Zehner',
    'digit-wrong': 'eine Ziffer falsch',
    'sign-lost': 'falsches Vorzeichen',
  },

  store: {
    refused: {
      what: 'Dieser Browser lässt die Seite nichts aufbewahren.',
      next: 'Private Fenster tun das oft. Eingegebenes bleibt, bis diese Seite geschlossen wird: Speichern Sie es als Datei, oder öffnen Sie Glabella in einem gewöhnlichen Fenster.',
    },
    full: {
      what: 'Auf diesem Gerät ist kein Platz mehr.',
      next: 'Speichern Sie die Sitzungen als Datei und löschen Sie alte, oder schaffen Sie Platz auf dem Gerät.',
    },
    broken: {
      what: 'Die aufbewahrten Sitzungen sind nicht erreichbar.',
      next: 'Eingegebenes steht nur auf dem Bildschirm: Speichern Sie es als Datei. Laden Sie dann diese Seite neu.',
    },
    newer: {
      what: 'Die Sitzungen hier wurden von einer neueren Version von Glabella aufbewahrt.',
      next: 'Laden Sie diese Seite mit Internetverbindung neu, damit die neuere Version kommt. Nichts wurde geändert.',
    },
    locked: {
      what: 'Die aufbewahrten Sitzungen sind gesperrt.',
      next: 'Entsperren Sie sie mit der Passphrase.',
    },
    missing: {
      what: 'Diese Sitzung ist nicht mehr hier.',
      next: 'Sie wurde gelöscht, vielleicht in einem anderen Fenster.',
    },
    unreadable: {
      what: 'Diese Sitzung ist nicht mehr lesbar.',
      next: 'Was davon übrig ist, lässt sich als Datei speichern. Die anderen Sitzungen bleiben unberührt.',
    },
    changedElsewhere: {
      what: 'Diese Sitzung wurde in einem anderen Fenster geändert, seit sie hier geöffnet wurde.',
      next: 'Nichts wurde überschrieben.',
    },
  },

  strip: {
    gauge: (name) => `gemessen mit ${name}`,
    step: (resolution) => `auf ${resolution}`,
    misfits: things,
    show: 'Zeigen',
    showMisfits: 'Zeigen, was nicht passt',
  },

  sweep: {
    take: 'Bildfolge aufnehmen',
    takeAnother: 'Weitere Bildfolge aufnehmen',
    heading: 'Bildfolge aufnehmen',
    what: 'Einige Sekunden, in denen die Person den Kopf langsam dreht und sich ein wenig vor- und zurücklehnt. Viele Einzelbilder entscheiden mehr als ein Bild.',
    rules: {
      still: 'Die Karte bleibt fest an ihrer Stelle im Gesicht: Kopf und Karte bewegen sich wie eins.',
      camera:
        'Beide Augen die ganze Zeit auf die Linse der Kamera. Die Marke ist aus dem Augenwinkel zu sehen, oder Sie sagen sie an.',
      far: 'Beide Augen die ganze Zeit an der Kamera vorbei in die Ferne. Sagen Sie an, wohin die Marke geht.',
      slow: 'Langsam: etwa 15° zu jeder Seite, dann eine Handbreit näher und weiter weg.',
    },
    start: 'Bildfolge beginnen',
    goOn: 'Bildfolge fortsetzen',
    close: 'Schließen',
    measureNow: (count) => (count === 1 ? 'Mit diesem Einzelbild messen' : `Mit diesen ${count} Einzelbildern messen`),
    key: 'Ring: wohin; Punkt: wo der Kopf jetzt ist; kleine Striche: die aufgenommenen Einzelbilder.',
    right: 'rechts',
    left: 'links',
    near: 'nah',
    far: 'fern',
    steps: {
      hold: 'Gesicht zur Kamera, Augen dorthin, wohin Sie blicken sollen.',
      'turn-R': 'Drehen Sie den Kopf langsam nach rechts.',
      'turn-L': 'Drehen Sie den Kopf langsam nach links.',
      'to-middle': 'Langsam zurück zur Mitte.',
      nearer: 'Lehnen Sie sich etwas vor.',
      farther: 'Lehnen Sie sich etwas zurück.',
      back: 'Zurück zum Anfang.',
    },
    ready: {
      camera: 'Bereit, wenn die Person die Karte hält und in die Linse blickt.',
      far: 'Bereit, wenn die Person die Karte hält und an der Kamera vorbei in die Ferne blickt.',
    },
    working: 'Lassen Sie die Karte, wo sie ist; die Einzelbilder werden angesehen.',
    enough: 'Genug. Die Person kann ausruhen; die letzten Einzelbilder werden angesehen.',
    looking: 'Die Einzelbilder werden angesehen',
    short: (gaps) => `Noch nicht genug: ${gaps}. Halten Sie die Karte wie zuvor und machen Sie weiter.`,
    hardlyTurned: (gaps) =>
      `Der Kopf hat sich kaum gedreht. Es fehlt noch: ${gaps}. Halten Sie die Karte wie zuvor und machen Sie weiter.`,
    lessSure: 'Das ist weniger, als nützlich ist: Das Ergebnis wird unsicherer.',
    firstFrame: 'Halten Sie Karte und Augen still; es beginnt, wenn das erste Einzelbild angesehen ist.',
    trouble: (reason) => `Die letzten Einzelbilder waren nicht brauchbar: ${reason}.`,
    needed: 'Was die Bildfolge braucht',
    has: 'genug',
    lacks: 'fehlt noch',
    turned: { R: 'Nach rechts gedreht', L: 'Nach links gedreht' },
    distance: 'Näher und weiter weg',
    frames: 'Einzelbilder',
    degreesOf: (is, wanted) => `${is}° von ${wanted}°`,
    percentOf: (is, wanted) => `${is} von ${wanted}`,
    framesOf: (is, wanted) => `${is} von ${wanted}`,
    workingThrough: (done, all) => `Einzelbilder durchgehen: ${done} von ${all}`,
    openingVideo: 'Das Video wird geöffnet',
    lookingAt: 'Die Einzelbilder der Bildfolge werden angesehen.',
    measuring: 'Alle Einzelbilder werden zusammen gemessen',
    renewing: 'Es wird neu gemessen; die Zahlen sind noch die vorigen.',
    stop: 'Hier aufhören',
    putAway: 'Bildfolge weglegen',
    dismiss: 'Hinweis schließen',
    backTo: { picture: 'Zurück zum früheren Bild', sweep: 'Zurück zur früheren Bildfolge' },
    earlier: {
      picture: 'Eine Bildfolge ist unterwegs: Die gezeigten Kamerawerte sind noch die des früheren Bildes.',
      sweep: 'Eine neue Bildfolge ist unterwegs: Die gezeigten Kamerawerte sind noch die der früheren.',
    },
    dropped: (count) =>
      `Die Bildfolge wurde abgebrochen, ${count === 1 ? '1 Einzelbild' : `${count} Einzelbilder`} verworfen. Sonst hat sich nichts geändert.`,
    bestAlone: 'Das beste Einzelbild als ein Bild messen',
    framesOfFailed: 'Was aus den Einzelbildern wurde',
    used: (used, all) => `${used} von ${frames(all)}${all === 1 ? '' : 'n'} verwendet.`,
    slipped: (frame) => `Die Karte ist bei Einzelbild ${frame} verrutscht; der Rest wurde ausgelassen.`,
    strip: 'Einzelbilder der Bildfolge',
    stripHint:
      'Wählen Sie ein Einzelbild, um es anzusehen (Pfeiltasten gehen sie durch). Lassen Sie aus, dem Sie nicht trauen.',
    frame: (number) => `Einzelbild ${number}`,
    useFrame: (number) => `Einzelbild ${number} verwenden`,
    noPicture: 'Dieses Einzelbild kann nicht gezeigt werden.',
    facing: {
      R: (degrees) => `${degrees}° nach rechts gedreht`,
      L: (degrees) => `${degrees}° nach links gedreht`,
      straight: 'gerade',
    },
    standings: STANDINGS,
    standingsOfFailed: { ...STANDINGS, 'not-measured': 'alles gefunden' },
    standingsLong: {
      used: 'Verwendet.',
      slipped: 'Nicht verwendet: Die Karte saß anders im Gesicht als auf den meisten Einzelbildern.',
      misfit:
        'Nicht verwendet: Es passt nicht zu den anderen. Ein Blinzeln, eine Unschärfe, oder die Augen blickten anderswohin.',
      'left-out': 'Von Ihnen ausgelassen.',
      'not-measured': 'Noch nicht gemessen.',
    },
    foundOnly: 'Alles wurde darin gefunden, aber die Bildfolge hat keine Zahlen.',
    facts: 'Was diese Bildfolge sonst noch sagt',
    from: (low, high) => `${low} bis ${high}`,
    turnedFromTo: (right, left) => `${right}° rechts bis ${left}° links`,
    turnedOneSide: {
      R: (low, high) => `${low}° bis ${high}° nach rechts`,
      L: (low, high) => `${low}° bis ${high}° nach links`,
    },
    better: 'Was die nächste Bildfolge besser machen würde',
    found: (headline) => `Bildfolge gemessen. ${headline}`,
  },

  doubtSource: {
    'card-size': 'wahre Größe der Karte',
    'card-edges': 'Lage der Kartenkanten im Bild',
    'iris-edges': 'Lage der Irisränder im Bild',
    'lid-edges': 'Lage der Lidränder im Bild',
    'contact-depth': 'wie weit die berührte Haut vor den Augen liegt',
    camera: 'Bildwinkel und Verzeichnung der Kamera',
    'head-pose': 'wie der Kopf gedreht ist',
    'iris-size': 'wie breit die Iris dieser Person sind',
    gaze: 'wohin die Augen blickten',
    midline: 'wo die Mitte der Nasenwurzel liegt',
    'head-shape': 'wie dieser Kopf vom angepassten abweicht',
    'between-frames': 'Streuung zwischen den Einzelbildern',
  },

  status: {
    long: {
      verified: 'in der Quelle gesehen',
      'verified-secondary': 'in einem Text gesehen, der die Quelle wiedergibt',
      computed: 'aus offenen Daten berechnet',
      derived: 'aus der Quelle abgeleitet',
      'common-practice': 'übliche Praxis',
      'from-memory': 'aus dem Gedächtnis, nicht geprüft',
      chosen: 'für diese App gewählt',
    },
    short: {
      verified: 'veröffentlicht',
      'verified-secondary': 'veröffentlicht',
      computed: 'berechnet',
      derived: 'abgeleitet',
      'common-practice': 'üblich',
      'from-memory': 'ungeprüft',
      chosen: 'gewählt',
    },
  },

  readingFailure: {
    notANumber: (typed) => `„${typed}“ ist keine Zahl.`,
    hints: {
      otherUnit: {
        mm: 'Geben Sie es in mm ein, ohne die Einheit.',
        deg: 'Geben Sie es in Grad ein, ohne die Einheit.',
      },
      ownUnit: 'Lassen Sie die Einheit weg.',
      ownUnitBehind: (number) => `Lassen Sie die Einheit weg: ${number}.`,
      joined: 'Setzen Sie ein Leerzeichen zwischen Wiederholungen, etwa 63 63,5 62,5.',
      digits: 'Geben Sie Ziffern mit höchstens einem Komma oder Punkt ein, etwa 63,5.',
    },
    onScale: (scale, value) => `${scale} auf der Skala steht für ${value}.`,
    notPositive: 'Ein Messwert muss über null liegen. Geben Sie die Zahl ein, die das Messmittel zeigt.',
    impossible: (value, low, high) =>
      `${value} kann nicht sein: Ein solcher Messwert liegt zwischen ${low} und ${high}. Sehen Sie noch einmal auf das Messmittel.`,
    notATrial: (typed) => `„${typed}“ ist keine Probe.`,
    howTrialsAreTyped:
      'Geben Sie hinter jeder Größe loose (locker), fits (passt) oder tight (eng) ein, etwa 10 loose 9 fits 8 tight.',
    tooMany: (count, limit) =>
      `Hier stehen ${count} Zahlen, höchstens ${limit} werden genommen. Lassen Sie weg, was nicht hierher gehört.`,
    writtenTwice: (size, one, other) =>
      `${size} ist als „${one}“ und als „${other}“ geschrieben. Probieren Sie noch einmal.`,
    contradiction: (smaller, asSmaller, larger, asLarger) =>
      `${smaller} ist als „${asSmaller}“ geschrieben und ${larger} als „${asLarger}“, aber eine kleinere Größe kann nicht lockerer sein. Probieren Sie beide noch einmal.`,
    oneSided: {
      loose: (next) => `Bisher waren alle Größen locker. Probieren Sie als nächste ${next}.`,
      tight: (next) => `Bisher waren alle Größen eng. Probieren Sie als nächste ${next}.`,
    },
  },

  finding: {
    ofOne: { agrees: 'stimmt überein', disagrees: 'widerspricht', 'cannot-tell': 'unentschieden' },
    ofBoth: { agrees: 'stimmen überein', disagrees: 'widersprechen', 'cannot-tell': 'unentschieden' },
    within: 'innerhalb der Toleranz',
    outside: 'außerhalb der Toleranz, auch mit der Unsicherheit beider: noch einmal messen',
    tooWide: {
      picture: (doubt, tolerance) => `±\u00a0${doubt} aus einem Bild ist zu weit für ±\u00a0${tolerance}`,
      sweep: (doubt, tolerance) => `±\u00a0${doubt} aus einer Bildfolge ist zu weit für ±\u00a0${tolerance}`,
    },
    setLidMarks: (reason) => `${reason}; setzen Sie die Lidmarken unter der Lupe`,
    between: (needed) => `zu knapp: ±\u00a0${needed} würde entscheiden`,
    handUnsure: (needed) =>
      `der Messwert von Hand ist zu unsicher; auf ±\u00a0${needed} genau würde er entscheiden: noch einmal messen`,
  },

  lengthFailure: {
    noLength: 'Geben Sie eine Länge in mm ein, etwa 400. Bis dahin gelten 400 mm.',
    beyond: (lowest, highest) =>
      `Geben Sie eine Länge zwischen ${lowest} und ${highest} mm ein. Bis dahin gelten 400 mm.`,
    print: {
      noLength: 'Geben Sie die gemessene Länge in mm ein, etwa 149,5. Bis dahin gilt der Druck als maßhaltig.',
      otherUnit: {
        cm: (mm) => `Waren Zentimeter gemeint? Dann geben Sie ${mm} mm ein.`,
        inch: (mm) => `War Zoll gemeint? Dann geben Sie ${mm} mm ein.`,
      },
      beyond: (measured, lowest, highest) =>
        `${measured} mm lassen sich nicht berücksichtigen: Ein brauchbarer Druck zeigt ${lowest} bis ${highest} mm. Drucken Sie noch einmal mit 100 %.`,
    },
  },

  slip: {
    under: (percent) => `unter ${percent}`,
    over: (percent) => `über ${percent}`,
    clauses: {
      'digits-swapped': (slip) => `bei ${slip.places} wurden ${adverb(slip)} zwei Ziffern vertauscht`,
      'rows-swapped': (slip) =>
        slip.rows === null
          ? `${slip.places} ${were(slip)} vertauscht`
          : `die Zeilen ${slip.rows} wurden ${adverb(slip)} vertauscht, rechts und links`,
      'row-repeated': (slip) =>
        `für ${slip.places} wurde ${adverb(slip)} noch einmal die Zahl der Zeile darüber oder darunter geschrieben`,
      'sides-swapped': (slip) => `${slip.places} ${were(slip)} vertauscht`,
      'offset-forgotten': (slip) => `bei ${slip.places} wurde ${adverb(slip)} ${amountNeeded(slip)} vergessen`,
      'offset-twice': (slip) => `bei ${slip.places} wurde ${adverb(slip)} ${amountNeeded(slip)} doppelt gerechnet`,
      'near-for-distance': (slip) => `für ${slip.places} wurde ${adverb(slip)} der Wert für die Nähe geschrieben`,
      'distance-for-near': (slip) => `für ${slip.places} wurde ${adverb(slip)} der Wert für die Ferne geschrieben`,
      'half-for-whole': (slip) => `für ${slip.places} wurde ${adverb(slip)} der Wert nur eines Auges geschrieben`,
      'whole-for-half': (slip) => `für ${slip.places} wurde ${adverb(slip)} der Wert beider Augen geschrieben`,
      halved: (slip) => `${slip.places} ${were(slip)} nicht gemessen, sondern als Hälfte des Ganzen eingetragen`,
      'point-moved': (slip) => `bei ${slip.places} wurde ${adverb(slip)} das Komma verschoben oder vergessen`,
      centimetres: (slip) => `${slip.places} ${were(slip)} in Zentimetern geschrieben`,
      inches: (slip) => `${slip.places} ${were(slip)} in Zoll geschrieben`,
      'ten-off': (slip) => `${slip.places} ${were(slip)} am falschen Zehner abgelesen`,
      'digit-wrong': (slip) => `bei ${slip.places} wurde ${adverb(slip)} eine Ziffer falsch geschrieben`,
      'sign-lost': (slip) => `${slip.places} ${were(slip)} mit falschem Vorzeichen geschrieben`,
    },
    explained: (clause, instead, probability) => `${upperFirst(clause)}: ${instead} (${probability}).`,
    explainedByTwo: (one, insteadOfOne, other, insteadOfOther, probability) =>
      `Zweierlei (${probability}): ${one} (${insteadOfOne}), und ${other} (${insteadOfOther}).`,
    instead: (written, restored) => `${written} statt ${restored}`,
    insteadAt: (place, instead) => `${place} ${instead}`,
    nextSame: (value, probability) => `Sonst am ehesten: dasselbe, aber ${value} (${probability}).`,
    next: (causes, probability) => `Sonst am ehesten: ${causes} (${probability}).`,
    nextCause: (places, phrase, value) =>
      `${places === null ? '' : `bei ${places} `}${phrase}${value === null ? '' : `, dann ${value}`}`,
    phrases: {
      'digits-swapped': 'zwei Ziffern vertauscht',
      'sides-swapped': 'rechts und links vertauscht',
      'offset-forgotten': 'ohne den Zuschlag für ein Messmittel',
      'offset-twice': 'mit doppeltem Zuschlag für das Messmittel',
      'near-for-distance': 'Nähe statt Ferne geschrieben',
      'distance-for-near': 'Ferne statt Nähe geschrieben',
      'half-for-whole': 'der Wert eines Auges statt beider geschrieben',
      'whole-for-half': 'der Wert beider Augen statt eines geschrieben',
      halved: 'die Hälfte des Ganzen geschrieben',
      'point-moved': 'Komma verschoben oder vergessen',
      centimetres: 'in Zentimetern geschrieben',
      inches: 'in Zoll geschrieben',
      'rows-swapped': 'zwei Zeilen vertauscht',
      'row-repeated': 'die Zahl der Zeile darüber oder darunter noch einmal geschrieben',
      'ten-off': 'am falschen Zehner abgelesen',
      'digit-wrong': 'eine Ziffer falsch',
      'sign-lost': 'falsches Vorzeichen',
    },
    readAgain: (place) => `${place} noch einmal messen`,
    valueFor: (value, place) => `${value} für ${place}`,
    offer: (used, kept) => `${used} übernehmen, ${kept} in der Historie behalten`,
    offerPlace: (place) => ` (${place})`,
    probably: (value, inShort) => `wahrscheinlich ${value === null ? '' : `${value}: `}${inShort}`,
    marks: {
      'does-not-add-up': 'R und L ergeben nicht das Ganze',
      suspected: 'passt nicht',
      inDoubt: 'fraglich',
      disagrees: 'widerspricht',
      'readers-differ': 'beide Messungen weichen voneinander ab',
      'far-off-repeat': 'eine Wiederholung weit von den anderen',
      unusual: 'ungewöhnlich: noch einmal hinsehen',
      refused: {
        impossible: 'kann nicht sein',
        'not-positive': 'kann nicht sein',
        'trials-contradict': 'die Proben widersprechen sich',
        'not-a-number': 'keine Zahl',
        'not-a-trial': 'keine Probe',
        'too-many-repeats': 'zu viele Zahlen',
      },
    },
  },

  measuringFailure: {
    'no-face': {
      what: 'In diesem Bild wurde kein Gesicht gefunden.',
      next: 'Lassen Sie die Person in die Kamera blicken, Licht von vorn, das ganze Gesicht im Bild, und nehmen Sie ein weiteres auf.',
    },
    'several-faces': (count): Saying => ({
      what: `In diesem Bild sind ${count} Gesichter.`,
      next: 'Nehmen Sie die Person allein auf; achten Sie auf Gesichter auf Plakaten und in Spiegeln.',
    }),
    'no-card': {
      what: 'Ein Gesicht wurde gefunden, aber keine Karte.',
      next: 'Halten Sie eine Karte im Bankkartenformat flach an die Stirn, lange Kante waagerecht, alle vier Kanten frei und gut von der Haut zu unterscheiden. Oder nehmen Sie die gedruckte Markerkarte.',
    },
    'several-cards': {
      what: 'Mehr als eine Karte wurde gefunden.',
      next: 'Legen Sie alle bis auf eine weg und nehmen Sie ein weiteres Bild auf.',
    },
    'card-not-flat': (offPx): Saying => ({
      what: `Der Umriss passt nicht zu einer flachen Karte: Er weicht um ${offPx} Pixel ab.`,
      next: 'Nehmen Sie eine Karte, die nicht gebogen ist, halten Sie die Finger von den Ecken fern, oder setzen Sie die Ecken von Hand.',
    }),
    'card-tilted': (degrees, limit): Saying => ({
      what: `Die Karte ist um ${degrees}° zur Kamera geneigt; bis ${limit}° kann gemessen werden.`,
      next: 'Legen Sie die Karte flach auf die Haut, den Kopf aufrecht, die Kamera in Augenhöhe.',
    }),
    'head-turned': (degrees, limit): Saying => ({
      what: `Das Gesicht ist um ${degrees}° gedreht; bis ${limit}° kann gemessen werden.`,
      next: 'Nase zur Kamera, Kopf gerade, und nehmen Sie ein weiteres Bild auf.',
    }),
    'eyes-closed': (side): Saying => ({
      what: `Ein Lid verdeckt die Iris ${EYES[side]}.`,
      next: 'Bitten Sie um offene, entspannte Augen und nehmen Sie nach einem Blinzeln ein weiteres Bild auf.',
    }),
    'iris-not-found': (side): Saying => ({
      what: `Der Irisrand ${EYES[side]} war nicht zu erkennen.`,
      next: 'Brille ab, Spiegelungen aus den Augen, mehr Licht von vorn, oder näher heran.',
    }),
    blurred: (widthPx, limitPx): Saying => ({
      what: `Das Bild ist unscharf: Kanten sind ${widthPx} Pixel breit, bis ${limitPx} kann gemessen werden.`,
      next: 'Wischen Sie die Linse ab, warten Sie auf den Fokus, halten Sie still, geben Sie mehr Licht.',
    }),
    'too-dark': {
      what: 'Das Gesicht ist zu dunkel zum Messen.',
      next: 'Bringen Sie Licht von vorn auf das Gesicht, nicht von hinten; lassen Sie die Person nie in eine Lampe blicken.',
    },
    implausible: (mm): Saying => ({
      what: `Karte und Augen passen nicht zusammen: Die Iris wären ${mm} mm breit, und fast alle haben 10,5 bis 13.`,
      next: 'Prüfen Sie, ob die Ecken der Karte und die Ringe richtig sitzen, ziehen Sie zurecht, was nicht stimmt, oder nehmen Sie ein weiteres Bild mit einer Karte im Bankkartenformat auf.',
    }),
    'too-far': (pixelsPerMm, needed): Saying => ({
      what: `Das Gesicht ist zu klein im Bild: ${pixelsPerMm} Pixel je Millimeter, nötig sind ${needed}.`,
      next: 'Gehen Sie näher heran (etwa 40 bis 60 cm mit einer Webcam), oder nehmen Sie ein Bild mit höherer Auflösung.',
    }),
    'picture-disguised': {
      what: 'Diese Datei ist kein Bild, das sich öffnen lässt, was auch immer ihr Name sagt.',
      next: 'Kopieren Sie sie noch einmal von ihrer Quelle, oder nehmen Sie ein anderes Bild.',
    },
    'picture-unsupported': (type): Saying => ({
      what:
        type === ''
          ? 'Diese Datei ist kein Bild, das sich hier öffnen lässt.'
          : `Dateien vom Typ ${type} lassen sich hier nicht öffnen.`,
      next: 'Nehmen Sie ein Bild als JPEG, PNG oder WebP; Telefone lassen sich auf JPEG einstellen oder können ein Bild als JPEG teilen.',
    }),
    'picture-broken': {
      what: 'Diese Bilddatei ist beschädigt oder unvollständig.',
      next: 'Kopieren Sie sie noch einmal von ihrer Quelle, oder nehmen Sie ein anderes Bild.',
    },
    'video-unsupported': {
      what: 'Dieses Video lässt sich hier nicht abspielen.',
      next: 'Wählen Sie ein Video als mp4 oder webm, oder stattdessen mehrere Bilder.',
    },
    'video-broken': {
      what: 'Dieses Video ist beschädigt oder leer.',
      next: 'Wählen Sie eine andere Datei, oder nehmen Sie es noch einmal auf.',
    },
    'picture-too-large': (megapixels, limit): Saying => ({
      what: `Dieses Bild hat ${megapixels} Megapixel; bis ${limit} lassen sich öffnen.`,
      next: 'Speichern Sie es kleiner (12 Megapixel genügen) oder schneiden Sie es auf Kopf und Karte zu.',
    }),
    'camera-refused': {
      what: 'Der Browser durfte die Kamera nicht benutzen.',
      next: 'Erlauben Sie die Kamera für diese Seite in der Adresszeile und versuchen Sie es noch einmal, oder wählen Sie eine Bilddatei.',
    },
    'camera-missing': {
      what: 'Es wurde keine Kamera gefunden.',
      next: 'Schließen Sie eine an und versuchen Sie es noch einmal, oder wählen Sie eine Bilddatei.',
    },
    'camera-busy': {
      what: 'Die Kamera ist anderswo in Gebrauch.',
      next: 'Schließen Sie andere Programme und Seiten, die ihr Bild zeigen, etwa Videoanrufe, und versuchen Sie es noch einmal.',
    },
    'camera-unplugged': {
      what: 'Die Kamera wurde getrennt oder ausgeschaltet.',
      next: 'Schließen Sie sie wieder an, oder wählen Sie eine andere Kamera.',
    },
    'camera-silent': {
      what: 'Von der Kamera kommt kein Bild.',
      next: 'Öffnen Sie ihre Blende oder schalten Sie sie ein, und schließen Sie andere Programme und Seiten, die sie benutzen könnten, etwa Videoanrufe.',
    },
    'camera-unsupported': {
      what: 'Dieser Browser kann auf dieser Seite keine Kamera benutzen.',
      next: 'Öffnen Sie die Seite über https oder auf diesem Rechner selbst, oder wählen Sie eine Bilddatei.',
    },
    'model-not-loadable': {
      what: 'Das Modell der Gesichtspunkte konnte nicht geladen werden.',
      next: 'Laden Sie die Seite neu. Wenn Sie ein eigenes Paket gewählt haben, kehren Sie in den Einstellungen zum eingebauten zurück.',
    },
    'vision-not-loadable': (part): Saying => ({
      what: `${PARTS[part]} ${part === 'landmarks' ? 'konnten' : 'konnte'} nicht geladen werden; vielleicht ist WebAssembly abgeschaltet.`,
      next: 'Laden Sie die Seite neu, oder nehmen Sie einen aktuellen Browser mit erlaubtem WebAssembly. Messwerte von Hand gehen auch ohne.',
    }),
    'vision-stopped': (part): Saying => ({
      what: `${PARTS[part]} ${part === 'landmarks' ? 'sind' : 'ist'} bei diesem Bild stehen geblieben.`,
      next: 'Versuchen Sie das Bild noch einmal; es beginnt von vorn. Ein kleineres Bild braucht weniger Speicher.',
    }),
  },

  pictureAdvice: {
    comeNearer: (pixelsPerMm) => `Näher heran: Das Gesicht hat nur ${pixelsPerMm} Pixel je Millimeter.`,
    cardCovered: {
      top: 'Die obere Kante der Karte (im Bild gesehen) ist schwer zu erkennen: Halten Sie Finger und Haare von ihr fern, und sorgen Sie für einen Hintergrund, von dem sie sich abhebt.',
      right:
        'Die rechte Kante der Karte (im Bild gesehen) ist schwer zu erkennen: Halten Sie Finger und Haare von ihr fern, und sorgen Sie für einen Hintergrund, von dem sie sich abhebt.',
      bottom:
        'Die untere Kante der Karte (im Bild gesehen) ist schwer zu erkennen: Halten Sie Finger und Haare von ihr fern, und sorgen Sie für einen Hintergrund, von dem sie sich abhebt.',
      left: 'Die linke Kante der Karte (im Bild gesehen) ist schwer zu erkennen: Halten Sie Finger und Haare von ihr fern, und sorgen Sie für einen Hintergrund, von dem sie sich abhebt.',
    },
    turnToCamera: (degrees) => `Nase zur Kamera: Sie zeigt ${degrees}° zur Seite.`,
    levelCard: (degrees) => `Halten Sie die lange Kante der Karte waagerecht: Sie ist um ${degrees}° geneigt.`,
    cardOnForehead:
      'Halten Sie die Karte möglichst an die Stirn: Dort ist am besten bekannt, wie weit sie vor den Augen liegt.',
    checkPoints: {
      card: 'Prüfen Sie die Ecken der Karte unter der Lupe: Die Kante war schwer zu erkennen.',
      irisR: 'Prüfen Sie die rechte Iris unter der Lupe: Der Rand war schwer zu erkennen.',
      irisL: 'Prüfen Sie die linke Iris unter der Lupe: Der Rand war schwer zu erkennen.',
    },
  },

  progress: {
    opening: 'Das Bild wird geöffnet',
    'loading-landmarks': 'Die Gesichtspunkte werden geladen',
    'loading-card': 'Die Kartensuche wird geladen',
    'finding-face': 'Das Gesicht wird gesucht',
    'finding-card': 'Karte und Irisränder werden gesucht',
  },

  frameFailure: {
    'no-face': 'kein Gesicht zu sehen',
    'several-faces': 'mehrere Gesichter zu sehen',
    'no-card': 'Karte nicht zu sehen',
    'several-cards': 'mehrere Karten zu sehen',
    'card-not-flat': 'Karte gebogen oder eine Ecke verdeckt',
    'card-tilted': 'Karte zu stark geneigt',
    'head-turned': 'Gesicht zu weit gedreht',
    'eyes-closed': 'Augen geschlossen',
    'iris-not-found': 'Irisrand nicht zu sehen',
    blurred: 'unscharf',
    'too-dark': 'zu dunkel',
    implausible: 'Karte und Augen passen nicht zusammen',
    'too-far': 'zu weit von der Kamera',
    'picture-unsupported': 'Datei lässt sich nicht öffnen',
    'picture-broken': 'Datei lässt sich nicht öffnen',
    'picture-too-large': 'Datei lässt sich nicht öffnen',
    'video-unsupported': 'Einzelbild nicht lesbar',
    'video-broken': 'Einzelbild nicht lesbar',
    'camera-refused': 'keine Kamera',
    'camera-missing': 'keine Kamera',
    'camera-busy': 'keine Kamera',
    'camera-unplugged': 'keine Kamera',
    'camera-silent': 'keine Kamera',
    'camera-unsupported': 'keine Kamera',
    'model-not-loadable': 'konnte nicht angesehen werden',
    'vision-not-loadable': 'konnte nicht angesehen werden',
    'vision-stopped': 'konnte nicht angesehen werden',
  },

  sweepGap: {
    'turned-R': 'Drehung nach rechts',
    'turned-L': 'Drehung nach links',
    distance: 'näher und weiter weg',
    frames: 'mehr Einzelbilder',
  },

  sweepFailure: {
    tooFewLeft: (usable, needed): Saying => ({
      what: `Ohne das Ausgelassene ${usable === 1 ? 'war' : 'waren'} nur ${frames(usable)} brauchbar; eine Bildfolge braucht ${needed}.`,
      next: 'Nehmen Sie ausgelassene Einzelbilder wieder auf, oder messen Sie das beste als ein Bild.',
    }),
    tooFew: (usable, needed): Saying => ({ what: tooFew(usable, needed), next: TAKE_AGAIN }),
    tooFewAs: (usable, needed, others, why): Saying => ({
      what: `${tooFew(usable, needed)} ${others === 1 ? 'Das andere' : 'Die meisten anderen'}: ${why}.`,
      next: TAKE_AGAIN,
    }),
    cardNotStill: (longestRun, needed): Saying => ({
      what: `Die Karte saß nie still im Gesicht: Höchstens ${frames(longestRun)} in Folge ${longestRun === 1 ? 'gehört' : 'gehören'} zusammen, nötig sind ${needed}.`,
      next: 'Halten Sie die Karte fest, mit einem Finger derselben Hand am Kopf, und bewegen Sie Kopf und Karte wie eins. Oder messen Sie das beste Einzelbild allein.',
    }),
    differentSizes: {
      what: 'Diese Bilder haben verschiedene Größen, stammen also nicht von einer Kamera und aus einem Durchgang.',
      next: 'Wählen Sie nur Bilder einer Bildfolge, nicht beschnitten und nicht gedreht, oder nur das beste davon.',
    },
    mostly: (why) => `Die Einzelbilder dieser Bildfolge ließen sich nicht messen. Die meisten: ${why}.`,
  },

  sweepAdvice: {
    hardlyTurned: (turned, useful) =>
      `Der Kopf hat sich kaum gedreht: um ${turned}° von einem Ende zum anderen; nützlich sind ${useful}°. Ohne das sagt die Bildfolge kaum mehr als ein Bild.`,
    turnFurther: (turned, useful) =>
      `Den Kopf weiter drehen: Von einem Ende zum anderen waren es ${turned}°; nützlich sind ${useful}°.`,
    leanMore: (farther, useful) =>
      `Weiter vor- und zurücklehnen: Das fernste Einzelbild ist nur ${farther} weiter weg als das nächste; nützlich sind ${useful}.`,
    moreFrames: (used, useful) =>
      `Mehr Einzelbilder: ${used === 1 ? '1 war' : `${used} waren`} brauchbar; nützlich sind ${useful}. Langsam, bei gutem Licht.`,
    cardSlipped: (frame) =>
      `Die Karte ist bei Einzelbild ${frame} verrutscht, oder diese Bilder zeigen eine andere Person: Halten Sie die Karte fest, mit einem Finger am Kopf, und lassen Sie kein anderes Gesicht ins Bild.`,
    eyesElsewhere:
      'Beide Augen auf die Linse: Karte und Augen haben sich bewegt, als hätten sie anderswohin geblickt; das macht hier jede PD unsicherer.',
  },

  paper: {
    printed: (when) => `Gedruckt ${when}.`,
    wearer: (wearer) => `Person: ${wearer}.`,
    readBy: (reader) => `Gemessen von ${reader}.`,
    alsoReadBy: (reader) => `Ein zweites Mal gemessen von ${reader}.`,
    squint: 'Schielen: Die Zeilen, die es betrifft, waren bei abgedecktem anderen Auge zu messen.',
    light: (light) => `Pupillen bei ${light} gemessen.`,
    lights: { bright: 'hellem Licht', room: 'Raumlicht', dim: 'schwachem Licht' },
    remark: (remark) => `Bemerkung: ${remark}`,
    looked: (where) => `Die Person blickte ${where}.`,
    bought: 'Karte: eine gekaufte Karte der Größe ID-1.',
    markerCard: (length) => `Karte: die gedruckte Markerkarte, ihre 150-mm-Linie gemessen mit ${length} mm.`,
    sweep: (used, all) =>
      `Kamerawerte aus einer Bildfolge, ${used} von ${frames(all)}${all === 1 ? '' : 'n'} verwendet.`,
    markerCardUnmeasured: 'Karte: die gedruckte Markerkarte, ihre 150-mm-Linie nicht gemessen.',
  },

  conflict: {
    with: {
      'eyes-sum': follows,
      'near-eyes-sum': follows,
      'near-from-far': follows,
      'nose-flanks': follows,
      'sides-alike': follows,
      'side-sum': (facts) => `Ein Bügel ist so lang wie sein Weg bis zum Knick und sein Ende: ${follows(facts)}`,
      'tangent-before-bend': (facts) => `Die Tangente kommt ein wenig vor dem Knick: ${follows(facts)}`,
      'temples-in-head': (facts) => `Die Schläfen folgen dem Kopf: ${follows(facts)}`,
      'frame-around-pd': (facts) =>
        `Die Mitten der Fassung stehen meist etwa so weit auseinander wie die Augen: ${follows(facts)}`,
      'eye-heights': (facts) => `Wo ein Auge höher liegt, zeigen es Steghöhe und Einschleifhöhe: ${follows(facts)}`,
      'ear-heights': (facts) => `Der Bügel am höheren Ohr verläuft flacher: ${follows(facts)}`,
      'lean-of-front': (facts) => `Die Front neigt sich etwa so, wie ihre Bügel geneigt sind: ${follows(facts)}`,
      camera: ({ expected, place, written }) =>
        `Die Kamera sagt für ${place} etwa ${expected}; geschrieben steht ${written}.`,
      population: ({ expected, place, written }) =>
        `${upperFirst(written)} für ${place} ist bei Menschen selten: Üblich ist etwa ${expected}.`,
    },
    eyesSum: (facts) => `${sumMade(facts)} für beide Augen.`,
    eyesDoNotAddUp: (facts) => `${sumMade(facts)}. Messen Sie alle drei noch einmal.`,
    temples: (templePlace, temple, headPlace, head) =>
      `Die Schläfen sind schmaler als der Kopf, aber für ${templePlace} steht ${temple} und für ${headPlace} ${head}.`,
    sides: (place, right, left) =>
      `${upperFirst(place)} ist ${right} und L ${left}: So sehr unterscheiden sich rechts und links selten.`,
    doesNotFit: (place, written) => `${upperFirst(place)}: ${written} passt nicht zum Übrigen.`,
    allElse: (expected, place, written) =>
      `Nach allem anderen wäre ${place} etwa ${expected}; geschrieben steht ${written}.`,
    nothing: 'nichts',
    meanOfBoth: (value) => `${value} (Mittel beider Messungen)`,
    placeWith: (place, values) => `${place} (${values})`,
    placeWithMean: (place, value) => `${place} (${value}, Mittel beider Messungen)`,
  },

  camera: {
    heading: 'Bild aufnehmen',
    device: 'Kamera',
    unnamed: (index) => `Kamera ${index}`,
    opening: 'Die Kamera wird geöffnet. Vielleicht fragt der Browser um Erlaubnis.',
    mirrored: 'Die Vorschau ist gespiegelt wie in einem Spiegel; das Bild nicht.',
    gaze: {
      camera: 'Bitten Sie die Person, in die Linse der Kamera zu blicken.',
      far: 'Bitten Sie die Person, an der Kamera vorbei in die Ferne zu blicken.',
    },
    start: 'Bild in 3 Sekunden aufnehmen',
    stop: 'Countdown anhalten',
    inSeconds: (seconds) => `${seconds}`,
    hold: 'Stillhalten.',
    taken: 'Bild aufgenommen.',
    again: 'Kamera noch einmal versuchen',
    close: 'Schließen',
  },

  live: {
    hints: {
      'no-face': 'Das ganze Gesicht ins Bild bringen.',
      'more-light': 'Mehr Licht auf das Gesicht, von vorn.',
      farther: 'Ein wenig weiter weg von der Kamera.',
      'into-frame': 'Mehr zur Mitte des Bildes.',
      nearer: 'Ein wenig näher an die Kamera.',
      'no-card': 'Die Karte flach an die Stirn halten.',
      'face-turned': {
        R: 'Das Gesicht ein wenig nach rechts drehen.',
        L: 'Das Gesicht ein wenig nach links drehen.',
      },
      chin: {
        up: 'Das Kinn ein wenig heben, oder die Kamera tiefer.',
        down: 'Das Kinn ein wenig senken, oder die Kamera höher.',
      },
      'card-leans': 'Die Karte ist geneigt: flach auf die Haut.',
      'card-level': {
        R: 'Karte waagerecht: das rechte Ende heben.',
        L: 'Karte waagerecht: das linke Ende heben.',
      },
      'card-hidden': {
        top: 'Die obere Kante der Karte frei lassen.',
        bottom: 'Die untere Kante der Karte frei lassen.',
        R: 'Die rechte Kante der Karte frei lassen.',
        L: 'Die linke Kante der Karte frei lassen.',
      },
      'eyes-closed': 'Die Augen weit öffnen.',
      sharper: 'Noch nicht scharf: kurz warten, oder die Linse putzen.',
      'eyes-hidden': 'Brille ab, Spiegelungen weg von den Augen.',
      'light-from-front': {
        R: 'Licht von vorn: Die rechte Gesichtshälfte ist dunkel.',
        L: 'Licht von vorn: Die linke Gesichtshälfte ist dunkel.',
      },
      'hold-still': 'Stillhalten.',
      look: { camera: 'In die Linse der Kamera blicken.', far: 'An der Kamera vorbei in die Ferne blicken.' },
      'all-right': {
        'by-itself': 'Stillhalten: Das Bild wird aufgenommen.',
        'by-hand': 'Alles stimmt: Nehmen Sie das Bild auf.',
      },
    },
    sides: 'Rechts und links sind die Seiten der Person.',
    starting: 'Die Anleitung startet. Ein Bild kann trotzdem schon aufgenommen werden.',
    lost: 'Ein Bild kann auch ohne Anleitung aufgenommen werden.',
    readout: 'Was die Kamera sieht',
    distance: 'Abstand',
    centimetres: (cm) => `${cm} cm`,
    sureness: 'PD sicher auf',
    plusMinus: (mm) => `± ${mm} mm`,
    millimetres: (mm) => `${mm} mm`,
    frames: 'Bilder',
    nothing: '–',
    byItself: 'Von selbst aufnehmen, sobald alles stimmt',
    shutter: 'Bild jetzt aufnehmen',
    keys: 'Leertaste oder Eingabetaste nimmt das Bild auf.',
    goesOn: {
      'camera-busy': 'Alle paar Sekunden wird es von selbst noch einmal versucht.',
      'camera-silent': 'Alle paar Sekunden wird es von selbst noch einmal versucht.',
      'camera-unplugged': 'Es geht von selbst weiter, sobald die Kamera wieder da ist.',
      'camera-missing': 'Es geht von selbst weiter, sobald eine da ist.',
      'camera-refused': 'Es geht von selbst weiter, sobald sie erlaubt ist.',
    },
  },

  cost: {
    heading: 'Was es für diese Person ausmacht',
    noPrescription:
      'Geben Sie die Verordnung ein; dann steht hier, was ein Unterschied zweier Messwerte durch sie bedeutet.',
    unfinished: 'Sobald die Verordnung lesbar ist, steht hier, was ein Unterschied durch sie bedeutet.',
    standard: 'Verglichen mit',
    valuesFromMemory: ' (Werte aus dem Gedächtnis)',
    readAgain: '; trotzdem noch einmal messen',
    fromMemoryMark: 'Aus dem Gedächtnis: Schlagen Sie nach, bevor Sie sich darauf verlassen.',
    unequal:
      'Wie die Norm Gläser ungleicher Stärke behandelt, wurde nicht gesehen: Genommen wird das Mittel beider. Nichts hier ersetzt den Text der Norm.',
    none: 'Neben keinem Messwert von Hand steht schon ein zweiter Wert: der Kamera, einer zweiten Messung oder eines wahrscheinlichen Versehens.',
    differences: 'Die Unterschiede auf diesem Messblatt',
    verdicts: {
      negligible: 'spielt keine Rolle',
      within: 'innerhalb der Norm',
      beyond: 'außerhalb der Norm',
      open: 'vielleicht außerhalb der Norm',
    },
    powerVerdicts: {
      negligible: 'spielt keine Rolle',
      within: 'unter einer halben Stufe',
      beyond: 'eine halbe Stufe oder mehr',
      open: 'vielleicht eine halbe Stufe oder mehr',
    },
    room: 'Wie weit jeder Messwert danebenliegen darf',
    eyesDiffer: (tighter) => `die Augen unterscheiden sich: höchstens doppelt so viel wie ${tighter} allein`,
    roomCaption: 'Millimeter bis zur Grenze der Norm (beim HSA: bis sich die Stärke um eine halbe Stufe ändert)',
    anyAmount: 'beliebig',
    overTen: 'über 10',
    frame: 'In der gewählten Fassung',
    frameCaption: 'Was die Werkstatt aus den Messwerten errechnet, wie sie dastehen',
    frameNeeds: 'Dezentration und Rohglas folgen aus Scheibenlänge, Abstand zwischen den Gläsern und PD.',
    rows: {
      inward: 'Dezentration innen',
      up: 'Dezentration oben',
      blank: 'Kleinstes Rohglas',
      inset: 'Nahinset',
      vertex: 'HSA',
    },
    halved: 'Die PD je Auge gilt hier als Hälfte der ganzen: Messen Sie jedes Auge.',
    insetNote: (workingMm) =>
      `Das Nahinset gilt für ${formatNumber(workingMm, 0)} mm und die Stärke in der Waagerechten.`,
    insetOfDesign: 'Gleitsichtgläser bringen ihr eigenes Nahinset mit.',
    effectiveDiameter: 'Wirksamer Durchmesser der Scheibenform',
    effectiveDiameterNote: 'mm: zweimal der längste Weg von der Kastenmitte zum Rand',
    diameterNoNumber: 'Geben Sie eine Länge in mm ein, etwa 56.',
    diameterBeyond: (lowest, highest) => `Geben Sie eine Länge zwischen ${lowest} und ${highest} mm ein.`,
    diameterMisfit: (lowestMm, highestMm) =>
      `Das passt nicht zum Kastenmaß: Möglich sind ${formatNumber(Math.ceil(lowestMm), 0)} bis ${formatNumber(Math.floor(highestMm), 0)} mm.`,
    blankOfBox:
      'Kleinstes Rohglas nach den Ecken des Kastens, also höchstens dies; der wirksame Durchmesser macht es genau.',
    cautions: 'Zu beachten bei diesen Gläsern',
  },

  handOn: {
    heading: (count) => (count === 1 ? 'Diese Sitzung weitergeben' : `${count} Sitzungen weitergeben`),
    headingAll: 'Alle Sitzungen weitergeben',
    close: 'Schließen',

    as: 'Als',
    format: {
      'session-file': 'Sitzungsdatei (JSON)',
      backup: 'Sicherung mit Passphrase (age)',
      table: 'Tabelle (CSV)',
    },
    formatNote: {
      'session-file':
        'Alles außer Bildern: Messwerte, Historien, Befunde. Glabella auf einem anderen Rechner kann sie einlesen. Wer die Datei hat, kann sie lesen.',
      backup:
        'Dasselbe, versiegelt: Nur die Passphrase öffnet sie, hier oder mit jedem Programm, das age-Dateien liest.',
      table:
        'Eine Zeile je Sitzung, für Tabellenprogramme. Sie lässt sich nicht wieder einlesen. Wer die Datei hat, kann sie lesen.',
    },
    decimalSign: 'Dezimalzeichen',
    point: 'Punkt (62.5), Kommas zwischen den Zellen',
    comma: 'Komma (62,5), Semikolons zwischen den Zellen',
    make: 'Datei erstellen',
    making: 'Die Datei wird erstellt.',
    sealing: 'Die Datei wird versiegelt. Das dauert mit Absicht einige Sekunden.',
    made: (count, fileName) =>
      count === 1
        ? `1 Sitzung wurde dem Browser als ${fileName} übergeben.`
        : `${count} Sitzungen wurden dem Browser als ${fileName} übergeben.`,
    leftOut: (count) =>
      count === 1 ? '1 nicht lesbare Sitzung ist nicht darin.' : `${count} nicht lesbare Sitzungen sind nicht darin.`,

    bringHeading: 'Datei einlesen',
    bringWhat: 'Eine Sitzungsdatei oder eine Sicherung mit Passphrase. Auch die Antwort einer entfernten Person.',
    drop: 'Legen Sie die Datei hier ab, oder wählen Sie sie.',
    choose: 'Datei wählen',
    chooseAnother: 'Andere Datei wählen',
    file: (name) => `Datei: ${name}`,
    readingFile: 'Die Datei wird gelesen.',
    opening: 'Die Datei wird geöffnet. Das dauert mit Absicht einige Sekunden.',
    needsPassphrase: 'Diese Datei ist mit einer Passphrase versiegelt.',
    open: 'Öffnen',
    brought: (counts) => {
      const parts = [
        counts.added > 0 && `${counts.added} hinzugefügt`,
        counts.renewed > 0 && `${counts.renewed} fortgeführt`,
        counts.beside > 0 && `${counts.beside} daneben aufbewahrt`,
        counts.same > 0 && `${counts.same} schon da`,
      ].filter((part) => part !== false);
      return parts.length === 0 ? 'In dieser Datei ist keine Sitzung.' : `Sitzungen: ${parts.join(', ')}.`;
    },
    besideWhy:
      'Daneben aufbewahrt: hier und in der Datei geändert. Beide stehen jetzt in der Liste; vergleichen Sie sie.',

    failure: {
      notText: {
        what: 'Das ist kein Text, den Glabella geschrieben hat.',
        next: 'Wählen Sie eine Sitzungsdatei (.json) oder eine Sicherung (.age).',
      },
      notJson: {
        what: 'Das ist keine Sitzungsdatei.',
        next: 'Wählen Sie eine Sitzungsdatei (.json) oder eine Sicherung (.age). Wenn es eine sein sollte, holen Sie sie noch einmal: Vielleicht wurde sie abgeschnitten.',
      },
      notASessionFile: {
        what: 'Diese Datei enthält etwas anderes als Sitzungen.',
        next: 'Wählen Sie eine Sitzungsdatei (.json) oder eine Sicherung (.age).',
      },
      newer: (version) => ({
        what: `Diese Datei wurde von einer neueren Version von Glabella geschrieben (Format ${version}).`,
        next: 'Laden Sie diese Seite mit Internetverbindung neu, damit die neuere Version kommt. Nichts wurde eingelesen.',
      }),
      damaged: (place) => ({
        what: place === '' ? 'Diese Datei ist beschädigt.' : `Diese Datei ist bei ${place} beschädigt.`,
        next: 'Holen Sie sie noch einmal. Nichts wurde eingelesen.',
      }),
      damagedSession: (number, place) => ({
        what:
          place === ''
            ? `Sitzung ${number} dieser Datei ist beschädigt.`
            : `Sitzung ${number} dieser Datei ist bei ${place} beschädigt.`,
        next: 'Holen Sie die Datei noch einmal. Nichts wurde eingelesen.',
      }),
      tooLarge: (megabytes, limit) => ({
        what: `Diese Datei ist zu groß: ${megabytes} MB, höchstens ${limit} MB sind möglich.`,
        next: 'Geben Sie weniger Sitzungen auf einmal weiter.',
      }),
      fileGone: {
        what: 'Die Datei ist nicht lesbar.',
        next: 'Vielleicht wurde sie verschoben oder geändert. Wählen Sie sie noch einmal.',
      },
      notSealed: {
        what: 'Das ist keine versiegelte Datei.',
        next: 'Wählen Sie eine Sicherung (.age).',
      },
      truncated: {
        what: 'Diese Datei endet zu früh.',
        next: 'Holen Sie sie noch einmal. Nichts wurde eingelesen.',
      },
      altered: {
        what: 'Diese Datei ist nicht mehr so, wie sie versiegelt wurde.',
        next: 'Sie wurde abgeschnitten oder geändert. Holen Sie sie noch einmal. Nichts wurde eingelesen.',
      },
      wrongPassphrase: {
        what: 'Die Passphrase öffnet diese Datei nicht.',
        next: 'Achten Sie auf Großschreibung und Leerzeichen und versuchen Sie es noch einmal. Wenn sie sicher stimmt, ist die Datei beschädigt.',
      },
      sealedToKey: {
        what: 'Diese Datei ist für einen Schlüssel versiegelt; keine Passphrase öffnet sie.',
        next: 'Die Antwort einer entfernten Person öffnet nur der Schlüssel des Betriebs, der sie erbeten hat.',
      },
      tooCostly: {
        what: 'Diese Datei wurde so versiegelt, dass ein Browser sie nicht öffnen kann.',
        next: 'Öffnen Sie sie mit einem Programm für age-Dateien, und lesen Sie die Sitzungsdatei ein, die dabei herauskommt.',
      },
    },

    passphrase: 'Passphrase',
    again: 'Dieselbe noch einmal',
    show: 'Eingabe zeigen',
    strength: {
      empty: '',
      'too-short': (least) => `Zu kurz: mindestens ${least} Zeichen.`,
      weak: 'Schwach: Sie lässt sich erraten. Nehmen Sie vier oder fünf Wörter, die nicht zusammengehören.',
      fair: 'Brauchbar. Länger ist besser: Fügen Sie ein Wort hinzu.',
      good: 'Gut, wenn sonst niemand darauf käme.',
    },
    problem: {
      empty: 'Geben Sie eine Passphrase ein.',
      'too-short': 'Diese Passphrase ist zu kurz.',
      'not-the-same': 'Die beiden sind nicht gleich.',
    },
    cannotRestore:
      'Niemand kann sie wiederherstellen. Ohne die Passphrase ist alles Versiegelte verloren: Schreiben Sie sie auf und verwahren Sie sie sicher.',
    sealingNotLoadable: {
      what: 'Was Dateien versiegelt, konnte nicht geladen werden.',
      next: 'Stellen Sie eine Internetverbindung her und versuchen Sie es noch einmal.',
    },
    sealingUnsupported: {
      what: 'Dieser Browser kann hier keine Dateien versiegeln.',
      next: 'Nehmen Sie einen neueren Browser und öffnen Sie Glabella über https.',
    },
    noPassphrase: {
      what: 'Es gibt keine Passphrase.',
      next: 'Geben Sie eine ein.',
    },
  },

  handle: {
    cardCorners: [
      'Kartenecke oben links',
      'Kartenecke oben rechts',
      'Kartenecke unten rechts',
      'Kartenecke unten links',
    ],
    irisCentre: { R: 'Irismitte, rechtes Auge', L: 'Irismitte, linkes Auge' },
    irisEdge: { R: 'Irisrand, rechtes Auge', L: 'Irisrand, linkes Auge' },
    lidUpper: { R: 'Oberer Lidrand, rechtes Auge', L: 'Oberer Lidrand, linkes Auge' },
    lidLower: { R: 'Unterer Lidrand, rechtes Auge', L: 'Unterer Lidrand, linkes Auge' },
    midline: 'Mitte der Nasenwurzel',
    position: (x, y) => `${x} Pixel von links, ${y} Pixel von oben`,
  },

  help: {
    heading: 'Hilfe',
    close: 'Schließen',
    contents: 'Inhalt',
    backToContents: 'Alle Themen',
    search: 'Ein Maß finden',
    none: 'Kein Maß heißt so.',
    topics: 'Allgemeines',
    previous: (name) => `Zurück: ${name}`,
    next: (name) => `Weiter: ${name}`,
    neighbours: 'Maße davor und danach',
    print: 'Diese Seite drucken',

    views: {
      front: 'Von vorn.',
      eye: 'Die Augen von vorn.',
      nose: 'Von vorn; die dicke Linie ist die Nase, wo ein Steg aufliegt.',
      side: 'Von der rechten Seite der Person.',
      above: 'Von oben, das Gesicht unten im Bild.',
      section: 'Von oben, in Höhe der Stegauflage; das Gesicht ist unten im Bild.',
      behind: 'Von hinten: Hier steht die rechte Seite der Person rechts.',
      'frame-front': 'Die Fassung, wie man sie auf dem Gesicht von vorn sieht.',
      'frame-above': 'Die Fassung von oben, ihre Front unten im Bild.',
      'frame-side': 'Ein rechter Bügel allein; seine Front ist rechts im Bild.',
    },
    rightIsDrawn: 'Gezeichnet ist die rechte Seite; links wird ebenso gemessen.',
    key: 'Pfeile zeigen, was gemessen wird, gestrichelte Linien, von wo aus. Nicht maßstäblich.',

    caution: 'Vorsicht',
    alsoCalled: (names) => `Auch genannt: ${names}.`,
    howTaken: 'Wie gemessen wird',
    byTrial:
      'Es wird durch Probieren gefunden: Schreiben Sie jede Größe mit loose (locker), fits (passt) oder tight (eng) auf.',
    signed: 'Es kann unter null liegen: Das Minuszeichen gehört zum Messwert.',
    sides: {
      each: 'R und L werden einzeln gemessen, die rechte Seite der Person zuerst.',
      one: 'Es ist eine Zahl für beide Seiten.',
    },
    tolerance: 'Toleranz',
    toleranceIs: (value, status, source) => `± ${value} (${status}): ${source}.`,
    toleranceNote:
      'So weit dürfen zwei Messwerte auseinanderliegen, bevor es zählt. Ein Betrieb kann einen eigenen Wert setzen.',
    camera: 'Was die Kamera dazu sagen kann',
    noCamera:
      'Nichts. Dies wird allein von Hand gemessen; der Messwert wird nur mit den anderen Messwerten verglichen.',
    cameraAlways: 'Sie gibt aus jedem Bild und jeder Bildfolge einen eigenen Wert, mit der Unsicherheit daneben.',
    cameraSometimes: {
      pupilDiameter:
        'Sie gibt einen Wert, wo sich die Pupille von ihrer Iris abhebt. Das Licht des Bildes bestimmt, wie weit die Pupille ist.',
      rims: 'Sie gibt einen groben Wert, wo die Karte die Nasenwurzel frei lässt. Er weist nur auf große Fehler hin.',
    },
    cameraOfIris: 'Sie gibt einen Wert, der vor allem sagt, ob der Maßstab des Bildes stimmt.',
    cameraErrors: (what) =>
      `An errechneten Köpfen lag die Hälfte aller Bilder höchstens ${what.picture.half} mm neben der Wahrheit, 95 von 100 höchstens ${what.picture.most} mm. Mit einer Bildfolge waren es ${what.sweep.half} und ${what.sweep.most} mm. Menschen unterscheiden sich von errechneten Köpfen.`,
    squint: 'Bei Schielen',
    noSquintCamera: 'Der Wert der Kamera entfällt dann, weil beide Augen nie auf dasselbe blicken.',

    general: {
      about: {
        heading: 'Was Glabella ist, und was nicht',
        text: [
          'Glabella ist eine zweite Messung. Sie messen von Hand; Glabella vergleicht Ihre Zahlen miteinander und mit einem Bild und sagt, wo sie nicht passen.',
          'Es entscheidet nichts und ändert von sich aus keine Zahl. Bestellt wird, was Sie bestätigt haben.',
        ],
        cautions: [
          'Es ist keine klinische Messung und ersetzt keine. Über die Gesundheit eines Auges sagt es nichts.',
          'Die Vorschriften vor Ort gehen vor; es entscheidet, wer zur Abgabe befugt ist. Kinder, Schielen und starke Gläser oder Gleitsichtgläser werden so gemessen, wie Vorschriften und Ausbildung es verlangen.',
          'Was an einem Auge, einem Lid oder einer Pupille ungewöhnlich aussieht, ist ein Grund, noch einmal hinzusehen oder zu überweisen.',
        ],
      },
      card: {
        heading: 'Wie die Karte gehalten wird',
        text: [
          'Es genügt irgendeine Karte im Bankkartenformat, oder die gedruckte. Sie liegt flach an der Stirn, die lange Kante waagerecht.',
          'Ist Haar im Weg, liegt sie stattdessen über oder unter dem Mund. Alle vier Kanten bleiben frei: Eine kurze Seite wird mit zwei Fingerspitzen gehalten.',
          'Die Kamera steht in Augenhöhe, 40 bis 60 cm entfernt. Für das Bild kommt die Brille ab.',
          'Bei einer Bildfolge bewegen sich Kopf und Karte wie eins: Die Karte darf nicht verrutschen.',
        ],
        cautions: [
          'Die Kanten einer Karte sind scharf. Halten Sie sie von den Augen fern und reichen Sie die Karte flach.',
          'Niemand dreht den Kopf weiter, als es angenehm ist.',
        ],
      },
      light: {
        heading: 'Das Licht',
        text: [
          'Am besten ist gleichmäßiges Licht von vorn: ein Fenster oder eine helle Wand vor der Person.',
          'Ein helles Fenster hinter der Person macht das Gesicht zu dunkel. Glanzstellen auf der Karte verdecken ihre Kanten; kippen Sie die Lampe, nicht die Karte.',
          'Dunkle Iris brauchen mehr Licht von vorn, bis ihre Ränder zu sehen sind.',
          'Die Pupille ändert sich mit dem Licht: Vermerken Sie das Licht neben einem Pupillendurchmesser.',
        ],
        cautions: ['Keine Lampe in die Augen, kein Blitz nahe am Gesicht, und niemand blickt in die Sonne.'],
      },
      gauges: {
        heading: 'Messmittel nahe an den Augen',
        text: [
          'Sagen Sie, was Sie tun werden, bevor Sie dem Gesicht nahe kommen. Stützen Sie die Hand auf Wange oder Stirn ab, damit sie sich mit dem Kopf bewegt.',
          'Reinigen Sie, was die Haut berührt, vorher und nachher.',
          'Ein Messmittel, dessen Skala nicht bei null beginnt, wird unter „Betrieb“ eingetragen: Das Messblatt rechnet dann.',
        ],
        cautions: [
          'Halten Sie Lineale, Taster und Lehren von den Augen fern. Führen Sie sie von unten oder von der Seite heran, nie gerade auf ein Auge zu.',
          'Nichts darf ein offenes Auge oder seine Wimpern berühren, und nichts wird gedrückt.',
        ],
      },
      privacy: {
        heading: 'Was auf diesem Gerät bleibt',
        text: [
          'Bilder werden in diesem Browser gemessen. Es gibt kein Konto und keinen Server, der etwas erhält.',
          'Sitzungen bleiben in diesem Browser, bis Sie sie löschen; Bilder nur, wenn die Person zustimmt, und nur für begrenzte Zeit.',
          'Nichts verlässt das Gerät außer den Dateien, die Sie selbst weitergeben, und dem, was Sie drucken.',
          'Wer die Daten einer Person sehen und aufbewahren darf, regeln Ihre Vorschriften vor Ort.',
        ],
        cautions: [
          'Wer diesen Browser benutzt, kann sehen, was darin aufbewahrt ist, außer Sie haben eine Sperre gesetzt. Sperren Sie das Gerät, wenn Sie weggehen.',
        ],
      },
    },
  },

  differences: {
    heading: 'Hand gegen Kamera',
    close: 'Schließen',
    print: 'Drucken',
    intro:
      'Der Wert der Kamera ist die Mittellinie. Je näher ein Messwert von Hand an ihr liegt, desto besser stimmen beide überein; was im schattierten Band liegt, macht nichts aus.',
    none: 'Noch steht der Kamera nichts gegenüber: Es braucht ein gemessenes Bild, und Messwerte von Hand zu dem, was es zeigt.',
    noneCovered:
      'Noch steht der Kamera nichts gegenüber: Ihre Werte bleiben verdeckt, bis Ihre Messwerte eingegeben sind.',
    stillCovered: (count) =>
      count === 1
        ? '1 Zeile fehlt hier: Ihr Kamerawert ist verdeckt, bis Ihr Messwert da ist.'
        : `${count} Zeilen fehlen hier: Ihre Kamerawerte sind verdeckt, bis Ihre Messwerte da sind.`,
    scale: 'Skala',
    scales: { unit: 'wie gemessen', tolerance: 'in Toleranzen' },
    scaleNote: { unit: 'Hand minus Kamera', tolerance: 'Hand minus Kamera, in Toleranzen der Zeile' },
    lessByHand: 'weniger von Hand',
    moreByHand: 'mehr von Hand',
    lengths: 'Längen, mm',
    angles: 'Winkel, Grad',
    key: {
      heading: 'Was gezeichnet ist',
      camera: 'Kamera, 95 %',
      hand: 'Hand, 95 %',
      off: 'Hand, widerspricht',
      repeat: 'eine Wiederholung',
      tolerance: 'Toleranz',
      beyond: 'liegt jenseits der Skala',
    },
    goTo: (name) => `${name}: zur Zeile gehen`,
    lane: ({ name, difference, hand, camera, tolerance, finding, repeats }) =>
      `${name}: Hand minus Kamera ${difference}, Hand plus oder minus ${hand}, Kamera plus oder minus ${camera}, Toleranz plus oder minus ${tolerance}: ${finding}.${
        repeats.length > 1 ? ` Wiederholungen: ${repeats.join('; ')}.` : ''
      }`,
    table: 'Dasselbe als Tabelle',
    columns: {
      measurement: 'Maß',
      hand: 'Hand ± 95 %',
      camera: 'Kamera ± 95 %',
      difference: 'Hand − Kamera',
      interval: '95-%-Intervall',
      tolerance: 'Toleranz',
      finding: 'Befund',
    },
    fromTo: (low, high) => `${low} bis ${high}`,
    repeats: {
      heading: 'Wiederholungen',
      intro:
        'Alle Messwerte derselben Stelle, um ihr Mittel. Die Klammer ist der Raum, in dem die Wiederholungen geübter Messender in 19 von 20 Fällen bleiben.',
      said: (range, allowed) => `Spanne ${range}, Raum ${allowed}`,
      beyond: 'weiter als der Raum: noch einmal messen',
      farOff: (value) => `${value} liegt weit abseits`,
      lane: (name, reader, values, said) => `${name}, ${reader}: ${values.join('; ')}. ${said}.`,
      keys: { value: 'ein Messwert', farOff: 'weit von den anderen', room: 'Raum für Wiederholungen' },
      columns: { place: 'Maß', reader: 'Wer', values: 'Messwerte', range: 'Spanne', room: 'Raum', mean: 'Mittel' },
    },
    doubts: {
      heading: 'Woraus die Unsicherheit der Kamera besteht',
      intro:
        'Die größten Unsicherheiten zuerst, als 95-%-Halbbreiten in Toleranzen. Ein Balken, der links der Linie endet, ist sicher genug, um über seine Zeile zu entscheiden.',
      sure: 'sicher genug',
      tooWide: 'zu weit, um Übereinstimmung zu sagen',
      halfWidth: (text) => `± ${text}`,
      mostly: (source, share) => `vor allem: ${source} (${share})`,
      then: (source, share) => `dann: ${source} (${share})`,
      lane: (name, halfWidth, tolerance, made) =>
        `${name}: Kamera plus oder minus ${halfWidth}, Toleranz plus oder minus ${tolerance}; ${made}.`,
      line: '1 Toleranz',
      more: (count) => (count === 1 ? 'und 1 sicherere' : `und ${count} sicherere`),
    },
    of: (wearer) => (wearer === '' ? 'Ohne Namen' : wearer),
    printedOn: (day) => `Gedruckt am ${day}.`,
  },

  history: {
    heading: 'Historie aller Einträge',
    close: 'Schließen',
    what: 'Nichts Eingegebenes wird je entfernt. Was später ersetzt wurde, ist durchgestrichen.',
    none: 'Noch wurde nichts eingegeben.',
    print: 'Historie drucken',
    table: 'Einträge, die ältesten zuerst',
    when: 'Wann',
    reader: 'Wer',
    place: 'Maß',
    text: 'Eintrag',
    noTime: 'nicht vermerkt',
    emptied: 'geleert',
    replaced: 'später ersetzt',
    continued: 'später ergänzt',
    covered: 'verdeckt, bis hier gemessen ist',
    of: (wearer) => (wearer === '' ? 'Sitzung ohne Namen' : wearer),
    printedOn: (when) => `Gedruckt am ${when}`,
    count: (count) => counted(count, 'Eintrag', 'Einträge'),
  },

  overSessions: {
    open: 'Messmittel und Messende',
    heading: 'Messmittel und Messende',
    actions: 'Messmittel und Messende',
    back: 'Zurück zu den Sitzungen',
    intro:
      'Hand minus Kamera, über alle aufbewahrten Sitzungen. Jeder Punkt ist ein Messwert von Hand neben dem, was die Kamera zur selben Stelle sagte.',
    caution:
      'Was alle gleich tun, kann die Abweichung der Kamera selbst sein. Was eines anders tut als die anderen, liegt kaum an der Kamera.',
    reading: 'Die aufbewahrten Sitzungen werden gelesen.',
    workingOut: 'Es wird gerechnet.',
    none: 'Noch gibt es nichts zu vergleichen: Es braucht aufbewahrte Sitzungen, in denen von Hand gemessen wurde, was auch die Kamera maß.',
    measurement: 'Maß',
    option: (name, sessions) => `${name} (${counted(sessions, 'Sitzung', 'Sitzungen')})`,
    by: 'Getrennt nach',
    bys: { gauge: 'Messmittel', reader: 'Messenden' },
    camera: 'Kamerawerte aus',
    cameras: { any: 'Bildern und Bildfolgen', picture: 'Bildern', sweep: 'Bildfolgen' },
    countFarOff: 'Weit Abseitsliegendes mitzählen',
    plainScale: 'Einfache Skala',
    noName: 'Kein Name eingegeben',
    summary: (name, camera, pairs, sessions) =>
      `${name}, aus ${camera}: ${counted(pairs, 'Messwert', 'Messwerte')} aus ${counted(sessions, 'Sitzung', 'Sitzungen')}.`,
    covered: (count) =>
      count === 1
        ? '1 Messwert fehlt hier: Der Kamerawert daneben ist noch verdeckt.'
        : `${count} Messwerte fehlen hier: Die Kamerawerte daneben sind noch verdeckt.`,
    print: 'Drucken',
    overview: {
      gauge: 'Alle Messmittel',
      reader: 'Alle Messenden',
      note: 'Der dicke Balken zeigt, wo das Mittel liegt (95\u00a0%), der dünne, wo 19 von 20 Unterschieden liegen. Die Mittellinie ist die Kamera.',
      lane: (name, mean, limits) =>
        `${name}: Mittel ${mean}${limits === null ? '' : `; Grenzen der Übereinstimmung ${limits}`}.`,
      count: (count) => counted(count, 'Besuch', 'Besuche'),
      tooFew: (names) => `Zu wenige Besuche, um etwas zu sagen: ${names.join(', ')}.`,
      nameAndVisits: (name, count) => `${name} (${counted(count, 'Besuch', 'Besuche')})`,
    },
    bias: (by, count, { way, amount, low, high }) => {
      const [who, does] = by === 'gauge' ? ['dieses Messmittel', 'zeigt'] : ['diese Person', 'misst'];
      const over = `Über ${counted(count, 'Besuch', 'Besuche')}`;
      return way === 'none'
        ? `${over} ${does} ${who} wie die Kamera: im Mittel ${amount} (95\u00a0%: ${low} bis ${high}).`
        : `${over} ${does} ${who} ${amount} ${way === 'more' ? 'mehr' : 'weniger'} als die Kamera (95\u00a0%: ${low} bis ${high}).`;
    },
    others: (by, only, { way, amount, low, high }) =>
      way === 'none'
        ? `Ein Unterschied zu ${only ?? 'allen anderen'} ist nicht zu sehen: ${amount} (95\u00a0%: ${low} bis ${high}).`
        : `Das ist ${amount} ${way === 'more' ? 'mehr' : 'weniger'} als bei ${only ?? `allen anderen ${by === 'gauge' ? 'Messmitteln' : 'Messenden'}`} (95\u00a0%: ${low} bis ${high}). Was die Kamera bei allen gleich tut, erklärt das nicht.`,
    limits: (low, high, known) =>
      `19 von 20 Unterschieden liegen zwischen ${low} und ${high}; jedes Ende ist auf ±\u00a0${known} bekannt.`,
    beyond: (count, all, tolerance) =>
      count === 0
        ? `Keiner von ${all} liegt jenseits der Toleranz von ±\u00a0${tolerance}.`
        : `${count} von ${all} ${count === 1 ? 'liegt' : 'liegen'} jenseits der Toleranz von ±\u00a0${tolerance}.`,
    drift: ({ way, amount, low, high }, days) =>
      way === 'none'
        ? `Über ${counted(days, 'Tag', 'Tage')} ist keine Drift zu sehen: ${amount} in 30 Tagen (95\u00a0%: ${low} bis ${high}).`
        : `Es driftet: ${amount} ${way === 'more' ? 'mehr' : 'weniger'} mit je 30 Tagen (95\u00a0%: ${low} bis ${high}), über ${counted(days, 'Tag', 'Tage')}.`,
    scatter: (seen, expected) =>
      `Die Unterschiede streuen um ${seen} (eine Standardabweichung); die Unsicherheiten von Hand und Kamera erklären ${expected}.`,
    farOff: (count) =>
      count === 1
        ? '1 Messwert liegt weit abseits, wie es Versehen tun, und ist nicht mitgezählt.'
        : `${count} Messwerte liegen weit abseits, wie es Versehen tun, und sind nicht mitgezählt.`,
    tooFewForLimits: (needed) => `Grenzen der Übereinstimmung brauchen ${needed} Besuche.`,
    tooFewForDrift: (needed, days) => `Eine Drift braucht ${needed} Besuche, über mindestens ${days} Tage.`,
    check: {
      gauge: 'Halten Sie es an etwas von bekannter Größe, ehe Sie etwas ändern.',
      reader: 'Vergleichen Sie, wie alle das Messmittel halten, ehe Sie etwas ändern.',
    },
    againstMean: 'Nach Größe',
    overTime: 'Nach Zeit',
    difference: (unit) => `Hand − Kamera, ${unit}`,
    mean: (unit) => `Mittel von Hand und Kamera, ${unit}`,
    day: 'Tag des Besuchs',
    points: (name) => `Unterschiede von ${name}, einer nach dem anderen nach dem Tag`,
    point: ({ day, wearer, side, hand, camera, difference, isFarOff }) =>
      `${day}, ${wearer}${side === null ? '' : side === 'R' ? ', rechts' : ', links'}: Hand ${hand}, Kamera ${camera}, Unterschied ${difference}${isFarOff ? ', weit abseits' : ''}`,
    noWearer: 'ohne Namen',
    pointHint:
      'Zeigen Sie auf die Zeichnung, oder gehen Sie mit den Pfeiltasten hindurch; die Eingabetaste öffnet die Sitzung.',
    openSession: 'Diese Sitzung öffnen',
    key: {
      heading: 'Was gezeichnet ist',
      right: 'rechts',
      left: 'links',
      reading: 'ein Messwert',
      farOff: 'weit abseits, nicht mitgezählt',
      mean: 'Mittel, mit seinen 95\u00a0%',
      limits: 'Grenzen der Übereinstimmung, mit ihren 95\u00a0%',
      drift: 'Drift, mit ihren 95\u00a0%',
      tolerance: 'Toleranz',
    },
    table: 'Dasselbe als Tabelle',
    columns: {
      gauge: 'Messmittel',
      reader: 'Wer',
      visits: 'Besuche',
      readings: 'Messwerte',
      mean: 'Mittel (95\u00a0%)',
      lower: 'Untere Grenze (95\u00a0%)',
      upper: 'Obere Grenze (95\u00a0%)',
      others: 'Gegen die anderen (95\u00a0%)',
      drift: 'In 30 Tagen (95\u00a0%)',
      farOff: 'Weit abseits',
    },
    withInterval: (value, low, high) => `${value} (${low} bis ${high})`,
    fromTo: (low, high) => `${low} bis ${high}`,
    method:
      'Grenzen der Übereinstimmung nach Bland und Altman (1986, 1999, 2007); rechts und links, und beide Messenden, eines Besuchs zählen für die Intervalle als eines. Drift nach Theil und Sen (1968).',
  },

  keptPicture: {
    heading: 'Aufbewahrte Bilder',
    notByDefault:
      'Das Bild ist weg, wenn diese Sitzung verlassen wird, außer die Person stimmt zu, dass es aufbewahrt wird.',
    keep: 'Dieses Bild aufbewahren',
    formHeading: 'Dieses Bild aufbewahren?',
    cancel: 'Nicht aufbewahren',
    readOut: 'Lesen Sie der Person dies vor:',
    consent: (days) =>
      `Ein Teil Ihres Bildes wird auf diesem Gerät aufbewahrt: Ihre Augen, Ihre Nasenwurzel, die Seiten Ihres Kopfes und die Karte, deren Fläche verdeckt wird, sodass nichts darauf lesbar ist. Es wird aufbewahrt, damit die Maße noch einmal angesehen werden können, wenn etwas nicht passt. Es verlässt dieses Gerät nie. Nach ${days} ${days === 1 ? 'Tag' : 'Tagen'} wird es von selbst gelöscht. Sie können es jederzeit vorher löschen lassen, und eine Ablehnung ändert nichts an Ihrer Brille.`,
    howLong: 'Aufbewahrt für',
    days: (days) => counted(days, 'Tag', 'Tage'),
    agrees: 'Die Person hat dies gehört und stimmt zu',
    agreeFirst: 'Haken Sie an, dass die Person zustimmt, oder bewahren Sie es nicht auf.',
    keepNow: 'Aufbewahren',
    making: 'Die Karte wird verdeckt und das Bild aufbewahrt.',
    done: (day) => `Das Bild wird bis ${day} aufbewahrt.`,
    noCard: {
      what: 'Das Bild wurde nicht aufbewahrt.',
      next: 'Die Ecken der Karte sitzen nicht um sie herum, also ließ sich ihre Fläche nicht verdecken. Setzen Sie sie zuerst.',
    },
    takenOn: (when) => `Bild vom ${when}`,
    keptUntil: (day, days) => {
      if (days < 0) return `aufbewahrt bis ${day}: Es wird so bald wie möglich gelöscht`;
      if (days === 0) return 'aufbewahrt bis heute';
      return `aufbewahrt bis ${day}, noch ${counted(days, 'Tag', 'Tage')}`;
    },
    agreed: (when) => `Die Person hat dem am ${when} zugestimmt:`,
    wording: 'Wozu die Person zugestimmt hat',
    remove: 'Jetzt löschen',
    removeOf: (when) => `Bild vom ${when} jetzt löschen`,
    removed: 'Das Bild wurde gelöscht.',
  },

  invitations: {
    open: 'Entfernte Person einladen',
    heading: 'Entfernte Personen',
    close: 'Schließen',
    what: 'Wer nicht kommen kann, öffnet einen Link auf dem Telefon, wird durch die Aufnahmen geführt und schickt eine verschlüsselte Datei zurück. Legen Sie sie auf der Liste oder dem Messblatt ab: Ihre Schätzwerte gelten nur vor der Anpassung, aufgenommen ohne Aufsicht.',

    make: {
      heading: 'Neue Einladung',
      wearer: 'Für wen',
      wearerNote: 'Bleibt hier; es steht nicht im Link.',
      practice: 'Ihr Betrieb, wie die Person ihn liest',
      language: 'Sprache der Seite für die Person',
      days: 'Gültig für',
      daysOf: (days) => counted(days, 'Tag', 'Tage'),
      pictures: 'Um zwei Bilder bitten, Ausschnitte um Augen und Karte',
      picturesNote: 'Die Person kann ablehnen. Sie werden mit der Sitzung aufbewahrt und nach 90 Tagen gelöscht.',
      address: 'Adresse dieser App, wie ein Telefon sie erreicht',
      addressLocal: 'Ein Telefon erreicht diese Adresse nicht: Sie meint nur diesen Rechner.',
      addressInsecure: 'Die Kamera eines Telefons geht nur unter einer Adresse, die mit https beginnt.',
      addressWrong: 'Das ist keine Adresse. Sie beginnt mit https.',
      now: 'Einladung erstellen',
      making: 'Die Einladung wird erstellt.',
    },

    made: {
      heading: (wearer) => (wearer === '' ? 'Einladung erstellt' : `Einladung für ${wearer}`),
      link: 'Link',
      copyLink: 'Link kopieren',
      qr: 'QR-Code mit dem Link dieser Einladung',
      scan: 'Mit dem Telefon zu scannen, oder als Link zu senden.',
      message: 'Text zum Senden',
      copyMessage: 'Text kopieren',
      copied: 'Kopiert.',
      copyFailed: 'Das Kopieren wurde abgelehnt. Markieren Sie den Text und kopieren Sie ihn von Hand.',
      secret: 'Senden Sie ihn nur der Person selbst: Wer den Link hat, kann darauf antworten.',
      another: 'Weitere Einladung',
      languageMissing: 'Der Text in dieser Sprache konnte nicht geladen werden; er ist auf Englisch.',
    },
    message: (practice, link, date) =>
      [
        practice === ''
          ? 'Ihr Optiker bittet Sie um eine erste Schätzung für Ihre Brille.'
          : `${practice} bittet Sie um eine erste Schätzung für Ihre Brille.`,
        'Bitte öffnen Sie diesen Link auf Ihrem Telefon. Sie brauchen eine Karte im Bankkartenformat, gutes Licht und etwa fünf Minuten:',
        link,
        `Der Link gilt bis ${date}. Am Ende erhalten Sie eine verschlüsselte Datei. Bitte senden Sie sie uns als Anhang zurück.`,
      ].join('\n\n'),

    list: {
      heading: 'Einladungen',
      none: 'Noch wurde keine Einladung erstellt.',
      noName: 'Ohne Namen',
      status: {
        out: (date) => `offen bis ${date}`,
        answered: (date) => `beantwortet am ${date}`,
        expired: (date) => `abgelaufen am ${date}`,
        withdrawn: (date) => `zurückgezogen am ${date}`,
      },
      made: (date) => `erstellt am ${date}`,
      show: (wearer) => `Link für ${wearer} zeigen`,
      withdraw: (wearer) => `Einladung für ${wearer} zurückziehen`,
      remove: (wearer) => `Einladung für ${wearer} entfernen`,
      showShort: 'Zeigen',
      withdrawShort: 'Zurückziehen',
      removeShort: 'Entfernen',
      withdrawn: 'Die Einladung wurde zurückgezogen: Eine Antwort darauf wird ab jetzt abgelehnt.',
      removed: 'Die Einladung wurde entfernt.',
      bringIn: 'Antwort einlesen',
    },

    key: {
      heading: 'Der Schlüssel',
      what: 'Antworten sind für einen Schlüssel verschlüsselt, der nur auf diesem Gerät liegt. Wer ihn verliert, kann sie nicht mehr öffnen.',
      none: 'Er entsteht mit der ersten Einladung.',
      inUse: (date) => `In Gebrauch seit ${date}.`,
      older: (count) =>
        count === 1
          ? 'Ein älterer Schlüssel öffnet noch Antworten auf frühere Einladungen.'
          : `${count} ältere Schlüssel öffnen noch Antworten auf frühere Einladungen.`,
      backUp: 'Sichern',
      backUpWhat:
        'Eine Datei mit allen Schlüsseln, versiegelt mit einer Passphrase. Verwahren Sie sie anderswo als auf diesem Gerät.',
      backUpNow: 'Sicherung erstellen',
      backedUp: (name) => `Die Sicherung wurde dem Browser als ${name} übergeben.`,
      bringBack: 'Zurückholen',
      bringBackWhat: 'Schlüssel einer Sicherung kommen zu den hiesigen hinzu; keiner geht verloren.',
      chooseBackup: 'Sicherung wählen',
      chosen: (name) => `Datei: ${name}`,
      bringBackNow: 'Schlüssel zurückholen',
      broughtBack: (count) => (count === 1 ? 'Ein Schlüssel ist jetzt hier.' : `${count} Schlüssel sind jetzt hier.`),
      replace: 'Ersetzen',
      replaceWhat:
        'Neue Einladungen entstehen mit einem neuen Schlüssel. Der alte öffnet noch Antworten auf frühere Einladungen. Tun Sie dies, wenn jemand anderes an den Schlüssel gekommen sein könnte; ziehen Sie dann auch die offenen Einladungen zurück.',
      replaceNow: 'Neuen Schlüssel erstellen',
      replaced: 'Ein neuer Schlüssel ist in Gebrauch. Sichern Sie ihn.',
      cancel: 'Abbrechen',
      working: 'In Arbeit. Das dauert mit Absicht einige Sekunden.',
    },

    answer: {
      heading: 'Antwort einer entfernten Person',
      what: 'Wählen Sie die Datei, die die Person gesendet hat, oder legen Sie sie hier ab.',
      choose: 'Datei wählen',
      chooseAnother: 'Andere Datei wählen',
      reading: 'Die Antwort wird geöffnet.',
      file: (name) => `Datei: ${name}`,
      withoutPictures: 'Die Antwort wurde eingelesen, aber ihre Bilder ließen sich nicht aufbewahren.',
      openSession: 'Sitzung öffnen',
      close: 'Schließen',
    },

    aloneMark: 'allein',
    aloneMarkLong: 'ohne Aufsicht aufgenommen',
    conditions: {
      glassesOn: 'Die Person behielt die Brille auf.',
      unevenLight: 'Die Person hatte kein gleichmäßiges Licht von vorn.',
      cardNotFlat: 'Die Person sagt, dass die Karte nicht flach lag.',
      remark: (sentences) => `Antwort aus der Ferne. ${sentences.join(' ')}`,
    },

    failure: {
      notLoadable: {
        what: 'Was Antworten öffnet, konnte nicht geladen werden.',
        next: 'Stellen Sie eine Internetverbindung her und versuchen Sie es noch einmal.',
      },
      unsupported: {
        what: 'Dieser Browser kann hier keine Schlüssel erstellen oder benutzen.',
        next: 'Nehmen Sie einen neueren Browser und öffnen Sie Glabella über https.',
      },
      noAnswer: {
        what: 'Diese Datei ist keine Antwort einer entfernten Person.',
        next: 'Wählen Sie die Datei, die die Person gesendet hat; ihr Name beginnt mit glabella-answer.',
      },
      noAnswerPassphrase: {
        what: 'Diese Datei ist mit einer Passphrase versiegelt, also keine Antwort einer entfernten Person.',
        next: 'Lesen Sie sie als Sicherung ein, oder wählen Sie die Datei, die die Person gesendet hat.',
      },
      tooLarge: (megabytes, limit): Saying => ({
        what: `Diese Datei ist zu groß für eine Antwort: ${megabytes} MB, höchstens ${limit} MB sind möglich.`,
        next: 'Wählen Sie die Datei, die die Person gesendet hat; ihr Name beginnt mit glabella-answer.',
      }),
      fileGone: {
        what: 'Die Datei ist nicht lesbar.',
        next: 'Vielleicht wurde sie verschoben oder geändert. Wählen Sie sie noch einmal.',
      },
      truncated: {
        what: 'Die Datei endet zu früh: Sie wurde unterwegs abgeschnitten.',
        next: 'Bitten Sie die Person, sie noch einmal als Anhang zu senden.',
      },
      altered: {
        what: 'Die Datei ist nicht mehr so, wie sie verschlüsselt wurde: Etwas hat sie unterwegs verändert.',
        next: 'Bitten Sie die Person, sie noch einmal als Anhang zu senden.',
      },
      forAnotherKey: {
        what: 'Kein Schlüssel dieses Geräts öffnet die Datei.',
        next: 'Wurde die Einladung auf einem anderen Gerät erstellt, öffnen Sie die Antwort dort, oder holen Sie die Schlüssel aus dessen Sicherung zurück. Sonst ist sie für einen anderen Betrieb.',
      },
      noSuchInvitation: {
        what: 'Die Datei antwortet auf keine Einladung aus Ihrer Liste.',
        next: 'Vielleicht wurde sie entfernt oder auf einem anderen Gerät erstellt. Laden Sie die Person noch einmal ein.',
      },
      replayed: (when): Saying => ({
        what: `Genau diese Antwort wurde schon eingelesen, am ${when}.`,
        next: 'Ihre Sitzung steht in der Liste. Nichts wurde geändert.',
      }),
      invitationAnswered: (when): Saying => ({
        what: `Eine andere Antwort auf dieselbe Einladung wurde am ${when} eingelesen.`,
        next: 'Nur die erste zählt. Soll die Person noch einmal Bilder aufnehmen, erstellen Sie eine neue Einladung.',
      }),
      invitationWithdrawn: (when): Saying => ({
        what: `Die Einladung wurde am ${when} zurückgezogen.`,
        next: 'Wenn Sie trotzdem eine Antwort möchten, erstellen Sie eine neue Einladung.',
      }),
      expired: (date): Saying => ({
        what: `Die Einladung ist am ${date} abgelaufen, die Antwort kommt zu spät.`,
        next: 'Erstellen Sie eine neue Einladung.',
      }),
      newerVersion: {
        what: 'Die Antwort wurde von einer neueren Version von Glabella geschrieben.',
        next: 'Laden Sie diese Seite mit Internetverbindung neu, damit die neuere Version kommt.',
      },
      unreadable: {
        what: 'Die Datei lässt sich öffnen, aber ihr Inhalt kann nicht stimmen.',
        next: 'Bitten Sie die Person, die Einladung noch einmal zu öffnen und eine neue Antwort zu senden.',
      },
      linkTooLong: (letters, limit): Saying => ({
        what: `Der Link hätte ${letters} Zeichen; ein QR-Code für Telefone fasst ${limit}.`,
        next: 'Kürzen Sie den Namen des Betriebs oder die Adresse.',
      }),
      keysDamaged: {
        what: 'Die Schlüssel auf diesem Gerät sind nicht mehr lesbar.',
        next: 'Holen Sie sie aus ihrer Sicherung zurück.',
      },
      noBackup: {
        what: 'Diese Datei ist keine Sicherung von Schlüsseln.',
        next: 'Wählen Sie die Datei, die hier als Sicherung erstellt wurde; ihr Name beginnt mit glabella-keys.',
      },
      backupNewer: {
        what: 'Die Sicherung wurde von einer neueren Version von Glabella geschrieben.',
        next: 'Laden Sie diese Seite mit Internetverbindung neu, damit die neuere Version kommt.',
      },
      badRecipient: {
        what: 'Der Schlüssel dieses Geräts funktioniert nicht.',
        next: 'Ersetzen Sie ihn und erstellen Sie die Einladung noch einmal.',
      },
    },
  },

  lock: {
    heading: 'Sperre für aufbewahrte Sitzungen',
    close: 'Schließen',
    what: 'Mit einer Sperre liegt alles hier Aufbewahrte versiegelt auf diesem Gerät: Sitzungen, Bilder, der Schlüssel für entfernte Personen. Wer Glabella öffnet, muss zuerst die Passphrase eingeben.',
    whatNot: 'Weitergegebene Dateien sind davon nicht gesperrt.',
    reading: 'Es wird nachgesehen, ob es eine Sperre gibt.',
    none: 'Es gibt keine Sperre.',
    isOpen: 'Es gibt eine Sperre. Sie ist in diesem Fenster offen.',
    set: 'Passphrase festlegen',
    change: 'Passphrase ändern',
    remove: 'Sperre entfernen',
    removeWhat: 'Alles wird wieder unversiegelt aufbewahrt.',
    removeNow: 'Sperre jetzt entfernen',
    cancel: 'Abbrechen',
    setNow: 'Mit dieser Passphrase sperren',
    changeNow: 'Ab jetzt diese Passphrase nehmen',
    sealing: 'Alles Aufbewahrte wird versiegelt. Lassen Sie diese Seite offen.',
    unsealing: 'Die Versiegelung alles Aufbewahrten wird gelöst. Lassen Sie diese Seite offen.',
    wasSet:
      'Alles Aufbewahrte ist jetzt versiegelt. Die Sperre ist in diesem Fenster offen, bis Sie es sperren oder schließen.',
    wasChanged: 'Die neue Passphrase gilt ab jetzt.',
    wasRemoved: 'Die Sperre wurde entfernt.',
    handOnFirst: 'Geben Sie zuerst eine Sicherung weiter: Geht die Passphrase verloren, bleibt nur sie.',

    lockedHeading: 'Gesperrt',
    lockedWhat: 'Die Sitzungen auf diesem Gerät sind gesperrt.',
    unlock: 'Entsperren',
    unlocking: 'Wird entsperrt. Das dauert mit Absicht einige Sekunden.',
    wrongPassphrase: {
      what: 'Die Passphrase öffnet die Sperre nicht.',
      next: 'Achten Sie auf Großschreibung und Leerzeichen und versuchen Sie es noch einmal.',
    },
    forgotten:
      'Ist die Passphrase vergessen, kann niemand öffnen, was hier aufbewahrt ist. Eine früher weitergegebene Sicherung lässt sich anderswo einlesen.',
    lockNow: 'Jetzt sperren',
    open: 'Sperre',
  },

  orderDoubt: {
    cameraDisagrees: (place, reason) => `${place}: Die Kamera widerspricht (${reason}).`,
    cameraCannotTell: (places) => `Die Kamera konnte weder bestätigen noch widersprechen: ${places}.`,
    refused: (place, typed, why) => `${place}: „${typed}“ wird nicht bestellt. ${why}`,
    readersDiffer: (place) =>
      `${place}: Die beiden Messungen liegen zu weit auseinander; es wird nicht bestellt, bevor beide noch einmal gemessen haben.`,
    otherOnly: (reader, places) => `Nur in einer der beiden Messungen (${reader}) und nicht bestellt: ${places}.`,
    otherReader: 'andere Messung',
    unconfirmed: (places) => `Eingegeben, aber nicht bestätigt und darum nicht bestellt: ${places}.`,
    gaugeNever: (gauge, places) =>
      `Für das Messmittel „${gauge}“ ist keine Prüfung vermerkt; benutzt wurde es für ${places}.`,
    gaugeOld: (gauge, days, places) =>
      `Das Messmittel „${gauge}“ wurde zuletzt ${days === 1 ? '1 Tag' : `${days} Tage`} vor der Bestätigung geprüft; benutzt wurde es für ${places}.`,
    nameless:
      'Ein Teil wurde bestätigt, bevor ein Name eingegeben war: Nehmen Sie das zurück und bestätigen Sie es noch einmal.',
    squint: (measurements) =>
      `Bei Schielen wird jedes Auge bei abgedecktem anderen gemessen: Vergewissern Sie sich dessen für ${measurements}.`,
    pupilWithoutLight: 'Das Licht, bei dem die Pupillendurchmesser gemessen wurden, ist nicht vermerkt.',
    frameIncomplete: (places) =>
      `Ein Gleitsichtglas lässt sich ohne diese nicht fertigen, und sie stehen nicht im Auftrag: ${places}.`,
    suspected: (sentence, places) => `${sentence} Nicht bestellt, bis es geklärt ist: ${places}.`,
  },

  order: {
    heading: 'Auftragsblatt',
    close: 'Schließen',
    intro:
      'Nur Zahlen, die Sie bestätigen und denen nichts auf dem Messblatt widerspricht, gehen an die Werkstatt. Eine Bestätigung endet, sobald die Zahl geändert wird.',

    confirming: 'Messwerte bestätigen',
    readerName: 'Bestätigt von',
    readerNameNote: 'Das steht auf dem Auftrag neben allem, was Sie ab jetzt bestätigen.',
    nothingIn: 'Noch ist kein Messwert da. Geben Sie zuerst die Messwerte auf dem Messblatt ein.',
    confirm: 'Bestätigen',
    confirmOf: (place) => `${place} bestätigen`,
    withdraw: 'Zurücknehmen',
    withdrawOf: (place) => `Bestätigung von ${place} zurücknehmen`,
    confirmAll: 'Alle ohne offenen Zweifel bestätigen',
    confirmAllCount: (count) => `Alle ohne offenen Zweifel bestätigen (${count})`,
    withdrawAll: 'Alle zurücknehmen',
    goTo: 'Zum Feld',
    goToOf: (place) => `Zum Feld von ${place}`,
    doubt: (amount) => `± ${amount}`,
    doubtNote: 'Hinter jedem Wert: seine eigene Unsicherheit (95 %).',
    confirmed: 'Bestätigt.',
    confirmedBy: (reader) => `Bestätigt von ${reader}${reader.endsWith('.') ? '' : '.'}`,
    leftOut: 'Bestätigt, aber nicht im Auftrag, solange es nicht passt.',
    cameraAgrees: 'Die Kamera stimmt überein.',
    cameraCannotTell: 'Die Kamera kann es nicht sagen.',
    covered: 'Der Wert der Kamera ist noch verdeckt.',
    repeats: (count) => `Mittel aus ${counted(count, 'Messwert', 'Messwerten')}.`,
    trials: (low, high) => `Passt; die wahre Größe liegt zwischen ${low} und ${high}.`,
    suspectedWith: (places) => `Es passt nicht mit anderen zusammen: ${places}.`,
    joined: 'Beide Messungen zusammen.',
    scale: (sum) => `Skala: ${sum}.`,
    countConfirmed: (confirmed, all) => `${confirmed} von ${counted(all, 'Messwert', 'Messwerten')} bestätigt.`,

    preview: 'Was bestellt wird',
    print: 'Auftrag drucken',
    printNote: 'Druckt nur dieses Blatt, auf A4 oder Letter.',
    savePdf: 'Als PDF speichern',
    saveData: 'Zahlen für die Werkstatt speichern (JSON)',
    saving: 'Die Datei wird erstellt.',
    saved: (name) => `${name} wurde erstellt.`,
    saveFailed: 'Die Datei ließ sich nicht erstellen. Laden Sie die Seite neu und versuchen Sie es noch einmal.',

    invented: 'Erfundene Person: Nichts hiervon ist zu fertigen.',
    title: 'Auftragsblatt',
    wearer: 'Person',
    date: 'Datum',
    readers: 'Gemessen und bestätigt von',
    nobody: 'kein Name angegeben',
    confirmation: (by, day, from, until) => `${by}, ${day}, ${until === null ? from : `${from} bis ${until}`}`,
    marked: (mark, confirmation) => `${mark}: ${confirmation}`,
    secondReading: (name) => (name === '' ? 'dazu eine zweite Messung' : `zweite Messung von ${name}`),
    prescription: 'Verordnung',
    prescriptionFor: (kind) => `Verordnung, ${kind}`,
    prescriptionNote: 'Schreibweise nach BS 2738-3, aus dem Gedächtnis.',
    prescribedAt: (mm) => `Bestimmt bei einem HSA von ${mm} mm.`,
    noVertex: 'HSA der Verordnung: nicht vermerkt.',
    noPrescription: 'Es wurde keine Verordnung eingegeben.',
    badPrescription: 'Die Verordnung auf dem Messblatt ist noch nicht lesbar, wird also nicht bestellt.',
    parts: {
      centration: 'Zentrierung',
      frame: 'Fassung',
      bridge: 'Steg',
      sides: 'Bügel und Kopf',
      eyes: 'Augen, zur Information',
    },
    measurement: 'Maß',
    side: 'Seite',
    value: 'Wert',
    doubtHead: '95 %',
    confirmedHead: 'von',
    continued: (caption) => `${caption}, Fortsetzung`,
    footer: (wearer, page, pages) =>
      wearer === ''
        ? `Auftragsblatt, Seite ${page} von ${pages}`
        : `Auftragsblatt, ${wearer}, Seite ${page} von ${pages}`,
    lettersMissing: (mark) =>
      `${mark} steht für einen Buchstaben, den diese Datei nicht zeigen kann. Die gedruckte Seite zeigt ihn.`,
    sideNames: { R: 'rechts', L: 'links' },
    workedOut: 'Aus diesen Zahlen errechnet',
    workedOutNote: 'Übliche Praxis; nicht gemessen. Dezentration von der Kastenmitte aus.',
    blankNote: (from) => `Kleinstes Rohglas nach ${from}, mit 2 mm für den Rand.`,
    blankFrom: {
      'effective-diameter': 'dem wirksamen Durchmesser',
      box: 'den Ecken des Kastens, also höchstens dies',
    },
    boxedCentreDistance: 'Mittenabstand im Kastenmaß',
    decentration: 'Dezentration',
    blank: 'Kleinstes Rohglas',
    blankOf: {
      'effective-diameter': (mm) => `${mm} mm`,
      box: (mm) => `höchstens ${mm} mm`,
    },
    inward: (mm) => `${mm} mm innen`,
    outward: (mm) => `${mm} mm außen`,
    up: (mm) => `${mm} mm oben`,
    down: (mm) => `${mm} mm unten`,
    centred: 'keine',
    level: 'keine nach oben oder unten',
    notes: 'Vermerke',
    squint: 'Schielen: Beide Augen fixieren nie gemeinsam.',
    unsupervised: 'Was die Kamera sagt, wurde aus der Ferne und ohne Aufsicht aufgenommen.',
    light: (light) => `Pupillendurchmesser bei diesem Licht gemessen: ${light}.`,
    doubts: 'Offen',
    noDoubts: 'Nichts ist offen.',
    nothingOrdered: 'Noch ist kein Maß bestellt.',
    noReadings: 'Kein Messwert ist eingegeben.',
    signature: 'Unterschrift',
    cautions: 'Bevor dies gefertigt wird',
    ownCautions: [
      'Werte von Hand und Kamera sind keine klinische Messung; wer unterschreibt, hat jeden angesehen.',
      'R und L sind die Seiten der Person. Längen in Millimetern, Winkel in Grad.',
      'Hinter jedem Wert: seine eigene Unsicherheit (95 %).',
    ],
  },

  position: {
    middle: 'Halten Sie das Blatt in die Mitte, gerade zur Kamera.',
    nearer: 'Näher, bis das Blatt den großen Umriss füllt.',
    farther: 'Weiter weg, in den kleinen Umriss.',
    'left-top': 'In die obere rechte Ecke.',
    'right-top': 'In die obere linke Ecke.',
    'right-bottom': 'In die untere linke Ecke.',
    'left-bottom': 'In die untere rechte Ecke.',
    'tilted-left': 'In der Mitte, die rechte Seite zur Kamera gekippt.',
    'tilted-right': 'In der Mitte, die linke Seite zur Kamera gekippt.',
    'tilted-top': 'In der Mitte, die obere Seite zur Kamera gekippt.',
    'tilted-bottom': 'In der Mitte, die untere Seite zur Kamera gekippt.',
    upright: 'In der Mitte, um eine Vierteldrehung hochkant.',
  },

  practiceProblems: {
    tolerance: (typed, counts) =>
      `„${typed}“ ist keine Toleranz: Geben Sie eine Zahl über null ein, oder nichts. Bis dahin gilt ± ${counts}.`,
    tooWide: (typed, limit, counts) =>
      `± ${typed} würde nie etwas finden: höchstens ± ${limit}. Bis dahin gilt ± ${counts}.`,
    unfinished: 'Dieses Messmittel ist noch nicht aufbewahrt: Bewahren Sie es auf, oder brechen Sie ab.',
    notKept: 'Noch nicht aufbewahrt: Siehe die Hinweise neben den Feldern.',
    noDate: 'Das ist noch kein Tag des Kalenders: Vervollständigen Sie ihn, oder leeren Sie das Feld.',
  },

  practice: {
    heading: 'Betrieb',
    close: 'Schließen',
    intro: 'Was zum Arbeitsplatz gehört und von Person zu Person bleibt.',

    rows: 'Zeilen des Messblatts und die Reihenfolge, in der Sie messen',
    rowsNote:
      'Eine ausgeblendete Zeile behält, was in sie eingegeben wurde, nimmt aber an keiner Prüfung teil. Eine eigene Toleranz tritt an die Stelle der Toleranz aus dem Katalog.',
    shown: (name) => `${name} zeigen`,
    showAll: (block) => `Alle zeigen: ${block}`,
    hideAll: (block) => `Alle ausblenden: ${block}`,
    all: 'Alle zeigen',
    none: 'Alle ausblenden',
    toleranceOf: (name, unit) => `Eigene Toleranz für ${name}, ${unit}`,
    catalogueTolerance: (value, status, source) => `Katalog: ± ${value} (${status}): ${source}.`,
    ownTolerance: (value) => `Eigene: ± ${value}.`,
    gaugeOf: (name) => `Messmittel in Gebrauch für ${name}`,
    plainRule: 'einfache Skala, wie sie dasteht',
    shownCount: (shown, all) => (shown === all ? `alle ${all} gezeigt` : `${shown} von ${all} gezeigt`),

    orderNote: 'Die Eingabetaste geht in der Reihenfolge dieser Blöcke durch die Felder.',
    up: (block) => `${block} nach oben`,
    down: (block) => `${block} nach unten`,
    moved: (block, place, all) => `${block} ist jetzt Block ${place} von ${all}.`,

    gauges: 'Messmittel',
    gaugesNote:
      'Sie geben ein, was die Skala zeigt; das Messblatt zählt hinzu, was hinzukommt, zieht ab, was bekanntlich zu viel ist, und zeigt beides. Messwerte, die schon auf dem Messblatt stehen, werden neu gerechnet.',
    noGauges: 'Noch kein Messmittel: Jede Skala gilt, wie sie dasteht.',
    addGauge: 'Messmittel hinzufügen',
    edit: 'Bearbeiten',
    editOf: (name) => `${name} bearbeiten`,
    remove: 'Löschen',
    removeOf: (name) => `${name} löschen`,
    removed: (name) => `${name} wurde gelöscht; seine Zeilen gelten wieder mit einfacher Skala.`,
    bringBack: 'Zurückholen',
    broughtBack: (name) => `${name} ist wieder da.`,
    kept: (name) => `${name} ist aufbewahrt.`,
    inUseFor: (names) => `In Gebrauch für ${names}.`,
    notInUse: 'Nicht in Gebrauch: Wählen Sie es oben in den Zeilen.',
    facts: {
      step: (amount) => `Schritt ${amount}`,
      offset: (amount) => `${amount} hinzuzuzählen`,
      noOffset: 'beginnt bei null',
      bias: (amount) => `zeigt bekanntlich ${amount} zu viel`,
      biasBelow: (amount) => `zeigt bekanntlich ${amount} zu wenig`,
    },
    checkedOn: (day) => `Geprüft am ${day}.`,
    neverChecked: 'Keine Prüfung vermerkt: Vergleichen Sie es mit einem guten Lineal und vermerken Sie den Tag.',
    overdue: (day, limitDays) =>
      `Zuletzt am ${day} geprüft, vor mehr als ${limitDays} Tagen: Prüfen Sie es, bevor Sie sich darauf verlassen.`,
    examples: 'Beispiele zum Übernehmen',
    exampleNames: {
      'pd-rule': 'PD-Lineal',
      'end-rule': 'Lineal, vom Ende an gelesen',
      'head-calipers': 'Kopftaster',
      'angle-gauge': 'Winkelmesser',
    },
    examplesNote: 'Erfundene Beispiele: Vergleichen Sie mit Ihren eigenen Messmitteln.',
    takeOver: 'Übernehmen',
    takeOverOf: (name) => `${name} übernehmen`,
    takenOver: (name) => `${name} wurde übernommen. Vergleichen Sie die Zahlen mit Ihrem eigenen Messmittel.`,

    form: { add: 'Ein Messmittel', edit: (name) => `${name} bearbeiten` },
    name: 'Name',
    nameNote: 'Wie Sie es nennen, zum Beispiel „Nasenlehre“.',
    servesLegend: 'Benutzt wird es für',
    servesNote: 'Längen oder Winkel, nicht beides: Eine Skala hat eine Einheit.',
    unitsOf: { mm: 'Längen', deg: 'Winkel' },
    resolution: 'Schritt der Skala',
    resolutionNote: 'Der kleinste Schritt, auf den Sie ablesen.',
    zeroOffset: 'Zu jedem Messwert hinzuzuzählen',
    zeroOffsetNote: '0 bei einem Messmittel, das bei null beginnt.',
    bias: 'Von jedem Messwert abzuziehen',
    biasNote:
      'Um wie viel es nach der letzten Prüfung zu viel zeigt; negativ, wo es zu wenig zeigt, 0, wo nichts bekannt ist.',
    checked: 'Zuletzt geprüft am',
    checkedNote: 'Leer lassen, wo es niemand vermerkt hat.',
    inUnit: (label, unit) => `${label}, ${unit}`,
    example: 'Beispiel:',
    unitNames: { mm: 'mm', deg: 'Grad' },
    exampleSum: (scale, sum, unit) => `die Skala zeigt ${scale}: ${sum} ${unit}.`,
    noExample: 'Hier steht ein Rechenbeispiel, sobald die Zahlen brauchbar sind.',
    keep: 'Dieses Messmittel aufbewahren',
    cancel: 'Abbrechen',

    standard: 'Norm für das Prisma eines verglasten Paars',
    standardSource: (status, source) => `Werte ${status}: ${source}.`,
  },

  prescription: {
    heading: 'Verordnung',
    caption: 'Was verordnet ist, rechtes Auge über dem linken',
    eye: 'Auge',
    fields: {
      sphere: 'Sphäre',
      cylinder: 'Zylinder',
      axis: 'Achse',
      add: 'Addition',
      prismHorizontal: 'Prisma innen oder außen',
      baseHorizontal: 'Basis innen oder außen',
      prismVertical: 'Prisma oben oder unten',
      baseVertical: 'Basis oben oder unten',
    },
    sideNames: { R: 'rechts', L: 'links' },
    placeName: (field, side) => `${field}, ${side}`,
    prism: {
      in: (amount) => `${amount} Basis innen`,
      out: (amount) => `${amount} Basis außen`,
      up: (amount) => `${amount} Basis oben`,
      down: (amount) => `${amount} Basis unten`,
    },
    prismDioptres: 'Prismendioptrien',
    add: (power) => `Add ${power}`,
    columns: { horizontal: 'Prisma innen/außen', vertical: 'Prisma oben/unten' },
    eyes: { R: 'Rechts', L: 'Links' },
    bases: { '': 'Basis', in: 'innen', out: 'außen', up: 'oben', down: 'unten' },
    vertexDistance: 'Bestimmt bei (HSA)',
    vertexNote: 'mm; leer, wo es nicht vermerkt ist',
    kind: 'Art der Gläser',
    kinds: {
      'single-vision': 'Einstärken',
      multifocal: 'bifokal oder trifokal',
      progressive: 'Gleitsicht',
    },
    hint: 'Stärken brauchen ein Vorzeichen (oder „plan“); der Zylinder darf beide haben. Die Eingabetaste geht weiter, mit Umschalttaste zurück.',
    stillNeeded: (places) => `Noch einzugeben: ${list(places)}.`,
    otherForm: 'dasselbe Glas:',
    check: 'Sehen Sie noch einmal hin:',
  },

  print: {
    heading: 'Karte zum Drucken',
    close: 'Schließen',
    intro:
      'Eine Markerkarte wird sicherer gefunden als eine gekaufte Karte. Drucken Sie sie mit 100 %, nie „an Seite anpassen“, auf festes mattes Papier, schneiden Sie sie aus, und messen Sie die Linie auf demselben Blatt nach.',
    paper: 'Papier',
    a4: 'A4',
    letter: 'Letter',
    markerCard: 'Markerkarte (PDF)',
    printCheck: 'Druckprobe (PDF)',
    board: 'Kamerablatt (PDF)',
    printCheckNote:
      'Die Druckprobe hat einen Umriss, auf den Sie eine echte Karte legen, um einen Drucker oder eine Karte zu prüfen.',
    boardNote:
      'Das Kamerablatt dient zum Erstellen eines Kameraprofils (in den Einstellungen): Kleben Sie die ganze Seite auf etwas Steifes und Flaches. Ihre Größe spielt keine Rolle, also wird an ihr nichts gemessen.',
    making: 'Das PDF wird erstellt.',
    failed: 'Das PDF ließ sich nicht erstellen. Laden Sie die Seite neu und versuchen Sie es noch einmal.',
    caution: 'Runden Sie die Ecken nach dem Schneiden ab: Kartenkanten kommen den Augen nahe.',
  },

  profile: {
    heading: 'Kameraprofil erstellen',
    close: 'Schließen',
    intro:
      'Ein Kameraprofil sagt, wie diese Kamera abbildet: ihren Bildwinkel, und wie ihre Linse Linien biegt. Mit ihm sind die Zahlen sicherer. Ohne geht alles auch, mit weiteren Intervallen.',
    before: [
      'Drucken Sie das Kamerablatt (unter „Karte zum Drucken“) und befestigen Sie die ganze Seite auf etwas Steifem und Flachem. Ein gebogenes Blatt ergibt ein falsches Profil; seine Größe spielt keine Rolle.',
      'Benutzen Sie die Kamera so wie später mit den Personen: gleiche Auflösung, gleicher Zoom, keine Hintergrundeffekte.',
      'Gleichmäßiges Licht, kein Glanz auf dem Blatt. Es dauert etwa zwei Minuten.',
    ],
    useCamera: 'Kamera benutzen',
    printSheet: 'Kamerablatt drucken',
    clearLeftOut: 'Ausgelassene Bilder ausblenden',
    usePictures: 'Bilder des Blatts wählen',
    picturesNote:
      'Aus Dateien: acht oder mehr Bilder einer Kamera, mit einer Auflösung, unbeschnitten, das Blatt an verschiedenen Stellen, in verschiedenen Neigungen und Abständen.',
    back: 'Zurück',

    gettingReady: 'Die Suche nach dem Blatt wird vorbereitet. Beim ersten Mal dauert es einen Moment.',
    mirrored:
      'Die Vorschau ist gespiegelt wie in einem Spiegel. Eine Ansicht wird von selbst aufgenommen, wenn Sie stillhalten.',
    viewCount: (count) => `${counted(count, 'Ansicht', 'Ansichten')} aufgenommen`,
    makeNow: (count) =>
      count === 1 ? 'Profil aus dieser Ansicht erstellen' : `Profil aus diesen ${count} Ansichten erstellen`,
    needed: (missing) => `Noch mindestens ${counted(missing, 'Ansicht', 'Ansichten')}.`,
    skip: 'Diese Stelle auslassen',
    takeBack: 'Letzte Ansicht zurücknehmen',
    startAgain: 'Von vorn beginnen',
    moreViews: 'Weitere Ansichten aufnehmen',
    morePictures: 'Bilder hinzufügen',
    enough: 'Genug Ansichten.',
    covered: (percent) => `${percent} des Bildes abgedeckt`,
    weakHeading: 'Was schwach ist',
    notWeak: 'Nichts ist schwach.',

    files: 'Bilder des Blatts',
    lookingAt: (done, all) => `Bild ${done} von ${all} wird angesehen`,
    cornersFound: (count, all) => `${count} von ${all} Ecken gefunden`,
    otherSize: 'ausgelassen: nicht in der Größe, die die meisten Bilder haben',
    usable: (count, all) => `${count} von ${counted(all, 'Bild', 'Bildern')} brauchbar.`,
    tooMany: (limit) => `Mehr als ${limit} bringen nichts: Nur die ersten ${limit} wurden angesehen.`,
    fileName: (widthPx, heightPx) => `Bilder von ${widthPx} × ${heightPx}`,

    making: 'Das Profil wird errechnet.',
    result: 'Das Profil',
    fieldOfView: 'Bildwinkel, waagerecht',
    focalLength: 'Brennweite',
    axis: 'Die optische Achse trifft das Bild bei',
    distortion: 'Verzeichnung',
    radial: 'radial k1, k2, k3',
    tangential: 'tangential p1, p2',
    fit: 'Passung (quadratisches Mittel)',
    fitIn: (rms, views) => `${rms} px über ${counted(views, 'Ansicht', 'Ansichten')}`,
    resolution: 'Auflösung',
    doubt: '± ist die Hälfte des 95-%-Intervalls.',
    name: 'Name des Profils',
    nameLimit: (letters) => `Bis zu ${letters} Zeichen.`,
    emptyName:
      'Ohne Namen lässt es sich nicht aufbewahren: Es wäre von anderen nicht zu unterscheiden. Geben Sie einen ein.',
    emptyRename: 'Ein Profil braucht einen Namen: Geben Sie einen ein, oder brechen Sie ab.',
    keep: 'Profil aufbewahren',
    unnamedCamera: 'Kamera',

    section: 'Kameraprofil',
    counts: 'Profil für Bilder aus Dateien',
    none: 'Keines',
    countsNote:
      'Wählen Sie es nur, wenn die Dateien unbeschnittene Bilder dieser Kamera sind. Hier aufgenommene Bilder und Bildfolgen nehmen von selbst das neueste Profil ihrer eigenen Kamera, oder keines.',
    shelf: 'Aufbewahrte Profile',
    noProfiles: 'Noch wurde kein Profil erstellt.',
    facts: (resolution, day) => `${resolution}, erstellt am ${day}`,
    ofCamera: (label) => `Kamera: ${label}.`,
    ofFiles: 'Aus Dateien erstellt, also von keiner Kamera hier: Es gilt nur, wo es für Dateien gewählt ist.',
    quality: (focal, rms, coverage) => `Brennweite ± ${focal}, Passung ${rms} px, ${coverage} des Bildes abgedeckt`,
    rename: 'Umbenennen',
    renameOf: (name) => `${name} umbenennen`,
    newName: 'Neuer Name',
    saveName: 'Namen speichern',
    cancel: 'Abbrechen',
    exportOne: 'Exportieren',
    exportOf: (name) => `${name} exportieren`,
    remove: 'Löschen',
    removeOf: (name) => `${name} löschen`,
    removed: (name) => `${name} wurde gelöscht.`,
    bringBack: 'Zurückholen',
    makeOne: 'Kameraprofil erstellen',
    importOne: 'Profil importieren',
    imported: (name) =>
      `${name} wurde importiert. Es gilt für Bilder seiner eigenen Kamera, und für Dateien, sobald es oben gewählt ist.`,
    renamed: (name) => `Das Profil heißt jetzt ${name}.`,
    broughtBack: (name) => `${name} ist wieder da.`,
    keptForFiles: (name) => `${name} ist aufbewahrt und gilt ab jetzt für Bilder aus Dateien.`,
    keptForCamera: (name) => `${name} ist aufbewahrt und gilt ab jetzt für Bilder seiner eigenen Kamera.`,
    notKept:
      'Dieser Browser konnte die Profile nicht speichern: Sein Speicher ist voll oder nicht erlaubt. Noch ist nichts verloren, aber sie bleiben nur, bis diese Seite geschlossen wird: Exportieren Sie sie jetzt.',
    fileStem: 'glabella-kameraprofil',

    fact: 'Kameraprofil',
    noneOfCamera: 'Kein Profil dieser Kamera',
    notCounting: (profileRatio) =>
      `gilt hier nicht: Es wurde für Bilder im Format ${profileRatio} erstellt, und dieses hat ein anderes Seitenverhältnis`,
    paper: (name) => `Kameraprofil: ${name}.`,
  },

  audit: {
    open: 'Datensätze durchsehen',
    openSelected: 'Durchsehen',
    heading: 'Viele Datensätze auf einmal',
    actions: 'Datensätze',
    toSessions: 'Sitzungen',
    toSheet: 'Zurück zum Messblatt',
    intro:
      'Jeder Datensatz wird durchgesehen wie ein Messblatt: was nicht zusammenpasst, was wohl geschehen ist und welche Zahl gemeint war. Nichts wird geändert, und nichts verlässt dieses Gerät.',

    drop: 'Legen Sie eine Tabelle mit Datensätzen (CSV) hier ab, oder wählen Sie sie.',
    dropAnother: 'Legen Sie eine andere Tabelle hier ab, oder wählen Sie sie.',
    choose: 'Tabelle wählen',
    chooseAnother: 'Andere Tabelle wählen',
    kept: (count) =>
      count === 1
        ? 'Die hier aufbewahrte Sitzung durchsehen'
        : `Die ${formatCount(count)} hier aufbewahrten Sitzungen durchsehen`,
    keptNone: 'Hier ist noch keine Sitzung aufbewahrt.',
    unreadable: (count) =>
      count === 1
        ? '1 Sitzung ist nicht lesbar und wurde ausgelassen.'
        : `${formatCount(count)} Sitzungen sind nicht lesbar und wurden ausgelassen.`,

    format: {
      open: 'Wie die Tabelle aussehen muss',
      rules:
        'Ein Datensatz je Zeile. Die erste Zeile nennt die Spalten, in beliebiger Reihenfolge; alle bis auf einen Messwert dürfen fehlen, und Zellen dürfen leer sein. Dezimalpunkt oder Komma; zwischen den Zellen Kommas, Semikolons oder Tabulatoren; UTF-8.',
      table: 'Spalten einer Tabelle mit Datensätzen',
      column: 'Spalte',
      holds: 'Was darin steht',
      record: 'wie Sie den Datensatz nennen',
      reading:
        'was gemessen wurde, zum Beispiel die PD; mehrere Wiederholungen in einer Zelle, mit Leerzeichen dazwischen',
      offset: 'was das Messmittel als Zuschlag braucht; der Messwert ist dann, was die Skala zeigte',
      camera: 'was die Kamera dazu sagt',
      cameraUncertainty: 'eine Standardabweichung davon; beides oder keines',
      workingDistance: 'von den Gläsern bis zu dem, was in der Nähe angesehen wird, in mm; 400, wo sie fehlt',
      allReadings: 'Die Namen aller Messwerte',
      saveExample: 'Beispiel speichern',
      tryExample: 'Beispiel durchsehen',
      example: 'Das Beispiel hat vier erfundene Datensätze; in zweien sind Versehen.',
    },

    reading: 'Die Tabelle wird gelesen und geprüft.',
    readingSessions: (count, of) =>
      `${formatCount(count)} von ${formatCount(of)} ${of === 1 ? 'Sitzung' : 'Sitzungen'} durchgesehen; die nächsten werden gelesen.`,
    progress: (count, flagged) => `${recordsOf(count)} durchgesehen, davon bisher ${formatCount(flagged)} auffällig.`,
    stop: 'Abbrechen',

    result: (flagged, all) =>
      flagged === 1
        ? all === 1
          ? 'In dem einen Datensatz passt etwas nicht.'
          : `In 1 von ${recordsIn(all)} passt etwas nicht.`
        : `In ${formatCount(flagged)} von ${recordsIn(all)} passt etwas nicht.`,
    none: (all) =>
      all === 1
        ? 'Der eine Datensatz fiel nicht auf; richtig ist er damit noch nicht.'
        : `Keiner von ${recordsIn(all)} fiel auf; richtig sind sie damit noch nicht.`,
    noneWhy:
      'Ein Versehen zeigt sich, wo andere Messwerte desselben Datensatzes ihm widersprechen. Wo es wenige sind, kann es verborgen bleiben; und ein Messwert, der falsch und doch wahrscheinlich ist, fällt nie auf.',
    stopped: (count, flagged) =>
      `Abgebrochen nach ${count === 1 ? '1 Datensatz' : `${formatCount(count)} Datensätzen`}: ${formatCount(flagged)} davon auffällig. Die übrigen wurden nicht durchgesehen.`,
    ofTable: (name, time) => `${name}, durchgesehen um ${time}.`,
    ofSessions: (count, isPart, time) =>
      `${isPart ? `${count === 1 ? '1 ausgewählte Sitzung' : `${formatCount(count)} ausgewählte Sitzungen`}` : count === 1 ? 'Die eine hier aufbewahrte Sitzung' : `Alle ${formatCount(count)} hier aufbewahrten Sitzungen`}, durchgesehen um ${time}.`,

    kinds: {
      refused: 'kann nicht sein',
      suspected: 'wohl falsch',
      disagrees: 'Kamera widerspricht',
      'readers-differ': 'Messende uneins',
      'far-off-repeat': 'Wiederholung weit ab',
      'does-not-add-up': 'Summe geht nicht auf',
      unusual: 'nur ungewöhnlich',
    },

    tools: 'Was gezeigt wird',
    search: 'Suchen',
    searchHint: 'Name, Zeile, Messwert, Zahl',
    only: 'Nur diese',
    counted: (name, count) => `${name} (${formatCount(count)})`,
    slip: 'Versehen',
    anySlip: 'jedes oder keines',
    measurement: 'Messwert',
    anyMeasurement: 'jeder',
    sortBy: 'Sortieren nach',
    ascending: 'Aufsteigend',
    descending: 'Absteigend',
    turnOrder: 'Reihenfolge umkehren',

    listed: (count, all) =>
      count === all ? `${formatCount(all)} auffällig.` : `${formatCount(count)} von ${formatCount(all)} auffälligen.`,
    noneFound: 'Nichts Auffälliges entspricht dem. Suchen Sie nach weniger, oder nehmen Sie einen Filter weg.',
    showAll: 'Alles Auffällige zeigen',

    pages: 'Seiten der Liste',
    rows: (from, to, of) => `${formatCount(from)} bis ${formatCount(to)} von ${formatCount(of)}`,
    page: { first: 'Erste', previous: 'Vorige', next: 'Nächste', last: 'Letzte' },

    table: 'Auffällige Datensätze',
    column: {
      place: 'Datensatz',
      measurement: 'Messwert',
      written: 'Geschrieben',
      restored: 'Wohl gemeint',
      probability: 'Wie sicher',
      why: 'Warum',
    },
    noName: 'Ohne Namen',
    line: (line) => `Zeile ${line}`,
    perhaps: (value) => `vielleicht ${value}`,
    cause: (slips, probability) => `${slips}, ${probability}`,
    noSlip: 'kein übliches Versehen',
    details: (count) => (count === 1 ? 'Mehr' : `Alle ${count} Befunde`),
    detailsOf: (count, record) => (count === 1 ? `Mehr zu ${record}` : `Alle ${count} Befunde zu ${record}`),
    wrongHere: (probability) => `Hier ist etwas falsch: ${probability}.`,
    gone: 'Inzwischen gelöscht',
    openSession: 'Diese Sitzung öffnen',
    basis:
      'Wie sicher: die Wahrscheinlichkeit, dass dort etwas falsch ist, und hinter einem Versehen die Wahrscheinlichkeit genau dieser Ursache, bei gewählten Häufigkeiten von Versehen; beide sind eher zu niedrig.',

    save: 'Das Gezeigte speichern',
    saveCsv: 'Als CSV',
    saveJson: 'Als JSON',
    saveNote: 'Die Namen der Datensätze kommen mit in die Datei: Wer sie hat, kann sie lesen.',
    making: (done, all) => `Die Datei wird geschrieben: ${formatCount(done)} von ${formatCount(all)}.`,
    saved: (count, fileName) =>
      `${recordsOf(count)} ${count === 1 ? 'wurde' : 'wurden'} dem Browser als ${fileName} übergeben.`,

    refused: (problems) =>
      problems === 1
        ? 'Die Tabelle wird wegen eines Fehlers abgelehnt. Kein Datensatz wurde durchgesehen.'
        : `Die Tabelle wird wegen ${formatCount(problems)} Fehlern abgelehnt. Kein Datensatz wurde durchgesehen.`,
    refusedNext: 'Berichtigen Sie sie dort, speichern Sie sie als CSV, und wählen Sie sie noch einmal.',
    problems: 'Fehler der Tabelle',
    problemPlace: 'Wo',
    problem: 'Was falsch ist, und was zu tun ist',
    moreProblems: (count) =>
      count === 1
        ? '1 weiterer Fehler ist nicht gezeigt: Berichtigen Sie zuerst diese.'
        : `${formatCount(count)} weitere Fehler sind nicht gezeigt: Berichtigen Sie zuerst diese.`,
    fileUnreadable: {
      what: 'Die Datei ist nicht lesbar.',
      next: 'Vielleicht wurde sie inzwischen verschoben oder geändert. Wählen Sie sie noch einmal.',
    },
    auditStopped: {
      what: 'Was Datensätze durchsieht, konnte nicht geladen werden oder ist stehen geblieben.',
      next: 'Laden Sie diese Seite mit Verbindung zum Netz neu, schließen Sie andere Tabs, wenn der Speicher knapp ist, und versuchen Sie es noch einmal.',
    },
  },

  recordProblem: {
    file: 'Die Datei',
    line: (line) => `Zeile ${line}`,
    cell: (line, column, name) => `Zeile ${line}, Spalte ${column}${name === '' ? '' : ` (${name})`}`,
    tooLarge: (megabytes, limit) =>
      `Die Datei hat ${megabytes} MB; bis ${limit} können gelesen werden. Teilen Sie sie auf.`,
    utf16: 'Die Datei ist in UTF-16. Speichern Sie sie als CSV in UTF-8.',
    notUtf8: 'Ein Zeichen ist nicht in UTF-8. Speichern Sie die Datei als CSV in UTF-8.',
    nul: 'Ein Byte ist NUL: Das ist kein Text in UTF-8. Speichern Sie die Datei als CSV in UTF-8.',
    empty: 'Die Datei ist leer.',
    noHeader: (text) =>
      `Die erste Zeile soll die Spalten nennen, enthält aber „${text}“. Setzen Sie eine Zeile mit ihren Namen darüber.`,
    unknownColumn: (name) => `Keine Spalte heißt „${name}“. Benennen Sie sie um, oder nehmen Sie sie weg.`,
    nearestColumn: (name, nearest) => `Keine Spalte heißt „${name}“. Ist ${nearest} gemeint?`,
    unnamedColumn: 'Diese Spalte hat keinen Namen. Benennen Sie sie, oder nehmen Sie sie weg.',
    duplicateColumn: (first) => `Dieser Name steht schon in Spalte ${first}. Nehmen Sie eine der beiden weg.`,
    partnerMissing: (partner) => `Diese Spalte braucht die Spalte ${partner} daneben.`,
    noReadings: 'Keine Spalte enthält einen Messwert. Nennen Sie mindestens einen.',
    noRecords: 'Unter der Kopfzeile steht kein Datensatz. Schreiben Sie in jede Zeile einen.',
    quotation:
      'Ein Anführungszeichen ist nicht geschlossen oder beendet sein Feld nicht; dahinter lässt sich nichts lesen. Schließen Sie es, oder verdoppeln Sie es, wo es zum Text gehört.',
    tooManyFields: (found, expected) =>
      `Die Zeile hat ${counted(found, 'Feld', 'Felder')}, die Kopfzeile ${expected}. Wo Kommas die Felder trennen, braucht eine Zahl mit Dezimalkomma Anführungszeichen.`,
    tooFewFields: (found, expected) =>
      `Die Zeile hat ${counted(found, 'Feld', 'Felder')}, die Kopfzeile ${expected}. Auch leere Zellen brauchen ihre Trennzeichen.`,
    badNumber: (text) =>
      `„${text}“ ist keine Zahl. Schreiben Sie nur Ziffern, und lassen Sie die Zelle leer, wo nichts gemessen wurde.`,
    severalNumbers: (text) => `„${text}“ sind mehrere Zahlen, wo nur eine stehen kann. Behalten Sie eine.`,
    notPositive: (text) => `„${text}“ ist nicht größer als null. Berichtigen Sie es, oder leeren Sie die Zelle.`,
    uncertaintyMissing:
      'Diese Zelle ist leer, aber der Schätzwert der Kamera steht da: Er braucht seine Unsicherheit. Schreiben Sie sie, oder leeren Sie beide Zellen.',
    estimateMissing:
      'Diese Zelle ist leer, aber die Unsicherheit des Schätzwerts der Kamera steht da. Schreiben Sie ihn, oder leeren Sie beide Zellen.',
  },

  sessions: {
    heading: 'Aufbewahrte Sitzungen',
    actions: 'Sitzungen',
    begin: 'Neue Sitzung',
    backToSheet: 'Zurück zum Messblatt',
    handOnAll: 'Alle weitergeben',
    bringIn: 'Datei einlesen',

    reading: 'Die aufbewahrten Sitzungen werden gelesen.',
    none: 'Noch ist keine Sitzung aufbewahrt. Beginnen Sie eine: Alles Eingegebene wird hier von selbst aufbewahrt.',
    noneFound: 'Keine Sitzung entspricht dem. Suchen Sie nach weniger, oder nehmen Sie einen Filter weg.',
    showAll: 'Alle Sitzungen zeigen',

    search: 'Suchen',
    searchHint: 'Person, Bemerkung, wer misst, PD, Tag',
    origin: 'Aufgenommen',
    anywhere: 'irgendwo',
    atTheDesk: 'am Arbeitsplatz',
    atADistance: 'aus der Ferne',
    filters: 'Nur wo',
    filter: {
      misfits: 'etwas nicht passt',
      disagrees: 'die Kamera widerspricht',
      'cannot-tell': 'die Kamera es nicht sagen kann',
      'without-camera': 'kein Bild gemessen wurde',
      open: 'Messwerte auf Bestätigung warten',
      confirmed: 'alles bestätigt ist',
      empty: 'nichts geschrieben ist',
    },
    filterCount: (filter, count) => `${filter} (${count})`,
    count: (count) => `${counted(count, 'Sitzung', 'Sitzungen')}.`,
    countOf: (count, all) => `${count} von ${counted(all, 'Sitzung', 'Sitzungen')}.`,

    table: 'Sitzungen',
    column: {
      wearer: 'Person',
      when: 'Wann',
      readers: 'Wer misst',
      pd: 'PD',
      origin: 'Aufgenommen',
      state: 'Stand',
    },
    sortBy: 'Sortieren nach',
    ascending: 'Aufsteigend',
    descending: 'Absteigend',
    turnOrder: 'Reihenfolge umkehren',

    noName: 'Ohne Namen',
    openNow: 'jetzt auf dem Messblatt',
    when: (day, time) => `${day}, ${time}`,
    changed: (when) => `geändert ${when}`,
    pd: (typed) => `${typed} mm`,
    desk: 'Am Arbeitsplatz',
    distant: 'Aus der Ferne, ohne Aufsicht',
    state: {
      misfits: things,
      disagrees: (count) => (count === 1 ? 'Kamera widerspricht einmal' : `Kamera widerspricht ${count}-mal`),
      open: (confirmed, written) => `Offen: ${confirmed} von ${written} bestätigt`,
      confirmed: (count) => (count === 1 ? 'Der eine Messwert ist bestätigt' : `Alle ${count} bestätigt`),
      empty: 'Nichts geschrieben',
    },
    showMore: (count) => `${count} weitere zeigen`,

    select: (wearer, when) => `${wearer} auswählen, ${when}`,
    selectAll: (count) => (count === 1 ? 'Die gezeigte Sitzung auswählen' : `Alle ${count} gezeigten auswählen`),
    selected: (count) => `${counted(count, 'Sitzung', 'Sitzungen')} ausgewählt`,
    selection: 'Was ausgewählt ist',
    handOn: 'Weitergeben',
    remove: 'Löschen',
    letGo: 'Keine auswählen',

    unreadable: (count) =>
      count === 1
        ? 'Eine aufbewahrte Sitzung ist nicht mehr lesbar. Die anderen bleiben unberührt.'
        : `${count} aufbewahrte Sitzungen sind nicht mehr lesbar. Die anderen bleiben unberührt.`,
    saveUnreadable: 'Was übrig ist, als Datei speichern',
    unreadableSaved:
      'Was übrig ist, wurde dem Browser als Datei übergeben. Sie können es denen zeigen, die Glabella betreuen.',
    removeUnreadable: 'Nicht Lesbares löschen',
    unreadableStem: 'glabella-nicht-lesbar',

    removal: {
      heading: (count) => (count === 1 ? 'Diese Sitzung löschen?' : `Diese ${count} Sitzungen löschen?`),
      unreadableHeading: 'Nicht Lesbares löschen?',
      cancel: 'Behalten',
      what: 'Das geht endgültig verloren und lässt sich nicht zurückholen:',
      goes: [
        'alle Messwerte, Bemerkungen und die Verordnung',
        'die Historie aller Einträge',
        'die Werte der Kamera und aufbewahrte Bilder',
      ],
      stays: 'Früher weitergegebene Dateien bleiben, wo sie sind.',
      exportFirst: 'Zuerst weitergeben',
      andMore: (count) => (count === 1 ? 'und 1 weitere' : `und ${count} weitere`),
      now: (count) => (count === 1 ? 'Endgültig löschen' : `${count} endgültig löschen`),
      done: (count) => (count === 1 ? 'Die Sitzung wurde gelöscht.' : `${count} Sitzungen wurden gelöscht.`),
      unreadableDone: 'Was nicht lesbar war, wurde gelöscht.',
    },
  },

  shortcut: {
    heading: 'Tasten',
    close: 'Schließen',
    intro: 'Alles ist auch mit der Tabulatortaste zu erreichen. Diese Tasten sind kürzer.',
    groups: {
      anywhere: 'Überall',
      readings: 'In einem Messwert',
      search: 'In der Suche nach einem Maß',
      prescription: 'In der Verordnung',
      picture: 'Auf einem Punkt im Bild',
      sessions: 'In der Liste der Sitzungen',
      plots: 'In den Zeichnungen zu Messmitteln und Messenden',
      dialogs: 'In einem Dialog',
    },
    does: {
      list: 'Diese Tasten zeigen',
      undo: 'Den letzten Schritt rückgängig machen',
      redo: 'Ihn wiederholen',
      search: 'Zu einem Maß nach seinem Namen gehen',
      nextReading: 'Eingeben und weiter zum nächsten',
      previousReading: 'Eingeben und zurück zum vorigen',
      rowBelow: 'Eingeben und in die Zeile darunter',
      rowAbove: 'Eingeben und in die Zeile darüber',
      nextFound: 'Nächster Treffer',
      previousFound: 'Voriger Treffer',
      goToFound: 'Zum markierten Treffer gehen',
      leaveSearch: 'Die Suche verlassen',
      nextPlace: 'Nächstes Feld',
      previousPlace: 'Voriges Feld',
      movePoint: 'Ihn um 1 Pixel verschieben',
      movePointFinely: 'Ihn um 0,1 Pixel verschieben',
      intoSessions: 'Von der Suche in die Liste',
      nextSession: 'Nächste Sitzung',
      previousSession: 'Vorige Sitzung',
      firstSession: 'Erste Sitzung',
      lastSession: 'Letzte Sitzung',
      nextDifference: 'Nächster Messwert nach dem Tag',
      previousDifference: 'Voriger Messwert',
      tenDifferencesOn: 'Zehn Messwerte weiter',
      tenDifferencesBack: 'Zehn Messwerte zurück',
      firstDifference: 'Erster Messwert',
      lastDifference: 'Letzter Messwert',
      openDifference: 'Seine Sitzung öffnen',
      closeDialog: 'Den Dialog schließen',
    },
    keys: {
      command: 'Strg',
      shift: 'Umschalt',
      enter: 'Eingabe',
      escape: 'Esc',
      home: 'Pos1',
      end: 'Ende',
      pageup: 'Bild auf',
      pagedown: 'Bild ab',
      arrowup: 'Pfeil nach oben',
      arrowdown: 'Pfeil nach unten',
      arrowleft: 'Pfeil nach links',
      arrowright: 'Pfeil nach rechts',
    },
    or: 'oder',
    apple: 'Auf einer Apple-Tastatur tritt Command an die Stelle von Strg.',
    undoNote:
      'Was in ein Feld getippt wird, ist ein Schritt, bis Sie das Feld verlassen. Bis zu 200 Schritte bleiben erhalten, solange die Sitzung geöffnet ist; gespeichert wird davon nichts. Eingegebene Messwerte werden nie zurückgenommen: Was durch Rückgängigmachen wiederkommt, wird noch einmal eingegeben, und der andere Wert bleibt auf dem Messblatt stehen.',
    undoNot:
      'Nicht rückgängig gemacht werden Einstellungen des Betriebs und dieses Geräts und was es verlassen hat, etwa gespeicherte Dateien.',
    single: 'Einzelne Zeichen als Tasten gelten lassen',
    singleNote:
      'Schalten Sie das aus, wenn Sie diktieren: Gesprochenes würde sie auslösen. F1 zeigt diese Liste trotzdem.',
  },
  undo: {
    undo: 'Rückgängig',
    redo: 'Wiederholen',
    group: 'Rückgängig machen und wiederholen',
    nothing: {
      undo: 'Rückgängig: nichts rückgängig zu machen',
      redo: 'Wiederholen: nichts zu wiederholen',
    },
    undoes: (act) => `Rückgängig: ${act}`,
    redoes: (act) => `Wiederholen: ${act}`,
    undone: (act) => `Rückgängig gemacht: ${act}.`,
    redone: (act) => `Wiederholt: ${act}.`,
    reading: (name, text) => `${name} ${text}`,
    cleared: (name) => `${name} geleert`,
    restoration: (names) => `Korrektur von ${names}`,
    readerChosen: { first: 'erste Messung geöffnet', second: 'zweite Messung geöffnet' },
    readerNamed: { first: 'Name zur ersten Messung', second: 'Name zur zweiten Messung' },
    confirmed: (name) => `Bestätigung: ${name}`,
    confirmedMany: (count) => `Bestätigung von ${counted(count, 'Messwert', 'Messwerten')}`,
    withdrawn: (name) => `Rücknahme der Bestätigung: ${name}`,
    withdrawnMany: (count) => `Rücknahme von ${counted(count, 'Bestätigung', 'Bestätigungen')}`,
    note: {
      wearer: 'Name oder Nummer der Person',
      light: 'Licht für Pupillendurchmesser',
      remark: 'Bemerkung',
      squint: 'Schielen',
    },
    lensKind: 'Art der Gläser',
    gauge: (name) => `Messmittel für ${name}`,
    gaze: 'Blickrichtung',
    shownAlone: 'Schätzwerte vor jeder Messung gezeigt',
    covered: 'Schätzwerte wieder verdeckt',
    picture: 'Bild',
    sweep: 'Bildfolge',
    putAway: 'Bild weggelegt',
    cornersBegun: 'Setzen der Ecken begonnen',
    cornersPlaced: 'Ecken gesetzt',
    moved: (handle) => `${handle} verschoben`,
    reset: 'auf Gefundenes zurückgesetzt',
    frameOut: (number) => `Einzelbild ${number} ausgelassen`,
    frameIn: (number) => `Einzelbild ${number} wieder verwendet`,
  },
  settings: {
    heading: 'Einstellungen',
    close: 'Schließen',
    reading: 'Messen',
    covered: 'Den Wert der Kamera verdeckt halten, bis der Messwert von Hand in seiner Zeile steht',
    coveredNote: 'Zwei Messungen sind nur unabhängig, wenn die zweite die erste nicht kennt.',
    workingDistance: 'Arbeitsentfernung für die Nah-PD, mm',
    workingDistanceNote: 'Von der Brillenebene bis zu dem, was angesehen wird.',
    card: 'Die Karte',
    bought: 'Eine gekaufte Karte der Größe ID-1 (Bank-, Gesundheits- oder Kundenkarte)',
    printed: 'Die gedruckte Markerkarte',
    checkLength: 'Gemessene Länge der 150-mm-Linie auf dem Blatt der Markerkarte, mm',
    checkLengthNote:
      'Drucker skalieren, ohne es zu sagen. Messen Sie die Linie mit einem guten Lineal und geben Sie ein, was es zeigt.',
    scaled: (percent) => `Dieser Druck hat ${percent} der wahren Größe; die Schätzwerte berücksichtigen das.`,
    trueSize: 'Dieser Druck ist maßhaltig.',
    unchecked: 'Noch nicht gemessen: Der Druck gilt als maßhaltig.',
    picture: 'Das Bild',
    advanced: 'Erweitert: ein anderes Paket für Gesichtspunkte',
    bundleNote:
      'Glabella bringt eigene Gesichtspunkte mit. Wenn Sie das Face-Landmarker-Paket des Herausgebers haben (eine .task-Datei), lässt es sich stattdessen nutzen. Es wird nur auf diesem Gerät gelesen.',
    bundle: 'Paket wählen',
    bundleLoading: 'Das Paket wird gelesen.',
    bundleUsed: (name) => `In Gebrauch ab dem nächsten Bild: ${name}.`,
    bundleBack: 'Wieder die eingebauten Gesichtspunkte nutzen',
    builtIn: 'Die eingebauten Gesichtspunkte sind in Gebrauch.',
  },

  source: { cited: (source) => SOURCES[source] ?? source },

  standard: {
    offered: (name, edition) => `${name} (${edition})`,
    allFromMemory: (offered) => `${offered}, Werte aus dem Gedächtnis`,
    progressiveFromMemory: (offered) => `${offered}, für Gleitsichtgläser aus dem Gedächtnis`,
  },

  wearer: {
    title: 'Erste Schätzung für Ihre Brille',
    step: (number, all) => `Schritt ${number} von ${all}`,
    back: 'Zurück',
    more: 'Mehr über diese Seite',
    readAloud: 'Vorlesen',

    welcome: {
      heading: (practice) => `${who(practice)} bittet um eine erste Schätzung`,
      what: 'Mit der Kamera Ihres Telefons und einer einfachen Karte schätzt diese Seite, wie weit Ihre Augen auseinanderstehen. Es dauert etwa fünf Minuten.',
      points: (practice) => [
        'Die Bilder werden auf Ihrem Telefon ausgewertet. Von selbst verlassen sie es nicht.',
        `Am Ende gibt es eine verschlüsselte Datei. Nur ${who(practice)} kann sie öffnen, und Sie senden sie selbst.`,
        'Sonst verlässt nichts Ihr Telefon, und nichts wird darauf gespeichert.',
        'Es ist eine Schätzung, keine Messung. Ihr Optiker misst von Hand, bevor Gläser gefertigt werden.',
      ],
      pictures: 'Sie werden gefragt, ob zwei Bildausschnitte mitgehen dürfen. Sie können Nein sagen.',
      expires: (date) => `Die Einladung gilt bis ${date}.`,
      loads: (megabytes) => `Dafür werden etwa ${megabytes} MB geladen. Am besten über WLAN.`,
      begin: 'Beginnen',
    },

    steps: {
      card: {
        heading: 'Suchen Sie eine Karte',
        points: [
          'Jede Karte in der Größe einer Bankkarte genügt: ein Bibliotheksausweis, eine Kundenkarte.',
          'Sie muss fest und flach sein.',
          'Halten Sie Nummern und Namen privat: Die Seite ohne sie zeigt zur Kamera. Oder verdecken Sie sie mit Papier.',
        ],
        caution: '',
        done: 'Ich habe eine Karte',
        cannot: '',
      },
      printedCard: {
        heading: 'Holen Sie die gedruckte Karte',
        points: [
          'Nehmen Sie die gedruckte Karte, die Ihr Optiker Ihnen gegeben hat.',
          'Sie muss flach sein, nicht gefaltet.',
          'Das gedruckte Muster zeigt zur Kamera.',
        ],
        caution: '',
        done: 'Ich habe die Karte',
        cannot: '',
      },
      face: {
        heading: 'Machen Sie Ihr Gesicht frei',
        points: [
          'Nehmen Sie die Brille ab. Kontaktlinsen dürfen bleiben.',
          'Halten Sie Haare von Stirn und Augen fern.',
        ],
        caution: '',
        done: 'Meine Brille ist ab',
        cannot: 'Ich behalte die Brille auf',
      },
      light: {
        heading: 'Suchen Sie gutes Licht',
        points: [
          'Setzen Sie sich bei Tag vor ein Fenster. Ein heller Raum genügt auch.',
          'Das Licht kommt von vorn. Hinter Ihnen ist kein helles Fenster.',
        ],
        caution: 'Blicken Sie nie in die Sonne oder in eine Lampe.',
        done: 'Das Licht ist gut',
        cannot: 'Ich habe kein solches Licht',
      },
      distance: {
        heading: 'Stellen Sie das Telefon auf',
        points: [
          'Lehnen Sie das Telefon hochkant an etwas Festes, so hoch wie Ihre Augen.',
          'Setzen Sie sich eine halbe bis eine ganze Armlänge entfernt.',
          'Nichts zum Anlehnen da? Halten Sie es in einer Hand, so hoch wie Ihre Augen.',
        ],
        caution: '',
        done: 'Das Telefon steht bereit',
        cannot: '',
      },
      hold: {
        heading: 'Halten Sie die Karte an die Stirn',
        points: [
          'Legen Sie sie flach an die Stirn, die lange Seite waagerecht.',
          'Halten Sie sie an einer kurzen Seite mit zwei Fingerspitzen. Alle vier Kanten sind zu sehen.',
          'Haare im Weg? Halten Sie sie flach über oder unter den Mund.',
        ],
        caution: 'Halten Sie die Kanten der Karte von Ihren Augen fern.',
        done: 'Sie liegt flach',
        cannot: 'Sie liegt nicht flach',
      },
      gaze: {
        heading: 'Blicken Sie in die Linse',
        points: [
          'Blicken Sie auf die kleine Linse am Rand des Bildschirms, nicht auf Ihr eigenes Bild.',
          'Sie werden den Kopf langsam drehen: nach rechts, nach links, dann etwas näher und zurück. Die Seite sagt Ihnen, wann.',
          'Ihre Augen bleiben die ganze Zeit auf der Linse. Karte und Kopf bewegen sich wie eins.',
        ],
        caution: '',
        done: 'Kamera öffnen',
        cannot: '',
        permission:
          'Ihr Browser wird nach der Kamera fragen. Bitte erlauben Sie sie: Die Bilder bleiben auf Ihrem Telefon.',
      },
    },

    camera: {
      heading: 'Nehmen Sie die Bilder auf',
      opening: 'Die Kamera wird geöffnet. Bitte erlauben Sie sie, wenn Ihr Browser fragt.',
      ready: 'Halten Sie die Karte an die Stirn, blicken Sie in die Linse, und drücken Sie „Start“.',
      start: 'Start',
      stop: 'Anhalten',
      goOn: 'Weiter',
      again: 'Noch einmal versuchen',
      useThese: 'Mit dem Vorhandenen weiter',
      startsIn: (seconds) => `Es beginnt in ${seconds}`,
      firstFrame: 'Halten Sie still. Gleich beginnt es.',
      loading: (percent) => `Wird geladen: ${percent}. Bitte warten.`,
      loadingAll: 'Wird geladen. Bitte warten.',
      steps: {
        hold: 'Halten Sie still und blicken Sie in die Linse.',
        'turn-R': 'Drehen Sie den Kopf langsam nach rechts.',
        'turn-L': 'Drehen Sie den Kopf langsam nach links.',
        'to-middle': 'Langsam zurück zur Mitte.',
        nearer: 'Kommen Sie etwas näher.',
        farther: 'Lehnen Sie sich etwas zurück.',
        back: 'Zurück zum Anfang.',
      },
      working: 'Sie können ausruhen. Die Bilder werden ausgewertet.',
      measuring: 'Sie können ausruhen. Die Schätzung wird errechnet.',
      short: 'Noch nicht genug. Halten Sie die Karte wie zuvor und drücken Sie „Weiter“.',
      gaps: {
        'turned-R': 'Drehen Sie den Kopf etwas weiter nach rechts.',
        'turned-L': 'Drehen Sie den Kopf etwas weiter nach links.',
        distance: 'Kommen Sie etwas näher, dann lehnen Sie sich zurück.',
        frames: 'Machen Sie es langsam, damit es genug Bilder gibt.',
      },
      looked: (done, all) => `${done} von ${counted(all, 'Bild', 'Bildern')} ausgewertet`,
      mirrored: 'Sie sehen sich wie in einem Spiegel.',
    },

    hints: {
      'no-face': 'Ihr Gesicht ist nicht zu sehen. Kommen Sie in die Mitte des Bildes.',
      'several-faces': 'Ein weiteres Gesicht ist im Bild. Bitte seien Sie allein im Bild.',
      'no-card': 'Die Karte ist nicht zu sehen. Halten Sie ihre vier Kanten frei.',
      'several-cards': 'Es ist mehr als eine Karte da. Legen Sie die anderen weg.',
      'card-not-flat': 'Die Karte ist gebogen, oder ein Finger verdeckt eine Ecke.',
      'card-tilted': 'Die Karte steht schräg. Legen Sie sie flach an die Stirn.',
      'head-turned': 'Ihr Kopf ist zu weit gedreht. Blicken Sie zur Kamera.',
      'eyes-closed': 'Öffnen Sie bitte die Augen weit.',
      'iris-not-found': 'Ihre Augen sind nicht klar zu sehen. Wenden Sie sich zum Licht.',
      blurred: 'Das Bild ist unscharf. Bewegen Sie sich langsamer.',
      'too-dark': 'Es ist zu dunkel. Wenden Sie das Gesicht zum Fenster.',
      implausible: 'Die Karte scheint eine andere Größe zu haben. Nehmen Sie eine so groß wie eine Bankkarte.',
      'too-far': 'Kommen Sie näher zur Kamera.',
      'picture-unsupported': UNUSABLE,
      'picture-broken': UNUSABLE,
      'picture-too-large': UNUSABLE,
      'video-unsupported': UNUSABLE,
      'video-broken': UNUSABLE,
      'camera-refused': NO_CAMERA_PICTURE,
      'camera-missing': NO_CAMERA_PICTURE,
      'camera-busy': NO_CAMERA_PICTURE,
      'camera-unplugged': NO_CAMERA_PICTURE,
      'camera-silent': NO_CAMERA_PICTURE,
      'camera-unsupported': NO_CAMERA_PICTURE,
      'model-not-loadable': SOMETHING_MISSING,
      'vision-not-loadable': SOMETHING_MISSING,
      'vision-stopped': 'Dieses Bild konnte nicht ausgewertet werden.',
    },

    failure: {
      'too-few-frames': {
        what: 'Zu wenige Bilder waren brauchbar.',
        next: 'Versuchen Sie es noch einmal: langsam, die ganze Karte und beide Augen im Bild, Licht von vorn.',
      },
      'card-not-still': {
        what: 'Die Karte blieb nicht an ihrer Stelle.',
        next: 'Versuchen Sie es noch einmal. Halten Sie sie fest, mit einem Finger derselben Hand am Kopf.',
      },
      'frames-of-different-size': {
        what: 'Das Telefon wurde zwischendurch gedreht.',
        next: 'Lassen Sie es, wie es steht, und versuchen Sie es noch einmal.',
      },
      'no-face': {
        what: 'Ihr Gesicht wurde nicht gefunden.',
        next: 'Setzen Sie sich so, dass Ihr ganzes Gesicht im Bild ist, mit Licht von vorn, und versuchen Sie es noch einmal.',
      },
      'several-faces': {
        what: 'Mehr als ein Gesicht war im Bild.',
        next: 'Seien Sie allein im Bild. Achten Sie auf Plakate und Spiegel hinter Ihnen. Versuchen Sie es dann noch einmal.',
      },
      'no-card': {
        what: 'Die Karte wurde nicht gefunden.',
        next: 'Halten Sie sie flach an die Stirn, alle vier Kanten frei. Am besten ist eine Karte, die heller oder dunkler ist als Ihre Haut.',
      },
      'several-cards': {
        what: 'Mehr als eine Karte war im Bild.',
        next: 'Legen Sie die anderen weg und versuchen Sie es noch einmal.',
      },
      'card-not-flat': {
        what: 'Die Karte war gebogen, oder ein Finger verdeckte eine Ecke.',
        next: 'Nehmen Sie eine flache Karte, halten Sie sie an einer kurzen Seite, und versuchen Sie es noch einmal.',
      },
      'card-tilted': {
        what: 'Die Karte stand zu schräg.',
        next: 'Legen Sie sie flach an die Stirn, halten Sie den Kopf aufrecht, und stellen Sie das Telefon so hoch wie Ihre Augen.',
      },
      'head-turned': {
        what: 'Ihr Kopf war zu weit gedreht.',
        next: 'Blicken Sie zur Kamera. Drehen Sie den Kopf nur wenig. Versuchen Sie es dann noch einmal.',
      },
      'eyes-closed': {
        what: 'Ihre Augen waren geschlossen.',
        next: 'Blinzeln Sie einmal, halten Sie sie dann offen, und versuchen Sie es noch einmal.',
      },
      'iris-not-found': {
        what: 'Ihre Augen waren nicht klar zu sehen.',
        next: 'Nehmen Sie die Brille ab, wenden Sie sich zum Licht, kommen Sie etwas näher, und versuchen Sie es noch einmal.',
      },
      blurred: {
        what: 'Die Bilder waren unscharf.',
        next: 'Wischen Sie die Linse des Telefons ab, bewegen Sie sich langsam, suchen Sie mehr Licht, und versuchen Sie es noch einmal.',
      },
      'too-dark': {
        what: 'Es war zu dunkel.',
        next: 'Setzen Sie sich vor ein Fenster und versuchen Sie es noch einmal. Blicken Sie nicht in eine Lampe.',
      },
      implausible: {
        what: 'Die Karte und Ihre Augen passen nicht zusammen.',
        next: 'Nehmen Sie eine andere Karte, so groß wie eine Bankkarte, halten Sie sie flach an die Stirn, und versuchen Sie es noch einmal.',
      },
      'too-far': {
        what: 'Sie waren zu weit weg.',
        next: 'Kommen Sie näher, auf etwa eine halbe Armlänge, und versuchen Sie es noch einmal.',
      },
      'picture-unsupported': { what: 'Die Bilder waren nicht brauchbar.', next: 'Versuchen Sie es noch einmal.' },
      'picture-broken': { what: 'Die Bilder waren nicht brauchbar.', next: 'Versuchen Sie es noch einmal.' },
      'picture-too-large': { what: 'Die Bilder sind zu groß.', next: 'Versuchen Sie es mit einem anderen Telefon.' },
      'video-unsupported': { what: 'Die Bilder waren nicht brauchbar.', next: 'Versuchen Sie es noch einmal.' },
      'video-broken': { what: 'Die Bilder waren nicht brauchbar.', next: 'Versuchen Sie es noch einmal.' },
      'camera-refused': {
        what: 'Die Kamera wurde nicht erlaubt.',
        next: 'Erlauben Sie die Kamera für diese Seite in den Einstellungen Ihres Browsers: meist hinter dem Zeichen neben der Adresse. Versuchen Sie es dann noch einmal.',
      },
      'camera-missing': {
        what: 'Es wurde keine Kamera gefunden.',
        next: 'Öffnen Sie den Link auf einem Telefon, oder auf einem Computer mit Kamera.',
      },
      'camera-busy': {
        what: 'Die Kamera ist in Gebrauch.',
        next: 'Schließen Sie andere Apps, die die Kamera benutzen, etwa Videoanrufe, und versuchen Sie es noch einmal.',
      },
      'camera-unplugged': { what: 'Die Kamera wurde ausgeschaltet.', next: 'Versuchen Sie es noch einmal.' },
      'camera-silent': {
        what: 'Von der Kamera kommt kein Bild.',
        next: 'Schließen Sie andere Apps, die die Kamera benutzen, etwa Videoanrufe. Es geht von selbst weiter, oder versuchen Sie es noch einmal.',
      },
      'camera-unsupported': {
        what: 'Dieser Browser kann die Kamera nicht benutzen.',
        next: 'Öffnen Sie den Link im Browser Ihres Telefons, nicht in einer anderen App.',
      },
      'model-not-loadable': {
        what: 'Was die Bilder auswertet, konnte nicht geladen werden.',
        next: 'Prüfen Sie Ihre Internetverbindung und versuchen Sie es noch einmal.',
      },
      'vision-not-loadable': {
        what: 'Was die Bilder auswertet, konnte nicht geladen werden.',
        next: 'Prüfen Sie Ihre Internetverbindung und versuchen Sie es noch einmal. Bleibt es so, öffnen Sie den Link in einem anderen Browser.',
      },
      'vision-stopped': {
        what: 'Ihr Telefon hat aufgehört, die Bilder auszuwerten.',
        next: 'Schließen Sie andere Apps und versuchen Sie es noch einmal.',
      },
    },
    noNetwork: {
      what: 'Es gibt keine Internetverbindung.',
      next: 'Verbinden Sie sich mit dem Internet und versuchen Sie es noch einmal.',
    },

    refused: {
      heading: 'Dieser Link funktioniert nicht',
      noInvitation: {
        what: 'Das ist keine Einladung.',
        next: 'Öffnen Sie den Link genau so, wie Ihr Optiker ihn gesendet hat.',
      },
      damaged: {
        what: 'Der Link ist nicht vollständig.',
        next: 'Öffnen Sie ihn aus der Nachricht selbst, oder kopieren Sie ihn ganz. Hilft das nicht, bitten Sie Ihren Optiker, ihn noch einmal zu senden.',
      },
      newer: {
        what: 'Die Einladung wurde von einer neueren Version dieser Seite erstellt.',
        next: 'Verbinden Sie sich mit dem Internet und laden Sie die Seite neu.',
      },
      expired: (date, practice): Saying => ({
        what: `Die Einladung galt bis ${date}.`,
        next: `Bitten Sie ${toWhom(practice)} um eine neue.`,
      }),
      unsupported: {
        what: 'Dieser Browser kann nicht, was nötig ist.',
        next: 'Öffnen Sie den Link im Browser Ihres Telefons, in der neuesten Version, und nicht in einer anderen App.',
      },
      insecure: {
        what: 'Diese Seite kam nicht über eine sichere Verbindung und darf darum die Kamera nicht benutzen.',
        next: 'Bitten Sie Ihren Optiker um einen Link, der mit https beginnt.',
      },
      loadAgain: 'Seite neu laden',
    },

    result: {
      heading: 'Die Bilder sind aufgenommen',
      good: 'Sie sind gut genug.',
      better: 'Sie sind brauchbar. Sie könnten besser sein:',
      single: 'Nur ein Bild war brauchbar. Den Kopf langsam zu drehen, würde die Schätzung verbessern.',
      noNumbers: 'Die Zahlen liest Ihr Optiker. Hier werden sie nicht gezeigt.',
      again: 'Noch einmal aufnehmen',
      done: 'Datei erstellen',
      askPictures: 'Dürfen zwei Bilder mitgehen?',
      pictures: 'Ja, zwei Bilder mitsenden',
      picturesNote: 'Wenn Sie das Kästchen leer lassen, wird kein Bild gesendet.',
      consent: (practice, days) =>
        `Ich bin einverstanden, dass zwei Bilder in der verschlüsselten Datei an ${practice === '' ? 'meinen Optiker' : practice} mitgehen, um die Schätzung zu prüfen. Es sind Ausschnitte: die Augen, die Seiten des Kopfes und die Karte, deren Fläche unlesbar gemacht wird. Sie werden spätestens nach ${days === 1 ? '1 Tag' : `${days} Tagen`} gelöscht, und vorher, wann immer ich darum bitte.`,
      noPicture: 'Es ließ sich kein Bild ausschneiden. Die Datei wird ohne Bilder erstellt.',
    },

    advice: {
      'turn-further': 'Drehen Sie den Kopf etwas weiter zu beiden Seiten.',
      'lean-more': 'Kommen Sie etwas näher, und lehnen Sie sich etwas weiter zurück.',
      'more-frames': 'Machen Sie es langsamer, bei gutem Licht.',
      'card-slipped': 'Halten Sie die Karte fest. Sie ist zwischendurch verrutscht.',
      'come-nearer': 'Kommen Sie näher zur Kamera.',
      'eyes-elsewhere': 'Lassen Sie die Augen die ganze Zeit auf der Linse.',
      'card-covered': 'Halten Sie Finger und Haare von den Kanten der Karte fern.',
      'turn-to-camera': 'Blicken Sie gerade zur Kamera.',
      'level-card': 'Halten Sie die lange Seite der Karte waagerecht.',
      'card-on-forehead': 'Halten Sie die Karte an die Stirn, wenn es geht.',
      'check-points': 'Suchen Sie mehr Licht von vorn.',
    },
    conditions: {
      glasses: 'Ohne Brille wird es genauer.',
      light: 'Mehr Licht von vorn macht es genauer.',
      flat: 'Eine flach liegende Karte macht es genauer.',
    },

    file: {
      heading: 'Senden Sie die Datei',
      making: 'Die Datei wird erstellt.',
      ready: (practice) => `Die Datei ist fertig. Nur ${who(practice)} kann sie öffnen.`,
      withPictures: (count) => (count === 1 ? 'Ein Bild ist darin.' : `${count} Bilder sind darin.`),
      withoutPictures: 'Kein Bild ist darin.',
      how: (practice) =>
        `Senden Sie sie an ${toWhom(practice)}: als Anhang, auf demselben Weg, auf dem Sie die Einladung bekommen haben.`,
      share: 'Datei senden',
      save: 'Datei speichern',
      saved: (name) =>
        `Die Datei wurde als ${name} gespeichert. Sie finden sie bei Ihren Downloads. Hängen Sie sie an Ihre Nachricht an.`,
      shared: 'Die Datei wurde übergeben. Vergewissern Sie sich, dass Ihre Nachricht gesendet wurde.',
      shareFailed: {
        what: 'Die Datei ließ sich hier nicht übergeben.',
        next: 'Speichern Sie sie und hängen Sie sie an Ihre Nachricht an.',
      },
      keepOpen: 'Wenn Sie diese Seite schließen, bevor die Datei gesendet oder gespeichert ist, ist sie weg.',
      over: 'Sie können diese Seite jetzt schließen. Sie behält nichts auf Ihrem Telefon.',
      shareTitle: 'Antwort an meinen Optiker',
      failed: {
        notLoadable: {
          what: 'Was die Datei verschlüsselt, konnte nicht geladen werden.',
          next: 'Prüfen Sie Ihre Internetverbindung und versuchen Sie es noch einmal.',
        },
        unsupported: {
          what: 'Dieser Browser kann die Datei nicht verschlüsseln.',
          next: 'Öffnen Sie den Link im Browser Ihres Telefons, in der neuesten Version, und beginnen Sie von vorn.',
        },
        noRecipient: {
          what: 'Die Einladung hat keinen Schlüssel, der funktioniert.',
          next: 'Bitten Sie Ihren Optiker um eine neue Einladung.',
        },
      },
      again: 'Noch einmal versuchen',
    },

    crash: {
      heading: 'Etwas ist schiefgegangen',
      what: 'Das hätte nicht geschehen dürfen. Nichts wurde gesendet.',
      again: 'Von vorn beginnen',
    },
  },

  boardFailure: {
    noBoard: { what: 'Das Kamerablatt wurde nicht gefunden.', next: HOLD_SHEET },
    littleOfBoard: (found, needed): Saying => ({
      what: `Vom Kamerablatt wurde zu wenig gefunden: ${counted(found, 'Ecke', 'Ecken')}, nötig sind ${needed}.`,
      next: HOLD_SHEET,
    }),
    leftOut: 'ausgelassen: das Blatt wurde nicht gefunden',
    tooFewViews: (views, needed): Saying => ({
      what: `${counted(views, 'brauchbare Ansicht ist', 'brauchbare Ansichten sind')} zu wenig: Ein Profil braucht ${needed}.`,
      next: 'Nehmen Sie weitere auf oder fügen Sie welche hinzu, mit dem Blatt an anderen Stellen und in anderen Neigungen.',
    }),
    differentSizes: {
      what: 'Die Bilder haben verschiedene Größen, stammen also nicht von einer Kamera mit einer Auflösung.',
      next: 'Wählen Sie nur Bilder einer Größe, unbeschnitten.',
    },
    tooAlike: {
      what: 'Alle Ansichten sind zu ähnlich, um die Linse daraus zu erkennen.',
      next: 'Kippen Sie das Blatt nach allen Seiten, und halten Sie es näher und weiter weg.',
    },
    misfit: (rmsPx, limitPx): Saying => ({
      what: `Die Ecken passen schlecht: Sie weichen um ${rmsPx} Pixel ab, die Grenze ist ${limitPx}. Das Blatt ist gebogen, oder die Bilder stammen von mehr als einer Kamera oder Zoomstufe.`,
      next: 'Nehmen Sie Bilder einer Kamera mit einem Zoom, das Blatt auf etwas Steifem und Flachem befestigt. Beginnen Sie dann von vorn.',
    }),
  },

  profileWeakness: {
    fewViews: (views, wanted) => `Nur ${counted(views, 'Ansicht', 'Ansichten')}: ${wanted} oder mehr sind besser.`,
    littleCoverage: (share, wanted) =>
      `Das Blatt war auf ${share} des Bildes zu sehen; gewünscht sind ${wanted}: Halten Sie es überall ins Bild.`,
    corners: {
      'left-top': 'oben links',
      'right-top': 'oben rechts',
      'right-bottom': 'unten rechts',
      'left-bottom': 'unten links',
    },
    cornersUncovered: (corners) =>
      corners.length === 1
        ? `In der Ecke ${list(corners)} ist die Linse nur geraten: Halten Sie das Blatt dorthin.`
        : `In den Ecken ${list(corners)} ist die Linse nur geraten: Halten Sie das Blatt dorthin.`,
    littleTilt: {
      across: (degrees, wanted) =>
        `Zu wenig gekippt (${degrees}° von ${wanted}°): Halten Sie das Blatt mit der linken oder rechten Seite näher, dann mit der anderen.`,
      down: (degrees, wanted) =>
        `Zu wenig gekippt (${degrees}° von ${wanted}°): Halten Sie das Blatt mit der oberen oder unteren Seite näher, dann mit der anderen.`,
    },
    oneDistance: 'Alle Ansichten stammen aus etwa einem Abstand: Nehmen Sie nähere und fernere auf.',
    focalLengthDoubtful: (share, wanted) =>
      `Die Brennweite ist nur auf ${share} bekannt (eine Standardabweichung), gewünscht sind ${wanted}: Nehmen Sie mehr Ansichten auf, stärker gekippt.`,
    poorFit: (rmsPx, wantedPx) =>
      `Die Ecken passen schlecht (${rmsPx} px, gewünscht sind weniger als ${wantedPx} px): Das Blatt ist gebogen, oder die Bilder stammen von mehr als einer Kamera oder Zoomstufe.`,
  },

  boardVerdict: {
    'no-sheet': 'Das Blatt ist nicht zu sehen: Zeigen Sie es ganz, ohne Glanz.',
    moving: 'Stillhalten.',
    'nothing-new': 'Diese Ansicht ist schon da: Gehen Sie dorthin, wo der Umriss ist.',
    'worth-taking': 'Aufgenommen.',
    taken: 'Aufgenommen.',
    blurred: 'Unscharf: stillhalten, auf den Fokus warten, mehr Licht.',
  },

  profileFile: {
    noProfile: 'Diese Datei ist kein Kameraprofil. Wählen Sie eine Datei, die hier exportiert wurde.',
    newerVersion: (version, known) =>
      `Dieses Profil wurde von einer späteren Version von Glabella geschrieben (Format ${version}; diese kennt ${known}). Nehmen Sie jene, oder erstellen Sie das Profil neu.`,
    damaged:
      'Diese Profildatei ist beschädigt: Sie endet zu früh oder wurde geändert. Exportieren Sie sie noch einmal dort, woher sie kam.',
    numberDamaged:
      'Diese Profildatei ist beschädigt: Eine Zahl darin kann nicht stimmen. Exportieren Sie sie noch einmal dort, woher sie kam.',
  },

  gaugeProblem: {
    noName: 'Geben Sie ihm einen Namen, den Sie wiedererkennen.',
    noNumber: 'Geben Sie eine Zahl ein.',
    notANumber: (typed) => `„${typed}“ ist keine Zahl: Ziffern mit höchstens einem Komma oder Punkt.`,
    notPositive: (typed) => `„${typed}“ ist kein Schritt: Geben Sie eine Zahl über null ein.`,
    beyondLimit: (typed, limit) => `${typed} ist mehr, als ein Messmittel für Gesichter hat: höchstens ${limit}.`,
    tooLarge: 'Das ist zu groß.',
    servesNothing: 'Wählen Sie mindestens ein Maß.',
    mixedUnits: 'Längen und Winkel zusammen: Machen Sie zwei Messmittel daraus, eines je Skala.',
    inFuture: 'Dieser Tag liegt in der Zukunft: Die letzte Prüfung war heute oder früher.',
  },

  budget: {
    helps: 'Was am meisten helfen würde:',
    legend: 'Balken und Prozente sind Anteile an der Varianz; Längen sind eine Standardabweichung jeder Quelle.',
    smallSources: (count) => (count === 1 ? '1 kleinere Quelle' : `${count} kleinere Quellen zusammen`),
    noRemedy: 'Kein einzelner Schritt würde dies viel sicherer machen.',
    remedies: {
      'take-sweep': (facts) => wouldBring('Eine Bildfolge', facts),
      'make-profile': (facts) => wouldBring('Ein Profil dieser Kamera', facts),
      'come-nearer': (facts) => wouldBring(`Näher heranzugehen, auf etwa ${facts.distanceCm} cm zur Kamera,`, facts),
      'card-on-forehead': (facts) => wouldBring('Die Karte an der Stirn', facts),
      'card-nearer-eyes': (facts) => wouldBring('Die Karte näher an den Augen, knapp über den Brauen,', facts),
      'use-bought-card': (facts) => wouldBring('Eine gekaufte Karte statt der gedruckten', facts),
      'place-lids-by-hand': (facts) => wouldBring('Die Lidmarken unter der Lupe zu setzen', facts),
      'place-midline-by-hand': (facts) => wouldBring('Die Mittellinie unter der Lupe zu setzen', facts),
      'repeat-sweep': (facts) => wouldBring('Eine zweite Bildfolge, und das Mittel beider,', facts),
      'repeat-picture': (facts) => wouldBring('Ein zweites Bild, und das Mittel beider,', facts),
    },
  },

  entryFailure: {
    missing: 'Noch einzugeben.',
    notANumber: (typed) => `„${typed}“ ist keine Zahl: Geben Sie Ziffern mit höchstens einem Komma oder Punkt ein.`,
    signMissing: (value) => `Plus oder minus? Geben Sie +${value} oder −${value} ein.`,
    negativeAdd: 'Eine Addition ist nie negativ.',
    negativePrism: 'Ein Prisma ist nie negativ: Wählen Sie stattdessen die entgegengesetzte Basis.',
    noStep: (value) => `${value} ist keine Vierteldioptrie. Sehen Sie noch einmal auf die Verordnung.`,
    beyond: {
      mm: (value, lowest, highest) => `${value} liegt außerhalb von ${lowest} bis ${highest} mm.`,
      dioptres: (value, lowest, highest) => `${value} liegt außerhalb von ${lowest} bis ${highest} Dioptrien.`,
    },
    axisOfZero: 'Eine Achse von 0 wird als 180 geschrieben.',
    noAxis: (value) => `${value} ist keine Achse: Geben Sie eine ganze Zahl von 1 bis 180 ein.`,
    axisWithoutCylinder: 'Eine Achse, aber kein Zylinder: Eines von beiden ist falsch.',
  },

  prescriptionQuestion: {
    signLost: (right, left) => `R ${right} und L ${left}: Ging ein Vorzeichen verloren?`,
    eyesDiffer: (dioptres) =>
      `Die Augen unterscheiden sich in einer Richtung um ${dioptres} Dioptrien. Steht jedes in seiner Zeile?`,
    cylinderSigns: 'Ein Zylinder ist mit Plus geschrieben, der andere mit Minus. Stammen beide aus einer Verordnung?',
    cylinderLarge: {
      R: (power) => `Der rechte Zylinder von ${power} ist ungewöhnlich groß.`,
      L: (power) => `Der linke Zylinder von ${power} ist ungewöhnlich groß.`,
    },
    additionsDiffer: (right, left) => `Die Additionen unterscheiden sich: R ${right}, L ${left}.`,
    prismLarge: {
      R: (amount) => `Das rechte Prisma von ${amount} ist ungewöhnlich groß.`,
      L: (amount) => `Das linke Prisma von ${amount} ist ungewöhnlich groß.`,
    },
    verticalCancel:
      'Beide Basen zeigen in dieselbe Richtung, oben oder unten: Die Prismen heben sich zwischen den Augen auf.',
    horizontalCancel: 'Eine Basis innen, die andere außen: Die Prismen heben sich zwischen den Augen auf.',
    vertexMissing: (power) => `Bei ${power} zählt der HSA, bei dem bestimmt wurde: Fragen Sie danach.`,
    eighths: (places) => `Achteldioptrien werden selten verordnet: ${list(places)}.`,
  },

  lensCaution: {
    strong: (power, prismOfMm) =>
      `Starke Gläser (${power}): Ein Millimeter sind ${prismOfMm}. Bestellen Sie nach der PD je Auge, Höhen und HSA.`,
    progressive:
      'Gleitsichtgläser: Höhen und PD je Auge nur mit der gewählten Fassung, fertig angepasst, auf dem Gesicht.',
    multifocal: 'Bifokal- und Trifokalgläser: Höhen nur mit der gewählten Fassung, fertig angepasst, auf dem Gesicht.',
    missing: (places) => `Es fehlt noch: ${list(places)}.`,
  },

  costSaying: {
    where: (places, source) => `${places}, ${source}`,
    whereHead: (where) => `${where}:`,
    numbers: (apart, numbers) => `${apart}: ${numbers}`,
    handLessCamera: 'Hand minus Kamera',
    handLessSweep: 'Hand minus Bildfolge',
    readerLess: (other) => (other === '' ? 'diese Messung minus die andere' : `diese Messung minus ${other}`),
    writtenLessMeant: 'geschrieben minus wahrscheinlich gemeint',
    withoutPrism: 'kein Prisma, da diese Gläser in dieser Richtung keine Stärke haben.',
    inPlane: {
      distance: (what) => `${what}.`,
      near: (what) => `in Gläsern für die Nähe ${what}.`,
      segments: (what) => `durch die Nahteile ${what}.`,
    },
    interval: (low, high) => ` (${low} bis ${high})`,
    bases: { in: 'Basis innen', out: 'Basis außen', up: 'Basis oben', down: 'Basis unten' },
    beforeRight: (base) => `${base} vor R`,
    directions: { horizontal: 'waagerecht', vertical: 'senkrecht' },
    prism: ({ amount, way, interval, allowed, rule }) => `${amount} ${way}${interval}, erlaubt ${allowed}${rule}`,
    ruleOfShift: (mm, power) => ` (${mm} mm bei ${power} D)`,
    position: {
      betweenSegments: (amount, interval, allowed) =>
        `der Abstand der Nahteile weicht um ${amount} mm${interval} ab (${allowed} mm erlaubt)`,
      fittingPoint: {
        horizontal: (side, amount, interval, allowed) =>
          `der Anpasspunkt ${side} liegt ${amount} mm${interval} seitlich daneben (${allowed} mm erlaubt)`,
        vertical: (side, amount, interval, allowed) =>
          `der Anpasspunkt ${side} liegt ${amount} mm${interval} in der Höhe daneben (${allowed} mm erlaubt)`,
      },
      segment: {
        horizontal: (side, amount, interval, allowed) =>
          `das Nahteil ${side} liegt ${amount} mm${interval} seitlich daneben (${allowed} mm erlaubt)`,
        vertical: (side, amount, interval, allowed) =>
          `das Nahteil ${side} liegt ${amount} mm${interval} in der Höhe daneben (${allowed} mm erlaubt)`,
      },
    },
    acts: {
      stronger: (side, power, change, interval) => `${side} ${power} wirkt ${change} D stärker${interval}`,
      weaker: (side, power, change, interval) => `${side} ${power} wirkt ${change} D schwächer${interval}`,
    },
    powers: (acts, halfStep) => `${acts}. Eine halbe Stufe der Verordnung sind ${halfStep} D.`,
    noPrism: 'keines',
    through: (eyes) => `Mit dem verordneten Prisma: ${eyes}.`,
    without: {
      'not-through-lenses': (what) => `${what}: keine Wirkung durch die Gläser.`,
      'inset-of-design': (what) => `${what}: Gleitsichtgläser bringen ihr eigenes Nahinset mit.`,
      'tilt-not-worked-out': (what) =>
        `${what}: Eine Neigung verändert starke Gläser ein wenig; das wird hier nicht errechnet.`,
    },
    vertex: {
      asTested: 'wie bestimmt',
      farther: (mm) => `${mm} mm weiter weg als bestimmt`,
      nearer: (mm) => `${mm} mm näher als bestimmt`,
      matters: (where, actsAs, compensated) =>
        `${where}: wirkt wie etwa ${actsAs}; ${compensated} würde wirken wie verordnet`,
      doesNotMatter: (where) => `${where}: spielt keine Rolle`,
    },
  },
};
