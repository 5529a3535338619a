import type { Estimate } from '../core/estimate/estimate.js';
import { mostHelpful } from '../core/estimate/most-helpful.js';
import type { Side } from '../core/units/side.js';
import type { SheetRow } from '../session/rows.js';
import type { ReadingField } from '../session/typed-sheet.js';
import type { BudgetBasis } from './budget-basis.js';
import { remedyContext } from './budget-basis.js';
import { BudgetChart } from './budget-chart.js';
import { budgetWords, remedySentence } from './budget-sentences.js';
import { formatNumber } from './numbers.js';
import { statusWords } from './sentences.js';
import { sheetWords as words } from './words.js';

/** What is measured and how, the tolerance in full, where the camera's doubt comes from and what would help most. */
export function RowDetails({ row, basis }: { readonly row: SheetRow; readonly basis: BudgetBasis | null }) {
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
            <>
              <div className="budgets">
                {fields.map(({ field, side, estimate }) =>
                  estimate === null ? null : (
                    <Budget key={field} basis={basis} estimate={estimate} field={field} side={side} />
                  ),
                )}
              </div>
              <p className="note">{budgetWords.legend}</p>
            </>
          )}
        </section>
      )}
    </div>
  );
}

function Budget({
  basis,
  estimate,
  field,
  side,
}: {
  readonly basis: BudgetBasis | null;
  readonly estimate: Estimate;
  readonly field: ReadingField;
  readonly side: Side | null;
}) {
  const remedy = basis === null ? null : mostHelpful(estimate, remedyContext(basis, field, side));
  return (
    <div>
      <BudgetChart estimate={estimate} title={side === null ? '' : `${words.side[side]}: `} />
      {basis !== null && (
        <p className="remedy">
          <strong>{budgetWords.helps}:</strong>{' '}
          {remedySentence(
            remedy,
            (estimate.high - estimate.low) / 2,
            estimate.standardUncertainty,
            estimate.unit,
            basis.isSweep,
          )}
        </p>
      )}
    </div>
  );
}
