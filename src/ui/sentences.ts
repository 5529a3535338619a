import type { Advice } from '../core/camera/failure.js';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { MeasurementUnit, ReadingName } from '../core/catalogue/measurement.js';
import type { SourceStatus } from '../core/catalogue/source-status.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Inconsistency } from '../core/crosscheck/inconsistency.js';
import type { Slip, SlipKind } from '../core/crosscheck/slip.js';
import type { SweepAdvice } from '../core/estimate/sweep.js';
import type { BudgetSource } from '../core/estimate/estimate.js';
import type { PrintCheckFailure } from '../core/reading/print-check.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import { unreachable } from '../core/result.js';
import type { LengthFailure } from '../session/measuring-settings.js';
import type { MeasuringFailure, MeasuringProgress } from '../session/ports.js';
import type { SweepGap } from '../session/sweep-coverage.js';
import type { FramesMissing, SweepTrouble } from '../session/sweep-frames.js';
import { formatNumber } from './numbers.js';

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

/** What kept a frame of a sweep from being used, in a few words that go on a sentence. */
export function frameFailureWords(failure: MeasuringFailure): string {
  switch (failure.kind) {
    case 'no-face':
      return 'no face seen';
    case 'several-faces':
      return 'several faces seen';
    case 'no-card':
      return 'card not seen';
    case 'several-cards':
      return 'several cards seen';
    case 'card-not-flat':
      return 'card bent, or a corner covered';
    case 'card-tilted':
      return 'card leans too far';
    case 'head-turned':
      return 'face turned too far';
    case 'eyes-closed':
      return 'eyes closed';
    case 'iris-not-found':
      return 'iris edge not seen';
    case 'blurred':
      return 'blurred';
    case 'too-dark':
      return 'too dark';
    case 'implausible':
      return 'card and eyes do not fit together';
    case 'too-far':
      return 'too far from the camera';
    case 'picture-unsupported':
    case 'picture-broken':
    case 'picture-too-large':
      return 'file cannot be opened';
    case 'video-unsupported':
    case 'video-broken':
      return 'frame cannot be read';
    case 'camera-refused':
    case 'camera-missing':
    case 'camera-busy':
    case 'camera-unplugged':
    case 'camera-unsupported':
      return 'no camera';
    case 'model-not-loadable':
    case 'vision-not-loadable':
    case 'vision-stopped':
      return 'could not be looked at';
    default:
      return unreachable(failure);
  }
}

/**
 * What kept a sweep from being measured, and the way out.
 *
 * @param missing what the frames lacked that do not count
 */
export function sweepFailureSaying(failure: SweepTrouble, missing: FramesMissing): Saying {
  switch (failure.kind) {
    case 'too-few-frames': {
      const others = othersWords(missing);
      if (missing.leftOut > 0) {
        return {
          what: `With what was left out, only ${frameCountWords(failure.usable)} could be used, and a sweep needs ${failure.needed}.`,
          next: 'Put frames back that were left out, or measure the best frame as one picture.',
        };
      }
      return {
        what: `Only ${frameCountWords(failure.usable)} could be used, and a sweep needs ${failure.needed}.${others}`,
        next: 'Take the sweep again, slowly, with the whole card and both eyes in the frame and light from the front. Or measure the best frame alone.',
      };
    }
    case 'card-not-still':
      return {
        what: `The card never sat still on the face: at most ${frameCountWords(failure.longestRun)} in a row belong together, and ${failure.needed} are needed.`,
        next: 'Hold the card firmly, with a finger of the same hand on the head, and move head and card as one. Or measure the best frame alone.',
      };
    case 'frames-of-different-size':
      return {
        what: 'These pictures have different sizes, so they were not taken by one camera in one go.',
        next: 'Choose only pictures of one sweep, not cropped and not turned, or choose the best of them alone.',
      };
    case 'no-face':
    case 'several-faces':
    case 'no-card':
    case 'several-cards':
    case 'card-not-flat':
    case 'card-tilted':
    case 'head-turned':
    case 'eyes-closed':
    case 'iris-not-found':
    case 'blurred':
    case 'too-dark':
    case 'implausible':
    case 'too-far':
      return {
        what: `The frames of this sweep could not be measured. Most of them: ${frameFailureWords(failure)}.`,
        next: failureSaying(failure).next,
      };
    case 'picture-unsupported':
    case 'picture-broken':
    case 'picture-too-large':
    case 'video-unsupported':
    case 'video-broken':
    case 'camera-refused':
    case 'camera-missing':
    case 'camera-busy':
    case 'camera-unplugged':
    case 'camera-unsupported':
    case 'model-not-loadable':
    case 'vision-not-loadable':
    case 'vision-stopped':
      return failureSaying(failure);
    default:
      return unreachable(failure);
  }
}

