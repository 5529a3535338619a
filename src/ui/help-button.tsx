import { useState } from 'react';
import { createPortal } from 'react-dom';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import { laterPart } from './later-part.js';
import { words } from './language.js';

const HelpDialog = laterPart(async () => (await import('./help-dialog.js')).HelpDialog);

/** A small question mark that opens the help at a measurement. */
export function HelpButton({ measurement }: { readonly measurement: MeasurementId }) {
  const [isOpen, setIsOpen] = useState(false);
  const label = words.helpButton.openFor(words.measurements[measurement].shortName);
  return (
    <>
      <button
        type="button"
        className="help-button"
        aria-label={label}
        title={words.helpButton.button}
        onClick={() => {
          setIsOpen(true);
        }}
      >
        {words.helpButton.sign}
      </button>
      {isOpen &&
        createPortal(
          <HelpDialog
            measurement={measurement}
            onClose={() => {
              setIsOpen(false);
            }}
          />,
          document.body,
        )}
    </>
  );
}
