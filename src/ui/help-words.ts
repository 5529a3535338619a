/** The words of the help, besides those of the measurements themselves. */
export const helpWords = {
  heading: 'Help',
  close: 'Close',
  contents: 'Contents',
  backToContents: 'All topics',
  search: 'Find a measurement',
  none: 'No measurement is called that.',
  topics: 'In general',
  previous: (name: string): string => `Before: ${name}`,
  next: (name: string): string => `Next: ${name}`,
  neighbours: 'Measurements before and after',
  print: 'Print this page',

  views: {
    front: 'From the front.',
    eye: 'The eyes from the front.',
    nose: 'From the front; the thick line is the nose where a bridge bears on it.',
    side: 'From the wearer’s right side.',
    above: 'From above, the face at the bottom of the picture.',
    section: 'From above, level with the crest of the nose; the face is at the bottom of the picture.',
    behind: 'From behind: here the wearer’s right stands at the right.',
    'frame-front': 'The frame as it is seen on the face, from the front.',
    'frame-above': 'The frame from above, its front at the bottom of the picture.',
    'frame-side': 'A right side alone; its front is at the right of the picture.',
  },
  rightIsDrawn: 'The right side is drawn; the left is taken likewise.',
  key: 'Arrows show what is measured, dashed lines what it is measured from. Not to scale.',

  caution: 'Caution',
  alsoCalled: (names: string): string => `Also called: ${names}.`,
  howTaken: 'How it is taken',
  byTrial: 'It is found by trying: write down each size with loose, fits or tight.',
  signed: 'It can be below zero: the minus sign belongs to the reading.',
  sides: {
    each: 'R and L are taken each on its own, the wearer’s right first.',
    one: 'It is one number for both sides.',
  },
  tolerance: 'Tolerance',
  toleranceIs: (value: string, status: string, source: string): string => `± ${value} (${status}): ${source}.`,
  toleranceNote: 'As far as this, two readings may lie apart before it matters. A practice can set its own.',
  camera: 'What the camera can say of it',
  noCamera: 'Nothing. This is measured by hand alone; its reading is only held against the other readings.',
  cameraAlways: 'It gives its own value from every picture and every sweep, with the doubt beside it.',
  cameraSometimes: {
    pupilDiameter:
      'It gives a value where the pupil stands out from its iris. The light of the picture decides how wide the pupil is.',
    rims: 'It gives a rough value where the card leaves the bridge free. That only points to large mistakes.',
  },
  cameraOfIris: 'It gives a value, which mostly tells whether the scale of the picture is right.',
  cameraErrors: (what: {
    readonly picture: { readonly half: string; readonly most: string };
    readonly sweep: { readonly half: string; readonly most: string };
  }): string =>
    `On rendered heads half of all pictures were within ${what.picture.half} mm of the truth, 95 of 100 within ${what.picture.most} mm. With a sweep it was ${what.sweep.half} and ${what.sweep.most} mm. People differ from rendered heads.`,
  squint: 'With a squint',
  noSquintCamera: 'The camera’s value is then left out, because both eyes never look at the same thing.',

  general: {
    about: {
      heading: 'What Glabella is, and what it is not',
      text: [
        'Glabella is a second reading. You measure by hand; it holds your numbers against each other and against a picture, and says where they do not fit.',
        'It decides nothing and changes no number by itself. What is ordered is what you have confirmed.',
      ],
      cautions: [
        'It is no clinical measurement and replaces none. It says nothing about the health of an eye.',
        'Local rules come first, and whoever is licensed to dispense decides. Children, squints and strong or progressive lenses are measured as your rules and training say.',
        'What looks unusual in an eye, a lid or a pupil is a reason to look again or to refer.',
      ],
    },
    card: {
      heading: 'How the card is held',
      text: [
        'Any card of bank-card size will do, or the printed one. It lies flat against the forehead, its long edge level.',
        'If hair is in the way, it lies above or under the mouth instead. All four edges stay free: one short end is held with two fingertips.',
        'The camera stands at eye height, 40 to 60 cm away. Spectacles come off for the picture.',
        'In a sweep head and card move as one: the card must not slip.',
      ],
      cautions: [
        'The edges of a card are sharp. Keep them off the eyes, and hand the card over flat.',
        'Nobody turns the head further than is comfortable.',
      ],
    },
    light: {
      heading: 'The light',
      text: [
        'Even light from the front is best: a window or a bright wall before the wearer.',
        'A bright window behind the wearer makes the face too dark. Shiny spots on the card hide its edges; tilt the lamp, not the card.',
        'Dark irises need more light from the front until their edges can be seen.',
        'The pupil changes with the light: note the light beside a pupil diameter.',
      ],
      cautions: ['No lamp into the eyes, no flash near the face, and nobody looks into the sun.'],
    },
    gauges: {
      heading: 'Gauges near the eyes',
      text: [
        'Say what you are going to do before you come near the face. Rest your hand on the cheek or the brow, so that it moves with the head.',
        'Clean what touches the skin, before and after.',
        'A gauge whose scale does not begin at zero is written down under Practice: the sheet then does the sum.',
      ],
      cautions: [
        'Keep rules, calipers and gauges away from the eyes. Bring them from below or from the side, never straight towards an eye.',
        'Nothing must touch an open eye or its lashes, and nothing is pressed.',
      ],
    },
    privacy: {
      heading: 'What stays on this device',
      text: [
        'Pictures are measured in this browser. There is no account and no server that receives anything.',
        'Sessions are kept in this browser until you delete them; pictures only if the wearer agrees, and for a limited time.',
        'Nothing leaves the device except the files that you hand on yourself, and what you print.',
        'Who may see and keep a wearer’s data is a matter of your local rules.',
      ],
      cautions: [
        'Whoever uses this browser can see what is kept in it, unless you have set a lock. Lock the device when you leave it.',
      ],
    },
  },
};
