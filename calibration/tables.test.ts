import { describe, expect, it } from 'vitest';
import { REFERENCE_CARD } from '../src/core/camera/reference-card.js';
import type { Sourced } from '../src/core/catalogue/source-status.js';
import { ID1_CARD, OUTSIDE_TABLES } from './tables.js';

const STATUSES = ['verified', 'verified-secondary', 'computed', 'derived', 'common-practice', 'from-memory', 'chosen'];

type Table = Readonly<Record<string, Sourced | null>>;

// an interface tells nothing of its keys, so the tables are named here as what they are
const tables: Readonly<Record<string, Table>> = { ...OUTSIDE_TABLES };
const card: Table = { ...ID1_CARD };

const entries = Object.entries({ ...tables, card }).flatMap(([table, byId]) =>
  Object.entries(byId).flatMap(([id, entry]) => (entry === null ? [] : [[`${table}: ${id}`, entry] as const])),
);

it.each(entries)('%s names its source and its status', (_, entry) => {
  expect(entry.source.length).toBeGreaterThan(10);
  expect(STATUSES).toContain(entry.status);
  for (const value of Object.values(entry)) if (typeof value === 'number') expect(value).toBeGreaterThan(0);
});

it('has every measurement in every table', () => {
  const ids = Object.keys(OUTSIDE_TABLES.tolerances).sort();
  expect(ids).toHaveLength(7);
  for (const table of Object.values(tables)) expect(Object.keys(table).sort()).toEqual(ids);
});

describe('ID-1 card', () => {
  // ISO/IEC 7810 as reported by secondary texts; limits from memory
  it('has the nominal shape', () => {
    expect(Math.abs(ID1_CARD.widthMm.value / ID1_CARD.heightMm.value - 1.585773)).toBeLessThan(1e-6);
    expect(ID1_CARD.widthMm.value - 2 * ID1_CARD.cornerRadiusMm.value).toBeCloseTo(79.24, 9);
    expect(ID1_CARD.heightMm.value - 2 * ID1_CARD.cornerRadiusMm.value).toBeCloseTo(47.62, 9);
  });

  it('is the card that the core measures with', () => {
    const { low, high } = ID1_CARD.widthLimitsMm;
    expect(REFERENCE_CARD.widthMm).toBe(ID1_CARD.widthMm.value);
    expect(REFERENCE_CARD.heightMm).toBe(ID1_CARD.heightMm.value);
    expect(REFERENCE_CARD.thicknessMm).toBe(ID1_CARD.thicknessMm.value);
    expect(REFERENCE_CARD.cornerRadiusMm).toBe(ID1_CARD.cornerRadiusMm.value);
    // any width within the limits is equally likely: JCGM 100:2008, 4.3.7
    const relative = (high - low) / 2 / Math.sqrt(3) / ID1_CARD.widthMm.value;
    expect(REFERENCE_CARD.relativeSizeUncertainty).toBeCloseTo(relative, 9);
  });

  it('has its nominal size within its limits', () => {
    for (const [size, limits] of [
      [ID1_CARD.widthMm, ID1_CARD.widthLimitsMm],
      [ID1_CARD.heightMm, ID1_CARD.heightLimitsMm],
      [ID1_CARD.thicknessMm, ID1_CARD.thicknessMm],
      [ID1_CARD.cornerRadiusMm, ID1_CARD.cornerRadiusMm],
    ] as const) {
      expect(size.value).toBeGreaterThan(limits.low);
      expect(size.value).toBeLessThan(limits.high);
    }
  });
});

describe('numbers that follow from published ones', () => {
  const { tolerances, repeatability, population } = OUTSIDE_TABLES;

  it('repeatability of a PD from limits of agreement', () => {
    // McMahon et al. 2012, abstract: repeats of a trained examiner within -1.04 and 1.20 mm
    const within = (1.2 - -1.04) / (2 * 1.96) / Math.SQRT2;
    expect(Math.abs(repeatability.binocularPd!.standardDeviation - within)).toBeLessThan(0.001);
  });

  it('tolerance of both eyes from that of each', () => {
    expect(tolerances.binocularPd.value).toBe(2 * tolerances.monocularPd.value);
    expect(tolerances.nearPd.value).toBe(tolerances.binocularPd.value);
  });

  it('spread of one eye and of near from that of both', () => {
    const both = population.binocularPd;
    // sides differ by 1.922 mm (sd) among 32 people, classroom data; near at 400 mm
    const one = Math.hypot(both.standardDeviation / 2, 1.922 / 2);
    expect(Math.abs(population.monocularPd.standardDeviation - one)).toBeLessThan(0.01);
    expect(Math.abs(population.monocularPd.mean - both.mean / 2)).toBeLessThan(0.01);
    expect(Math.abs(population.nearPd.mean - (both.mean * 400) / 427)).toBeLessThan(0.01);
    expect(Math.abs(population.nearPd.standardDeviation - (both.standardDeviation * 400) / 427)).toBeLessThan(0.01);
  });

  it('spread of head widths from men and women', () => {
    // Maseedupalli et al. 2023: men 154.168 (9.121), women 145.431 (8.923), half and half
    const within = (9.121 ** 2 + 8.923 ** 2) / 2;
    const between = ((154.168 - 145.431) / 2) ** 2;
    expect(Math.abs(population.headWidth.mean - (154.168 + 145.431) / 2)).toBeLessThan(0.05);
    expect(Math.abs(population.headWidth.standardDeviation - Math.sqrt(within + between))).toBeLessThan(0.1);
  });

  it('tells how unusual a PD is', () => {
    // 78 mm among the 6068 adults of ANSUR II: z 4.037
    const { mean, standardDeviation } = population.binocularPd;
    expect(Math.abs((78 - mean) / standardDeviation - 4.037)).toBeLessThan(0.002);
  });
});
