import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Conflict, Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Restoration, Slip, SlipKind } from '../core/crosscheck/slip.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { Readings } from '../core/reading/reading.js';
import { readingOfRepeats, takeReading } from '../core/reading/reading.js';
import type { WrittenSheet } from './slip-sentences.js';
import {
  conflictSentence,
  explanationSentence,
  nextSentence,
  probabilityWords,
  suspicionSentence,
} from './slip-sentences.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const GAUGE: Gauge = {
  id: 'b',
  name: 'Gauge B',
  serves: ['crestHeight'],
  resolution: 1,
  zeroOffset: 4,
  bias: 0,
  checkedOn: null,
};

function sheetOf(values: { readonly [Name in ReadingName]?: number }, gauges: readonly Gauge[] = []): WrittenSheet {
  const entries = Object.entries(values) as [ReadingName, number][];
  const readings: Readings = Object.fromEntries(
    entries.map(([name, value]) => [name, takeReading(name, value, catalogue)]),
  );
  return { readings, catalogue, gauges };
}

const EMPTY = sheetOf({});

const one = (name: ReadingName, written: number, restored: number): Restoration => ({ name, written, restored });
const slip = (kind: SlipKind, ...restorations: readonly Restoration[]): Slip => ({ kind, restorations });
const because = (probability: number, ...slips: Explanation['slips']): Explanation => ({ slips, probability });

// One of every kind, and what is said of it. The record does not compile where a kind is missing.
const SLIPS: Readonly<Record<SlipKind, readonly [Slip, string]>> = {
  'digits-swapped': [
    slip('digits-swapped', one('pdFar', 36.5, 63.5)),
    'PD, distance was probably written with two digits swapped: 36.5 instead of 63.5 mm (86 %).',
  ],
  'sides-swapped': [
    slip('sides-swapped', one('crestHeightR', 5, 3), one('crestHeightL', 3, 5)),
    'Crest height R and L were probably swapped: R 5 instead of 3, L 3 instead of 5 mm (86 %).',
  ],
  'offset-forgotten': [
    slip('offset-forgotten', one('crestHeightL', 1, 5)),
    'Crest height L was probably written without the 4 mm that the gauge “Gauge B” needs: 1 instead of 5 mm (86 %).',
  ],
  'offset-twice': [
    slip('offset-twice', one('crestHeightL', 9, 5)),
    'The 4 mm that the gauge “Gauge B” needs was probably added twice to crest height L: 9 instead of 5 mm (86 %).',
  ],
  'near-for-distance': [
    slip('near-for-distance', one('pdFar', 59.5, 63.5)),
    'The near distance was probably written for PD, distance: 59.5 instead of 63.5 mm (86 %).',
  ],
  'distance-for-near': [
    slip('distance-for-near', one('monoNearR', 31, 29)),
    'The far distance was probably written for near PD R: 31 instead of 29 mm (86 %).',
  ],
  'half-for-whole': [
    slip('half-for-whole', one('pdFar', 31.5, 63)),
    'One eye’s distance was probably written for PD, distance: 31.5 instead of 63 mm (86 %).',
  ],
  'whole-for-half': [
    slip('whole-for-half', one('monoPdL', 63, 31.5)),
    'Both eyes’ distance was probably written for PD L: 63 instead of 31.5 mm (86 %).',
  ],
  halved: [
    slip('halved', one('monoPdR', 31.5, 29.5), one('monoPdL', 31.5, 33.5)),
    'PD R and L were probably not measured but taken as half of the whole: R 31.5 instead of 29.5, L 31.5 instead of 33.5 mm (86 %).',
  ],
  'point-moved': [
    slip('point-moved', one('headWidth', 15.2, 152)),
    'Head width was probably written with the decimal point moved or lost: 15.2 instead of 152 mm (86 %).',
  ],
  centimetres: [
    slip('centimetres', one('pdNear', 5.95, 59.5)),
    'PD, near was probably written in centimetres: 5.95 instead of 59.5 mm (86 %).',
  ],
  inches: [
    slip('inches', one('headWidth', 6, 152)),
    'Head width was probably written in inches: 6 instead of 152 mm (86 %).',
  ],
  'rows-swapped': [
    slip('rows-swapped', one('headWidth', 142, 152), one('templeWidth', 152, 142)),
    'Head width and temple width were probably swapped: head width 142 instead of 152, temple width 152 instead of 142 mm (86 %).',
  ],
  'row-repeated': [
    slip('row-repeated', one('templeWidth', 152, 142)),
    'The number of the row above or below was probably written again for temple width: 152 instead of 142 mm (86 %).',
  ],
  'ten-off': [
    slip('ten-off', one('pdFar', 61, 71)),
    'PD, distance was probably read at the wrong ten: 61 instead of 71 mm (86 %).',
  ],
  'digit-wrong': [
    slip('digit-wrong', one('pantoscopicAngle', 1.5, 9.5)),
    'Pantoscopic angle was probably written with one digit wrong: 1.5 instead of 9.5° (86 %).',
  ],
  'sign-lost': [
    slip('sign-lost', one('crestHeightL', 3, -3)),
    'Crest height L was probably written with the wrong sign: 3 instead of \u22123 mm (86 %).',
  ],
};

