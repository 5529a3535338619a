import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue, measurementOfReading } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { compareReading } from '../core/crosscheck/compare-reading.js';
import type { Explanation, Reconciliation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Estimate } from '../core/estimate/estimate.js';
import { parseReading } from '../core/reading/parse-reading.js';
import { explanationsOf } from './explanations.js';
import { joinedReadings, sheetMisfits, sumMisfits, writtenReadings } from './misfits.js';
import type { FieldRow, SheetRow } from './rows.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const NOTHING: Reconciliation = { suspicions: [], values: {}, doubts: {} };

function sure(value: number): Estimate {
  return { value, standardUncertainty: 0.25, low: value - 0.5, high: value + 0.5, unit: 'mm', budget: [] };
}

function fieldRow(name: ReadingName, typed: string, more: Partial<FieldRow> = {}): FieldRow {
  const measurement = measurementOfReading(catalogue, name);
  const reading = parseReading(typed, name, catalogue);
  const estimate = more.estimate ?? null;
  return {
    field: name,
    side: measurement.fields.find((field) => field.name === name)?.side ?? null,
    typed,
    reading,
    estimate: null,
    notComparable: null,
    areLidsFound: false,
    source: 'picture',
    finding: reading.ok && estimate !== null ? compareReading(reading.value, estimate, measurement.tolerance) : null,
    corrections: [],
    other: null,
    together: reading.ok ? reading.value : null,
    readersDiffer: false,
    confirmation: null,
    ...more,
  };
}

function rowOf(fields: readonly FieldRow[], covered = false): SheetRow {
  const measurement = measurementOfReading(catalogue, fields[0]!.field);
  return { measurement, gauge: null, fields, covered, withSquint: false };
}

function misfitsOf(fields: readonly FieldRow[], reconciliation = NOTHING) {
  return sheetMisfits(
    fields.map((field) => rowOf([field])),
    reconciliation,
    catalogue,
  );
}

function explaining(name: ReadingName, written: number, restored: number, probability: number): Explanation {
  return { slips: [{ kind: 'ten-off', restorations: [{ name, written, restored }] }], probability };
}

function suspicionOf(name: ReadingName, probability: number, explanations: readonly Explanation[] = []): Suspicion {
  return { names: [name], probability, explanations, conflict: null, expected: null };
}

const kindsOf = (misfits: ReturnType<typeof misfitsOf>) => misfits.map(({ kind, names }) => `${kind} ${names.join()}`);

