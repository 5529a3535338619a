import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import { EXAMPLE_CAMERA_PROFILE } from '../../../tests/support/example-profile.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import {
  courseOf,
  exampleSweep,
  framesOfSweep,
  mirroredSweep,
  noisySeeing,
  pupilsOfFrame,
  WIDE_COURSE,
  type SyntheticSweep,
} from '../../../tests/support/synthetic-sweep.js';
import type { CameraProfile } from '../camera/camera-profile.js';
import type { PictureFeatures } from '../camera/features.js';
import { radiansToDegrees } from '../units/angle.js';
import { DEFAULT_MEASURING_SETTINGS, type MeasuringSettings } from './face-estimates.js';
import { createMeasureSweep, FEWEST_FRAMES } from './measure-sweep.js';
import type { SweepMeasurement } from './sweep.js';

const measure = createMeasureSweep({ canonicalFace, contactDepth });
const FAR: MeasuringSettings = { ...DEFAULT_MEASURING_SETTINGS, gaze: 'far' };

function outcomeOf(frames: readonly PictureFeatures[], settings: MeasuringSettings = DEFAULT_MEASURING_SETTINGS) {
  return measure(frames, settings, () => undefined);
}

function measuredFrames(frames: readonly PictureFeatures[], settings?: MeasuringSettings): SweepMeasurement {
  const outcome = outcomeOf(frames, settings);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value;
}

function measured(sweep: SyntheticSweep, settings?: MeasuringSettings): SweepMeasurement {
  return measuredFrames(framesOfSweep(sweep), settings);
}

const withFocal = (focalPx: number, change: Partial<SyntheticSweep> = {}): SyntheticSweep => {
  const sweep = exampleSweep(change);
  return { ...sweep, head: { ...sweep.head, camera: { ...sweep.head.camera, focalPx } } };
};

const kinds = ({ advice }: SweepMeasurement): string[] => advice.map(({ kind }) => kind);

/** PD of the example, and by how much its bridge stands beside the middle (own geometry). */
const PD_MM = 63.1521;
const BESIDE_MM = 0.6;