describe('what probably happened', () => {
  it.each(Object.entries(SLIPS))('is said with its numbers: %s', (_, [happened, said]) => {
    const sheet = sheetOf({}, [GAUGE]);
    expect(explanationSentence([because(0.86, happened)], sheet)).toBe(said);
    expectSentence(said);
  });

  it.each(Object.entries(SLIPS))('is said in a few words where it is the next best: %s', (_, [happened]) => {
    const best = because(0.8, slip('ten-off', one('bridgeProjection', 8, 18)));
    const said = nextSentence([best, because(0.12, happened)], EMPTY) ?? '';
    expect(said).toMatch(/^Next: .* \(12 %\)\.$/);
    expectSentence(said);
  });

  it('is told row by row where right and left of two rows changed places', () => {
    const exchanged = slip(
      'rows-swapped',
      one('frontalAngleR', 24, 18),
      one('splayAngleR', 18, 24),
      one('frontalAngleL', 25, 19.5),
      one('splayAngleL', 19.5, 25),
    );
    const said = explanationSentence([because(0.86, exchanged)], EMPTY) ?? '';
    expect(said).toBe(
      'The rows frontal angle and splay angle were probably swapped, right and left: frontal angle R 24 instead of 18°, L 25 instead of 19.5°; splay angle R 18 instead of 24°, L 19.5 instead of 25° (86 %).',
    );
    expectSentence(said);
    const best = because(0.8, slip('ten-off', one('bridgeProjection', 8, 18)));
    expect(nextSentence([best, because(0.12, exchanged)], EMPTY)).toBe(
      'Next: frontal angle and splay angle, two rows swapped (12 %).',
    );
  });

  it('names no gauge where several need as much, or none does', () => {
    const explanations = [because(0.86, SLIPS['offset-forgotten'][0])];
    const said = 'without the 4 mm that a gauge needs';
    expect(explanationSentence(explanations, sheetOf({}, [GAUGE, { ...GAUGE, id: 'c', name: 'C' }]))).toContain(said);
    expect(explanationSentence(explanations, sheetOf({}, [{ ...GAUGE, zeroOffset: 5 }]))).toContain(said);
    expect(explanationSentence(explanations, sheetOf({}, [{ ...GAUGE, serves: ['lidAperture'] }]))).toContain(said);
  });

  it('is two things where two slips make it', () => {
    const both = because(0.45, SLIPS['ten-off'][0], SLIPS['sides-swapped'][0]);
    expect(explanationSentence([both], EMPTY)).toBe(
      'Two things (45 %): PD, distance was perhaps read at the wrong ten (61 instead of 71 mm), and crest height R and L were perhaps swapped (R 5 instead of 3, L 3 instead of 5 mm).',
    );
    expect(nextSentence([because(0.5, SLIPS['ten-off'][0]), both], EMPTY)).toBe(
      'Next: read at the wrong ten, then 71 mm and crest height R and L, right and left swapped (45 %).',
    );
  });

  it('may be where it is less probable than all else together, with every number that it could restore', () => {
    const best = because(0.4, slip('half-for-whole', one('pdFar', 31.5, 63)));
    expect(explanationSentence([best], EMPTY)).toContain('perhaps');
    const same = because(0.3, slip('half-for-whole', one('pdFar', 31.5, 63.5)));
    expect(explanationSentence([best, same], EMPTY)).toContain('probably');
    expect(nextSentence([best, same], EMPTY)).toBe('Next: the same, but 63.5 mm (30 %).');
  });

  it('has no next best that is hardly probable', () => {
    const [best, next] = [because(0.9, SLIPS['ten-off'][0]), because(0.09, SLIPS['digits-swapped'][0])];
    expect(nextSentence([best, next], EMPTY)).toBeNull();
    expect(nextSentence([best], EMPTY)).toBeNull();
    expect(explanationSentence([], EMPTY)).toBeNull();
  });

  it.each([
    [0.005, 'under 1 %'],
    [0.01, '1 %'],
    [0.864, '86 %'],
    [0.99, '99 %'],
    [0.9999, 'over 99 %'],
    [1, 'over 99 %'],
  ])('is never quite nothing and never certain: %s', (probability, said) => {
    expect(probabilityWords(probability)).toBe(said);
  });
});

