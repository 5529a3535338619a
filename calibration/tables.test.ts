import { describe, expect, it } from 'vitest';
import { REFERENCE_CARD } from '../src/core/camera/reference-card.js';
import type { MeasurementId } from '../src/core/catalogue/measurement.js';
import type { Sourced } from '../src/core/catalogue/source-status.js';
import { normalCdf } from '../src/core/statistics/normal.js';
import { EXAMPLE_GAUGES, ID1_CARD, OUTSIDE_TABLES } from './tables.js';
import gauges from './gauges.json' with { type: 'json' };

const STATUSES = ['verified', 'verified-secondary', 'computed', 'derived', 'common-practice', 'from-memory', 'chosen'];

/** What each table says of a measurement beside its source and status. */
const FIELDS: Readonly<Record<keyof typeof OUTSIDE_TABLES, readonly string[]>> = {
  tolerances: ['value'],
  plausible: ['soft', 'hard'],
  population: ['mean', 'standardDeviation'],
  repeatability: ['standardDeviation'],
  sideDifferences: ['standardDeviation'],
};

type Table = Readonly<Record<string, Sourced | null>>;

// an interface tells nothing of its keys, so the tables are named here as what they are
const tables: Readonly<Record<string, Table>> = { ...OUTSIDE_TABLES };
const card: Table = { ...ID1_CARD };

const entries = Object.entries({ ...tables, card }).flatMap(([table, byId]) =>
  Object.entries(byId).flatMap(([id, entry]) => (entry === null ? [] : [[`${table}: ${id}`, entry] as const])),
);

it.each([...entries, ...gauges.map((gauge) => [`gauges: ${gauge.id}`, gauge] as const)])(
  '%s names its source and its status',
  (_, entry) => {
    expect(entry.source.length).toBeGreaterThan(10);
    expect(STATUSES).toContain(entry.status);
  },
);

it.each(Object.entries(FIELDS))('%s says the same things of every measurement, in numbers', (table, fields) => {
  for (const entry of Object.values(tables[table] ?? {})) {
    if (entry === null) continue;
    expect(Object.keys(entry)).toEqual([...fields, 'source', 'status']);
    const { value, standardDeviation, soft, hard } = { ...entry } as Readonly<Record<string, unknown>>;
    for (const spread of [value, standardDeviation]) {
      if (spread !== undefined) expect(spread).toBeGreaterThan(0);
    }
    for (const range of [soft, hard]) {
      if (range === undefined) continue;
      expect(Object.entries(range as object).map(([bound, at]) => [bound, typeof at])).toEqual([
        ['low', 'number'],
        ['high', 'number'],
      ]);
    }
  }
});

it('has every measurement in every table', () => {
  const ids = Object.keys(OUTSIDE_TABLES.tolerances);
  expect(ids).toHaveLength(31);
  for (const table of Object.values(tables)) expect(Object.keys(table)).toEqual(ids);
});