/** What the other frames lacked; empty where there are none. */
function othersWords({ missed, commonest }: FramesMissing): string {
  if (commonest === null) return '';
  return ` ${missed === 1 ? 'The other one' : 'Most of the others'}: ${frameFailureWords(commonest)}.`;
}

function frameCountWords(count: number): string {
  return count === 1 ? '1 frame' : `${count} frames`;
}

/** Chosen: below this the reader would not call it a turn. */
export const HARDLY_TURNED_DEG = 6;

/** What would make the next sweep better; `frameNumber` gives the number on the screen of a frame's place. */
export function sweepAdviceSentence(advice: SweepAdvice, frameNumber: (place: number) => number): string {
  switch (advice.kind) {
    case 'turn-further':
      if (advice.rangeDeg < HARDLY_TURNED_DEG) {
        return `The head hardly turned: by ${advice.rangeDeg.toFixed(0)}° from one end to the other, and ${advice.usefulDeg.toFixed(0)}° are useful. Without it the sweep says little more than one picture.`;
      }
      return `Turn the head further: from one end to the other it turned by ${advice.rangeDeg.toFixed(0)}°, and ${advice.usefulDeg.toFixed(0)}° are useful.`;
    case 'lean-more':
      return `Lean more: the farthest frame is only ${percentBeyond(advice.ratio)} % farther away than the nearest, and ${percentBeyond(advice.usefulRatio)} % are useful.`;
    case 'more-frames':
      return `More frames: ${frameCountWords(advice.used)} could be used, and ${advice.useful} are useful. Go slowly, in good light.`;
    case 'card-slipped':
      return `The card slipped at frame ${frameNumber(advice.fromFrame)}, or these frames are of another wearer: hold the card firmly, with a finger on the head, and let no other face in.`;
    case 'come-nearer':
      return `Come nearer: the face has only ${advice.pixelsPerMm.toFixed(1)} pixels per millimetre.`;
    case 'eyes-elsewhere':
      return 'Both eyes on the lens: card and eyes moved as if they had looked elsewhere, which makes every PD here less sure.';
    default:
      return unreachable(advice);
  }
}

function percentBeyond(ratio: number): string {
  return (100 * (ratio - 1)).toFixed(0);
}

