import type { MeasuringFailure } from '../session/ports.js';
import type { SweepTrouble } from '../session/sweep-frames.js';
import type { Saying } from './saying.js';

function whom(practice: string): string {
  return practice === '' ? 'your optician' : practice;
}

/** The page of a distant wearer: to a layperson with a phone, in plain words. */
export const wearerWords = {
  title: 'First estimate for your glasses',
  step: (number: number, all: number): string => `Step ${number} of ${all}`,
  back: 'Back',
  more: 'More about this page',
  readAloud: 'Read aloud',

  welcome: {
    heading: (practice: string): string =>
      practice === '' ? 'Your optician asks for a first estimate' : `${practice} asks for a first estimate`,
    what: 'With the camera of your phone and a plain card, this page estimates how far apart your eyes are. It takes about five minutes.',
    points: (practice: string): readonly string[] => [
      'The pictures are looked at on your phone. They do not leave it by themselves.',
      `At the end there is one encrypted file. Only ${whom(practice)} can open it, and you send it yourself.`,
      'Nothing else leaves your phone, and nothing is stored on it.',
      'It is an estimate, not a measurement. Your optician measures by hand before any lenses are made.',
    ],
    pictures: 'You will be asked whether two cut-out pictures may go along. You can say no.',
    expires: (date: string): string => `The invitation is good until ${date}.`,
    loads: (megabytes: string): string => `About ${megabytes} MB are loaded for it. Wi-Fi is best.`,
    begin: 'Begin',
  },

  steps: {
    card: {
      heading: 'Find a card',
      points: [
        'Any card the size of a bank card will do: a library card, a customer card.',
        'It must be hard and flat.',
        'Keep numbers and names private: the side without them faces the camera. Or cover them with paper.',
      ],
      caution: '',
      done: 'I have a card',
      cannot: '',
    },
    printedCard: {
      heading: 'Find the printed card',
      points: [
        'Take the printed card that your optician gave you.',
        'It must be flat, not folded.',
        'The printed pattern faces the camera.',
      ],
      caution: '',
      done: 'I have the card',
      cannot: '',
    },
    face: {
      heading: 'Free your face',
      points: ['Take your glasses off. Contact lenses may stay in.', 'Keep hair off your forehead and your eyes.'],
      caution: '',
      done: 'My glasses are off',
      cannot: 'I keep my glasses on',
    },
    light: {
      heading: 'Find good light',
      points: [
        'Sit facing a window, by day. A bright room will do as well.',
        'The light comes from the front. No bright window is behind you.',
      ],
      caution: 'Never look into the sun or into a lamp.',
      done: 'The light is good',
      cannot: 'I have no such light',
    },
    distance: {
      heading: 'Set up the phone',
      points: [
        'Lean the phone upright against something firm, as high as your eyes.',
        'Sit about half an arm’s length to one arm’s length away.',
        'Nothing to lean it on? Hold it in one hand, as high as your eyes.',
      ],
      caution: '',
      done: 'The phone is ready',
      cannot: '',
    },
    hold: {
      heading: 'Hold the card to your forehead',
      points: [
        'Lay it flat on your forehead, with the long side level.',
        'Hold it by one short end, with two fingertips. All four edges can be seen.',
        'Hair in the way? Hold it flat above or under your mouth.',
      ],
      caution: 'Keep the edges of the card away from your eyes.',
      done: 'It lies flat',
      cannot: 'It does not lie flat',
    },
    gaze: {
      heading: 'Look into the lens',
      points: [
        'Look at the small lens at the edge of the screen, not at your own picture.',
        'You will turn your head slowly: to the right, to the left, then a little nearer and back. The page tells you when.',
        'Your eyes stay on the lens all the time. Card and head move as one.',
      ],
      caution: '',
      done: 'Open the camera',
      cannot: '',
      permission: 'Your browser will ask for the camera. Please allow it: the pictures stay on your phone.',
    },
  },

  camera: {
    heading: 'Take the pictures',
    opening: 'Opening the camera. Please allow it when your browser asks.',
    ready: 'Hold the card to your forehead, look into the lens, and press Start.',
    start: 'Start',
    stop: 'Stop',
    goOn: 'Go on',
    again: 'Try again',
    useThese: 'Use what there is',
    startsIn: (seconds: number): string => `Starts in ${seconds}`,
    firstFrame: 'Hold still. It starts in a moment.',
    loading: (percent: string): string => `Loading: ${percent}. Please wait.`,
    loadingAll: 'Loading. Please wait.',
    steps: {
      hold: 'Hold still and look into the lens.',
      'turn-R': 'Turn your head slowly to the right.',
      'turn-L': 'Turn your head slowly to the left.',
      'to-middle': 'Slowly back to the middle.',
      nearer: 'Come a little nearer.',
      farther: 'Lean back a little.',
      back: 'Back to where you were.',
    },
    working: 'You can rest. The pictures are being looked at.',
    measuring: 'You can rest. The estimate is being worked out.',
    short: 'Not enough yet. Hold the card as before and press Go on.',
    gaps: {
      'turned-R': 'Turn your head a little more to the right.',
      'turned-L': 'Turn your head a little more to the left.',
      distance: 'Come a little nearer, then lean back.',
      frames: 'Go slowly, so that there are enough pictures.',
    },
    looked: (done: number, all: number): string => `${done} of ${all} pictures looked at`,
    mirrored: 'You see yourself as in a mirror.',
  },

  /** said while the camera runs, where the last pictures could not be used */
  hints: {
    'no-face': 'Your face cannot be seen. Come into the middle of the picture.',
    'several-faces': 'There is another face in the picture. Please be alone in it.',
    'no-card': 'The card cannot be seen. Keep its four edges free.',
    'several-cards': 'There is more than one card. Put the others away.',
    'card-not-flat': 'The card is bent, or a finger covers a corner.',
    'card-tilted': 'The card leans. Lay it flat on your forehead.',
    'head-turned': 'Your head is turned too far. Look to the camera.',
    'eyes-closed': 'Open your eyes wide, please.',
    'iris-not-found': 'Your eyes cannot be seen clearly. Turn to the light.',
    blurred: 'The picture is blurred. Move more slowly.',
    'too-dark': 'It is too dark. Turn your face to the window.',
    implausible: 'The card seems to have another size. Use one of bank-card size.',
    'too-far': 'Come nearer to the camera.',
    'picture-unsupported': 'This picture could not be used.',
    'picture-broken': 'This picture could not be used.',
    'picture-too-large': 'This picture could not be used.',
    'video-unsupported': 'This picture could not be used.',
    'video-broken': 'This picture could not be used.',
    'camera-refused': 'The camera gives no picture.',
    'camera-missing': 'The camera gives no picture.',
    'camera-busy': 'The camera gives no picture.',
    'camera-unplugged': 'The camera gives no picture.',
    'camera-silent': 'The camera gives no picture.',
    'camera-unsupported': 'The camera gives no picture.',
    'model-not-loadable': 'Something could not be loaded.',
    'vision-not-loadable': 'Something could not be loaded.',
    'vision-stopped': 'This picture could not be looked at.',
  } satisfies Record<MeasuringFailure['kind'], string>,

  /** why there is no estimate, and what to do */
  failure: {
    'too-few-frames': {
      what: 'Too few pictures could be used.',
      next: 'Try again, slowly, with the whole card and both eyes in the picture and light from the front.',
    },
    'card-not-still': {
      what: 'The card did not stay in its place.',
      next: 'Try again. Hold it firmly, with a finger of the same hand on your head.',
    },
    'frames-of-different-size': {
      what: 'The phone was turned meanwhile.',
      next: 'Leave it as it stands, and try again.',
    },
    'no-face': {
      what: 'Your face could not be found.',
      next: 'Sit so that your whole face is in the picture, with light from the front, and try again.',
    },
    'several-faces': {
      what: 'There was more than one face in the picture.',
      next: 'Be alone in the picture. Mind posters and mirrors behind you. Then try again.',
    },
    'no-card': {
      what: 'The card could not be found.',
      next: 'Hold it flat on your forehead with all four edges free. A card that is lighter or darker than your skin is best.',
    },
    'several-cards': {
      what: 'There was more than one card in the picture.',
      next: 'Put the others away and try again.',
    },
    'card-not-flat': {
      what: 'The card was bent, or a finger covered a corner.',
      next: 'Take a flat card, hold it by one short end, and try again.',
    },
    'card-tilted': {
      what: 'The card leaned too much.',
      next: 'Lay it flat on your forehead, hold your head upright, and put the phone as high as your eyes.',
    },
    'head-turned': {
      what: 'Your head was turned too far.',
      next: 'Face the camera. When you turn, turn only a little. Then try again.',
    },
    'eyes-closed': {
      what: 'Your eyes were closed.',
      next: 'Blink once, then keep them open, and try again.',
    },
    'iris-not-found': {
      what: 'Your eyes could not be seen clearly.',
      next: 'Take your glasses off, turn to the light, come a little nearer, and try again.',
    },
    blurred: {
      what: 'The pictures were blurred.',
      next: 'Wipe the lens of the phone, move slowly, find more light, and try again.',
    },
    'too-dark': {
      what: 'It was too dark.',
      next: 'Sit facing a window and try again. Do not look into a lamp.',
    },
    implausible: {
      what: 'The card and your eyes do not fit together.',
      next: 'Take another card, one of bank-card size, hold it flat on your forehead, and try again.',
    },
    'too-far': {
      what: 'You were too far away.',
      next: 'Come nearer, to about half an arm’s length, and try again.',
    },
    'picture-unsupported': { what: 'The pictures could not be used.', next: 'Try again.' },
    'picture-broken': { what: 'The pictures could not be used.', next: 'Try again.' },
    'picture-too-large': { what: 'The pictures are too large.', next: 'Try it with another phone.' },
    'video-unsupported': { what: 'The pictures could not be used.', next: 'Try again.' },
    'video-broken': { what: 'The pictures could not be used.', next: 'Try again.' },
    'camera-refused': {
      what: 'The camera was not allowed.',
      next: 'Allow the camera for this page in your browser’s settings: mostly behind the sign beside the address. Then try again.',
    },
    'camera-missing': {
      what: 'No camera was found.',
      next: 'Open the link on a phone, or on a computer with a camera.',
    },
    'camera-busy': {
      what: 'The camera is in use.',
      next: 'Close other apps that use the camera, such as calls, and try again.',
    },
    'camera-unplugged': { what: 'The camera was switched off.', next: 'Try again.' },
    'camera-silent': {
      what: 'The camera gives no picture.',
      next: 'Close other apps that use the camera, such as calls. It goes on by itself, or try again.',
    },
    'camera-unsupported': {
      what: 'This browser cannot use the camera.',
      next: 'Open the link in the browser of your phone, not inside another app.',
    },
    'model-not-loadable': {
      what: 'What looks at the pictures could not be loaded.',
      next: 'Check your internet connection and try again.',
    },
    'vision-not-loadable': {
      what: 'What looks at the pictures could not be loaded.',
      next: 'Check your internet connection and try again. If it stays so, open the link in another browser.',
    },
    'vision-stopped': {
      what: 'Your phone stopped looking at the pictures.',
      next: 'Close other apps and try again.',
    },
  } satisfies Record<MeasuringFailure['kind'] | SweepTrouble['kind'], Saying>,
  noNetwork: {
    what: 'There is no internet connection.',
    next: 'Connect to the internet and try again.',
  },

  /** why the link is no invitation */
  refused: {
    heading: 'This link does not work',
    noInvitation: {
      what: 'This is no invitation.',
      next: 'Open the link exactly as your optician sent it.',
    },
    damaged: {
      what: 'The link is not complete.',
      next: 'Open it from the message itself, or copy all of it. If that does not help, ask your optician to send it again.',
    },
    newer: {
      what: 'The invitation was made by a newer version of this page.',
      next: 'Connect to the internet and load the page again.',
    },
    expired: (date: string, practice: string): Saying => ({
      what: `The invitation was good until ${date}.`,
      next: `Ask ${whom(practice)} for a new one.`,
    }),
    unsupported: {
      what: 'This browser cannot do what is needed.',
      next: 'Open the link in the browser of your phone, in its newest version, and not inside another app.',
    },
    insecure: {
      what: 'This page did not come over a secure connection, and so may not use the camera.',
      next: 'Ask your optician for a link that begins with https.',
    },
    loadAgain: 'Load the page again',
  },

  result: {
    heading: 'The pictures are taken',
    good: 'They are good enough.',
    better: 'They can be used. They could be better:',
    single: 'Only one picture could be used. Turning your head slowly would make the estimate better.',
    noNumbers: 'Your optician reads the numbers. They are not shown here.',
    again: 'Take them again',
    done: 'Make the file',
    askPictures: 'May two pictures go along?',
    pictures: 'Yes, send two pictures along',
    picturesNote: 'If you leave the box empty, no picture is sent.',
    /** kept word for word, with the answer of who ticks it */
    consent: (practice: string, days: number): string =>
      `I agree that two pictures go along in the encrypted file to ${whom(practice)}, to check the estimate. They are cut out: eyes, the sides of the head, and the card, whose face is made unreadable. They are deleted after ${days} days at the latest, and before that whenever I ask for it.`,
    noPicture: 'No picture could be cut out. The file is made without pictures.',
  },

  /** what would make it better, without numbers */
  advice: {
    'turn-further': 'Turn your head a little further to both sides.',
    'lean-more': 'Come a little nearer, and lean back a little more.',
    'more-frames': 'Go more slowly, in good light.',
    'card-slipped': 'Hold the card firmly. It slipped meanwhile.',
    'come-nearer': 'Come nearer to the camera.',
    'eyes-elsewhere': 'Keep your eyes on the lens all the time.',
    'card-covered': 'Keep fingers and hair off the edges of the card.',
    'turn-to-camera': 'Face the camera.',
    'level-card': 'Hold the long side of the card level.',
    'card-on-forehead': 'Hold the card on your forehead, if you can.',
    'check-points': 'Find more light from the front.',
  },
  conditions: {
    glasses: 'Without glasses it is more exact.',
    light: 'More light from the front makes it more exact.',
    flat: 'A card that lies flat makes it more exact.',
  },

  file: {
    heading: 'Send the file',
    making: 'Making the file.',
    ready: (practice: string): string => `The file is ready. Only ${whom(practice)} can open it.`,
    withPictures: (count: number): string => (count === 1 ? 'One picture is in it.' : `${count} pictures are in it.`),
    withoutPictures: 'No picture is in it.',
    how: (practice: string): string =>
      `Send it to ${whom(practice)}: as an attachment, in the same way as you got the invitation.`,
    share: 'Send the file',
    save: 'Save the file',
    saved: (name: string): string =>
      `The file was saved as ${name}. You find it in your downloads. Attach it to your message.`,
    shared: 'The file was handed on. Make sure that your message was sent.',
    shareFailed: {
      what: 'The file could not be handed on here.',
      next: 'Save it, and attach it to your message.',
    },
    keepOpen: 'If you close this page before the file is sent or saved, it is gone.',
    over: 'You can close this page now. It keeps nothing on your phone.',
    shareTitle: 'Answer to my optician',
    failed: {
      notLoadable: {
        what: 'What encrypts the file could not be loaded.',
        next: 'Check your internet connection and try again.',
      },
      unsupported: {
        what: 'This browser cannot encrypt the file.',
        next: 'Open the link in the browser of your phone, in its newest version, and begin again.',
      },
      noRecipient: {
        what: 'The invitation has no key that works.',
        next: 'Ask your optician for a new invitation.',
      },
    },
    again: 'Try again',
  },

  crash: {
    heading: 'Something went wrong',
    what: 'This should not have happened. Nothing was sent.',
    again: 'Start again',
  },
};