it('leaves out nothing but side differences where there are no sides', () => {
  for (const [name, table] of Object.entries(tables))
    if (name !== 'sideDifferences') expect(Object.values(table)).not.toContain(null);
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
  const { tolerances, repeatability, population, plausible } = OUTSIDE_TABLES;
  const spreadOf = (id: MeasurementId): number => OUTSIDE_TABLES.sideDifferences[id]?.standardDeviation ?? NaN;

  it('repeatability of a PD from limits of agreement', () => {
    // McMahon et al. 2012, abstract: repeats of a trained examiner within -1.04 and 1.20 mm
    const within = (1.2 - -1.04) / (2 * 1.96) / Math.SQRT2;
    for (const id of ['binocularPd', 'monocularPd', 'nearPd', 'monocularNearPd'] as const)
      expect(Math.abs(repeatability[id].standardDeviation - within)).toBeLessThan(0.001);
  });

  it('tolerance of both eyes from that of each', () => {
    expect(tolerances.binocularPd.value).toBe(2 * tolerances.monocularPd.value);
    expect(tolerances.nearPd.value).toBe(tolerances.binocularPd.value);
    expect(tolerances.monocularNearPd.value).toBe(tolerances.monocularPd.value);
  });

  it('tolerances of a fitting point as in ANSI Z80.1, progressive lenses', () => {
    // 1.0 mm horizontally at each reference point, 1.0 mm vertically at the fitting cross (summary of the 1999 edition)
    expect(tolerances.monocularPd.value).toBe(1);
    expect(tolerances.fittingHeight.value).toBe(1);
  });

  it('tolerance of the vertex distance from what it does to a strong lens', () => {
    // effect at a plane d closer: F / (1 - d F); below an eighth of a dioptre and a bit, 0.13 D at 8 D
    const movedM = tolerances.backVertexDistance.value / 1000;
    expect(Math.abs(8 / (1 - movedM * 8) - 8 - 0.13)).toBeLessThan(0.005);
  });

  it('spread of one eye and of near from that of both', () => {
    const both = population.binocularPd;
    // sides differ by 1.922 mm (sd) among 32 people, classroom data; near at 400 mm
    const one = Math.hypot(both.standardDeviation / 2, 1.922 / 2);
    const near = 400 / 427;
    expect(Math.abs(population.monocularPd.standardDeviation - one)).toBeLessThan(0.01);
    expect(Math.abs(population.monocularPd.mean - both.mean / 2)).toBeLessThan(0.01);
    expect(Math.abs(population.nearPd.mean - both.mean * near)).toBeLessThan(0.01);
    expect(Math.abs(population.nearPd.standardDeviation - both.standardDeviation * near)).toBeLessThan(0.01);
    expect(Math.abs(population.monocularNearPd.mean - (both.mean / 2) * near)).toBeLessThan(0.01);
    expect(Math.abs(population.monocularNearPd.standardDeviation - one * near)).toBeLessThan(0.01);
    expect(Math.abs(spreadOf('monocularPd') - 1.922)).toBeLessThan(0.005);
    expect(Math.abs(spreadOf('monocularNearPd') - 1.922 * near)).toBeLessThan(0.005);
  });

  it('spread of PDs from men and women', () => {
    // ANSUR II 2012: 4082 men 64.016 (3.419), 1986 women 61.708 (3.622)
    const [men, women] = [
      { n: 4082, mean: 64.016, sd: 3.419 },
      { n: 1986, mean: 61.708, sd: 3.622 },
    ];
    const n = men.n + women.n;
    const mean = (men.n * men.mean + women.n * women.mean) / n;
    const squares = [men, women].map((sex) => (sex.n - 1) * sex.sd ** 2 + sex.n * (sex.mean - mean) ** 2);
    const sd = Math.sqrt(squares.reduce((total, square) => total + square) / (n - 1));
    expect(Math.abs(population.binocularPd.mean - mean)).toBeLessThan(0.005);
    expect(Math.abs(population.binocularPd.standardDeviation - sd)).toBeLessThan(0.005);
  });

  it('asks again about as many PDs as lie outside among adults', () => {
    // 49 of the 6068 adults of ANSUR II lie outside 54 to 74 mm, recorded to half a millimetre
    const { mean, standardDeviation } = population.binocularPd;
    const { low, high } = plausible.binocularPd.soft;
    const below = normalCdf((low - 0.25 - mean) / standardDeviation);
    const above = 1 - normalCdf((high + 0.25 - mean) / standardDeviation);
    expect(Math.abs(below + above - 49 / 6068)).toBeLessThan(0.003);
    // the whole survey, 51 to 77 mm, and what Dodgson 2004 calls almost all, 45 to 80 mm, are taken
    expect(plausible.binocularPd.hard.low).toBeLessThan(45);
    expect(plausible.binocularPd.hard.high).toBeGreaterThan(80);
  });

  it('tells how unusual a PD is', () => {
    // 78 mm among the 6068 adults of ANSUR II: z 4.037
    const { mean, standardDeviation } = population.binocularPd;
    expect(Math.abs((78 - mean) / standardDeviation - 4.037)).toBeLessThan(0.002);
  });

  it('spread of head widths from men and women', () => {
    // Maseedupalli et al. 2023: men 154.168 (9.121), women 145.431 (8.923), half and half
    const within = (9.121 ** 2 + 8.923 ** 2) / 2;
    const between = ((154.168 - 145.431) / 2) ** 2;
    expect(Math.abs(population.headWidth.mean - (154.168 + 145.431) / 2)).toBeLessThan(0.05);
    expect(Math.abs(population.headWidth.standardDeviation - Math.sqrt(within + between))).toBeLessThan(0.1);
  });

  it('has room for the heads of another survey', () => {
    // ANSUR II 2012, head breadth: 1st percentile of women 136, 99th of men 168; means 147.769 and 154.33; all of 131 to 180
    const { mean, standardDeviation } = population.headWidth;
    const { soft, hard } = plausible.headWidth;
    expect(soft.low).toBeLessThan(136);
    expect(soft.high).toBe(168);
    expect(hard.low).toBeLessThan(131);
    expect(hard.high).toBeGreaterThan(180);
    expect(Math.abs((147.769 + 154.33) / 2 - mean)).toBeLessThan(standardDeviation / 4);
  });

  it('pupils, lids and irises as published', () => {
    // 91 people: difference of the pupils without regard to side 0.19 mm (sd 0.26), so its root mean square
    expect(Math.abs(spreadOf('pupilDiameter') - Math.hypot(0.19, 0.26))).toBeLessThan(0.005);
    // Sanchis-Gimeno et al. 2012: 3.0 to 4.7 mm in bright light; 16 lx: 4.03 (0.9)
    const { mean, standardDeviation } = population.pupilDiameter;
    expect(mean).toBeGreaterThan((3 + 4.7) / 2);
    expect(mean).toBeLessThan(4.03);
    expect(standardDeviation).toBeGreaterThan((4.7 - 3) / 4);
    expect(standardDeviation).toBeLessThan(0.9);
    // Read et al. 2006 and Ruefer et al. 2005
    expect(population.lidAperture).toMatchObject({ mean: 9.7, standardDeviation: 1.2 });
    expect(population.irisDiameter).toMatchObject({ mean: 11.71, standardDeviation: 0.42 });
    // a difference of 2 mm between the lids is a sign of a drooping lid: rare among people without one
    expect(2 * (1 - normalCdf(2 / spreadOf('lidAperture')))).toBeLessThan(0.01);
  });

  it('a way to the bend and a drop that add up to the side', () => {
    // ISO 8624 straightens the drop before a side is measured
    const { overallSideLength: overall, lengthToBend, lengthOfDrop } = population;
    expect(overall.mean).toBe(lengthToBend.mean + lengthOfDrop.mean);
    const joined = Math.hypot(lengthToBend.standardDeviation, lengthOfDrop.standardDeviation);
    expect(Math.abs(overall.standardDeviation - joined)).toBeLessThan(0.05);
  });

  it('means that keep the rules between true values', () => {
    expect(population.distanceBetweenRims10.mean).toBeLessThan(population.distanceBetweenRims15.mean);
    expect(population.templeWidth.mean).toBeLessThan(population.headWidth.mean);
    expect(population.lengthToTangent.mean).toBeLessThan(population.lengthToBend.mean);
    // a box of that height holds that fitting height
    expect(population.fittingHeight.mean).toBeGreaterThan(population.boxLensHeight.mean / 2);
    expect(population.fittingHeight.mean).toBeLessThan(population.boxLensHeight.mean);
    // ears that differ in height give sides that differ in angle: 95 mm to the bend
    const byEars = Math.atan(population.earPointDifference.standardDeviation / population.lengthToBend.mean);
    expect(spreadOf('angleOfSide')).toBeGreaterThan((byEars * 180) / Math.PI);
  });
});

