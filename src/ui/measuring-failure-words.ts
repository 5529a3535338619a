import type { Saying } from './saying.js';

const EYES = { R: 'the right eye', L: 'the left eye', both: 'both eyes' };
const PARTS = { landmarks: 'face landmarks', card: 'card finder', sweep: 'measuring of sweeps' };

/** What kept a picture from being measured, and the way out. */
export const measuringFailureWords = {
  'no-face': {
    what: 'No face was found in this picture.',
    next: 'Let the wearer face the camera with light from the front, the whole face in the frame, and take another.',
  },
  'several-faces': (count: number): Saying => ({
    what: `There are ${count} faces in this picture.`,
    next: 'Take the picture with the wearer alone; mind faces on posters and in mirrors.',
  }),
  'no-card': {
    what: 'A face was found, but no card.',
    next: 'Hold a bank-sized card flat against the forehead, long edge level, all four edges free and in contrast to the skin. Or use the printed marker card.',
  },
  'several-cards': { what: 'More than one card was found.', next: 'Put all but one away and take another picture.' },
  'card-not-flat': (offPx: string): Saying => ({
    what: `The outline does not fit a flat card: it is off by ${offPx} pixels.`,
    next: 'Use a card that is not bent, keep fingers off its corners, or place the corners by hand.',
  }),
  'card-tilted': (degrees: string, limit: string): Saying => ({
    what: `The card leans ${degrees}° from the camera; up to ${limit}° can be measured.`,
    next: 'Lay the card flat on the skin, hold the head upright, and bring the camera to eye height.',
  }),
  'head-turned': (degrees: string, limit: string): Saying => ({
    what: `The face is turned by ${degrees}°; up to ${limit}° can be measured.`,
    next: 'Turn the nose to the camera, level the head, and take another picture.',
  }),
  'eyes-closed': (side: 'R' | 'L' | 'both'): Saying => ({
    what: `A lid covers the iris of ${EYES[side]}.`,
    next: 'Ask for open, relaxed eyes, and take another picture after a blink.',
  }),
  'iris-not-found': (side: 'R' | 'L' | 'both'): Saying => ({
    what: `The iris edge of ${EYES[side]} could not be made out.`,
    next: 'Take spectacles off, move reflections away from the eyes, add light from the front, or come nearer.',
  }),
  blurred: (widthPx: string, limitPx: string): Saying => ({
    what: `The picture is not sharp: edges are ${widthPx} pixels wide, ${limitPx} can be measured.`,
    next: 'Wipe the lens, wait until the camera has focused, hold still, add light.',
  }),
  'too-dark': {
    what: 'The face is too dark to measure.',
    next: 'Bring light to the face from the front, not from behind; never let the wearer look into a lamp.',
  },
  implausible: (mm: string): Saying => ({
    what: `Card and eyes do not fit together: the irises would be ${mm} mm wide, and nearly all are 10.5 to 13.`,
    next: 'Look whether the card’s corners and the rings lie where they should, drag what does not, or take another picture with a card of bank-card size.',
  }),
  'too-far': (pixelsPerMm: string, needed: string): Saying => ({
    what: `The face is too small in the picture: ${pixelsPerMm} pixels per millimetre, ${needed} are needed.`,
    next: 'Come nearer (about 40 to 60 cm with a webcam), or use a picture of higher resolution.',
  }),
  'picture-disguised': {
    what: 'This file is no picture that can be opened, whatever its name says.',
    next: 'Copy it again from where it came, or take another.',
  },
  'picture-unsupported': (type: string): Saying => ({
    what:
      type === ''
        ? 'This file is not a picture that can be opened here.'
        : `Files of the type ${type} cannot be opened here.`,
    next: 'Use a JPEG, PNG or WebP picture; phones can be set to save JPEG, or can share a picture as JPEG.',
  }),
  'picture-broken': {
    what: 'This picture file is damaged or incomplete.',
    next: 'Copy it again from where it came, or take another.',
  },
  'video-unsupported': {
    what: 'This video cannot be played here.',
    next: 'Choose an mp4 or webm video, or several pictures instead.',
  },
  'video-broken': { what: 'This video is damaged or empty.', next: 'Choose another file, or record it again.' },
  'picture-too-large': (megapixels: string, limit: string): Saying => ({
    what: `This picture has ${megapixels} megapixels; up to ${limit} can be opened.`,
    next: 'Save it smaller (12 megapixels are plenty) or crop it to the head and the card.',
  }),
  'camera-refused': {
    what: 'The browser was not allowed to use the camera.',
    next: 'Allow the camera for this page in the address bar and try again, or choose a picture file.',
  },
  'camera-missing': { what: 'No camera was found.', next: 'Plug one in and try again, or choose a picture file.' },
  'camera-busy': {
    what: 'The camera is in use elsewhere.',
    next: 'Close other programs and pages that show its picture, such as video calls, then try again.',
  },
  'camera-unplugged': {
    what: 'The camera was unplugged or switched off.',
    next: 'Plug it in again, or choose another camera.',
  },
  'camera-silent': {
    what: 'No picture comes from the camera.',
    next: 'Open its slide or switch it on, and close other programs and pages that may hold it, such as video calls.',
  },
  'camera-unsupported': {
    what: 'This browser cannot use a camera on this page.',
    next: 'Open the page over https or on this computer itself, or choose a picture file.',
  },
  'model-not-loadable': {
    what: 'The face landmark model could not be loaded.',
    next: 'Reload the page. If you chose a bundle of your own, go back to the built-in one in the settings.',
  },
  'vision-not-loadable': (part: 'landmarks' | 'card' | 'sweep'): Saying => ({
    what: `The ${PARTS[part]} could not be loaded; WebAssembly may be switched off.`,
    next: 'Reload the page, or use a current browser with WebAssembly allowed. Hand readings work without it.',
  }),
  'vision-stopped': (part: 'landmarks' | 'card' | 'sweep'): Saying => ({
    what: `The ${PARTS[part]} stopped while it worked on this picture.`,
    next: 'Try the picture again; it starts anew. A smaller picture needs less memory.',
  }),
};
