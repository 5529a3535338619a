import { Fragment } from 'react';
import { words } from './language.js';
import { PRISM_SIGN } from './lens-sentences.js';

/** A text with the sign of prism dioptres, which is said in words to whoever listens. */
export function PrescriptionText({ text }: { readonly text: string }) {
  const parts = text.split(PRISM_SIGN);
  return parts.map((part, index) => (
    // Parts of one text never change places.
    <Fragment key={index}>
      {index > 0 && (
        <>
          <span aria-hidden="true">{PRISM_SIGN}</span>
          <span className="visually-hidden">{words.prescription.prismDioptres}</span>
        </>
      )}
      {part}
    </Fragment>
  ));
}
