import type { Advice } from '../core/camera/failure.js';
import { unreachable } from '../core/result.js';
import type { MeasuringFailure, MeasuringProgress } from '../session/ports.js';

/** What happened and what to do next, as two sentences. */
export interface Saying {
  readonly what: string;
  readonly next: string;
}

const EYES = { R: 'the right eye', L: 'the left eye', both: 'both eyes' } as const;
const OPENED_TYPES: readonly string[] = ['image/jpeg', 'image/png', 'image/webp'];
const PARTS = { landmarks: 'face landmarks', card: 'card finder', sweep: 'measuring of sweeps' } as const;

/** What kept a picture from being measured, and the way out. */
export function failureSaying(failure: MeasuringFailure): Saying {
  switch (failure.kind) {
    case 'no-face':
      return {
        what: 'No face was found in this picture.',
        next: 'Let the wearer face the camera with light from the front, the whole face in the frame, and take another.',
      };
    case 'several-faces':
      return {
        what: `There are ${failure.count} faces in this picture.`,
        next: 'Take the picture with the wearer alone; mind faces on posters and in mirrors.',
      };
    case 'no-card':
      return {
        what: 'A face was found, but no card.',
        next: 'Hold a bank-sized card flat against the forehead, long edge level, all four edges free and in contrast to the skin. Or use the printed marker card.',
      };
    case 'several-cards':
      return { what: 'More than one card was found.', next: 'Put all but one away and take another picture.' };
    case 'card-not-flat':
      return {
        what: `The outline does not fit a flat card: it is off by ${failure.residualPx.toFixed(1)} pixels.`,
        next: 'Use a card that is not bent, keep fingers off its corners, or place the corners by hand.',
      };
    case 'card-tilted':
      return {
        what: `The card leans ${failure.tiltDeg.toFixed(0)}° from the camera; up to ${failure.limitDeg.toFixed(0)}° can be measured.`,
        next: 'Lay the card flat on the skin, hold the head upright, and bring the camera to eye height.',
      };
    case 'head-turned':
      return {
        what: `The face is turned by ${failure.turnDeg.toFixed(0)}°; up to ${failure.limitDeg.toFixed(0)}° can be measured.`,
        next: 'Turn the nose to the camera, level the head, and take another picture.',
      };
    case 'eyes-closed':
      return {
        what: `A lid covers the iris of ${EYES[failure.side]}.`,
        next: 'Ask for open, relaxed eyes, and take another picture after a blink.',
      };
    case 'iris-not-found':
      return {
        what: `The iris edge of ${EYES[failure.side]} could not be made out.`,
        next: 'Take spectacles off, move reflections away from the eyes, add light from the front, or come nearer.',
      };
    case 'blurred':
      return {
        what: `The picture is not sharp: edges are ${failure.edgeWidthPx.toFixed(1)} pixels wide, ${failure.limitPx.toFixed(1)} can be measured.`,
        next: 'Wipe the lens, wait until the camera has focused, hold still, add light.',
      };
    case 'too-dark':
      return {
        what: 'The face is too dark to measure.',
        next: 'Bring light to the face from the front, not from behind; never let the wearer look into a lamp.',
      };
    case 'implausible':
      return {
        what: `Card and eyes do not fit together: the irises would be ${failure.irisMm.toFixed(1)} mm wide, and nearly all are 10.5 to 13.`,
        next: 'Look whether the card’s corners and the rings lie where they should, drag what does not, or take another picture with a card of bank-card size.',
      };
    case 'too-far':
      return {
        what: `The face is too small in the picture: ${failure.pixelsPerMm.toFixed(1)} pixels per millimetre, ${failure.limitPixelsPerMm.toFixed(1)} are needed.`,
        next: 'Come nearer (about 40 to 60 cm with a webcam), or use a picture of higher resolution.',
      };
    case 'picture-unsupported':
      // What calls itself a JPEG and is none is not helped by the advice to make a JPEG of it.
      if (OPENED_TYPES.includes(failure.type)) {
        return {
          what: 'This file is no picture that can be opened, whatever its name says.',
          next: 'Copy it again from where it came, or take another.',
        };
      }
      return {
        what:
          failure.type === ''
            ? 'This file is not a picture that can be opened here.'
            : `Files of the type ${failure.type} cannot be opened here.`,
        next: 'Use a JPEG, PNG or WebP picture; phones can be set to save JPEG, or can share a picture as JPEG.',
      };
    case 'picture-broken':
      return {
        what: 'This picture file is damaged or incomplete.',
        next: 'Copy it again from where it came, or take another.',
      };
    case 'video-unsupported':
      return {
        what: 'This video cannot be played here.',
        next: 'Choose an mp4 or webm video, or several pictures instead.',
      };
    case 'video-broken':
      return { what: 'This video is damaged or empty.', next: 'Choose another file, or record it again.' };
    case 'picture-too-large':
      return {
        what: `This picture has ${failure.megapixels.toFixed(0)} megapixels; up to ${failure.limitMegapixels.toFixed(0)} can be opened.`,
        next: 'Save it smaller (12 megapixels are plenty) or crop it to the head and the card.',
      };
    case 'camera-refused':
      return {
        what: 'The browser was not allowed to use the camera.',
        next: 'Allow the camera for this page in the address bar and try again, or choose a picture file.',
      };
    case 'camera-missing':
      return { what: 'No camera was found.', next: 'Plug one in and try again, or choose a picture file.' };
    case 'camera-busy':
      return {
        what: 'The camera is in use elsewhere.',
        next: 'Close other programs and pages that show its picture, then try again.',
      };
    case 'camera-unplugged':
      return { what: 'The camera was unplugged or switched off.', next: 'Plug it in again, or choose another camera.' };
    case 'camera-unsupported':
      return {
        what: 'This browser cannot use a camera on this page.',
        next: 'Open the page over https or on this computer itself, or choose a picture file.',
      };
    case 'model-not-loadable':
      return {
        what: 'The face landmark model could not be loaded.',
        next: 'Reload the page. If you chose a bundle of your own, go back to the built-in one in the settings.',
      };
    case 'vision-not-loadable':
      return {
        what: `The ${PARTS[failure.part]} could not be loaded; WebAssembly may be switched off.`,
        next: 'Reload the page, or use a current browser with WebAssembly allowed. Hand readings work without it.',
      };
    case 'vision-stopped':
      return {
        what: `The ${PARTS[failure.part]} stopped while it worked on this picture.`,
        next: 'Try the picture again; it starts anew. A smaller picture needs less memory.',
      };
    default:
      return unreachable(failure);
  }
}

