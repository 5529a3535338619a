import { useId, useMemo } from 'react';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { CENTRATION_STANDARDS, imbalanceLimitsOf } from '../core/lenses/centration-standards.js';
import type { Verdict } from '../core/lenses/cost-of-difference.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Prescription } from '../core/lenses/prescription.js';
import { parsePrescription } from '../session/prescription-entry.js';
import { sheetCosts } from '../session/prescription-costs.js';
import { lensCautions, valuesOf } from '../session/prescription-frame.js';
import { CostFrame } from './cost-frame.js';
import { CostRoom } from './cost-room.js';
import { costSaying, standardSources, withoutCostSentence } from './cost-sentences.js';
import { useEquipment } from './equipment.js';
import { FindingMark } from './finding-mark.js';
import { cautionSentence, standardName, STANDARDS } from './lens-sentences.js';
import { words } from './language.js';
import { PrescriptionText } from './prescription-text.js';
import type { SheetInHand } from './use-sheet.js';

/** The signs of findings serve for costs as well; the word beside them says more. */
const MARKS: Readonly<Record<Verdict, Finding['kind']>> = {
  negligible: 'agrees',
  within: 'agrees',
  open: 'cannot-tell',
  beyond: 'disagrees',
};

/** What the differences on the sheet, and the chosen frame, mean for the wearer of this prescription. */
export function CostPanel({ sheet }: { readonly sheet: SheetInHand }) {
  const headingId = useId();
  const parsed = useMemo(() => parsePrescription(sheet.state.prescription), [sheet.state.prescription]);
  return (
    <section className={parsed.ok ? 'costs' : 'costs is-blank'} aria-labelledby={headingId}>
      <h2 id={headingId}>{words.cost.heading}</h2>
      {parsed.ok ? (
        <Costs sheet={sheet} prescription={parsed.value.prescription} />
      ) : (
        <p className="note">{parsed.failure.isEmpty ? words.cost.noPrescription : words.cost.unfinished}</p>
      )}
    </section>
  );
}

function Costs({ sheet, prescription }: { readonly sheet: SheetInHand; readonly prescription: Prescription }) {
  const { catalogue } = useEquipment();
  const { rows, reconciliation } = sheet;
  const standard = CENTRATION_STANDARDS[sheet.state.settings.practice.standard];
  const { costs, without } = useMemo(
    () => sheetCosts(rows, reconciliation, prescription, standard),
    [rows, reconciliation, prescription, standard],
  );
  const values = useMemo(() => valuesOf(rows), [rows]);
  const toleranceOf = (name: ReadingName): number =>
    measurementOfReading(
      rows.map(({ measurement }) => measurement),
      name,
    ).tolerance.value;
  const cautions = lensCautions(values, prescription);
  const isUnequal =
    prescription.R.sphereD !== prescription.L.sphereD || prescription.R.cylinderD !== prescription.L.cylinderD;
  return (
    <>
      <StandardChoice sheet={sheet} prescription={prescription} />
      {cautions.length > 0 && (
        <ul className="cautions" aria-label={words.cost.cautions}>
          {cautions.map((caution) => (
            <li key={caution.kind}>
              <PrescriptionText text={cautionSentence(caution, catalogue)} />
            </li>
          ))}
        </ul>
      )}
      <h3>{words.cost.differences}</h3>
      {costs.length === 0 && without.length === 0 && <p className="note">{words.cost.none}</p>}
      {costs.length > 0 && (
        <ul className="cost-list">
          {costs.map((one) => {
            const saying = costSaying(one, { prescription, standard, catalogue, toleranceOf });
            if (saying === null) return null;
            const kind = MARKS[saying.verdict];
            return (
              <li key={`${saying.where} ${saying.numbers}`} className={`finding finding-${kind}`}>
                <FindingMark kind={kind} />
                <span>
                  {words.costSaying.whereHead(saying.where)} <strong>{saying.word}</strong>
                  <span className="reason">
                    <PrescriptionText text={saying.numbers} />
                  </span>
                </span>
              </li>
            );
          })}
        </ul>
      )}
      {without.map((none) => (
        <p key={none.reason} className="note">
          {withoutCostSentence(none, catalogue)}
        </p>
      ))}
      <CostRoom rows={rows} prescription={prescription} standard={standard} />
      <CostFrame sheet={sheet} prescription={prescription} values={values} />
      {isUnequal && <p className="note">{words.cost.unequal}</p>}
    </>
  );
}

/** The standard that counts, with its edition, and where its values come from. */
function StandardChoice({ sheet, prescription }: { readonly sheet: SheetInHand; readonly prescription: Prescription }) {
  const id = useId();
  const { standard: chosen } = sheet.state.settings.practice;
  const standard = CENTRATION_STANDARDS[chosen];
  return (
    <div className="cost-standard">
      <label htmlFor={id}>{words.cost.standard}</label>
      <select
        id={id}
        value={chosen}
        aria-describedby={`${id}-source`}
        onChange={(event) => {
          const next = STANDARDS.find((one) => one.id === event.currentTarget.value);
          if (next !== undefined) sheet.dispatch({ kind: 'practice-changed', change: { standard: next.id } });
        }}
      >
        {STANDARDS.map((one) => (
          <option key={one.id} value={one.id}>
            {standardName(one)}
          </option>
        ))}
      </select>
      <p id={`${id}-source`} className="note">
        {imbalanceLimitsOf(standard, prescription.lensKind).status === 'from-memory' && (
          <strong>{words.cost.fromMemoryMark} </strong>
        )}
        {standardSources(standard, prescription).map(words.source.cited).join('. ')}.
      </p>
    </div>
  );
}