describe('measureSweep of perfectly seen frames', () => {
  const sweep = exampleSweep();
  const { estimates, ...rest } = measured(sweep);

  it('finds the PDs', () => {
    expect(Math.abs(estimates.pdFar.value - PD_MM)).toBeLessThan(0.005);
    // The mean face is laid onto the landmarks frame by frame, before the camera is known: a tenth of a degree of yaw is left.
    expect(Math.abs(estimates.monoPdR.value - (PD_MM / 2 + BESIDE_MM))).toBeLessThan(0.03);
    expect(Math.abs(estimates.monoPdL.value - (PD_MM / 2 - BESIDE_MM))).toBeLessThan(0.03);
    // P W / (W + s), 400 and 27 mm (textbooks of dispensing optics)
    expect(Math.abs(estimates.pdNear.value - (PD_MM * 400) / 427)).toBeLessThan(0.005);
  });

  it('adds both monocular PDs up to the PD', () => {
    expect(estimates.monoPdR.value + estimates.monoPdL.value).toBeCloseTo(estimates.pdFar.value, 2);
  });

  it('finds the iris and the apertures', () => {
    expect(Math.abs(estimates.irisDiameter.value - 11.71)).toBeLessThan(0.005);
    // Lids on a head that nods by 6 degrees are foreshortened by up to half a per cent.
    for (const side of ['apertureR', 'apertureL'] as const) {
      expect(Math.abs(estimates[side].value - 9.5)).toBeLessThan(9.5 * 0.005);
    }
  });

  it('finds head and temples', () => {
    expect(Math.abs(estimates.headWidth.value - 155)).toBeLessThan(1);
    expect(Math.abs(estimates.templeWidth.value - 125)).toBeLessThan(1);
  });

  it('says of the middle frame what single frames show', () => {
    const { R, L } = pupilsOfFrame(sweep, 6);
    const stance = sweep.stances[6]!;
    expect(Math.abs(estimates.pdShown.value - Math.hypot(R[0] - L[0], R[1] - L[1], R[2] - L[2]))).toBeLessThan(0.01);
    expect(Math.abs(estimates.distance.value - (R[2] + L[2]) / 2)).toBeLessThan(0.5);
    expect(Math.abs(estimates.headYaw.value - radiansToDegrees(stance.yawRad))).toBeLessThan(0.3);
    expect(Math.abs(estimates.headPitch.value - radiansToDegrees(stance.pitchRad))).toBeLessThan(0.6);
    expect(Math.abs(estimates.headRoll.value - radiansToDegrees(stance.rollRad))).toBeLessThan(0.3);
  });

  it('lists the turn and the distance of every frame', () => {
    expect(rest.yawsDeg).toHaveLength(12);
    expect(rest.distancesMm).toHaveLength(12);
    sweep.stances.forEach(({ yawRad }, frame) => {
      const { R, L } = pupilsOfFrame(sweep, frame);
      expect(Math.abs(rest.yawsDeg[frame]! - radiansToDegrees(yawRad))).toBeLessThan(0.3);
      expect(Math.abs(rest.distancesMm[frame]! - (R[2] + L[2]) / 2)).toBeLessThan(0.5);
    });
  });

  it('uses every frame and has nothing to advise', () => {
    expect(rest).toMatchObject({ framesUsed: 12, slippedFromFrame: null, advice: [] });
    expect(new Set(rest.fates)).toEqual(new Set(['used']));
  });

  it('counts the pixels of a millimetre at the eyes', () => {
    // 1024 px of focal length at the middle of the distances
    const distances = sweep.stances
      .map((_, frame) => (pupilsOfFrame(sweep, frame).R[2] + pupilsOfFrame(sweep, frame).L[2]) / 2)
      .sort((a, b) => a - b);
    // As well as the focal length follows from so little leaning.
    expect(Math.abs((rest.pixelsPerMm * (distances[5]! + distances[6]!)) / 2 / 1024 - 1)).toBeLessThan(0.005);
  });

  it('splits every doubt into parts that add up to it', () => {
    for (const { standardUncertainty, budget, low, high, value } of Object.values(estimates)) {
      const squares = budget.reduce((sum, line) => sum + line.standardUncertainty ** 2, 0);
      expect(Math.sqrt(squares) / standardUncertainty).toBeCloseTo(1, 4);
      expect((high - low) / 2 / standardUncertainty).toBeCloseTo(1.96, 2);
      expect((high + low) / 2).toBeCloseTo(value, 9);
    }
  });

  it('does not care in which order the frames were taken', () => {
    const frames = framesOfSweep(sweep);
    const shuffled = [5, 11, 0, 8, 3, 10, 1, 6, 9, 2, 7, 4].map((i) => frames[i]!);
    for (const others of [[...frames].reverse(), shuffled]) {
      const other = measuredFrames(others);
      for (const name of ['pdFar', 'monoPdR', 'monoPdL', 'apertureR'] as const) {
        expect(other.estimates[name].value).toBeCloseTo(estimates[name].value, 3);
        expect(other.estimates[name].standardUncertainty).toBeCloseTo(estimates[name].standardUncertainty, 3);
      }
    }
  });

  it('swaps right and left in a mirror', () => {
    const { estimates: other } = measured(mirroredSweep(sweep));
    expect(other.pdFar.value).toBeCloseTo(estimates.pdFar.value, 3);
    expect(other.monoPdL.value).toBeCloseTo(estimates.monoPdR.value, 2);
    expect(other.monoPdR.value).toBeCloseTo(estimates.monoPdL.value, 2);
    expect(other.monoPdL.value - other.monoPdR.value).toBeCloseTo(2 * BESIDE_MM, 1);
    expect(other.headYaw.value).toBeCloseTo(-estimates.headYaw.value, 2);
  });
});