describe('what does not fit', () => {
  it('is nothing where all fits', () => {
    expect(misfitsOf([fieldRow('pdFar', '63'), fieldRow('headWidth', '')])).toEqual([]);
  });

  it('comes most probable first, and what is merely seldom last', () => {
    const twice = parseReading('31 31.5 36 31', 'monoPdL', catalogue);
    if (!twice.ok) throw new Error('four repeats are a reading');
    const repeats = { ...twice.value.origin!.repeats!, farOff: [2] };
    const reading = { ok: true as const, value: { ...twice.value, origin: { ...twice.value.origin!, repeats } } };
    const other = { reader: 'Second', reading: parseReading('148', 'headWidth', catalogue) };
    const { high } = measurementOfReading(catalogue, 'apertureR').plausible.soft;
    const misfits = misfitsOf(
      [
        fieldRow('apertureR', String(high + 0.5)),
        fieldRow('monoPdL', '31 31.5 36 31', { reading }),
        fieldRow('headWidth', '155', { other, readersDiffer: true }),
        fieldRow('monoPdR', '29', { estimate: sure(33) }),
        fieldRow('templeWidth', '140'),
        fieldRow('pdFar', '53'),
        fieldRow('pdNear', '595'),
      ],
      { ...NOTHING, suspicions: [suspicionOf('templeWidth', 0.7), suspicionOf('pdFar', 0.99)] },
    );
    expect(kindsOf(misfits)).toEqual([
      'refused pdNear',
      'suspected pdFar',
      'suspected templeWidth',
      'disagrees monoPdR',
      'readers-differ headWidth',
      'far-off-repeat monoPdL',
      'unusual apertureR',
    ]);
    expect(misfits[4]).toMatchObject({ value: 155, otherReader: 'Second', otherValue: 148 });
    expect(misfits[5]).toMatchObject({ farOff: [36], others: [31, 31.5, 31] });
  });

  it('is refused with what the reconciliation says of it, and not suspected besides', () => {
    const explanation = explaining('pdFar', 635, 63.5, 0.9);
    const suspicions = [suspicionOf('pdFar', 1, [explanation])];
    const misfits = misfitsOf([fieldRow('pdFar', '635')], { ...NOTHING, suspicions });
    expect(kindsOf(misfits)).toEqual(['refused pdFar']);
    expect(explanationsOf(misfits[0]!)).toEqual([explanation]);
  });

  it('is refused where what is entered is no reading', () => {
    const misfits = misfitsOf([
      fieldRow('headWidth', '1S2'),
      fieldRow('pdFar', '63 6x'),
      fieldRow('apicalRadius', '9 mm'),
    ]);
    expect(misfits).toMatchObject([
      { kind: 'refused', names: ['headWidth'], failure: { kind: 'not-a-number', typed: '1S2' }, explanations: [] },
      { kind: 'refused', names: ['pdFar'], failure: { kind: 'not-a-number', typed: '6x' } },
      { kind: 'refused', names: ['apicalRadius'], failure: { kind: 'not-a-trial' } },
    ]);
  });

  it('is refused where sizes that were tried contradict each other', () => {
    // The smaller nose piece was loose and the larger tight: one of them is wrong.
    expect(misfitsOf([fieldRow('apicalRadius', '8 loose 10 tight')])).toMatchObject([
      { kind: 'refused', names: ['apicalRadius'], failure: { kind: 'trials-contradict' }, explanations: [] },
    ]);
    expect(misfitsOf([fieldRow('apicalRadius', '8 loose')])).toEqual([]);
  });

  it('is not said of the camera besides where a suspicion names the place, or would change it', () => {
    const disagreeing = fieldRow('headWidth', '146', { estimate: sure(164) });
    expect(kindsOf(misfitsOf([disagreeing]))).toEqual(['disagrees headWidth']);
    const named = { ...NOTHING, suspicions: [suspicionOf('headWidth', 0.8)] };
    expect(kindsOf(misfitsOf([disagreeing], named))).toEqual(['suspected headWidth']);
    const suspicions = [suspicionOf('templeWidth', 0.8, [explaining('headWidth', 146, 156, 0.7)])];
    expect(kindsOf(misfitsOf([disagreeing], { ...NOTHING, suspicions }))).toEqual(['suspected templeWidth']);
  });

  it('puts what the camera contradicts most before the rest', () => {
    const fields = [
      fieldRow('monoPdR', '31', { estimate: sure(33) }),
      fieldRow('monoPdL', '29', { estimate: sure(33) }),
    ];
    expect(kindsOf(misfitsOf(fields))).toEqual(['disagrees monoPdL', 'disagrees monoPdR']);
  });

  it('gives nothing away of what is still covered, by the camera or by the other reader', () => {
    const covered = rowOf(
      [
        fieldRow('apertureR', '10', {
          estimate: sure(7),
          other: { reader: 'Second', reading: null },
          readersDiffer: true,
        }),
        fieldRow('apertureL', ''),
      ],
      true,
    );
    expect(sheetMisfits([covered], NOTHING, catalogue)).toEqual([]);
  });

  it('is unusual only outside of what is usual, both bounds still inside', () => {
    const { low, high } = measurementOfReading(catalogue, 'headWidth').plausible.soft;
    expect(misfitsOf([fieldRow('headWidth', String(low))])).toEqual([]);
    expect(misfitsOf([fieldRow('headWidth', String(high))])).toEqual([]);
    expect(misfitsOf([fieldRow('headWidth', String(low - 1))])).toMatchObject([
      { kind: 'unusual', value: low - 1, usual: { low, high } },
    ]);
  });
});

