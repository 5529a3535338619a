import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import type { Reading } from '../reading/reading.js';
import { takeReading } from '../reading/reading.js';
import type { Sheet } from './likely-slips.js';
import { likelySlips, likelySlipsAmong } from './likely-slips.js';
import type { Slip } from './slip.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

type Values = Partial<Record<ReadingName, number>>;
/** value and half width of the 95 % interval, mm */
type Camera = Partial<Record<ReadingName, readonly [value: number, expanded: number]>>;

function sheet(values: Values, camera: Camera | null = null, workingDistanceMm = 400): Sheet {
  const readings: Partial<Record<ReadingName, Reading>> = {};
  for (const [name, value] of Object.entries(values) as [ReadingName, number][]) {
    readings[name] = takeReading(name, value, catalogue);
  }
  if (camera === null) return { readings, estimates: null, catalogue, workingDistanceMm };
  const estimates: Partial<Record<ReadingName, Estimate>> = {};
  for (const [name, [value, expanded]] of Object.entries(camera) as [ReadingName, readonly [number, number]][]) {
    const standardUncertainty = expanded / 1.96;
    estimates[name] = {
      value,
      standardUncertainty,
      low: value - expanded,
      high: value + expanded,
      unit: 'mm',
      budget: [{ source: 'contact-depth', standardUncertainty }],
    };
  }
  return { readings, estimates, catalogue, workingDistanceMm };
}

const told = (slip: Slip | undefined) => slip && [slip.kind, ...slip.restorations.map((one) => one.restored)];

const EYES = { monoPdR: 31.5, monoPdL: 32 };
const CAMERA: Camera = { pdFar: [63.2, 1.6], monoPdR: [31.4, 1], monoPdL: [31.9, 1] };