const EDGES = { top: 'top', right: 'right', bottom: 'bottom', left: 'left' } as const;
const POINTS = { card: 'the card’s corners', irisR: 'the right iris', irisL: 'the left iris' } as const;

/** What would make the next picture better. */
export function adviceSentence(advice: Advice): string {
  switch (advice.kind) {
    case 'come-nearer':
      return `Come nearer: the face has only ${advice.pixelsPerMm.toFixed(1)} pixels per millimetre.`;
    case 'card-covered':
      return `The card’s ${EDGES[advice.edge]} edge (as seen in the picture) is hard to see: keep fingers and hair off it, and let it stand out from what is behind it.`;
    case 'turn-to-camera':
      return `Turn the nose to the camera: it points ${advice.turnDeg.toFixed(0)}° aside.`;
    case 'level-card':
      return `Hold the card’s long edge level: it leans by ${advice.rollDeg.toFixed(0)}°.`;
    case 'card-on-forehead':
      return 'Hold the card on the forehead if you can: there it is best known how far it lies before the eyes.';
    case 'check-points':
      return `Look at ${POINTS[advice.what]} under the loupe: the edge was hard to see.`;
    default:
      return unreachable(advice);
  }
}

/** What is being done. */
export function progressSentence(progress: MeasuringProgress | null): string {
  if (progress === null) return 'Opening the picture';
  switch (progress.stage) {
    case 'loading-landmarks':
      return 'Loading the face landmarks';
    case 'loading-card':
      return 'Loading the card finder';
    case 'finding-face':
      return 'Looking for the face';
    case 'finding-card':
      return 'Looking for the card and the iris edges';
    default:
      return unreachable(progress.stage);
  }
}
