import type { Measurement, ReadingName } from '../core/catalogue/measurement.js';
import type { Sourced } from '../core/catalogue/source-status.js';
import type { Estimate } from '../core/estimate/estimate.js';
import { isEstimateName, mostHelpful } from '../core/estimate/most-helpful.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { Side } from '../core/units/side.js';
import type { SheetRow } from '../session/rows.js';
import type { BudgetBasis } from './budget-basis.js';
import { remedyContext } from './budget-basis.js';
import { BudgetChart } from './budget-chart.js';
import { remedySentence } from './budget-sentences.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { statusWords } from './sentences.js';
import { words } from './language.js';

/** What is measured and how, the tolerance in full, where the camera's doubt comes from and what would help most. */
export function RowDetails({ row, basis }: { readonly row: SheetRow; readonly basis: BudgetBasis | null }) {
  const { measurement, fields, covered, gauge } = row;
  const { tolerance } = measurement;
  const { name, definition, howTaken, withSquint, caution } = words.measurements[measurement.id];
  const estimates = fields.filter(({ estimate }) => estimate !== null);
  return (
    <div className="row-details">
      <section>
        <h3>{words.sheet.definitionHeading}</h3>
        <p>
          <strong>{name}.</strong> {definition}{' '}
          {words.sheet.definedBy(
            words.source.cited(measurement.definedBy.source),
            statusWords(measurement.definedBy.status),
          )}
        </p>
        <p>
          {words.sheet.howTaken} {howTaken}{' '}
          {words.sheet.step(withUnit(plainNumber(gauge?.resolution ?? measurement.resolution), measurement.unit))}
        </p>
        {withSquint !== null && <p>{words.sheet.squintChanges(withSquint)}</p>}
        {caution !== null && <p className="caution">{caution}</p>}
      </section>
      <div className="row-sources">
        <section>
          <h3>{words.sheet.toleranceHeading}</h3>
          <p>
            {words.help.toleranceIs(
              withUnit(plainNumber(tolerance.value), measurement.unit),
              statusWords(tolerance.status),
              words.source.cited(tolerance.source),
            )}
          </p>
        </section>
        <Usual measurement={measurement} />
      </div>
      {estimates.length > 0 && (
        <section>
          <h3>{words.sheet.doubtHeading}</h3>
          {covered ? (
            <p>{words.sheet.doubtCovered}</p>
          ) : (
            <>
              <div className="budgets">
                {fields.map(({ field, side, estimate }) =>
                  estimate === null ? null : (
                    <Budget key={field} basis={basis} estimate={estimate} field={field} side={side} />
                  ),
                )}
              </div>
              <p className="note">{words.budget.legend}</p>
            </>
          )}
        </section>
      )}
    </div>
  );
}

/** What is found among people, and how one reader scatters, with the sources. */
function Usual({ measurement }: { readonly measurement: Measurement }) {
  const { population, repeatability, resolution, sideDifference, unit } = measurement;
  const decimals = resolution < 1 ? 1 : 0;
  const spread = NORMAL_95 * population.standardDeviation;
  const said = (what: string, { source, status }: Sourced): string =>
    words.sheet.sourced(what, statusWords(status), words.source.cited(source));
  const text = (value: number): string => formatNumber(value, decimals);
  const [mean, low, high] = [population.mean, population.mean - spread, population.mean + spread];
  return (
    <section>
      <h3>{words.sheet.usualHeading}</h3>
      <p>{said(words.sheet.usual(withUnit(text(mean), unit), text(low), withUnit(text(high), unit)), population)}</p>
      {sideDifference !== null && (
        <p>
          {said(
            words.sheet.usualSides(withUnit(formatNumber(NORMAL_95 * sideDifference.standardDeviation, 1), unit)),
            sideDifference,
          )}
        </p>
      )}
      <p>{said(words.sheet.reader(withUnit(formatNumber(repeatability.standardDeviation, 2), unit)), repeatability)}</p>
    </section>
  );
}

function Budget(props: {
  readonly basis: BudgetBasis | null;
  readonly estimate: Estimate;
  readonly field: ReadingName;
  readonly side: Side | null;
}) {
  const { basis, estimate, field, side } = props;
  const remedy =
    basis === null || !isEstimateName(field) ? null : mostHelpful(estimate, remedyContext(basis, field, side));
  return (
    <div>
      <BudgetChart estimate={estimate} side={side} />
      {basis !== null && (
        <p className="remedy">
          <strong>{words.budget.helps}</strong>{' '}
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