describe('likely slips', () => {
  it('does not restore an eye 9 mm from the other to make a sum fit', () => {
    const slips = likelySlipsAmong(['pdFar', 'monoPdR', 'monoPdL'], sheet({ pdFar: 61, monoPdR: 36, monoPdL: 35 }));
    expect(slips.flatMap((slip) => slip.restorations).filter(({ restored }) => restored < 30)).toEqual([]);
  });

  // The kinds are common practice without a source; the values restored are plain arithmetic.
  it.each<[string, ReadingName, Values, Camera | null, readonly unknown[]]>([
    ['digits swapped, with the camera', 'pdFar', { pdFar: 36.5, ...EYES }, CAMERA, ['digits-swapped', 63.5]],
    ['digits swapped, by the sum alone', 'pdFar', { pdFar: 36.5, ...EYES }, null, ['digits-swapped', 63.5]],
    ['digits swapped, by what is usual alone', 'pdFar', { pdFar: 36.5 }, null, ['digits-swapped', 63.5]],
    ['half for whole', 'pdFar', { pdFar: 31.5, ...EYES }, CAMERA, ['half-for-whole', 63.5]],
    ['half for whole without the other side', 'pdFar', { pdFar: 31.5 }, CAMERA, ['half-for-whole', 63]],
    ['whole for half', 'monoPdR', { monoPdR: 63.5, monoPdL: 32 }, CAMERA, ['whole-for-half', 31.5]],
    ['one digit wrong', 'pdFar', { pdFar: 57, monoPdR: 27, monoPdL: 27 }, { pdFar: [54.2, 1] }, ['digit-wrong', 54]],
    ['ten more', 'headWidth', { headWidth: 158 }, { headWidth: [148, 4] }, ['ten-off', 148]],
    ['inches', 'pdFar', { pdFar: 2.48, ...EYES }, CAMERA, ['inches', 63]],
    ['centimetres', 'pdFar', { pdFar: 6.35, ...EYES }, CAMERA, ['centimetres', 63.5]],
    ['point lost', 'pdFar', { pdFar: 635, ...EYES }, CAMERA, ['point-moved', 63.5]],
    ['a nought too many', 'pdFar', { pdFar: 630, ...EYES }, CAMERA, ['point-moved', 63]],
    ['near for distance', 'pdFar', { pdFar: 59 }, CAMERA, ['near-for-distance', 63]],
    ['distance for near', 'pdNear', { pdFar: 63, pdNear: 63 }, CAMERA, ['distance-for-near', 59]],
    ['near and distance swapped', 'pdFar', { pdFar: 59.5, pdNear: 63.5 }, CAMERA, ['rows-swapped', 63.5, 59.5]],
    [
      'head and temples swapped',
      'headWidth',
      { headWidth: 140, templeWidth: 152 },
      { headWidth: [153, 6] },
      ['rows-swapped', 152, 140],
    ],
    [
      'sides swapped',
      'monoPdL',
      { monoPdR: 33.5, monoPdL: 29.5 },
      { monoPdR: [29.6, 1], monoPdL: [33.3, 1] },
      ['sides-swapped', 33.5, 29.5],
    ],
  ])('%s', (_, name, values, camera, expected) => {
    const [first] = likelySlips(name, sheet(values, camera));
    expect(told(first)).toEqual(expected);
  });

  it('keeps what is written beside what would be restored', () => {
    const before = sheet({ pdFar: 36.5, ...EYES }, CAMERA);
    const copy = structuredClone(before);
    expect(likelySlips('pdFar', before)[0]?.restorations).toEqual([{ name: 'pdFar', written: 36.5, restored: 63.5 }]);
    expect(before).toEqual(copy);
  });

  it('has inches to within the step of the rule', () => {
    // 2.48 in = 62.992 mm: 25.4 mm to the inch by definition
    const slip = likelySlips('pdFar', sheet({ pdFar: 2.48 }, CAMERA)).find((one) => one.kind === 'inches');
    expect(Math.abs(slip!.restorations[0]!.restored - 62.992)).toBeLessThan(0.25);
  });

  it('is silent where all agrees, and where nothing known explains the difference', () => {
    const good = sheet({ pdFar: 63.5, ...EYES, headWidth: 150, templeWidth: 140 }, { ...CAMERA, headWidth: [148, 5] });
    for (const name of ['pdFar', 'monoPdR', 'monoPdL', 'headWidth', 'templeWidth'] as const) {
      expect(likelySlips(name, good)).toEqual([]);
    }
    // two digits at once, and no ten
    expect(likelySlips('headWidth', sheet({ headWidth: 139 }, { headWidth: [160, 5] }))).toEqual([]);
    expect(likelySlips('pdFar', sheet({}))).toEqual([]);
  });

  it('does not swap sides for a difference that the doubts explain', () => {
    expect(likelySlips('monoPdR', sheet({ monoPdR: 32.5, monoPdL: 31.5 }, CAMERA))).toEqual([]);
  });

  it('names a swap once when both of a pair are asked for', () => {
    const swapped = sheet({ monoPdR: 33.5, monoPdL: 29.5 }, { monoPdR: [29.6, 1], monoPdL: [33.3, 1] });
    const slips = likelySlipsAmong(['monoPdR', 'monoPdL'], swapped);
    expect(slips.filter((slip) => slip.kind === 'sides-swapped')).toHaveLength(1);
  });

  it('finds the one of three that spoils a sum', () => {
    const slips = likelySlipsAmong(['pdFar', 'monoPdR', 'monoPdL'], sheet({ pdFar: 63.5, monoPdR: 13.5, monoPdL: 32 }));
    expect(slips[0]?.restorations[0]).toEqual({ name: 'monoPdR', written: 13.5, restored: 31.5 });
    expect(slips[0]?.kind).toBe('digits-swapped');
  });

  it('gives weights that sum to no more than one and fall', () => {
    const weights = likelySlips('pdFar', sheet({ pdFar: 36.5, ...EYES }, CAMERA)).map((slip) => slip.weight);
    expect(weights[0]).toBeGreaterThan(0.5);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeLessThanOrEqual(1 + 1e-12);
    expect([...weights].sort((a, b) => b - a)).toEqual(weights);
  });

  const half = (low: number, high: number) => fc.integer({ min: low * 2, max: high * 2 }).map((halves) => halves / 2);
  const faces = fc.record({
    monoPdR: half(28, 36),
    monoPdL: half(28, 36),
    written: half(30, 90),
    noise: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  });
  const cameraOf = (r: number, l: number, noise: number): Camera => ({
    pdFar: [r + l + noise, 1.5],
    monoPdR: [r + noise / 2, 1],
    monoPdL: [l + noise / 2, 1],
  });

  it('mirrors with the wearer', () => {
    const mirrored = (name: ReadingName) => (name === 'monoPdR' ? 'monoPdL' : name === 'monoPdL' ? 'monoPdR' : name);
    fc.assert(
      fc.property(faces, half(14, 46), ({ monoPdR, monoPdL, written, noise }, wrongR) => {
        const camera = cameraOf(monoPdR, monoPdL, noise);
        const original = sheet({ pdFar: written, monoPdR: wrongR, monoPdL }, camera);
        const mirror = sheet(
          { pdFar: written, monoPdR: monoPdL, monoPdL: wrongR },
          { pdFar: camera.pdFar!, monoPdR: camera.monoPdL!, monoPdL: camera.monoPdR! },
        );
        const lines = (slips: readonly Slip[], nameOf: (name: ReadingName) => ReadingName) =>
          slips.map((slip) => ({
            kind: slip.kind,
            weight: slip.weight.toFixed(9),
            values: slip.restorations.map((one) => [nameOf(one.name), one.restored]),
          }));
        for (const name of ['pdFar', 'monoPdR'] as const) {
          expect(lines(likelySlips(mirrored(name), mirror), mirrored)).toEqual(
            lines(likelySlips(name, original), (same) => same),
          );
        }
      }),
    );
  });

  it('has nothing more to say once its best value is written, and it always lands near the camera', () => {
    fc.assert(
      fc.property(faces, ({ monoPdR, monoPdL, written, noise }) => {
        const camera = cameraOf(monoPdR, monoPdL, noise);
        const [first] = likelySlips('pdFar', sheet({ pdFar: written, monoPdR, monoPdL }, camera));
        if (first === undefined || first.restorations.length > 1) return;
        const restored = first.restorations[0]!.restored;
        // both doubts at 95 %: sqrt(1.5² + 0.84²) = 1.72 mm
        expect(Math.abs(restored - camera.pdFar![0])).toBeLessThanOrEqual(1.73);
        expect(likelySlips('pdFar', sheet({ pdFar: restored, monoPdR, monoPdL }, camera))).toEqual([]);
      }),
    );
  });

  it('names swapped digits of a PD among its causes, whoever the wearer is', () => {
    fc.assert(
      fc.property(faces, ({ monoPdR, monoPdL, noise }) => {
        const pdFar = monoPdR + monoPdL;
        const written = ((pdFar % 10) | 0) * 10 + Math.floor(pdFar / 10) + (pdFar % 1);
        // 66 has no swap, and a swap of 9 mm is told from noise
        fc.pre(written >= 10 && written !== pdFar);
        const slips = likelySlips(
          'pdFar',
          sheet({ pdFar: written, monoPdR, monoPdL }, cameraOf(monoPdR, monoPdL, noise)),
        );
        const restored = slips
          .filter((slip) => slip.kind === 'digits-swapped')
          .map((slip) => slip.restorations[0]?.restored);
        expect(restored).toEqual([pdFar]);
      }),
    );
  });
});