/** What a sweep still lacks, in words that go on a list. */
export function gapWords(gap: SweepGap): string {
  switch (gap) {
    case 'turned-R':
      return 'turned to the right';
    case 'turned-L':
      return 'turned to the left';
    case 'distance':
      return 'nearer and farther';
    case 'frames':
      return 'more frames';
    default:
      return unreachable(gap);
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

/** A source of doubt in words. */
export function sourceWords(source: BudgetSource): string {
  switch (source) {
    case 'card-size':
      return 'true size of the card';
    case 'card-edges':
      return 'where the card’s edges lie in the picture';
    case 'iris-edges':
      return 'where the iris edges lie in the picture';
    case 'lid-edges':
      return 'where the lid margins lie in the picture';
    case 'contact-depth':
      return 'how far the touched skin lies before the eyes';
    case 'camera':
      return 'field of view and distortion of the camera';
    case 'head-pose':
      return 'how the head is turned';
    case 'iris-size':
      return 'how wide this wearer’s irises are';
    case 'gaze':
      return 'where the eyes looked';
    case 'midline':
      return 'where the midline of the bridge lies';
    case 'head-shape':
      return 'how this head differs from the fitted one';
    case 'between-frames':
      return 'scatter between frames';
    default:
      return unreachable(source);
  }
}

/** How far a published or customary number may be relied on. */
export function statusWords(status: SourceStatus): string {
  switch (status) {
    case 'verified':
      return 'seen in the source';
    case 'verified-secondary':
      return 'seen in a text that reports the source';
    case 'computed':
      return 'computed from open data';
    case 'derived':
      return 'worked out from the source';
    case 'common-practice':
      return 'common practice';
    case 'from-memory':
      return 'from memory, not checked';
    case 'chosen':
      return 'chosen for this app';
    default:
      return unreachable(status);
  }
}

/** The same in a word or two, for the row of the sheet. */
export function statusShort(status: SourceStatus): string {
  switch (status) {
    case 'verified':
    case 'verified-secondary':
      return 'published';
    case 'computed':
      return 'computed';
    case 'derived':
      return 'derived';
    case 'common-practice':
      return 'customary';
    case 'from-memory':
      return 'unchecked';
    case 'chosen':
      return 'chosen';
    default:
      return unreachable(status);
  }
}

/** The name of a reading's place on the sheet, such as `lid aperture, right`. */
export function readingWords(name: ReadingName, catalogue: Catalogue): string {
  const measurement = measurementOfReading(catalogue, name);
  const side = measurement.fields.find((field) => field.name === name)?.side ?? null;
  return side === null ? measurement.shortName : `${measurement.shortName}, ${side === 'R' ? 'right' : 'left'}`;
}

/** Why what was typed is no reading; an empty field needs no sentence. */
export function readingFailureSentence(failure: ReadingFailure, unit: MeasurementUnit): string | null {
  switch (failure.kind) {
    case 'empty':
      return null;
    case 'not-a-number':
      return `“${failure.typed.trim()}” is not a number. Type digits with at most one decimal point or comma, such as 63.5.`;
    case 'not-positive':
      return 'A reading must be above zero. Type the number that the gauge shows.';
    case 'impossible':
      return `${plain(failure.value)} ${unit} is no such reading of a face: it lies outside of ${plain(failure.range.low)} to ${plain(failure.range.high)} ${unit}. Look at the gauge again.`;
    default:
      return unreachable(failure);
  }
}

/** The word of a finding, of one reading or of `R and L` together. */
export function findingWord(finding: Finding, isOfBoth = false): string {
  switch (finding.kind) {
    case 'agrees':
      return isOfBoth ? 'agree' : 'agrees';
    case 'disagrees':
      return isOfBoth ? 'disagree' : 'disagrees';
    case 'cannot-tell':
      return 'cannot tell';
    default:
      return unreachable(finding);
  }
}

/**
 * Why, in a few words. `areLidsFound` where the estimate rests on lid marks that no hand has set yet: setting them is the
 * one thing that makes a picture at hand surer.
 */
export function findingReason(
  finding: Finding,
  areLidsFound: boolean,
  source: 'picture' | 'sweep' = 'picture',
): string {
  switch (finding.kind) {
    case 'agrees':
      return 'within the tolerance';
    case 'disagrees':
      return 'outside the tolerance, by more than both doubts explain: read again';
    case 'cannot-tell': {
      const { comparison, reason } = finding;
      switch (reason.kind) {
        case 'camera-too-uncertain': {
          const why = tooWideWords(comparison.cameraExpanded, comparison.tolerance.value, source);
          return areLidsFound ? `${why}; set the lid marks under the loupe` : why;
        }
        case 'between':
          return `too close to call: ±\u00a0${roundedDown(reason.neededCameraExpanded)} mm would decide`;
        case 'hand-too-uncertain':
          return `the hand reading is too unsure; within ±\u00a0${formatNumber(reason.neededHandExpanded, 1)} would decide: read again`;
        default:
          return unreachable(reason);
      }
    }
    default:
      return unreachable(finding);
  }
}

function tooWideWords(doubtMm: number, toleranceMm: number, source: 'picture' | 'sweep'): string {
  // A second decimal where the first does not show which of the two is larger.
  const decimals = formatNumber(doubtMm, 1) === formatNumber(toleranceMm, 1) ? 2 : 1;
  return `±\u00a0${formatNumber(doubtMm, decimals)} mm from one ${source} is too wide for ±\u00a0${formatNumber(toleranceMm, decimals)}`;
}

/** A limit that still decides as it is written: rounded down, with a second decimal where one would leave nothing. */
function roundedDown(limitMm: number): string {
  const decimals = limitMm < 0.1 ? 2 : 1;
  const step = 10 ** decimals;
  return formatNumber(Math.floor(limitMm * step + 1e-9) / step, decimals);
}

/** What does not fit among the hand readings. */
export function inconsistencySentence(inconsistency: Inconsistency, catalogue: Catalogue): string {
  const [first, second] = inconsistency.names;
  const name = (one: ReadingName | undefined): string => (one === undefined ? '' : readingWords(one, catalogue));
  switch (inconsistency.kind) {
    case 'eyes-do-not-add-up':
      return `Both eyes add up to ${plain(inconsistency.sumMm)} mm, but the binocular PD is written as ${plain(inconsistency.wholeMm)} mm.`;
    case 'near-not-below-distance':
      return `The near PD (${plain(inconsistency.nearMm)} mm) is not below the distance PD (${plain(inconsistency.farMm)} mm).`;
    case 'near-unlike-distance':
      return `The near PD is ${plain(inconsistency.nearMm)} mm; from the distance PD ${formatNumber(inconsistency.expectedNearMm, 1)} mm would follow.`;
    case 'temples-not-below-head':
      return `The temples (${plain(inconsistency.templeMm)} mm) are not narrower than the head (${plain(inconsistency.headMm)} mm).`;
    case 'sides-differ':
      return `${name(first)} and ${second === undefined ? '' : sideWord(second)} differ by ${plain(inconsistency.differenceMm)} mm, more than faces usually do.`;
    case 'unusual':
      return `${name(first)}: ${plain(inconsistency.value)} mm is unusual for adults (${plain(inconsistency.range.low)} to ${plain(inconsistency.range.high)} mm). Some adults measure so, and children often do.`;
    default:
      return unreachable(inconsistency);
  }
}

/** A likely cause, with the value that it would restore. */
export function slipSentence(slip: Slip, catalogue: Catalogue): string {
  const [first, second] = slip.restorations;
  if (first === undefined) return '';
  const place = readingWords(first.name, catalogue);
  if (second !== undefined) {
    const other = readingWords(second.name, catalogue);
    return `${place} and ${other}: ${slipWords(slip.kind)}? Then they would be ${plain(first.restored)} and ${plain(second.restored)} mm.`;
  }
  return `${place}: ${slipWords(slip.kind)}? Then ${plain(first.written)} would be ${plain(first.restored)} mm.`;
}

function slipWords(kind: SlipKind): string {
  switch (kind) {
    case 'digits-swapped':
      return 'two digits swapped';
    case 'sides-swapped':
      return 'right and left swapped';
    case 'half-for-whole':
      return 'one eye’s distance written for both';
    case 'whole-for-half':
      return 'both eyes’ distance written for one';
    case 'point-moved':
      return 'decimal point moved or lost';
    case 'centimetres':
      return 'written in centimetres';
    case 'inches':
      return 'written in inches';
    case 'ten-off':
      return 'read at the wrong ten of the scale';
    case 'digit-wrong':
      return 'one digit wrong';
    case 'near-for-distance':
      return 'near PD written for distance';
    case 'distance-for-near':
      return 'distance PD written for near';
    case 'rows-swapped':
      return 'two rows swapped';
    default:
      return unreachable(kind);
  }
}

/** Why a working distance cannot be used. */
export function lengthFailureSentence(failure: LengthFailure): string {
  switch (failure.kind) {
    case 'not-a-number':
      return 'Type a length in mm, such as 400. Until then 400 mm is used.';
    case 'beyond-limits':
      return `Type a length between ${failure.lowestMm} and ${failure.highestMm} mm. Until then 400 mm is used.`;
    default:
      return unreachable(failure);
  }
}

/** Why a measured length of the printed line cannot be used. */
export function printCheckSentence(failure: PrintCheckFailure | { readonly kind: 'not-a-number' }): string {
  switch (failure.kind) {
    case 'not-a-number':
    case 'not-a-length':
      return 'Type the measured length in mm, such as 149.5. Until then the print is taken to be at true size.';
    case 'other-unit':
      return `Was ${failure.unit === 'cm' ? 'centimetres' : 'inches'} meant? Then type ${plain(failure.lengthMm)} mm.`;
    case 'beyond-limits':
      return `${plain(failure.measuredMm)} mm cannot be allowed for: a usable print shows ${plain(failure.lowestMm)} to ${plain(failure.highestMm)} mm. Print again at 100 %.`;
    default:
      return unreachable(failure);
  }
}

function sideWord(name: ReadingName): string {
  return name.endsWith('R') ? 'right' : 'left';
}

/** A number as it would be written by hand: no more decimals than it has, two at most. */
function plain(value: number): string {
  return formatNumber(value, 2).replace(/\.?0+$/, '');
}
