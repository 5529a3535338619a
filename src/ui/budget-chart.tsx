import type { Estimate } from '../core/estimate/estimate.js';
import type { Side } from '../core/units/side.js';
import type { BudgetBar } from './budget-lines.js';
import { budgetBars } from './budget-lines.js';
import { shareWords } from './budget-sentences.js';
import { formatEstimate, formatNumber } from './numbers.js';
import { sourceWords } from './sentences.js';
import { words } from './language.js';

/**
 * What the uncertainty of one number is made of: one bar for all sources together, and under it a table with a bar for each. The bars say
 * nothing that the table does not say in numbers, and are hidden from screen readers.
 */
export function BudgetChart({ estimate, side }: { readonly estimate: Estimate; readonly side: Side | null }) {
  const bars = budgetBars(estimate);
  return (
    <table className="budget">
      <caption>
        <span className="budget-value">
          {side !== null && `${words.sheet.sideHead[side]} `}
          {formatEstimate(estimate)} {estimate.unit}
        </span>
        <WholeBar bars={bars} />
      </caption>
      <thead className="visually-hidden">
        <tr>
          <th scope="col">{words.sheet.source}</th>
          <th scope="col">{words.sheet.share}</th>
          <th scope="col">{estimate.unit}</th>
        </tr>
      </thead>
      <tbody>
        {bars.map((bar) => (
          <tr key={bar.of.kind === 'source' ? bar.of.source : bar.of.kind}>
            <th scope="row">
              {bar.of.kind === 'source' ? sourceWords(bar.of.source) : words.budget.smallSources(bar.of.count)}
              <ShareBar share={bar.share} />
            </th>
            <td className="budget-share">{shareWords(bar.share)}</td>
            <td>{formatNumber(bar.standardUncertainty, 2)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{words.sheet.total}</th>
          <td />
          <td>{formatNumber(estimate.standardUncertainty, 2)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

/** All sources in one bar, the largest first; gaps part them, so that it reads without colours. */
function WholeBar({ bars }: { readonly bars: readonly BudgetBar[] }) {
  const starts = bars.map((_, i) => bars.slice(0, i).reduce((sum, { share }) => sum + share, 0));
  return (
    <svg className="budget-whole" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true" focusable="false">
      {bars.map(({ share }, i) => (
        <rect
          key={i}
          x={100 * starts[i]!}
          width={Math.max(100 * share - GAP, 0.2)}
          height={6}
          opacity={1 - 0.8 * shade(i)}
        />
      ))}
    </svg>
  );
}

/** Between two sources in the whole bar, percent of its width. */
const GAP = 0.8;

/** 0 for the first bar, towards 1 for the later ones. */
const shade = (place: number): number => 1 - 0.72 ** place;

function ShareBar({ share }: { readonly share: number }) {
  return (
    <svg className="budget-bar" viewBox="0 0 100 3" preserveAspectRatio="none" aria-hidden="true" focusable="false">
      <rect className="budget-groove" width={100} height={3} />
      <rect width={Math.max(100 * share, 0.4)} height={3} />
    </svg>
  );
}
