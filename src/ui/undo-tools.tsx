import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { goToAct } from './undo-place.js';
import { actWords } from './undo-sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { useShortcut } from './use-shortcut.js';

/** Text that is no part of the session, such as what is searched: the browser undoes that by itself. */
function isOtherText(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  const isText = target.isContentEditable || target.matches('textarea, input:not([type=checkbox], [type=radio])');
  return isText && (target.closest('.paper') === null || target.closest('.search') !== null);
}

/** Undo and redo of all that is done to the open session. */
export function UndoTools({ sheet }: { readonly sheet: SheetInHand }) {
  const { catalogue } = useEquipment();
  const { dispatch, undoes, redoes } = sheet;
  const [told, setTold] = useState('');
  const step = (which: 'undone' | 'redone'): void => {
    const act = which === 'undone' ? undoes : redoes;
    if (act === null) return;
    // The place is on the screen only after this, and stands in the state as it is then.
    flushSync(() => {
      sheet.step(which);
      setTold(words.undo[which](actWords(act, catalogue)));
    });
    goToAct(act);
  };
  const undo = (): void => {
    step('undone');
  };
  const redo = (): void => {
    step('redone');
  };
  useShortcut('undo', undo, { isLeftTo: isOtherText });
  useShortcut('redo', redo, { isLeftTo: isOtherText });
  useEffect(() => {
    const onLeft = (): void => {
      dispatch({ kind: 'place-left' });
    };
    document.addEventListener('focusout', onLeft);
    return () => {
      document.removeEventListener('focusout', onLeft);
    };
  }, [dispatch]);
  return (
    <div className="undo-tools" role="group" aria-label={words.undo.group}>
      <button
        type="button"
        className="quiet"
        aria-disabled={undoes === null}
        aria-keyshortcuts="Control+Z Meta+Z"
        aria-label={undoes === null ? words.undo.nothing.undo : words.undo.undoes(actWords(undoes, catalogue))}
        title={undoes === null ? undefined : words.undo.undoes(actWords(undoes, catalogue))}
        onClick={undo}
      >
        {words.undo.undo}
      </button>
      <button
        type="button"
        className="quiet"
        aria-disabled={redoes === null}
        aria-keyshortcuts="Control+Shift+Z Meta+Shift+Z Control+Y"
        aria-label={redoes === null ? words.undo.nothing.redo : words.undo.redoes(actWords(redoes, catalogue))}
        title={redoes === null ? undefined : words.undo.redoes(actWords(redoes, catalogue))}
        onClick={redo}
      >
        {words.undo.redo}
      </button>
      <p className="visually-hidden" role="status">
        {told}
      </p>
    </div>
  );
}
