import type { MeasuredPicture } from './measured-picture.js';
import type { Comparison } from './statistics.js';
import { percentile, summariseErrors } from './statistics.js';
import type { PictureTruth, PixelPoint } from './truth.js';
import { COMPARED_ESTIMATES } from './truth.js';

/** One picture's outcome beside its truth. */
export interface ComparedPicture {
  readonly truth: PictureTruth;
  readonly measured: MeasuredPicture;
}

/** The tables of all pictures and of each kind and position of the card, as text. */
export function writeReport(pictures: readonly ComparedPicture[]): string {
  const sections = [
    section('All pictures', pictures),
    ...groups('Card kind', pictures, ({ truth }) => truth.cardKind),
    ...groups('Card position', pictures, ({ truth }) => truth.cardPosition),
    ...groups('Fingers', pictures, ({ truth }) =>
      truth.occluded === null ? null : truth.occluded ? 'on an edge' : 'on no edge',
    ),
    reasons(pictures),
    times(pictures),
  ];
  return sections.join('\n\n');
}

function groups(
  title: string,
  pictures: readonly ComparedPicture[],
  nameOf: (picture: ComparedPicture) => string | null,
): readonly string[] {
  const names = [...new Set(pictures.map(nameOf).filter((name) => name !== null))].sort();
  return names.map((name) =>
    section(
      `${title}: ${name}`,
      pictures.filter((picture) => nameOf(picture) === name),
    ),
  );
}

const COLUMNS = ['pictures', 'detected', 'median |e|', '95 % |e|', 'bias', 'in interval'];
const NAME_WIDTH = 18;
const COLUMN_WIDTH = 12;

function section(title: string, pictures: readonly ComparedPicture[]): string {
  const rows = COMPARED_ESTIMATES.map((name) => {
    const known = pictures.filter(({ truth }) => truth.valuesMm[name] !== null);
    const comparisons = known.flatMap(({ truth, measured }): Comparison[] => {
      const estimate = measured.estimates[name];
      const value = truth.valuesMm[name];
      if (estimate === undefined || value === null) return [];
      return [{ value: estimate.valueMm, low: estimate.lowMm, high: estimate.highMm, truth: value }];
    });
    return row(`${name} (mm)`, known.length, comparisons, true);
  });
  const irises = pictures.filter(({ truth }) => truth.pupilsPx !== null);
  const cards = pictures.filter(({ truth }) => truth.cardPx !== null);
  return [
    `${title}: ${detectedShare(pictures)}`,
    line('', COLUMNS),
    ...rows,
    row('iris centre (px)', irises.length, irises.flatMap(irisComparisons), false),
    row('card corner (px)', cards.length, cards.flatMap(cornerComparisons), false),
  ].join('\n');
}

function detectedShare(pictures: readonly ComparedPicture[]): string {
  const detected = pictures.filter(({ measured }) => measured.ok).length;
  const share = pictures.length === 0 ? 0 : (100 * detected) / pictures.length;
  return `${detected} of ${pictures.length} detected (${share.toFixed(0)} %)`;
}

/** `isSigned`: lengths have a sign and an interval, distances between points have neither. */
function row(name: string, pictures: number, comparisons: readonly Comparison[], isSigned: boolean): string {
  const summary = summariseErrors(comparisons);
  // an iris row compares two points for each picture, a card row four
  const perPicture = name.startsWith('iris centre') ? 2 : name.startsWith('card corner') ? 4 : 1;
  if (summary === null) return line(name, [String(pictures), '0', '-', '-', '-', '-']);
  return line(name, [
    String(pictures),
    String(summary.count / perPicture),
    summary.medianError.toFixed(2),
    summary.percentile95Error.toFixed(2),
    isSigned ? summary.bias.toFixed(2) : '-',
    isSigned ? `${(100 * summary.coverage).toFixed(0)} %` : '-',
  ]);
}

function line(name: string, cells: readonly string[]): string {
  return `  ${name.padEnd(NAME_WIDTH)}${cells.map((cell) => cell.padStart(COLUMN_WIDTH)).join('')}`;
}

function irisComparisons({ truth, measured }: ComparedPicture): readonly Comparison[] {
  const { pupilsPx } = truth;
  const { irisPx } = measured;
  if (pupilsPx === null || irisPx === null) return [];
  return [distance(irisPx.R, pupilsPx.R), distance(irisPx.L, pupilsPx.L)];
}

function cornerComparisons({ truth, measured }: ComparedPicture): readonly Comparison[] {
  const { cardPx } = measured;
  if (truth.cardPx === null || cardPx === null) return [];
  return truth.cardPx.flatMap((corner, index) => {
    const found = cardPx[index];
    return found === undefined ? [] : [distance(found, corner)];
  });
}

function distance(a: PixelPoint, b: PixelPoint): Comparison {
  const value = Math.hypot(a[0] - b[0], a[1] - b[1]);
  return { value, low: value, high: value, truth: 0 };
}

function reasons(pictures: readonly ComparedPicture[]): string {
  const failed = pictures.filter(({ measured }) => !measured.ok);
  if (failed.length === 0) return 'Every picture gave its estimates.';
  const names = [...new Set(failed.map(({ measured }) => measured.reason ?? 'unknown'))].sort();
  return [
    'Not detected:',
    ...names.map((name) => {
      const files = failed.filter(({ measured }) => (measured.reason ?? 'unknown') === name);
      return `  ${name.padEnd(NAME_WIDTH)}${String(files.length).padStart(4)}  ${files.map(({ truth }) => truth.file).join(' ')}`;
    }),
  ].join('\n');
}

function times(pictures: readonly ComparedPicture[]): string {
  if (pictures.length === 0) return 'No picture was measured.';
  const ms = pictures.map(({ measured }) => measured.ms);
  return (
    `Time from file to estimates (workers warm): median ${percentile(ms, 0.5).toFixed(0)} ms, ` +
    `95 % ${percentile(ms, 0.95).toFixed(0)} ms, longest ${Math.max(...ms).toFixed(0)} ms`
  );
}