const against = (relation: Conflict['with'], expected: number, ...names: readonly ReadingName[]): Conflict => ({
  with: relation,
  names,
  expected,
  standardUncertainty: 1,
});

const SHEET = sheetOf({
  pdFar: 61,
  monoPdR: 36,
  monoPdL: 35,
  pdNear: 57,
  monoNearR: 34,
  monoNearL: 33,
  apicalRadius: 9,
  frontalAngleR: 25,
  frontalAngleL: 26.5,
  distanceBetweenRims10: 14,
  lengthToBendR: 98,
  lengthToBendL: 97,
  lengthOfDropR: 42,
  lengthOfDropL: 41,
  overallSideLength: 104,
  lengthToTangentL: 103,
  headWidth: 142,
  templeWidth: 152,
  boxLensWidth: 65,
  distanceBetweenLenses: 18,
  crestHeightR: 5,
  crestHeightL: -3,
  fittingHeightR: 20,
  fittingHeightL: 20,
  angleOfSideR: 18,
  angleOfSideL: 9,
  earPointDifference: 1,
  pantoscopicAngle: 19,
});

// One of every kind, and what is said of it.
const CONFLICTS: Readonly<Record<Conflict['with'], readonly [Conflict, string]>> = {
  'eyes-sum': [
    against('eyes-sum', 71, 'pdFar', 'monoPdR', 'monoPdL'),
    'R 36 and L 35 make 71 mm; 61 is written for both eyes.',
  ],
  'near-eyes-sum': [
    against('near-eyes-sum', 24, 'monoNearR', 'pdNear', 'monoNearL'),
    'Near, R 34 and L 33 make 67 mm; 57 is written for both eyes.',
  ],
  'near-from-far': [
    against('near-from-far', 57.21, 'pdNear', 'pdFar'),
    'From PD, distance (61 mm) about 57.2 mm follows for PD, near; 57 mm is written.',
  ],
  'nose-flanks': [
    against('nose-flanks', 20.7, 'distanceBetweenRims10', 'apicalRadius', 'frontalAngleR', 'frontalAngleL'),
    'From apical radius (9 mm) and frontal angle (R 25°, L 26.5°) about 21 mm follows for distance between rims at 10 mm; 14 mm is written.',
  ],
  'side-sum': [
    against('side-sum', 139, 'overallSideLength', 'lengthToBendR', 'lengthToBendL', 'lengthOfDropR', 'lengthOfDropL'),
    'A side is as long as its way to the bend and its drop: from length to bend (R 98, L 97 mm) and length of drop (R 42, L 41 mm) about 139 mm follows for overall length of side; 104 mm is written.',
  ],
  'tangent-before-bend': [
    against('tangent-before-bend', 92, 'lengthToTangentL', 'lengthToBendL'),
    'The tangent comes a little before the bend: from length to bend L (97 mm) about 92 mm follows for length to tangent L; 103 mm is written.',
  ],
  'temples-in-head': [
    against('temples-in-head', 124, 'templeWidth', 'headWidth'),
    'Temples are narrower than the head, but temple width is written as 152 mm and head width as 142 mm.',
  ],
  'frame-around-pd': [
    against('frame-around-pd', 50.7, 'boxLensWidth', 'distanceBetweenLenses', 'pdFar'),
    'The frame’s centres usually stand about as far apart as the eyes: from distance between lenses (18 mm) and PD, distance (61 mm) about 50.7 mm follows for box lens width; 65 mm is written.',
  ],
  'eye-heights': [
    against('eye-heights', 5, 'crestHeightL', 'crestHeightR', 'fittingHeightR', 'fittingHeightL'),
    'Where one eye is higher, crest and fitting heights show it: from crest height R (5 mm) and fitting height (R 20, L 20 mm) about 5 mm follows for crest height L; \u22123 mm is written.',
  ],
  'ear-heights': [
    against('ear-heights', 8, 'angleOfSideR', 'angleOfSideL', 'earPointDifference'),
    'The side on the higher ear is flatter: from angle of side L (9°) and ear-point difference (1 mm) about 8° follows for angle of side R; 18° is written.',
  ],
  'lean-of-front': [
    against('lean-of-front', 8, 'pantoscopicAngle', 'angleOfSideR', 'angleOfSideL'),
    'The front leans about as its sides are angled: from angle of side (R 18°, L 9°) about 8° follows for pantoscopic angle; 19° is written.',
  ],
  'sides-alike': [
    against('sides-alike', -3, 'crestHeightR', 'crestHeightL'),
    'Crest height R is 5 mm and L \u22123 mm: right and left seldom differ so much.',
  ],
  camera: [against('camera', 70.96, 'pdFar'), 'The camera says about 71 mm for PD, distance; 61 mm is written.'],
  population: [
    against('population', 63.36, 'pdFar'),
    '61 mm for PD, distance is rare among people: about 63.4 mm is usual.',
  ],
};

