import type { Saying } from './saying.js';

/** What went wrong and what to do next; it is read out. */
export function FailureNote({ saying: { what, next } }: { readonly saying: Saying }) {
  return (
    <p className="note note-failure" role="alert">
      <strong>{what}</strong> {next}
    </p>
  );
}