describe('measureSweep of wearers who differ from the mean', () => {
  const example = exampleSweep();

  it.each<[string, Partial<SyntheticSweep['head']>]>([
    ['a wide PD', { pdFarMm: 74 }],
    ['a narrow PD', { pdFarMm: 52 }],
    ['a card 8 mm further before the eyes than most', { card: { ...example.head.card, backMm: [0, 52, 16.5] } }],
    ['eyes before the card', { card: { ...example.head.card, backMm: [-3, 60, -1] } }],
    ['large irises', { irisMm: 12.6 }],
  ])('finds PD and irises: %s', (_, change) => {
    const head = { ...example.head, ...change };
    const { estimates } = measured({ ...example, head });
    // What faces are on average still pulls a little, by less than a fifth of the doubt (chosen).
    expect(Math.abs(estimates.pdFar.value - head.pdFarMm)).toBeLessThan(0.2 * estimates.pdFar.standardUncertainty);
    expect(Math.abs(estimates.irisDiameter.value - head.irisMm)).toBeLessThan(0.03);
  });

  it('finds the PD of eyes that look beside the lens', () => {
    const { estimates } = measured({ ...example, lookAtMm: [-12, 18, 10] });
    expect(Math.abs(estimates.pdFar.value - PD_MM)).toBeLessThan(0.2 * estimates.pdFar.standardUncertainty);
  });
});

describe('eyes that look far away although they were asked to look into the camera', () => {
  it.each([5, 6, 7])('are noticed, and widen the interval until it holds the truth (seed %i)', (seed) => {
    const elsewhere = measured(exampleSweep({ lookAtMm: [0, 0, -6000], seeing: noisySeeing(seededRandom(seed)) }));
    const { value, standardUncertainty } = elsewhere.estimates.pdFar;
    expect(elsewhere.advice).toContainEqual({ kind: 'eyes-elsewhere' });
    expect(Math.abs(value - PD_MM)).toBeLessThan(2 * standardUncertainty);
    const onLens = measured(exampleSweep({ seeing: noisySeeing(seededRandom(seed)) }));
    expect(onLens.advice).toEqual([]);
    expect(onLens.estimates.pdFar.standardUncertainty).toBeLessThan(0.8 * standardUncertainty);
  });
});

describe('the camera in measureSweep', () => {
  it.each([870, 1178])('is found from the frames: %i px instead of 1024', (focalPx) => {
    const sweep = withFocal(focalPx);
    const { estimates, distancesMm } = measured(sweep);
    expect(Math.abs(estimates.pdFar.value - PD_MM)).toBeLessThan(0.03);
    sweep.stances.forEach((_, frame) => {
      const { R, L } = pupilsOfFrame(sweep, frame);
      // A hundredth, of a focal length that is 15 % off to begin with.
      expect(Math.abs(distancesMm[frame]! / ((R[2] + L[2]) / 2) - 1)).toBeLessThan(0.01);
    });
  });

  /** A perfect profile of the synthetic camera with this focal length. */
  const profileOf = (focalPx: number, change: Partial<CameraProfile> = {}): CameraProfile => ({
    ...EXAMPLE_CAMERA_PROFILE,
    fx: focalPx,
    fy: focalPx,
    cx: 640,
    cy: 360,
    distortion: [0, 0, 0, 0, 0],
    ...change,
  });

  it('is better known by a profile', () => {
    const sweep = withFocal(1178);
    const plain = measured(sweep);
    const known = measured(sweep, { ...DEFAULT_MEASURING_SETTINGS, profile: profileOf(1178) });
    expect(Math.abs(known.estimates.pdFar.value - PD_MM)).toBeLessThan(0.01);
    expect(known.estimates.distance.standardUncertainty).toBeLessThan(plain.estimates.distance.standardUncertainty);
    const share = ({ estimates }: SweepMeasurement): number =>
      estimates.distance.budget.find(({ source }) => source === 'camera')?.standardUncertainty ?? 0;
    expect(share(known)).toBeLessThan(share(plain));
  });

  it('is scaled with a profile of another size', () => {
    const profile = profileOf(2 * 1178, { widthPx: 2560, heightPx: 1440, cx: 1280, cy: 720 });
    const { estimates } = measured(withFocal(1178), { ...DEFAULT_MEASURING_SETTINGS, profile });
    expect(Math.abs(estimates.pdFar.value - PD_MM)).toBeLessThan(0.01);
  });

  it('is not taken from a profile of other proportions', () => {
    const profile = profileOf(1500, { widthPx: 1280, heightPx: 960 });
    const sweep = withFocal(1178);
    expect(measured(sweep, { ...DEFAULT_MEASURING_SETTINGS, profile })).toEqual(measured(sweep));
  });
});

