import { useId } from 'react';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import { unreachable } from '../core/result.js';
import type { Misfit } from '../session/misfits.js';
import type { SheetRow } from '../session/rows.js';
import type { ReadingField } from '../session/typed-sheet.js';
import { READING_FIELDS } from '../session/typed-sheet.js';
import { useEquipment } from './equipment.js';
import { formatEstimate } from './numbers.js';
import { goToReading } from './readings-sheet.js';
import { inconsistencySentence, readingFailureSentence, readingWords, slipSentence } from './sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { misfitWords as words } from './words.js';

/** What does not fit, and what most likely went wrong. It leads to the fields; it never changes one. */
export function MisfitList({ sheet }: { readonly sheet: SheetInHand }) {
  const { catalogue } = useEquipment();
  const headingId = useId();
  const isAnyIn = sheet.rows.some(({ fields }) => fields.some(({ reading }) => reading.ok));
  if (sheet.misfits.length === 0 && !isAnyIn) return null;
  return (
    <section className="misfits" aria-labelledby={headingId}>
      <h2 id={headingId}>{words.heading}</h2>
      {sheet.misfits.length === 0 ? (
        <p>{words.fits}</p>
      ) : (
        <ul>
          {sheet.misfits.map((misfit) => (
            <li key={`${misfit.kind} ${misfit.names.join(' ')}`}>
              <p>
                <strong>{misfitSentence(misfit, sheet.rows, catalogue)}</strong>
              </p>
              {misfit.slips.map((slip) => (
                <p key={slipSentence(slip, catalogue)}>
                  {words.likely} {slipSentence(slip, catalogue)}
                </p>
              ))}
              {misfit.slips.length === 0 && misfit.kind !== 'inconsistent' && <p>{words.unexplained}</p>}
              <p className="actions">
                {fieldsToLookAt(misfit).map((field) => (
                  <button
                    key={field}
                    type="button"
                    onClick={() => {
                      goToReading(field);
                    }}
                  >
                    {words.goTo(readingWords(field, catalogue))}
                  </button>
                ))}
              </p>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function misfitSentence(misfit: Misfit, rows: readonly SheetRow[], catalogue: Catalogue): string {
  switch (misfit.kind) {
    case 'refused': {
      const [name] = misfit.names;
      return `${name === undefined ? '' : readingWords(name, catalogue)}: ${readingFailureSentence(misfit.failure, 'mm') ?? ''}`;
    }
    case 'inconsistent':
      return inconsistencySentence(misfit.inconsistency, catalogue);
    case 'disagrees': {
      const { name } = misfit.finding.comparison;
      const field = rows.flatMap((row) => row.fields).find((one) => one.field === name);
      if (field === undefined || field.estimate === null) return '';
      return words.disagrees(readingWords(name, catalogue), field.typed.trim(), formatEstimate(field.estimate));
    }
    default:
      return unreachable(misfit);
  }
}

/** The fields that the likeliest cause names first, then the others; at most three. */
function fieldsToLookAt(misfit: Misfit): readonly ReadingField[] {
  const named: readonly ReadingName[] = misfit.slips.flatMap((slip) => slip.restorations.map(({ name }) => name));
  const all = [...new Set([...named, ...misfit.names])];
  return all.filter((name): name is ReadingField => (READING_FIELDS as readonly string[]).includes(name)).slice(0, 3);
}
