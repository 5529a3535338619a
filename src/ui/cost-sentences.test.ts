import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue, measurementOfReading } from '../core/catalogue/catalogue.js';
import { CENTRATION_STANDARDS } from '../core/lenses/centration-standards.js';
import type { ReadingDifference } from '../core/lenses/cost-of-difference.js';
import { costOfDifferences } from '../core/lenses/cost-of-difference.js';
import type { EyePrescription, Prescription } from '../core/lenses/prescription.js';
import type { CostSource } from '../session/prescription-costs.js';
import { costSaying, roomText, vertexSentence, withoutCostSentence } from './cost-sentences.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const ANSI = CENTRATION_STANDARDS['ansi-z80.1'];
const ISO = CENTRATION_STANDARDS['iso-21987'];
const CAMERA: CostSource = { kind: 'camera', from: 'picture' };
const NONE = { horizontal: { amount: 0, base: 'in' }, vertical: { amount: 0, base: 'up' } } as const;

function eye(sphereD: number, more: Partial<EyePrescription> = {}): EyePrescription {
  return { sphereD, cylinderD: 0, axisDeg: 180, addD: 0, prism: NONE, ...more };
}

function pair(R: EyePrescription, lensKind: Prescription['lensKind'] = 'single-vision'): Prescription {
  return { R, L: R, vertexDistanceMm: 12, lensKind };
}

/** All that is said, as one line. */
function said(
  prescription: Prescription,
  differences: readonly ReadingDifference[],
  source: CostSource = CAMERA,
  standard = ANSI,
): string {
  const [cost] = costOfDifferences(prescription, standard, differences);
  const toleranceOf = (name: ReadingDifference['name']): number =>
    measurementOfReading(catalogue, name).tolerance.value;
  const context = { prescription, standard, catalogue, toleranceOf };
  const saying = costSaying({ source, differences, cost: cost! }, context);
  if (saying === null) throw new Error('nothing is said');
  return `${saying.where}: ${saying.word}. ${saying.numbers}`.replaceAll('\u00a0', ' ');
}

function off(name: ReadingDifference['name'], differenceMm: number, standardUncertaintyMm = 0): ReadingDifference {
  return { name, differenceMm, standardUncertaintyMm };
}

