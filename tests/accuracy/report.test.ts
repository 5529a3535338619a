import { describe, expect, it } from 'vitest';
import { comparedPicture, comparedSweep, estimateOf, truthEntry } from './compared-examples.js';
import type { ComparedRun } from './compared.js';
import { writeReport } from './report.js';

/** The row that begins with these words, at or behind a title: what stands in it, without the spaces between. */
function rowOf(report: string, title: string, name: string): string {
  const lines = report.split('\n');
  const from = lines.findIndex((text) => text.startsWith(title));
  if (from < 0) throw new Error(`No title ${title}.`);
  const row = lines.slice(from).find((text) => text.trim().startsWith(name));
  if (row === undefined) throw new Error(`No row ${name}.`);
  return row.trim().slice(name.length).trim().replaceAll(/ {2,}/g, '|');
}

const near = { eyePlaneDistance: 390, irisRgb: [20, 20, 20] };
const RUN: ComparedRun = {
  title: 'Without a camera profile',
  pictures: [
    comparedPicture(truthEntry('a.jpg', { ...near, pupilPx: { R: [10, 20], L: [30, 20] } }), {
      estimates: { pdFar: estimateOf(64.4, 0.5), headWidth: estimateOf(155, 1) },
      irisPx: { R: [10, 20.3], L: [30.1, 20] },
    }),
    comparedPicture(truthEntry('b.jpg', { eyePlaneDistance: 620, pupilPx: { R: [10, 20], L: [30, 20] } }), {
      estimates: { pdFar: estimateOf(61.9, 0.5), headWidth: estimateOf(150, 1) },
      irisPx: { R: [11, 20], L: [30, 21] },
    }),
    comparedPicture(truthEntry('c.jpg'), { ok: false, reason: 'no-card' }),
    comparedPicture(truthEntry('s0.jpg', { sweep: 's', frame: 0, slippedFromFrame: 1, yawDeg: 14 }), {
      estimates: { pdFar: estimateOf(66.5, 1.5) },
    }),
    comparedPicture(truthEntry('s1.jpg', { sweep: 's', frame: 1, slippedFromFrame: 1, yawDeg: -14 }), {
      ok: false,
      reason: 'head-turned',
    }),
  ],
  sweeps: [
    comparedSweep([truthEntry('s0.jpg', { sweep: 's', frame: 0, slippedFromFrame: 1 })], {
      estimates: { pdFar: estimateOf(64.1, 0.2) },
      slippedFromFrame: 1,
    }),
    comparedSweep([truthEntry('t0.jpg', { sweep: 't', frame: 0, slippedFromFrame: null })], {
      estimates: { pdFar: estimateOf(63.9, 0.2) },
      slippedFromFrame: 3,
      adjustmentMs: 900,
    }),
  ],
};

describe('writeReport', () => {
  const report = writeReport(RUN);

  it('keeps stills, frames and sweeps apart', () => {
    expect(report).toContain('Stills: 2 of 3 measured (67 %)');
    expect(report).toContain('Frames of sweeps, each as a single picture: 1 of 2 measured (50 %)');
    expect(report).toContain('Sweeps: 2 of 2 measured (100 %)');
    // by hand: sizes 0.4 and 2.1; bias (0.4 - 2.1) / 2; e/u 0.8 and -4.2
    expect(rowOf(report, 'Stills', 'pdFar (mm)')).toBe('2|1.25|2.02|-0.85|50 %|3.02');
    expect(rowOf(report, 'Sweeps', 'pdFar (mm)')).toBe('2|0.10|0.10|0.00|100 %|0.50');
  });

  it('breaks the PD down by how the pictures were taken', () => {
    const title = 'Stills: binocular PD';
    expect(rowOf(report, title, 'under 400 mm')).toBe('1|0.40|0.40|0.40|100 %|0.80');
    expect(rowOf(report, title, '600 mm or more')).toBe('1|2.10|2.10|-2.10|0 %|4.20');
    expect(rowOf(report, title, '3 to 6 deg')).toMatch(/^2\|/);
    expect(rowOf(report, title, '2.5 px/mm or more')).toMatch(/^1\|/);
    expect(rowOf(report, title, '1.6 to 2 px/mm')).toMatch(/^1\|/);
    expect(rowOf(report, title, 'under 30 of 255')).toMatch(/^1\|/);
    expect(rowOf(report, title, '50 to 100 of 255')).toMatch(/^1\|2.10/);
    expect(rowOf(report, title, 'light')).toMatch(/^2\|/);
    expect(rowOf(report, title, 'forehead')).toMatch(/^2\|/);
    expect(rowOf(report, title, 'on no edge')).toMatch(/^2\|/);
    expect(rowOf(report, 'Frames of sweeps, each as a single picture: binocular', '12 deg or more')).toMatch(
      /^1\|2.50/,
    );
  });

  it('looks at irises of near pictures apart', () => {
    expect(rowOf(report, 'Stills', 'iris centre (px)')).toBe('4|0.65|1.00');
    expect(rowOf(report, 'Stills', '2 px/mm or more')).toBe('2|0.20|0.29');
  });

  it('lists what is far off and claims not to be, PDs apart from the rest', () => {
    expect(report).toMatch(/PD or aperture more than 2 mm off with an interval that claims less: 1\n {2}b\.jpg +pdFar/);
    // 2.5 mm off, but its interval says so; and 5 mm off with one that does not
    expect(report).not.toMatch(/s0\.jpg +pdFar/);
    expect(report).toMatch(/Other estimates more than .*: 1\n {2}a\.jpg +headWidth +155\.00 \(153\.04 to 156\.96\)/);
  });

  it('holds slips against the truth, and names reasons and times', () => {
    expect(report).toContain('Slips of the card: 1 of 2 sweeps as in truth');
    expect(rowOf(report, 'Slips', 's')).toBe('1 of 1|1|from 1|from 1');
    expect(rowOf(report, 'Slips', 't')).toBe('1 of 1|1|none|from 3');
    expect(report).toMatch(/no-card +1 {2}c\.jpg/);
    expect(report).toMatch(/head-turned +1 {2}s1\.jpg/);
    expect(report).toContain('Time of its adjustment alone: median 800 ms, 95 % 890 ms, longest 900 ms');
  });

  it('counts the coverage over everything', () => {
    // by hand: of 64.4, 155, 61.9, 150, 66.5, 64.1 and 63.9 all but two hold the truth
    expect(rowOf(report, 'Intervals of 95 %', 'all')).toMatch(/^71\.4 %\|7\|/);
    expect(rowOf(report, 'Intervals of 95 %', 'sweeps')).toMatch(/^100\.0 %\|2\|/);
  });

  it('says nothing of sweeps or stills where there are none', () => {
    const stills = writeReport({ ...RUN, pictures: RUN.pictures.slice(0, 3), sweeps: [] });
    expect(stills).not.toMatch(/^(Sweeps|Frames|Slips)/m);
    expect(writeReport({ ...RUN, pictures: RUN.pictures.slice(3) })).not.toMatch(/^Stills/m);
  });
});