describe('both eyes and the whole', () => {
  // Each plain reading scatters by the root of 0.404² + 0.5²/12, 0.429 mm: three of them by 0.743 mm, 1.46 mm in 95 of 100 cases.
  const eyes = (whole: string, right: string, left: string, more: Partial<FieldRow> = {}) => [
    fieldRow('pdFar', whole, more),
    fieldRow('monoPdR', right),
    fieldRow('monoPdL', left),
  ];

  it('do not add up beyond what three readings scatter, far and near alike', () => {
    expect(misfitsOf(eyes('66', '32.5', '31.5'))).toEqual([
      {
        kind: 'does-not-add-up',
        names: ['pdFar', 'monoPdR', 'monoPdL'],
        isNear: false,
        sum: 64,
        whole: 66,
        limit: expect.closeTo(1.456, 3) as number,
      },
    ]);
    expect(kindsOf(misfitsOf(eyes('62.5', '32.5', '31.5')))).toEqual(['does-not-add-up pdFar,monoPdR,monoPdL']);
    expect(misfitsOf(eyes('65', '32.5', '31.5'))).toEqual([]);
    const near = [fieldRow('pdNear', '63'), fieldRow('monoNearR', '30'), fieldRow('monoNearL', '31')];
    expect(misfitsOf(near)).toMatchObject([{ kind: 'does-not-add-up', isNear: true, sum: 61, whole: 63 }]);
  });

  it('have to be three', () => {
    expect(misfitsOf(eyes('66', '32.5', ''))).toEqual([]);
    expect(kindsOf(misfitsOf(eyes('66', '32.5', '3l')))).toEqual(['refused monoPdL']);
  });

  it('keep to the practice’s tolerance where that is less', () => {
    const [whole, right, left] = eyes('65', '32.5', '31.5').map((field) => rowOf([field]));
    const within = (value: number): readonly SheetRow[] => [
      { ...whole!, measurement: { ...whole!.measurement, tolerance: { ...whole!.measurement.tolerance, value } } },
      right!,
      left!,
    ];
    expect(sumMisfits(within(1), NOTHING)).toEqual([]);
    expect(sumMisfits(within(0.5), NOTHING)).toMatchObject([{ limit: 0.5 }]);
  });

  it('are left to a suspicion that touches one of the three, or would change it', () => {
    const fields = eyes('66', '32.5', '31.5');
    const named = { ...NOTHING, suspicions: [suspicionOf('monoPdL', 0.8)] };
    expect(kindsOf(misfitsOf(fields, named))).toEqual(['suspected monoPdL']);
    const changing = { ...NOTHING, suspicions: [suspicionOf('pdNear', 0.8, [explaining('pdFar', 66, 64, 0.6)])] };
    expect(kindsOf(misfitsOf(fields, changing))).toEqual(['suspected pdNear']);
  });

  it('are held against what both readers say together, and come before what is merely seldom', () => {
    const own = parseReading('66', 'pdFar', catalogue);
    if (!own.ok) throw new Error('66 is a reading');
    const together = { ...own.value, value: 64.5 };
    expect(misfitsOf(eyes('66', '32.5', '31.5', { together }))).toEqual([]);
    const { high } = measurementOfReading(catalogue, 'headWidth').plausible.soft;
    const seldom = [fieldRow('headWidth', String(high + 1)), ...eyes('66', '32.5', '31.5')];
    expect(kindsOf(misfitsOf(seldom))).toEqual(['does-not-add-up pdFar,monoPdR,monoPdL', 'unusual headWidth']);
  });
});

describe('what is written', () => {
  it('has in it what cannot be, but not one bad number of several', () => {
    const fields = [fieldRow('pdFar', '635'), fieldRow('pdNear', '59 595'), fieldRow('headWidth', '-150')];
    const written = writtenReadings([rowOf(fields)], catalogue);
    expect(written.pdFar?.value).toBe(635);
    expect(written.headWidth?.value).toBe(-150);
    expect(written.pdNear).toBeUndefined();
  });

  it('is what both readers say together where they agree', () => {
    const own = parseReading('63', 'pdFar', catalogue);
    if (!own.ok) throw new Error('63 is a reading');
    const together = { ...own.value, value: 63.25 };
    expect(writtenReadings([rowOf([fieldRow('pdFar', '63', { together })])], catalogue).pdFar?.value).toBe(63.25);
  });

  it('is known to be two readers’ only where both are in and agree', () => {
    const other = { reader: 'Second', reading: parseReading('63.5', 'pdFar', catalogue) };
    const joined = (more: Partial<FieldRow>) => [...joinedReadings([rowOf([fieldRow('pdFar', '63', more)])])];
    expect(joined({ other })).toEqual(['pdFar']);
    expect(joined({ other, readersDiffer: true })).toEqual([]);
    expect(joined({ other: { ...other, reading: null } })).toEqual([]);
    expect(joined({})).toEqual([]);
  });
});
