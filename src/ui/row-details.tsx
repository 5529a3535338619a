import type { Estimate } from '../core/estimate/estimate.js';
import type { SheetRow } from '../session/rows.js';
import { formatEstimate, formatNumber } from './numbers.js';
import { sourceWords, statusWords } from './sentences.js';
import { sheetWords as words } from './words.js';

/** What is measured and how, where the camera's doubt comes from, and the tolerance in full. */
export function RowDetails({ row }: { readonly row: SheetRow }) {
  const { measurement, fields, covered } = row;
  const { tolerance } = measurement;
  const estimates = fields.filter(({ estimate }) => estimate !== null);
  return (
    <div className="row-details">
      <section>
        <h3>{words.definitionHeading}</h3>
        <p>{measurement.definition}</p>
        <p>
          {words.howTaken}
          {measurement.howTaken} {words.step(String(measurement.resolution))}
        </p>
        {measurement.caution !== null && <p className="caution">{measurement.caution}</p>}
      </section>
      <section>
        <h3>{words.toleranceHeading}</h3>
        <p>
          ± {formatNumber(tolerance.value, 1)} {measurement.unit} ({statusWords(tolerance.status)}): {tolerance.source}.
        </p>
      </section>
      {estimates.length > 0 && (
        <section>
          <h3>{words.doubtHeading}</h3>
          {covered ? (
            <p>{words.doubtCovered}</p>
          ) : (
            <div className="budgets">
              {fields.map(({ field, side, estimate }) =>
                estimate === null ? null : (
                  <Budget key={field} estimate={estimate} title={side === null ? '' : `${words.side[side]}: `} />
                ),
              )}
            </div>
          )}
        </section>
      )}
    </div>
  );
}

function Budget({ estimate, title }: { readonly estimate: Estimate; readonly title: string }) {
  const total = estimate.standardUncertainty;
  return (
    <table className="budget">
      <caption>
        {title}
        {formatEstimate(estimate)} {estimate.unit}
      </caption>
      <thead className="visually-hidden">
        <tr>
          <th scope="col">{words.source}</th>
          <th scope="col">{estimate.unit}</th>
        </tr>
      </thead>
      <tbody>
        {estimate.budget.map(({ source, standardUncertainty }) => (
          <tr key={source}>
            <th scope="row">
              {sourceWords(source)}
              {/* The bar is the share of the variance: shares of variances add up to the whole, those of deviations do not. */}
              <span className="share" style={{ width: `${100 * (standardUncertainty / total) ** 2}%` }} />
            </th>
            <td>{formatNumber(standardUncertainty, 2)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{words.total}</th>
          <td>{formatNumber(total, 2)}</td>
        </tr>
      </tfoot>
    </table>
  );
}
