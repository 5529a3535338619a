import { LaneSvg } from './lane-parts.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Estimate } from '../core/estimate/estimate.js';
import type { SheetRow } from '../session/rows.js';
import type { BudgetBar } from './budget-lines.js';
import { budgetBars } from './budget-lines.js';
import { shareWords } from './budget-sentences.js';
import { words } from './language.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { sourceWords, spokenName } from './sentences.js';

/** The camera's doubt of one place. */
export interface Doubt {
  readonly name: ReadingName;
  readonly spoken: string;
  readonly estimate: Estimate;
  /** half of the 95 % interval, and the tolerance, in the unit of the estimate */
  readonly halfWidth: number;
  readonly tolerance: number;
}

/** The camera's doubts that may be seen, the widest in tolerances first. */
export function widestDoubts(rows: readonly SheetRow[]): readonly Doubt[] {
  return rows
    .filter(({ covered }) => !covered)
    .flatMap(({ measurement, fields }) =>
      fields.flatMap(({ field, side, estimate }): readonly Doubt[] =>
        estimate === null
          ? []
          : [
              {
                name: field,
                spoken: spokenName(measurement, side),
                estimate,
                halfWidth: (estimate.high - estimate.low) / 2,
                tolerance: measurement.tolerance.value,
              },
            ],
      ),
    )
    .sort((a, b) => b.halfWidth / b.tolerance - a.halfWidth / a.tolerance);
}

/** Chosen: what is seen at a glance; the others are surer. */
const MOST_BARS = 6;

const HEIGHT = 22;
const BAR_Y = 4;
const BAR_HEIGHT = 12;

/** Parts two sources, in per cent of the whole width. */
const GAP = 0.25;

/** The widest doubts as bars of what they are made of, against the tolerance. */
export function DoubtBars({ doubts }: { readonly doubts: readonly Doubt[] }) {
  const shown = doubts.slice(0, MOST_BARS);
  const widest = Math.max(1.5, ...shown.map(({ halfWidth, tolerance }) => halfWidth / tolerance));
  const percent = (tolerances: number): number => (100 * tolerances) / widest;
  return (
    <div className="lanes">
      <ul>
        {shown.map((doubt) => {
          const { name, spoken, estimate, halfWidth, tolerance } = doubt;
          const bars = budgetBars(estimate);
          const isSure = halfWidth <= tolerance;
          const written = withUnit(formatNumber(halfWidth, 1), estimate.unit);
          const length = percent(halfWidth / tolerance);
          const starts = bars.map((_, place) => bars.slice(0, place).reduce((sum, { share }) => sum + share, 0));
          return (
            <li key={name} className="lane-row">
              <p className="lane-name">
                {spoken} <small>{words.differences.doubts.halfWidth(written)}</small>
              </p>
              <div className="lane-plot">
                <LaneSvg
                  height={HEIGHT}
                  label={words.differences.doubts.lane(
                    spoken,
                    written,
                    withUnit(plainNumber(tolerance), estimate.unit),
                    madeWords(bars),
                  )}
                >
                  {bars.map(({ share }, place) => (
                    <rect
                      key={place}
                      className="lane-doubt"
                      x={`${(length * starts[place]!).toFixed(2)}%`}
                      y={BAR_Y}
                      width={`${Math.max(0.15, length * share - GAP).toFixed(2)}%`}
                      height={BAR_HEIGHT}
                      opacity={0.25 + 0.75 * 0.62 ** place}
                    />
                  ))}
                  <line className="lane-tolerance-rim" x1={`${percent(1)}%`} x2={`${percent(1)}%`} y1={0} y2={HEIGHT} />
                  <line className="lane-tolerance" x1={`${percent(1)}%`} x2={`${percent(1)}%`} y1={0} y2={HEIGHT} />
                </LaneSvg>
                <p className="lane-made">{madeWords(bars)}</p>
              </div>
              <div className="lane-said">
                <p>{isSure ? words.differences.doubts.sure : words.differences.doubts.tooWide}</p>
              </div>
            </li>
          );
        })}
      </ul>
      <div className="lane-axis lane-axis-foot" aria-hidden="true">
        <div className="lane-axis-head" />
        <div className="lane-plot">
          <div className="lane-ticks">
            <span style={{ left: `${percent(1)}%` }}>{words.differences.doubts.line}</span>
          </div>
        </div>
      </div>
      {doubts.length > shown.length && (
        <p className="note">{words.differences.doubts.more(doubts.length - shown.length)}</p>
      )}
    </div>
  );
}

/** The two largest sources in words. */
function madeWords(bars: readonly BudgetBar[]): string {
  const named = bars.flatMap(({ of, share }) =>
    of.kind === 'source' ? [{ source: sourceWords(of.source), share: shareWords(share) }] : [],
  );
  const [first, second] = named;
  const { mostly, then } = words.differences.doubts;
  return [
    ...(first === undefined ? [] : [mostly(first.source, first.share)]),
    ...(second === undefined ? [] : [then(second.source, second.share)]),
  ].join(', ');
}
