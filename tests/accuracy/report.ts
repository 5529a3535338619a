import type { Compared, ComparedPicture, ComparedRun, ComparedSweep } from './compared.js';
import { comparisonOf, comparisonsOf, cornerErrorsPx, framesOf, irisErrorsPx, nameOf, stillsOf } from './compared.js';
import type { Comparison } from './statistics.js';
import { binomialBand, isHeld, percentile, summariseErrors } from './statistics.js';
import type { Circumstances, ComparedEstimate } from './truth.js';
import { COMPARED_ESTIMATES } from './truth.js';

/** The tables of one way to measure, as text: stills, frames of sweeps taken alone, and sweeps. */
export function writeReport(run: ComparedRun): string {
  const stills = stillsOf(run);
  const frames = framesOf(run);
  return [
    heading(run.title),
    ...picturesPart('Stills', stills),
    ...picturesPart('Frames of sweeps, each as a single picture', frames),
    ...sweepsPart(run.sweeps),
    `Intervals of 95 % that hold the truth (of so many; 95 % of chance would give)\n${[
      coverageRow('stills', stills),
      coverageRow('frames', frames),
      coverageRow('sweeps', run.sweeps),
      coverageRow('all', [...run.pictures, ...run.sweeps]),
    ].join('\n')}`,
    falseClaims([...run.pictures, ...run.sweeps]),
  ].join('\n\n');
}

function heading(title: string): string {
  return `${title}\n${'='.repeat(title.length)}`;
}

function picturesPart(title: string, pictures: readonly ComparedPicture[]): readonly string[] {
  if (pictures.length === 0) return [];
  const near = pictures.filter(({ truth }) => truth.pixelsPerMm !== null && truth.pixelsPerMm >= 2);
  return [
    [
      `${title}: ${measuredShare(pictures)}`,
      ...estimateRows(pictures),
      distanceRow('iris centre (px)', pictures.flatMap(irisErrorsPx)),
      distanceRow('  2 px/mm or more', near.flatMap(irisErrorsPx)),
      distanceRow('card corner (px)', pictures.flatMap(cornerErrorsPx)),
    ].join('\n'),
    breakdown(title, pictures),
    reasons(pictures),
    `Time from file to estimates (workers warm): ${timeSpan(pictures.map(({ measured }) => measured.ms))}`,
  ];
}

function sweepsPart(sweeps: readonly ComparedSweep[]): readonly string[] {
  if (sweeps.length === 0) return [];
  return [
    [`Sweeps: ${measuredShare(sweeps)}`, ...estimateRows(sweeps)].join('\n'),
    breakdown('Sweeps', sweeps),
    slips(sweeps),
    reasons(sweeps),
    `Time of a sweep, from its first file to its estimates: ${timeSpan(sweeps.map(({ measured }) => measured.ms))}\n` +
      `Time of its adjustment alone: ${timeSpan(sweeps.map(({ measured }) => measured.adjustmentMs))}`,
  ];
}

function measuredShare(cases: readonly Compared[]): string {
  const measured = cases.filter(({ measured }) => measured.ok).length;
  return `${measured} of ${cases.length} measured (${((100 * measured) / cases.length).toFixed(0)} %)`;
}

const COLUMNS = ['n', 'median |e|', '95 % |e|', 'bias', 'in interval', 'rms e/u'];
const NAME_WIDTH = 24;
const COLUMN_WIDTH = 12;

function line(name: string, cells: readonly string[]): string {
  return `  ${name.padEnd(NAME_WIDTH)}${cells.map((cell) => cell.padStart(COLUMN_WIDTH)).join('')}`;
}

function estimateRows(cases: readonly Compared[]): readonly string[] {
  const compared = COMPARED_ESTIMATES.filter((name) => cases.some(({ truth }) => truth.valuesMm[name] !== null));
  return [
    line('', COLUMNS),
    ...compared.map((name) => comparisonRow(`${name} (mm)`, comparisonsOf(cases, [name]))),
    comparisonRow('monocular PDs (mm)', comparisonsOf(cases, ['monoPdR', 'monoPdL'])),
    comparisonRow('apertures (mm)', comparisonsOf(cases, ['apertureR', 'apertureL'])),
  ];
}