describe('measureSweep with the gaze far away', () => {
  const sweep = exampleSweep({ lookAtMm: [0, 0, -6000] });
  const { estimates } = measured(sweep, FAR);

  it('finds the PDs', () => {
    expect(Math.abs(estimates.pdFar.value - PD_MM)).toBeLessThan(0.01);
    expect(Math.abs(estimates.monoPdR.value - (PD_MM / 2 + BESIDE_MM))).toBeLessThan(0.03);
  });

  it('shows pupils that hardly turn in', () => {
    const { R, L } = pupilsOfFrame(sweep, 6);
    expect(Math.abs(estimates.pdShown.value - Math.hypot(R[0] - L[0], R[1] - L[1], R[2] - L[2]))).toBeLessThan(0.01);
    // Twice e sin(a), tan(a) = half the PD over 6.5 m
    expect(estimates.pdFar.value - estimates.pdShown.value).toBeCloseTo((2 * 10.5 * (PD_MM / 2)) / 6500, 2);
  });

  it('sees it from the frames if the eyes are on the camera after all', () => {
    // A single picture could not tell: taken for far, it would show a PD smaller by 2 e sin(a), 1.3 mm at 480 mm.
    const found = measuredFrames(framesOfSweep(exampleSweep()), FAR);
    expect(Math.abs(found.estimates.pdFar.value - PD_MM)).toBeLessThan(found.estimates.pdFar.standardUncertainty);
  });
});

describe('a card that slips in measureSweep', () => {
  it.each([
    [6, [2, 1, 0]],
    [9, [0, 1.5, 0]],
    [12, [-1.2, -1.2, 0]],
  ] as const)('is noticed from frame %i on, and the shorter stretch is left out', (fromFrame, [x, y, z]) => {
    for (const seed of [1, 2]) {
      const found = measured(
        exampleSweep({
          stances: courseOf(18),
          seeing: noisySeeing(seededRandom(seed)),
          slip: { fromFrame, shiftMm: [x, y, z] },
        }),
      );
      expect(found.slippedFromFrame).toBe(fromFrame);
      expect(found.advice).toContainEqual({ kind: 'card-slipped', fromFrame });
      const laterIsLonger = 18 - fromFrame > fromFrame;
      found.fates.forEach((fate, frame) =>
        expect(fate).toBe(frame >= fromFrame === laterIsLonger ? 'used' : 'slipped'),
      );
      expect(found.framesUsed).toBe(Math.max(fromFrame, 18 - fromFrame));
      const { value, standardUncertainty } = found.estimates.pdFar;
      expect(Math.abs(value - PD_MM)).toBeLessThan(2.5 * standardUncertainty);
      expect(found.yawsDeg[laterIsLonger ? 0 : 17]).toBeNull();
      expect(found.distancesMm[laterIsLonger ? 0 : 17]).toBeNull();
    }
  });

  it('is noticed at the same place in frames run backwards', () => {
    const frames = framesOfSweep(exampleSweep({ stances: courseOf(18), slip: { fromFrame: 7, shiftMm: [1.5, 2, 0] } }));
    expect(measuredFrames([...frames].reverse()).slippedFromFrame).toBe(11);
  });

  it.each([
    ['once, in the middle of ten', [5, 5], [0, 3], 5],
    ['twice, onward', [4, 4, 4], [0, 2.8, 5.6], 4],
  ] as const)(
    'leaves nothing to measure if it never sits still for six frames: %s',
    (_, lengths, heights, longestRun) => {
      const count = lengths.reduce((sum: number, length) => sum + length, 0);
      let from = 0;
      const frames = lengths.flatMap((length, k) => {
        const shifted = exampleSweep({
          stances: courseOf(count),
          slip: { fromFrame: 0, shiftMm: [0, heights[k]!, 0] },
        });
        from += length;
        return framesOfSweep(shifted).slice(from - length, from);
      });
      expect(outcomeOf(frames)).toEqual({
        ok: false,
        failure: { kind: 'card-not-still', longestRun, needed: FEWEST_FRAMES },
      });
    },
  );

  it('twice in different directions, each slip scatter to the other, is noticed by what the frames cost', () => {
    const shifts = [
      [0, 0, 0],
      [4, 3, 0],
      [-3, 5, 0],
    ] as const;
    const frames = shifts.flatMap((shiftMm, k) =>
      framesOfSweep(exampleSweep({ slip: { fromFrame: 0, shiftMm } })).slice(4 * k, 4 * k + 4),
    );
    const outcome = outcomeOf(frames);
    expect(outcome).toMatchObject({ ok: false, failure: { kind: 'card-not-still', longestRun: 4 } });
  });

  it('back and forth: the frames in between do not fit', () => {
    const frames = framesOfSweep(exampleSweep());
    const moved = framesOfSweep(exampleSweep({ slip: { fromFrame: 4, shiftMm: [3, 2, 0] } }));
    const found = measuredFrames([...frames.slice(0, 4), ...moved.slice(4, 8), ...frames.slice(8)]);
    expect(found.fates.flatMap((fate, frame) => (fate === 'used' ? [] : [frame]))).toEqual([4, 5, 6, 7]);
    expect(Math.abs(found.estimates.pdFar.value - PD_MM)).toBeLessThan(0.02);
  });
});

