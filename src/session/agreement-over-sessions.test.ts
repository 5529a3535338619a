import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { CAMERA_OFF_MM, driftingSessions, GAUGES, READERS } from '../../tests/support/drifting-sessions.js';
import { assembleCatalogue, measurementById } from '../core/catalogue/catalogue.js';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { ComparedPair, GroupAgreement, Grouping } from './agreement-over-sessions.js';
import {
  againstOthers,
  agreementOfGroup,
  countComparable,
  groupPairs,
  LEAST_FOR_LIMITS,
  LEAST_FOR_MEAN,
  pairsOfSession,
} from './agreement-over-sessions.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function pairsOf(records: readonly SessionRecord[], id: MeasurementId, openId: string | null = null) {
  const measurement = measurementById(catalogue, id);
  return records.flatMap((record) => pairsOfSession(record, measurement, catalogue, openId).pairs);
}

function agreements(pairs: readonly ComparedPair[], by: Grouping): readonly GroupAgreement[] {
  return groupPairs(pairs, by).map((group) => agreementOfGroup(group, 2, false));
}

function changed(record: SessionRecord, change: (sheet: SessionRecord['sheet']) => Partial<SessionRecord['sheet']>) {
  return { ...record, sheet: { ...record.sheet, ...change(record.sheet) } };
}

const [visit] = driftingSessions(1) as readonly [SessionRecord];

describe('the pairs of a session', () => {
  it('are hand, camera, their difference and mean, with gauge, reader and day', () => {
    const [pair, ...others] = pairsOf([visit], 'binocularPd');
    expect(others).toEqual([]);
    const hand = Number(visit.sheet.readers.first.readings.pdFar);
    const camera = visit.camera!.estimates.pdFar;
    expect(pair).toMatchObject({
      sessionId: visit.id,
      wearer: 'Wearer 1',
      at: visit.begunAt,
      atMs: Date.parse(visit.begunAt),
      name: 'pdFar',
      side: null,
      reader: visit.sheet.readers.first.reader,
      handValue: hand,
      cameraValue: camera.value,
    });
    expect(GAUGES.map(({ gauge }) => gauge.id)).toContain(pair!.gauge!.id);
    expect(pair!.difference).toBeCloseTo(hand - camera.value, 10);
    expect(pair!.mean).toBeCloseTo((hand + camera.value) / 2, 10);
    expect(pair!.standardUncertainty).toBeGreaterThan(camera.standardUncertainty);
    expect(pairsOf([visit], 'monocularPd').map(({ side }) => side)).toEqual(['R', 'L']);
  });

  it('are of both readers', () => {
    const both = changed(visit, ({ readers }) => ({
      readers: { ...readers, second: { ...readers.first, reader: ' Ines ' } },
    }));
    expect(pairsOf([both], 'binocularPd').map(({ reader }) => reader)).toEqual([
      visit.sheet.readers.first.reader,
      'Ines',
    ]);
  });

  it('leave out what is covered on the sheet', () => {
    const half = changed(visit, ({ readers: { first, second } }) => ({
      readers: { first: { ...first, readings: { ...first.readings, monoPdL: '' } }, second },
    }));
    const measurement = measurementById(catalogue, 'monocularPd');
    expect(pairsOfSession(half, measurement, catalogue, null)).toEqual({ pairs: [], covered: 1 });
    const shown = changed(half, ({ settings }) => ({ settings: { ...settings, covered: false } }));
    expect(pairsOfSession(shown, measurement, catalogue, null).pairs).toHaveLength(1);
  });

  it('leave out, of the session on the sheet, what the second reader has still to read', () => {
    const taken = changed(visit, () => ({ reader: 'second' }));
    expect(pairsOf([taken], 'binocularPd', taken.id)).toEqual([]);
    expect(pairsOf([taken], 'binocularPd', 'another')).toHaveLength(1);
  });

  it('leave out what no camera measured, what is no number, and PDs with a squint', () => {
    expect(pairsOf([{ ...visit, camera: null }], 'binocularPd')).toEqual([]);
    const noNumber = changed(visit, ({ readers: { first, second } }) => ({
      readers: { first: { ...first, readings: { ...first.readings, pdFar: 'sixty' } }, second },
    }));
    expect(pairsOf([noNumber], 'binocularPd')).toEqual([]);
    expect(pairsOf([changed(visit, ({ notes }) => ({ notes: { ...notes, squint: true } }))], 'binocularPd')).toEqual(
      [],
    );
  });

  it('are counted by measurement without being worked out', () => {
    const counts = countComparable([visit, { ...visit, camera: null }], catalogue);
    expect([...counts]).toEqual([
      ['binocularPd', 1],
      ['monocularPd', 1],
    ]);
  });
});