describe('widths of the nose', () => {
  const { population } = OUTSIDE_TABLES;

  /** Arc of `radius` at the crest with straight flanks at `angleDeg` to the vertical: width `below` the crest, mm. */
  function width(radius: number, angleDeg: number, below: number): number {
    const angle = (angleDeg * Math.PI) / 180;
    return (2 * (radius + (below - radius) * Math.sin(angle))) / Math.cos(angle);
  }

  it('follow the geometry of an arc and its tangents', () => {
    // own geometry, values computed by hand: the width at the touching points of a flank of 30 degrees on a radius of 8 is
    // 2 x 8 cos 30, reached 8 (1 - sin 30) = 4 mm below the crest; from there it grows by 2 tan 30 for each millimetre
    expect(width(8, 30, 4)).toBeCloseTo(13.8564, 4);
    expect(width(8, 30, 5) - width(8, 30, 4)).toBeCloseTo(1.1547, 4);
  });

  it.each([
    [10, population.distanceBetweenRims10],
    [15, population.distanceBetweenRims15],
  ] as const)('at %d mm follow from radius and angle', (below, published) => {
    const { apicalRadius: radius, frontalAngle: angle } = population;
    expect(Math.abs(width(radius.mean, angle.mean, below) - published.mean)).toBeLessThan(0.06);
    // spread by three-point Gauss-Hermite quadrature in both: nodes at 0 and root 3 sd, weights 2/3 and 1/6
    const nodes = [-Math.sqrt(3), 0, Math.sqrt(3)].map((z) => ({ z, weight: z === 0 ? 2 / 3 : 1 / 6 }));
    const widths = nodes.flatMap((r) =>
      nodes.map((phi) => ({
        weight: r.weight * phi.weight,
        value: width(radius.mean + r.z * radius.standardDeviation, angle.mean + phi.z * angle.standardDeviation, below),
      })),
    );
    const mean = widths.reduce((total, { weight, value }) => total + weight * value, 0);
    const variance = widths.reduce((total, { weight, value }) => total + weight * (value - mean) ** 2, 0);
    expect(Math.abs(mean - published.mean)).toBeLessThan(0.3);
    expect(Math.abs(Math.sqrt(variance) - published.standardDeviation)).toBeLessThan(0.1);
  });
});

