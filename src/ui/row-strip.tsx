import { useEffect, useState } from 'react';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { useEquipment } from './equipment.js';
import { readingOf } from './hand-place.js';
import { plainNumber, withUnit } from './numbers.js';
import { readingWords } from './sentences.js';
import { rowMark } from './slip-marks.js';
import { words } from './language.js';
import type { SheetInHand } from './use-sheet.js';

/**
 * The strip that stays in view while the sheet scrolls: what is read at the field that has the focus, with its caution, and the
 * first of what does not fit. It keeps its place, so that nothing moves when its words change.
 */
export function SheetStrip(props: { readonly sheet: SheetInHand; readonly onShowMisfits: () => void }) {
  const { sheet } = props;
  const { catalogue } = useEquipment();
  const at = useFocusedReading();
  const [first] = sheet.misfits;
  const [name] = first?.names ?? [];
  const isAnyIn = sheet.rows.some(({ fields }) => fields.some(({ reading }) => reading.ok));
  return (
    <div className="strip-place">
      <div className="sheet-strip">
        <AtField sheet={sheet} at={at} />
        <div className="strip-misfits">
          {sheet.misfits.length === 0 || name === undefined ? (
            <p>{isAnyIn && sheet.isReasoned && words.misfit.fits}</p>
          ) : (
            <>
              <p>
                <strong className="is-off">{words.strip.misfits(sheet.misfits.length)}.</strong>{' '}
                {readingWords(name, catalogue)}: {rowMark(name, sheet) ?? words.sheet.disagrees}
              </p>
              <button type="button" aria-label={words.strip.showMisfits} onClick={props.onShowMisfits}>
                {words.strip.show}
              </button>
            </>
          )}
        </div>
      </div>
    </div>
  );
}

function AtField({ sheet, at }: { readonly sheet: SheetInHand; readonly at: ReadingName | null }) {
  const { catalogue } = useEquipment();
  const row = sheet.rows.find(({ fields }) => fields.some(({ field }) => field === at));
  if (row === undefined || at === null) {
    return (
      <div className="strip-now">
        <p className="note strip-keys">{words.sheet.keysHint}</p>
        <p className="note strip-touch">{words.sheet.touchHint}</p>
      </div>
    );
  }
  const { gauge, measurement } = row;
  const { caution } = words.measurements[measurement.id];
  const step = words.strip.step(withUnit(plainNumber(gauge?.resolution ?? measurement.resolution), measurement.unit));
  return (
    // The field says the caution itself to whoever hears the page.
    <div className="strip-now" aria-hidden="true">
      <p>
        <strong>{readingWords(at, catalogue)}</strong>{' '}
        <span className="note">{gauge === null ? step : `${words.strip.gauge(gauge.name)}, ${step}`}</span>
      </p>
      {caution !== null && <p className="caution">{caution}</p>}
    </div>
  );
}

/** The reading whose field has the focus; null while none has. */
function useFocusedReading(): ReadingName | null {
  const [at, setAt] = useState<ReadingName | null>(null);
  useEffect(() => {
    const onFocusIn = ({ target }: FocusEvent): void => {
      setAt(readingOf(target));
    };
    const onFocusOut = ({ relatedTarget }: FocusEvent): void => {
      if (relatedTarget === null) setAt(null);
    };
    document.addEventListener('focusin', onFocusIn);
    document.addEventListener('focusout', onFocusOut);
    return () => {
      document.removeEventListener('focusin', onFocusIn);
      document.removeEventListener('focusout', onFocusOut);
    };
  }, []);
  return at;
}