function comparisonRow(name: string, comparisons: readonly Comparison[]): string {
  const summary = summariseErrors(comparisons);
  if (summary === null) return line(name, ['0', '-', '-', '-', '-', '-']);
  return line(name, [
    String(summary.count),
    summary.medianError.toFixed(2),
    summary.percentile95Error.toFixed(2),
    // nothing is not negative
    summary.bias.toFixed(2).replace(/^-(0\.00)$/, '$1'),
    `${(100 * summary.coverage).toFixed(0)} %`,
    summary.errorOverUncertainty.toFixed(2),
  ]);
}

/** Distances between points have neither a sign nor an interval. */
function distanceRow(name: string, distances: readonly number[]): string {
  if (distances.length === 0) return line(name, ['0', '-', '-']);
  return line(name, [
    String(distances.length),
    percentile(distances, 0.5).toFixed(2),
    percentile(distances, 0.95).toFixed(2),
  ]);
}

/** One way to break errors down. A circumstance that the truth does not name falls into no group. */
interface Grouping {
  readonly title: string;
  readonly groupOf: (circumstances: Circumstances) => string | null;
  /** order of the groups; without it they stand by the alphabet */
  readonly order?: readonly string[];
}

/** Bands from one bound to the next, the upper bound not in it; the first and last band are open. */
function bands(
  title: string,
  unit: string,
  bounds: readonly number[],
  valueOf: (circumstances: Circumstances) => number | null,
): Grouping {
  const names = [
    `under ${bounds[0] ?? 0} ${unit}`,
    ...bounds.slice(1).map((bound, index) => `${bounds[index] ?? 0} to ${bound} ${unit}`),
    `${bounds.at(-1) ?? 0} ${unit} or more`,
  ];
  return {
    title,
    order: names,
    groupOf: (circumstances) => {
      const value = valueOf(circumstances);
      return value === null ? null : (names[bounds.filter((bound) => value >= bound).length] ?? null);
    },
  };
}

/** Bounds are chosen so that the groups of the rendered heads are of a like size. */
const GROUPINGS: readonly Grouping[] = [
  bands('distance', 'mm', [400, 450, 500, 600], ({ distanceMm }) => distanceMm),
  bands('head yaw', 'deg', [3, 6, 9, 12], ({ yawDeg }) => (yawDeg === null ? null : Math.abs(yawDeg))),
  bands('resolution', 'px/mm', [1.2, 1.6, 2, 2.5], ({ pixelsPerMm }) => pixelsPerMm),
  bands('iris brightness', 'of 255', [30, 50, 100], ({ irisBrightness }) => irisBrightness),
  { title: 'card kind', groupOf: ({ cardKind }) => cardKind },
  { title: 'card position', groupOf: ({ cardPosition }) => cardPosition },
  {
    title: 'fingers',
    groupOf: ({ occluded }) => (occluded === null ? null : occluded ? 'on an edge' : 'on no edge'),
  },
];

function breakdown(title: string, cases: readonly Compared[]): string {
  const rows = GROUPINGS.flatMap((grouping) => {
    const groups = new Map<string, Compared[]>();
    for (const compared of cases) {
      const name = grouping.groupOf(compared.truth);
      if (name !== null) groups.set(name, [...(groups.get(name) ?? []), compared]);
    }
    const order = grouping.order ?? [...groups.keys()].sort();
    const rowsOfGroups = order.flatMap((name) => {
      const group = groups.get(name);
      return group === undefined ? [] : [comparisonRow(`  ${name}`, comparisonsOf(group, ['pdFar']))];
    });
    return rowsOfGroups.length === 0 ? [] : [`  by ${grouping.title}`, ...rowsOfGroups];
  });
  return [`${title}: binocular PD for distance (mm)`, line('', COLUMNS), ...rows].join('\n');
}

