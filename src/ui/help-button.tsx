import { useState } from 'react';
import { createPortal } from 'react-dom';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import { HelpDialog } from './help-dialog.js';
import { words } from './language.js';

/** A small question mark that opens the help at a measurement. */
export function HelpButton({ measurement }: { readonly measurement: MeasurementId }) {
  const [isOpen, setIsOpen] = useState(false);
  const label = words.help.openFor(words.measurements[measurement].shortName);
  return (
    <>
      <button
        type="button"
        className="help-button"
        aria-label={label}
        title={words.help.button}
        onClick={() => {
          setIsOpen(true);
        }}
      >
        {words.help.sign}
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