describe('frames that do not fit in measureSweep', () => {
  const stances = courseOf(14);

  it.each<[string, Partial<SyntheticSweep>]>([
    ['a blink', { blinkFrames: [5] }],
    ['eyes that look elsewhere', { elsewhere: [{ frame: 5, lookAtMm: [150, 0, 0] }] }],
  ])('are left out and do no harm: %s', (_, change) => {
    const found = measured(exampleSweep({ stances, ...change }));
    expect(found.fates.flatMap((fate, frame) => (fate === 'used' ? [] : [[frame, fate]]))).toEqual([[5, 'misfit']]);
    expect(found).toMatchObject({ framesUsed: 13, slippedFromFrame: null });
    expect(found.yawsDeg[5]).toBeNull();
    expect(found.distancesMm[5]).toBeNull();
    // What the sweep without that frame says.
    const without = measuredFrames(framesOfSweep(exampleSweep({ stances })).filter((__, frame) => frame !== 5));
    for (const name of ['pdFar', 'monoPdR', 'apertureL'] as const) {
      const [one, other] = [found.estimates[name], without.estimates[name]];
      expect(Math.abs(one.value - other.value)).toBeLessThan(0.02 * other.standardUncertainty);
      expect(one.standardUncertainty / other.standardUncertainty).toBeCloseTo(1, 2);
    }
  });

  it('are told from good ones under noise', () => {
    for (const seed of [1, 2, 3]) {
      const seeing = noisySeeing(seededRandom(seed));
      const found = measured(
        exampleSweep({ stances, seeing, blinkFrames: [3], elsewhere: [{ frame: 9, lookAtMm: [0, -160, 0] }] }),
      );
      expect(found.fates.flatMap((fate, frame) => (fate === 'used' ? [] : [frame]))).toEqual([3, 9]);
      const { value, standardUncertainty } = found.estimates.pdFar;
      expect(Math.abs(value - PD_MM)).toBeLessThan(2.5 * standardUncertainty);
    }
  });

  it('are those with the card elsewhere on the face', () => {
    const frames = framesOfSweep(exampleSweep());
    const astray = { ...frames[3]!, card: { ...frames[3]!.card, position: 'chin' as const } };
    const found = measuredFrames(frames.map((frame, i) => (i === 3 ? astray : frame)));
    expect(found.fates[3]).toBe('misfit');
    expect(found.framesUsed).toBe(11);
  });
});

describe('measureSweep of what is no sweep', () => {
  const frames = framesOfSweep(exampleSweep());

  it.each([0, 1, 5])('fails for %i frames', (count) => {
    expect(outcomeOf(frames.slice(0, count))).toEqual({
      ok: false,
      failure: { kind: 'too-few-frames', usable: count, needed: 6 },
    });
  });

  it('does with six', () => {
    const found = measuredFrames(frames.slice(0, 6));
    expect(found.framesUsed).toBe(6);
    expect(Math.abs(found.estimates.pdFar.value - PD_MM)).toBeLessThan(found.estimates.pdFar.standardUncertainty);
  });

  it('fails for frames of different sizes', () => {
    for (const change of [{ widthPx: 1281 }, { heightPx: 719 }]) {
      const mixed = frames.map((frame, i) => (i === 7 ? { ...frame, ...change } : frame));
      expect(outcomeOf(mixed)).toEqual({ ok: false, failure: { kind: 'frames-of-different-size' } });
    }
  });

  it('fails for irises of a size that no adult has', () => {
    const { head } = exampleSweep();
    const outcome = outcomeOf(framesOfSweep(exampleSweep({ head: { ...head, irisMm: 16 } })));
    expect(outcome).toMatchObject({ ok: false, failure: { kind: 'implausible' } });
    if (!outcome.ok && outcome.failure.kind === 'implausible') {
      expect(Math.abs(outcome.failure.irisMm - 16)).toBeLessThan(0.5);
    }
  });
});