describe('groups', () => {
  const pair = (change: Partial<ComparedPair>): ComparedPair => ({ ...pairsOf([visit], 'binocularPd')[0]!, ...change });

  it('know a reader with other capitals, and a gauge that is called otherwise now', () => {
    const named = groupPairs(
      [pair({ reader: 'MARA', atMs: 1 }), pair({ reader: 'Mara', atMs: 2 }), pair({ reader: '' })],
      'reader',
    );
    expect(named.map(({ name, pairs }) => [name, pairs.length])).toEqual([
      ['Mara', 2],
      ['', 1],
    ]);
    const gauges = groupPairs(
      [
        pair({ gauge: { id: 'a', name: 'New name' }, atMs: 2 }),
        pair({ gauge: { id: 'a', name: 'Old name' }, atMs: 1 }),
        pair({ gauge: null }),
      ],
      'gauge',
    );
    expect(gauges.map(({ key, name }) => [key, name])).toEqual([
      ['a', 'New name'],
      ['', ''],
    ]);
  });

  it('say nothing of what they are too few for', () => {
    const few = (count: number) =>
      agreements(
        pairsOf(driftingSessions(count), 'binocularPd').map((one) => ({ ...one, reader: 'one' })),
        'reader',
      )[0]!;
    expect([few(LEAST_FOR_MEAN - 1).bias, few(LEAST_FOR_MEAN - 1).limits, few(LEAST_FOR_MEAN - 1).drift]).toEqual([
      null,
      null,
      null,
    ]);
    expect(few(LEAST_FOR_MEAN).bias).not.toBeNull();
    expect(few(LEAST_FOR_LIMITS - 1).limits).toBeNull();
    expect(few(LEAST_FOR_LIMITS).limits?.count).toBe(LEAST_FOR_LIMITS);
  });

  it('tell no drift from a fortnight', () => {
    const [all] = agreements(pairsOf(driftingSessions(40, 14), 'binocularPd'), 'gauge');
    expect(all!.visits).toBeGreaterThanOrEqual(LEAST_FOR_LIMITS);
    expect(all!.drift).toBeNull();
  });
});

describe('a practice whose gauges, readers and camera are known', () => {
  const pairs = pairsOf(driftingSessions(400), 'binocularPd');

  it('has slips that are not counted, unless that is asked for', () => {
    const groups = agreements(pairs, 'gauge');
    const farOff = groups.flatMap((group) => group.farOff);
    expect(farOff).toHaveLength(10);
    expect(farOff.every(({ difference }) => difference > 5)).toBe(true);
    const [group] = groupPairs(pairs, 'gauge');
    expect(agreementOfGroup(group!, 2, true).farOff).toEqual([]);
  });

  it('shows what one gauge reads more than the other, whatever the camera is off by', () => {
    const groups = agreements(pairs, 'gauge');
    const long = groups.find(({ group }) => group.key === 'long-rule')!;
    const contrast = againstOthers(long, groups)!;
    expect(contrast.interval.low).toBeLessThan(0.6);
    expect(contrast.interval.high).toBeGreaterThan(0.6);
    expect(contrast.interval.low).toBeGreaterThan(0.3);
    // against the camera itself its own deviation is in it: 0.2 more, and the mean drift of the readers
    expect(long.bias!.value).toBeGreaterThan(0.6 - CAMERA_OFF_MM);
  });

  it('shows which reader drifts', () => {
    const groups = agreements(pairs, 'reader');
    const driftOf = (name: string) => groups.find(({ group }) => group.name === name)!.drift!;
    const { driftMm } = READERS[1];
    const mara = driftOf('Mara');
    expect(mara.low).toBeGreaterThan(0);
    expect(mara.low).toBeLessThan(driftMm);
    expect(mara.high).toBeGreaterThan(driftMm);
    expect(mara.per30Days).toBeCloseTo(mara.at(30 * 86_400_000) - mara.at(0), 9);
    const steady = driftOf('Q. D.');
    expect(steady.low).toBeLessThan(0);
    expect(steady.high).toBeGreaterThan(0);
  });

  it('scatters about as the doubts of hand and camera say', () => {
    for (const { scatter } of agreements(pairs, 'gauge')) {
      expect(scatter!.seen / scatter!.expected).toBeGreaterThan(0.8);
      expect(scatter!.seen / scatter!.expected).toBeLessThan(1.3);
    }
  });

  it('counts visits, not eyes', () => {
    const [group] = agreements(pairsOf(driftingSessions(100), 'monocularPd'), 'gauge');
    expect(group!.counted.length).toBe(2 * group!.visits);
    expect(group!.limits!.groups).toBe(group!.visits);
    // right and left of a visit are off by the same scale: an interval that took them as two would be narrower by nearly √2
    const asTwo = group!.limits!.standardDeviation / Math.sqrt(group!.counted.length);
    expect(group!.bias!.standardError).toBeGreaterThan(1.15 * asTwo);
  });
});

it('needs little time for a thousand visits', () => {
  const records = driftingSessions(1000);
  const before = process.cpuUsage();
  const groups = agreements(pairsOf(records, 'monocularPd'), 'reader');
  const { user, system } = process.cpuUsage(before);
  expect(groups).toHaveLength(3);
  // 60 ms here; the screen does it in slices
  expect((user + system) / 1000).toBeLessThan(2000);
});
