import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { flaggedRecord, suspectedBy, unusualAt } from '../../tests/support/flagged-records.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { SLIP_KINDS } from '../core/crosscheck/slip.js';
import type { AuditQuery, AuditVocabulary } from './audit-list.js';
import {
  createAuditIndex,
  findingsAskedFor,
  listAudited,
  MISFIT_KINDS,
  nextAuditSort,
  WHOLE_AUDIT,
} from './audit-list.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

const named = <Key extends string>(keys: readonly Key[]): Record<Key, string> =>
  Object.fromEntries(keys.map((key) => [key, key.replaceAll('-', ' ')])) as Record<Key, string>;
const VOCABULARY: AuditVocabulary = {
  kinds: named(MISFIT_KINDS),
  slips: named(SLIP_KINDS),
  measurements: catalogue.map(({ id }) => (id === 'headWidth' ? 'Head width' : id)),
};

const REFUSED = {
  kind: 'refused',
  names: ['frontalAngleR'],
  failure: { kind: 'impossible', value: 95, scale: 95, range: { low: 0, high: 60 }, place: null },
  explanations: [],
} as const;

const index = createAuditIndex(catalogue);

// Sureness from above: Çelik (cannot be), Zoë (0.99), Ann (0.8), Bob (only unusual).
const ROWS = [
  flaggedRecord(0, 'Ann', [suspectedBy('ten-off', 'headWidth', [143, 153], [0.8, 0.7]), unusualAt('pdFar', 80)]),
  flaggedRecord(1, 'Bob', [unusualAt('headWidth', 170)], { headWidth: 170 }),
  flaggedRecord(2, 'Zoë', [suspectedBy('digits-swapped', 'pdFar', [36.5, 63.5], [0.99, 0.9])]),
  flaggedRecord(60, 'Çelik', [REFUSED], { frontalAngleR: 95 }),
].map((record) => index.add(record, record.origin.kind === 'table' ? (record.origin.record ?? '') : ''));

function shown(query: Partial<AuditQuery>): readonly string[] {
  return listAudited(ROWS, { ...WHOLE_AUDIT, ...query }, VOCABULARY).map(({ row }) => row.folded);
}

describe('the list of flagged records', () => {
  it('has the surest first, and what is merely unusual last', () => {
    expect(shown({})).toEqual(['celik', 'zoe', 'ann', 'bob']);
    expect(shown({ sort: { column: 'probability', descending: false } })).toEqual(['bob', 'ann', 'zoe', 'celik']);
  });

  it('is sorted by place, and by the order of the sheet', () => {
    expect(shown({ sort: { column: 'place', descending: false } })).toEqual(['ann', 'bob', 'zoe', 'celik']);
    expect(shown({ sort: { column: 'place', descending: true } })).toEqual(['celik', 'zoe', 'bob', 'ann']);
    // PD stands before head width, that before the nose; equal ones stay in the order of the source either way
    expect(shown({ sort: { column: 'measurement', descending: false } })).toEqual(['zoe', 'ann', 'bob', 'celik']);
    expect(shown({ sort: { column: 'measurement', descending: true } })).toEqual(['celik', 'ann', 'bob', 'zoe']);
  });

  it('is narrowed to findings, and shows a record by the one that was asked for', () => {
    expect(shown({ kinds: ['refused', 'suspected'] })).toEqual(['celik', 'zoe', 'ann']);
    expect(shown({ slip: 'ten-off' })).toEqual(['ann']);
    expect(shown({ measurement: 'headWidth' })).toEqual(['ann', 'bob']);
    // Ann's head width is suspected and her PD is unusual, but no one finding is both
    expect(shown({ measurement: 'headWidth', kinds: ['unusual'] })).toEqual(['bob']);
    const [line] = listAudited([ROWS[0]!], { ...WHOLE_AUDIT, kinds: ['unusual'] }, VOCABULARY);
    expect(line?.finding.places).toEqual(['pdFar']);
    const asked = findingsAskedFor({ ...WHOLE_AUDIT, search: 'unusual' }, VOCABULARY)(ROWS[0]!);
    expect(asked.map(({ misfit }) => misfit.kind)).toEqual(['unusual']);
  });

  it('is searched by names without their marks, lines, measurements, slips and numbers', () => {
    expect(shown({ search: 'ZOE' })).toEqual(['zoe']);
    expect(shown({ search: 'celik' })).toEqual(['celik']);
    expect(shown({ search: '62' })).toEqual(['celik']);
    expect(shown({ search: 'head' })).toEqual(['ann', 'bob']);
    expect(shown({ search: 'digits swapped' })).toEqual(['zoe']);
    expect(shown({ search: '63,5' })).toEqual(['zoe']);
    expect(shown({ search: '17' })).toEqual(['bob']);
    expect(shown({ search: 'head 153 ann' })).toEqual(['ann']);
    expect(shown({ search: 'zoe head' })).toEqual([]);
  });

  it('counts records, each once for whatever it has', () => {
    const { kinds, slips, measurements } = index.counts();
    expect([...kinds]).toEqual([
      ['refused', 1],
      ['suspected', 2],
      ['unusual', 2],
    ]);
    expect([...slips]).toEqual([
      ['digits-swapped', 1],
      ['ten-off', 1],
    ]);
    expect([...measurements]).toEqual([
      ['binocularPd', 2],
      ['headWidth', 2],
      ['frontalAngle', 1],
    ]);
  });

  it('sorts twenty thousand rows without being felt', () => {
    const { add } = createAuditIndex(catalogue);
    const many = Array.from({ length: 20_000 }, (_, place) => {
      // 20,011 is a prime: all of these differ
      const sureness = ((place * 7919) % 20_011) / 20_011;
      const misfits = [suspectedBy('ten-off', 'headWidth', [143, 153], [sureness, 0.5]), unusualAt('pdFar', 80)];
      return add(flaggedRecord(place, `R${place}`, misfits), `R${place}`);
    });
    listAudited(many, WHOLE_AUDIT, VOCABULARY);
    const before = process.cpuUsage();
    const lines = listAudited(many, { ...WHOLE_AUDIT, search: 'head 153' }, VOCABULARY);
    const { user, system } = process.cpuUsage(before);
    expect(lines).toHaveLength(20_000);
    expect(lines[0]!.finding.sureness).toBeGreaterThan(0.99);
    // alone it is some 15; where others fill the caches, and waste of the tests before is collected meanwhile, it was 135
    expect((user + system) / 1000).toBeLessThan(400);
  });

  it('begins a column with what is mostly wanted of it', () => {
    const bySureness = WHOLE_AUDIT.sort;
    const byPlace = nextAuditSort(bySureness, 'place');
    expect(byPlace).toEqual({ column: 'place', descending: false });
    expect(nextAuditSort(byPlace, 'place').descending).toBe(true);
    expect(nextAuditSort(byPlace, 'probability').descending).toBe(true);
  });
});