describe('the advice of measureSweep', () => {
  it('is to turn further', () => {
    const found = measured(exampleSweep({ stances: courseOf(12, { ...WIDE_COURSE, yawRad: 0.1 }) }));
    expect(kinds(found)).toEqual(['turn-further']);
    const [advice] = found.advice;
    // The course goes through both ends of its range: twice 0.1 rad.
    if (advice?.kind !== 'turn-further') throw new Error('other advice');
    expect(Math.abs(advice.rangeDeg - radiansToDegrees(0.2))).toBeLessThan(0.3);
    expect(advice.usefulDeg).toBeGreaterThan(advice.rangeDeg);
  });

  it('is to lean more, unless a profile knows the camera', () => {
    const sweep = exampleSweep({ stances: courseOf(12, { ...WIDE_COURSE, distanceMm: 10 }) });
    const found = measured(sweep);
    expect(kinds(found)).toEqual(['lean-more']);
    const [advice] = found.advice;
    if (advice?.kind !== 'lean-more') throw new Error('other advice');
    // 460 over 440 mm, less the pupils' place before the camera
    expect(Math.abs(advice.ratio - 460 / 440)).toBeLessThan(0.01);
    const profile: CameraProfile = {
      ...EXAMPLE_CAMERA_PROFILE,
      ...{ fx: 1024, fy: 1024, cx: 640, cy: 360 },
      distortion: [0, 0, 0, 0, 0],
    };
    expect(kinds(measured(sweep, { ...DEFAULT_MEASURING_SETTINGS, profile }))).toEqual([]);
  });

  it('is to take more frames', () => {
    expect(measured(exampleSweep({ stances: courseOf(11) })).advice).toEqual([
      { kind: 'more-frames', used: 11, useful: 12 },
    ]);
  });

  it('is to come nearer', () => {
    const far = measured(exampleSweep({ stances: courseOf(12, { ...WIDE_COURSE, distanceMm: 80 }, [4, -6, 900]) }));
    expect(kinds(far)).toEqual(['come-nearer']);
    expect(far.advice).toEqual([{ kind: 'come-nearer', pixelsPerMm: far.pixelsPerMm }]);
    expect(Math.abs(far.pixelsPerMm / (1024 / 890) - 1)).toBeLessThan(0.03);
  });
});

describe('measureSweep at work', () => {
  it('says how far it is: ever further, to the end', () => {
    const told: number[] = [];
    const frames = framesOfSweep(exampleSweep({ stances: courseOf(18), slip: { fromFrame: 7, shiftMm: [1.5, 2, 0] } }));
    expect(measure(frames, DEFAULT_MEASURING_SETTINGS, (share) => told.push(share)).ok).toBe(true);
    expect(told.length).toBeGreaterThan(18);
    told.forEach((share, i) => expect(share).toBeGreaterThan(told[i - 1] ?? 0));
    expect(told[17]!).toBeLessThan(0.5);
    expect(told.at(-1)).toBe(1);
    expect(told.filter((share) => share >= 1)).toHaveLength(1);
  });

  it('does not change what it is given', () => {
    const frames = framesOfSweep(exampleSweep());
    const before = JSON.stringify(frames);
    measuredFrames(frames);
    expect(JSON.stringify(frames)).toBe(before);
  });

  it('takes no more than four seconds of the processor for 40 frames', () => {
    const random = seededRandom(40);
    const frames = framesOfSweep(exampleSweep({ stances: courseOf(40), seeing: noisySeeing(random) }));
    // The processor's time rather than the clock's: other processes of a busy machine do not count.
    const before = process.cpuUsage();
    const found = measuredFrames(frames);
    const { user, system } = process.cpuUsage(before);
    expect(found.framesUsed).toBe(40);
    expect((user + system) / 1e6).toBeLessThan(4);
  });
});