function slips(sweeps: readonly ComparedSweep[]): string {
  const rows = sweeps.map(({ truth, measured }) => {
    const found = measured.ok ? slipText(measured.slippedFromFrame) : '-';
    const known = truth.slip === null ? 'unknown' : slipText(truth.slip.fromFrame);
    const used = `${measured.framesUsed} of ${truth.frames.length}`;
    return line(truth.sweep, [used, String(measured.framesGiven), known, found]);
  });
  const judged = sweeps.filter(({ truth, measured }) => truth.slip !== null && measured.ok);
  const right = judged.filter(({ truth, measured }) => truth.slip?.fromFrame === measured.slippedFromFrame);
  return [
    `Slips of the card: ${right.length} of ${judged.length} sweeps as in truth`,
    line('', ['frames used', 'found in', 'true slip', 'slip found']),
    ...rows,
  ].join('\n');
}

function slipText(fromFrame: number | null): string {
  return fromFrame === null ? 'none' : `from ${fromFrame}`;
}

function coverageRow(name: string, cases: readonly Compared[]): string {
  const comparisons = comparisonsOf(cases, COMPARED_ESTIMATES);
  if (comparisons.length === 0) return line(name, ['none']);
  const share = comparisons.filter(isHeld).length / comparisons.length;
  const { low, high } = binomialBand(comparisons.length, 0.95);
  return line(name, [
    `${(100 * share).toFixed(1)} %`,
    String(comparisons.length),
    `${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)} %`.padStart(18),
  ]);
}

/** An estimate further off than this must not claim to be nearer. */
const FALSE_CLAIM_MM = 2;
/** PDs and apertures, on which glasses are made: for them it must not occur at all. */
const CRITICAL: readonly ComparedEstimate[] = ['pdFar', 'pdShown', 'monoPdR', 'monoPdL', 'apertureR', 'apertureL'];

function falseClaims(cases: readonly Compared[]): string {
  const others = COMPARED_ESTIMATES.filter((name) => !CRITICAL.includes(name));
  return [falseClaimsOf('PD or aperture', cases, CRITICAL), falseClaimsOf('Other estimates', cases, others)].join('\n');
}

function falseClaimsOf(title: string, cases: readonly Compared[], names: readonly ComparedEstimate[]): string {
  const rows = cases.flatMap((compared) =>
    names.flatMap((name) => {
      const comparison = comparisonOf(compared, name);
      if (comparison === null || isHeld(comparison)) return [];
      const error = comparison.value - comparison.truth;
      if (Math.abs(error) <= FALSE_CLAIM_MM) return [];
      const { value, low, high, truth } = comparison;
      return [
        `  ${nameOf(compared).padEnd(14)}${name.padEnd(14)}${value.toFixed(2)} (${low.toFixed(2)} to ${high.toFixed(2)}), ` +
          `true ${truth.toFixed(2)}, off by ${error.toFixed(2)} mm`,
      ];
    }),
  );
  const what = `${title} more than ${FALSE_CLAIM_MM} mm off with an interval that claims less`;
  return rows.length === 0 ? `${what}: none` : [`${what}: ${rows.length}`, ...rows].join('\n');
}

function reasons(cases: readonly Compared[]): string {
  const failed = cases.filter(({ measured }) => !measured.ok);
  if (failed.length === 0) return 'Every one gave its estimates.';
  const reasonOf = ({ measured }: Compared) => measured.reason ?? 'unknown';
  const names = [...new Set(failed.map(reasonOf))].sort();
  return [
    'Not measured:',
    ...names.map((name) => {
      const those = failed.filter((compared) => reasonOf(compared) === name);
      return `  ${name.padEnd(NAME_WIDTH)}${String(those.length).padStart(4)}  ${those.map(nameOf).join(' ')}`;
    }),
  ].join('\n');
}

function timeSpan(ms: readonly number[]): string {
  return (
    `median ${percentile(ms, 0.5).toFixed(0)} ms, ` +
    `95 % ${percentile(ms, 0.95).toFixed(0)} ms, longest ${Math.max(...ms).toFixed(0)} ms`
  );
}