describe('a cost in words', () => {
  it('says that a difference does not matter for weak lenses', () => {
    expect(said(pair(eye(-0.5)), [off('pdFar', 2)])).toBe(
      'PD, distance, hand less camera: does not matter. +2.0 mm: 0.10 \u0394 base in against 0.67 \u0394 allowed.',
    );
  });

  it('asks to read again only beyond the tolerance of the sheet, and where the lenses do not ask for it anyway', () => {
    const { value } = measurementOfReading(catalogue, 'pdFar').tolerance;
    expect(said(pair(eye(-0.5)), [off('pdFar', value)])).not.toContain('read again');
    expect(said(pair(eye(-0.5)), [off('pdFar', -value - 0.1)])).toContain('read again');
    expect(said(pair(eye(-6)), [off('pdFar', 3)])).not.toContain('read again');
  });

  it('marks verdicts that rest on values from memory, whatever they are', () => {
    const ofIso = (mm: number): string => said(pair(eye(-6)), [off('pdFar', mm)], CAMERA, ISO);
    expect(ofIso(3)).toContain('beyond the standard (values from memory). +3.0 mm');
    expect(ofIso(0.2)).toContain('does not matter (values from memory). +0.2 mm');
    expect(ofIso(1.8)).toContain('within the standard (values from memory). +1.8 mm');
    expect(said(pair(eye(-0.5)), [off('pdFar', 3)], CAMERA, ISO)).toContain(
      'does not matter (values from memory); read again all the same. +3.0 mm',
    );
    // no limit stands behind lenses without power, nor behind the half step of prescribing
    expect(said(pair(eye(0)), [off('pdFar', 0.5)], CAMERA, ISO)).not.toContain('memory');
    expect(said(pair(eye(-8)), [off('backVertexDistanceR', 5)], CAMERA, ISO)).not.toContain('memory');
    // ANSI Z80.1: the limits of prism for progressive lenses are from memory, those of the fitting point are not
    const progressive = pair(eye(-6, { addD: 2 }), 'progressive');
    expect(said(progressive, [off('monoPdR', 5), off('monoPdL', -5)])).not.toContain('memory');
    expect(said(progressive, [off('pdFar', 8)])).toContain('beyond the standard (values from memory)');
  });

  it('says that it does for strong ones, and by which rule', () => {
    expect(said(pair(eye(-6)), [off('pdFar', 3)])).toBe(
      'PD, distance, hand less camera: beyond the standard. +3.0 mm: 1.8 \u0394 base in against 1.5 \u0394 allowed (2.5 mm at 6.00 D).',
    );
  });

  it('carries the doubt of the camera, and no more digits than it allows', () => {
    // Prentice: 2 mm at -6.00 D are 1.2, and 1.96 times 0.5 mm are 0.59 either way
    expect(said(pair(eye(-6)), [off('pdFar', 2, 0.5)])).toBe(
      'PD, distance, hand less camera: may be beyond the standard. +2.0 ± 1.0 mm: 1.2 \u0394 base in (0.6 to 1.8) against 1.5 \u0394 allowed (2.5 mm at 6.00 D).',
    );
    // where the doubt reaches across nothing the base is not known
    expect(said(pair(eye(-6)), [off('pdFar', 0.5, 0.5)])).toContain('0.3 \u0394 horizontal (0.0 to 0.9) against');
  });

  it('names both sides of a measurement, and the parts of progressive lenses', () => {
    expect(
      said(pair(eye(-2, { addD: 2 }), 'progressive'), [off('monoPdR', 2), off('monoPdL', -0.5)], {
        kind: 'reader',
        name: 'Ben',
      }),
    ).toBe(
      'PD R and L, this reader less Ben: beyond the standard. R +2.0 mm, L −0.5 mm: ' +
        'the R fitting point lies 2.0 mm off sideways (1.0 mm allowed).',
    );
  });

  it('says only what counts', () => {
    // heights 2 mm apart at -6 D are 1.2 of 0.6; an eye below the centre of a minus lens has its base down
    expect(said(pair(eye(-6)), [off('fittingHeightR', 2)])).toContain(
      '+2.0 mm: 1.2 \u0394 base down before R against 0.6 \u0394 allowed (1.0 mm at 6.00 D).',
    );
  });

  it('never writes an amount beyond a limit as one that keeps to it', () => {
    // 2.51 mm at 6 D: 1.506 of 1.5
    expect(said(pair(eye(-6)), [off('pdFar', 2.51)])).toContain('1.51 \u0394 base in against 1.50 \u0394 allowed');
  });

  it('adds the prescribed prism to what each eye looks through', () => {
    const prism = { ...NONE, horizontal: { amount: 3, base: 'out' } } as const;
    const prescription = { ...pair(eye(5, { prism })), L: eye(5) };
    expect(said(prescription, [off('monoPdR', 2)])).toContain('With the prescribed prism: R 4 \u0394 base out.');
  });

  it('says what a vertex distance does', () => {
    expect(said(pair(eye(-8)), [off('backVertexDistanceR', 5)], { kind: 'suspicion' })).toBe(
      'Back vertex distance R, written less what was probably meant: half a step or more. ' +
        '+5.0 mm: R −8.00 acts 0.33 D stronger. Half a step of prescribing is 0.125 D.',
    );
  });

  it('says that lenses without power cost nothing', () => {
    expect(said(pair(eye(0)), [off('pdFar', 4)])).toContain(
      'does not matter; read again all the same. +4.0 mm: no prism, as',
    );
  });

  it('names in one sentence what no lens depends on', () => {
    const names = ['apertureR', 'apertureL', 'headWidth'] as const;
    expect(withoutCostSentence({ kind: 'none', names, reason: 'not-through-lenses' }, catalogue)).toBe(
      'Lid aperture and head width: no effect through the lenses.',
    );
  });
});

describe('the room of a reading', () => {
  it('is rounded to where the standard is still kept', () => {
    expect(roomText(2.4999)).toBe('2.4');
    expect(roomText(2.5)).toBe('2.5');
    expect(roomText(Infinity)).toBe('any');
    expect(roomText(13.4)).toBe('over 10');
  });
});

describe('the vertex distance in the chosen frame', () => {
  it('is put in numbers only where it matters', () => {
    const lens = (sphereD: number) => ({ sphereD, cylinderD: 0, axisDeg: 180 });
    // lens.vertex of the collected facts
    expect(vertexSentence({ furtherMm: 5, actsAs: lens(-7.6923), compensated: lens(-8.3333), matters: true })).toBe(
      '5.0 mm farther than tested: acts as about −7.69; −8.33 would act as prescribed',
    );
    expect(vertexSentence({ furtherMm: -1, actsAs: lens(-2), compensated: lens(-2), matters: false })).toBe(
      '1.0 mm nearer than tested: does not matter',
    );
  });
});
