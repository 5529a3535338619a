import type { Saying } from './saying.js';
import { useFocusOnCome } from './use-focus-on-come.js';

/** What went wrong and what to do next. It is read out, and takes the focus where what was pressed may be gone. */
export function FailureNote({
  saying,
  takesFocus = false,
}: {
  readonly saying: Saying;
  readonly takesFocus?: boolean;
}) {
  return takesFocus ? <FocusedNote saying={saying} /> : <Note saying={saying} />;
}

function Note({ saying: { what, next } }: { readonly saying: Saying }) {
  return (
    <p className="note note-failure" role="alert">
      <strong>{what}</strong> {next}
    </p>
  );
}

function FocusedNote({ saying: { what, next } }: { readonly saying: Saying }) {
  const place = useFocusOnCome<HTMLParagraphElement>();
  return (
    <p className="note note-failure" role="alert" tabIndex={-1} ref={place}>
      <strong>{what}</strong> {next}
    </p>
  );
}