describe('why a reading is suspected', () => {
  it.each(Object.entries(CONFLICTS))('is said with both numbers: %s', (_, [conflict, said]) => {
    expect(conflictSentence(conflict, SHEET)).toBe(said);
    expect(said).toMatch(/^[A-Z\d].*\.$/);
  });

  it('is said by what all else says where no rule alone shows it', () => {
    const suspicion: Suspicion = {
      names: ['pdFar'],
      probability: 0.8,
      explanations: [],
      conflict: null,
      expected: { value: 70.6, standardUncertainty: 1 },
    };
    expect(suspicionSentence(suspicion, SHEET)).toBe('All else says about 70.6 mm for PD, distance; 61 mm is written.');
    expect(suspicionSentence({ ...suspicion, expected: null }, SHEET)).toBe(
      'PD, distance: 61 mm does not fit the rest.',
    );
    expect(suspicionSentence({ ...suspicion, conflict: CONFLICTS['eyes-sum'][0] }, SHEET)).toBe(
      CONFLICTS['eyes-sum'][1],
    );
  });

  it('says a mean of several repeats to a tenth, and one number as it was typed', () => {
    const values = [35.5, 36, 36].map((value) => ({ scale: value, value }));
    const mean = readingOfRepeats('monoPdR', values, catalogue, null);
    const readings: Readings = { ...sheetOf({ pdFar: 6.15, monoPdL: 35 }).readings, monoPdR: mean };
    expect(conflictSentence(CONFLICTS['eyes-sum'][0], { ...SHEET, readings })).toBe(
      'R 35.8 and L 35 make 70.8 mm; 6.15 is written for both eyes.',
    );
  });

  it('says of what two readers read together that it is their mean', () => {
    const readings: Readings = { ...SHEET.readings, pdFar: takeReading('pdFar', 66.4583, catalogue) };
    const sheet: WrittenSheet = { ...SHEET, readings, joined: new Set(['pdFar']) };
    expect(conflictSentence(CONFLICTS['eyes-sum'][0], sheet)).toBe(
      'R 36 and L 35 make 71 mm; 66.5 (mean of both readers) is written for both eyes.',
    );
    expect(conflictSentence(CONFLICTS.camera[0], sheet)).toBe(
      'The camera says about 71 mm for PD, distance; 66.5 mm (mean of both readers) is written.',
    );
    expect(conflictSentence(CONFLICTS['near-from-far'][0], sheet)).toContain(
      'From PD, distance (66.5 mm, mean of both readers) about',
    );
  });

  it('says of temples that are narrower than the head, but by too much, what would follow', () => {
    const sheet = sheetOf({ headWidth: 152, templeWidth: 90 });
    expect(conflictSentence(against('temples-in-head', 131.7, 'templeWidth', 'headWidth'), sheet)).toBe(
      'Temples follow the head: from head width (152 mm) about 132 mm follows for temple width; 90 mm is written.',
    );
  });
});
