import { normalCdf } from '../../src/core/statistics/normal.js';
import type { Compared, ComparedRun } from './compared.js';
import { comparisonOf, comparisonsOf, framesOf, nameOf, stillsOf } from './compared.js';
import { binomialBand, shareWithin } from './statistics.js';
import { element, rounded, words } from './svg.js';
import { COMPARED_ESTIMATES } from './truth.js';

/** Units of the drawing; a printed page shows 5 of them as 1 mm. */
const WIDTH = 900;
const HEIGHT = 900;
const PRINTED_WIDTH_MM = 180;

const FONT = 'Helvetica, Arial, sans-serif';
const INK = '#000000';
const PALE = '#767676';
const GRID = '#dddddd';
const BAND = '#e6e6e6';

/** A panel: a rectangle of the drawing with a scale along each side. */
interface Panel {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  readonly y: Scale;
}

interface Scale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  readonly label: string;
  /** room between panel and label, where the ticks need more than usual */
  readonly labelBelow?: number;
  readonly tickText: (value: number) => string;
}

/**
 * Two findings about a run, as an SVG for screen and print, which need no colour to be read: the error of the binocular PD for
 * distance against the distance of the wearer, and how often the intervals hold the truth.
 */
export function plotAccuracy(run: ComparedRun): string {
  const title = `${run.title}: errors of the binocular PD, and how often the intervals hold the truth`;
  const singles = [...stillsOf(run), ...framesOf(run)];
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      width: `${PRINTED_WIDTH_MM}mm`,
      height: `${(PRINTED_WIDTH_MM * HEIGHT) / WIDTH}mm`,
      role: 'img',
      'aria-label': title,
      'font-family': FONT,
      'font-size': 14,
      fill: INK,
    },
    [
      words('title', {}, title),
      element('rect', { width: WIDTH, height: HEIGHT, fill: '#ffffff' }),
      words('text', { x: 20, y: 30, 'font-size': 19, 'font-weight': 'bold' }, run.title),
      ...errorPanel(run),
      ...coveragePanel('One picture', singles, 80),
      ...coveragePanel('Sweep', run.sweeps, 540),
    ],
  )}\n`;
}

/** The kinds of marks, told apart by shape and weight; what is drawn last lies on top. */
const KINDS = [
  { kind: 'frame', text: 'frame of a sweep, alone', casesOf: framesOf },
  { kind: 'still', text: 'still', casesOf: stillsOf },
  { kind: 'sweep', text: 'sweep (at its mean distance)', casesOf: (run: ComparedRun) => run.sweeps },
] as const;

type MarkKind = (typeof KINDS)[number]['kind'];

interface ErrorPoint {
  readonly kind: MarkKind;
  readonly name: string;
  readonly distanceMm: number;
  readonly errorMm: number;
  readonly barMm: number;
}

/** Half width of a 95 % interval in standard uncertainties. */
const BAR = 1.96;

function errorPoints(run: ComparedRun): readonly ErrorPoint[] {
  return KINDS.flatMap(({ kind, casesOf }) =>
    casesOf(run).flatMap((compared: Compared): readonly ErrorPoint[] => {
      const comparison = comparisonOf(compared, 'pdFar');
      const { distanceMm } = compared.truth;
      if (comparison === null || distanceMm === null) return [];
      const { value, truth, uncertainty } = comparison;
      return [{ kind, name: nameOf(compared), distanceMm, errorMm: value - truth, barMm: BAR * uncertainty }];
    }),
  );
}

function errorPanel(run: ComparedRun): readonly string[] {
  const points = errorPoints(run);
  const distances = points.map(({ distanceMm }) => distanceMm);
  const [nearest, farthest] = distances.length === 0 ? [400, 600] : [Math.min(...distances), Math.max(...distances)];
  // whole bars of all but the widest; no point itself may lie outside
  const reach = Math.max(
    1,
    ...points.map(({ errorMm, barMm }) => Math.max(Math.abs(errorMm) + 0.1, Math.min(barMm, 3))),
  );
  const limit = Math.ceil(reach * 2) / 2;
  const panel: Panel = {
    left: 80,
    top: 95,
    width: 800,
    height: 330,
    x: {
      from: Math.floor((nearest - 10) / 50) * 50,
      to: Math.ceil((farthest + 10) / 50) * 50,
      ticks: steps(Math.floor((nearest - 10) / 50) * 50, Math.ceil((farthest + 10) / 50) * 50, 50),
      label: 'distance from camera to pupils (mm)',
      tickText: String,
    },
    y: {
      from: -limit,
      to: limit,
      ticks: steps(-Math.floor(limit), Math.floor(limit), limit > 6 ? 2 : limit > 2 ? 1 : 0.5),
      label: 'estimate minus truth (mm)',
      tickText: signed,
    },
  };
  const clip = { left: panel.left, right: panel.left + panel.width, top: panel.top, bottom: panel.top + panel.height };
  return [
    words(
      'text',
      { x: 20, y: 56 },
      'Error of the binocular PD for distance. Bars: ±1.96 standard uncertainties; a bar that misses the zero line claims too much.',
    ),
    legend(points, panel.left, 80),
    ...frameOf(panel),
    element('line', {
      x1: panel.left,
      y1: placeY(panel, 0),
      x2: panel.left + panel.width,
      y2: placeY(panel, 0),
      stroke: INK,
      'stroke-width': 1.2,
    }),
    ...points.map(({ kind, name, distanceMm, errorMm, barMm }) => {
      const x = placeX(panel, distanceMm);
      const y = placeY(panel, errorMm);
      const top = Math.max(clip.top, placeY(panel, errorMm + barMm));
      const bottom = Math.min(clip.bottom, placeY(panel, errorMm - barMm));
      return element('g', { class: kind }, [
        words('title', {}, `${name}: ${signed(round2(errorMm))} mm at ${distanceMm.toFixed(0)} mm`),
        bar(kind, x, top, bottom),
        mark(kind, x, y),
      ]);
    }),
  ];
}

function bar(kind: MarkKind, x: number, top: number, bottom: number): string {
  const style = {
    frame: { stroke: '#c4c4c4', 'stroke-width': 0.7 },
    still: { stroke: PALE, 'stroke-width': 1 },
    sweep: { stroke: INK, 'stroke-width': 2.6 },
  }[kind];
  return element('line', { x1: x, y1: top, x2: x, y2: bottom, ...style });
}

function mark(kind: MarkKind, x: number, y: number): string {
  switch (kind) {
    case 'frame':
      return element('circle', { cx: x, cy: y, r: 2.2, fill: PALE });
    case 'still':
      return element('circle', { cx: x, cy: y, r: 4, fill: '#ffffff', stroke: INK, 'stroke-width': 1.3 });
    case 'sweep':
      return element('path', { d: diamond(x, y, 5.5), fill: INK, stroke: '#ffffff', 'stroke-width': 1 });
  }
}

function diamond(x: number, y: number, reach: number): string {
  const at = (dx: number, dy: number) => `${rounded(x + dx)} ${rounded(y + dy)}`;
  return `M${at(0, -reach)}L${at(reach, 0)}L${at(0, reach)}L${at(-reach, 0)}Z`;
}

function legend(points: readonly ErrorPoint[], left: number, y: number): string {
  const shown = KINDS.filter(({ kind }) => points.some((point) => point.kind === kind));
  const entries = shown.flatMap(({ kind, text }, index) => {
    const x = left + 8 + index * 250;
    const count = points.filter((point) => point.kind === kind).length;
    return [
      bar(kind, x, y - 12, y + 4),
      mark(kind, x, y - 4),
      words('text', { x: x + 14, y: y + 1, 'font-size': 13 }, `${text} (${count})`),
    ];
  });
  return element('g', { class: 'legend' }, entries);
}

/** Standard uncertainties at which the coverage is looked at. */
const FACTORS = steps(0.5, 3, 0.25);

/** Those that are named below the scale. */
const TICK_FACTORS = [0.5, 1, 1.5, 2] as const;

/** The two curves of a coverage panel. */
const CURVES = [
  { name: 'pd', text: 'binocular PD for distance', names: ['pdFar'], dash: 'none', fill: INK },
  { name: 'all', text: 'all estimates together', names: COMPARED_ESTIMATES, dash: '6 4', fill: '#ffffff' },
] as const;

/**
 * Share of the estimates whose error is within k standard uncertainties, against the share that a normal distribution has there: honest
 * uncertainties lie along the diagonal. The band is what chance leaves to independent PDs; the frames of one sweep are alike.
 */
function coveragePanel(title: string, cases: readonly Compared[], left: number): readonly string[] {
  const panel: Panel = {
    left,
    top: 535,
    width: 340,
    height: 270,
    x: {
      from: 0.3,
      to: 1,
      ticks: TICK_FACTORS.map(shareOf),
      label: 'share that belongs within k standard uncertainties',
      labelBelow: 54,
      tickText: (value) => `${(100 * value).toFixed(0)} %`,
    },
    y: {
      from: 0,
      to: 1,
      ticks: steps(0, 1, 0.2),
      label: 'share found within them',
      tickText: (value) => `${(100 * value).toFixed(0)} %`,
    },
  };
  const count = comparisonsOf(cases, ['pdFar']).length;
  const head = words(
    'text',
    { x: left, y: panel.top - 30, 'font-weight': 'bold' },
    `${title}: coverage of the uncertainties`,
  );
  if (count === 0) {
    return [head, ...frameOf(panel), words('text', { x: left + 20, y: panel.top + 40, fill: PALE }, 'none measured')];
  }
  return [
    head,
    words(
      'text',
      { x: left, y: panel.top - 11, 'font-size': 12 },
      `Grey: 95 % of chance for ${count} independent PDs. k from 0.5 to 3.`,
    ),
    coverageBand(panel, count),
    ...frameOf(panel),
    ...TICK_FACTORS.map((factor, index) =>
      words(
        'text',
        {
          x: placeX(panel, shareOf(factor)),
          y: panel.top + panel.height + 33,
          'text-anchor': 'middle',
          'font-size': 11,
          fill: PALE,
        },
        index === 0 ? `k = ${factor}` : String(factor),
      ),
    ),
    element('line', {
      x1: placeX(panel, panel.x.from),
      y1: placeY(panel, panel.x.from),
      x2: placeX(panel, 1),
      y2: placeY(panel, 1),
      stroke: PALE,
      'stroke-width': 1,
    }),
    ...CURVES.map(({ name, names, dash, fill }) => {
      const comparisons = comparisonsOf(cases, names);
      const places = FACTORS.map((factor) => ({
        x: placeX(panel, shareOf(factor)),
        y: placeY(panel, shareWithin(comparisons, factor)),
      }));
      return element('g', { class: `coverage-${name}` }, [
        element('polyline', {
          points: places.map(({ x, y }) => `${rounded(x)},${rounded(y)}`).join(' '),
          fill: 'none',
          stroke: INK,
          'stroke-width': 1.4,
          'stroke-dasharray': dash,
        }),
        ...places.map(({ x, y }) => element('circle', { cx: x, cy: y, r: 3, fill, stroke: INK })),
      ]);
    }),
    ...CURVES.flatMap(({ text, names, dash, fill }, index) => {
      const y = panel.top + panel.height - 36 + 20 * index;
      const x = panel.left + 118;
      return [
        element('line', {
          x1: x,
          y1: y - 4,
          x2: x + 30,
          y2: y - 4,
          stroke: INK,
          'stroke-width': 1.4,
          'stroke-dasharray': dash,
        }),
        element('circle', { cx: x + 15, cy: y - 4, r: 3, fill, stroke: INK }),
        words('text', { x: x + 37, y, 'font-size': 12 }, `${text} (${comparisonsOf(cases, names).length})`),
      ];
    }),
  ];
}

/** Share of a normal distribution within this many standard deviations. */
function shareOf(factor: number): number {
  return 2 * normalCdf(factor) - 1;
}

function coverageBand(panel: Panel, count: number): string {
  const shares = steps(panel.x.from, 1, 0.01);
  const bounds = shares.map((share) => ({ share, ...binomialBand(count, Math.min(share, 1)) }));
  const place = (share: number, bound: number) => `${rounded(placeX(panel, share))},${rounded(placeY(panel, bound))}`;
  return element('polygon', {
    class: 'band',
    points: [
      ...bounds.map(({ share, low }) => place(share, low)),
      ...bounds.toReversed().map(({ share, high }) => place(share, high)),
    ].join(' '),
    fill: BAND,
  });
}

/** Border, grid, ticks and labels. */
function frameOf(panel: Panel): readonly string[] {
  const { left, top, width, height, x, y } = panel;
  const [right, bottom] = [left + width, top + height];
  return [
    ...x.ticks.flatMap((tick) => {
      const at = placeX(panel, tick);
      return [
        element('line', { x1: at, y1: top, x2: at, y2: bottom, stroke: GRID, 'stroke-width': 0.8 }),
        words('text', { x: at, y: bottom + 18, 'text-anchor': 'middle', 'font-size': 12 }, x.tickText(tick)),
      ];
    }),
    ...y.ticks.flatMap((tick) => {
      const at = placeY(panel, tick);
      return [
        element('line', { x1: left, y1: at, x2: right, y2: at, stroke: GRID, 'stroke-width': 0.8 }),
        words('text', { x: left - 7, y: at + 4, 'text-anchor': 'end', 'font-size': 12 }, y.tickText(tick)),
      ];
    }),
    element('rect', { x: left, y: top, width, height, fill: 'none', stroke: INK, 'stroke-width': 1 }),
    words(
      'text',
      { x: left + width / 2, y: bottom + (x.labelBelow ?? 38), 'text-anchor': 'middle', 'font-size': 13 },
      x.label,
    ),
    words(
      'text',
      {
        x: left - 50,
        y: top + height / 2,
        'text-anchor': 'middle',
        'font-size': 13,
        transform: `rotate(-90 ${left - 50} ${top + height / 2})`,
      },
      y.label,
    ),
  ];
}

function placeX({ left, width, x }: Panel, value: number): number {
  return left + (width * (value - x.from)) / (x.to - x.from);
}

function placeY({ top, height, y }: Panel, value: number): number {
  return top + (height * (y.to - value)) / (y.to - y.from);
}

/** From `from` to `to`, both with; a little more room for what rounding does to the last. */
function steps(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, index) => round2(from + index * step));
}

function round2(value: number): number {
  return Math.round(value * 100) / 100;
}

/** With its sign, and a true minus. */
function signed(value: number): string {
  return value < 0 ? `\u2212${-value}` : value > 0 ? `+${value}` : '0';
}