describe('example gauges', () => {
  const ids = Object.keys(OUTSIDE_TABLES.tolerances);

  it('serve measurements that there are, each by one gauge', () => {
    const served = EXAMPLE_GAUGES.flatMap(({ serves }) => serves);
    for (const id of served) expect(ids).toContain(id);
    expect(new Set(served).size).toBe(served.length);
    for (const own of ['id', 'name'] as const)
      expect(new Set(EXAMPLE_GAUGES.map((gauge) => gauge[own])).size).toBe(EXAMPLE_GAUGES.length);
  });

  it('are gauges and nothing more', () => {
    for (const gauge of EXAMPLE_GAUGES) {
      expect(Object.keys(gauge)).toEqual(['id', 'name', 'serves', 'resolution', 'zeroOffset', 'bias', 'checkedOn']);
      expect(gauge.resolution).toBeGreaterThan(0);
      // nobody has checked an invented gauge
      expect(gauge.checkedOn).toBeNull();
      expect(gauge.bias).toBe(0);
    }
  });

  it('show both kinds: read as they stand, and with an amount to be added', () => {
    expect(EXAMPLE_GAUGES.map(({ id, zeroOffset }) => [id, zeroOffset])).toEqual([
      ['pd-rule', 0],
      ['end-rule', 4],
      ['head-calipers', 10],
      ['angle-gauge', 0],
    ]);
  });
});
