import { lazy, Suspense } from 'react';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import { words } from './language.js';
import { Modal } from './modal.js';

// The pages with all their drawings are no part of what is loaded first.
const HelpPages = lazy(() => import('./help-pages.js').catch(() => ({ default: HelpNotLoaded })));

function HelpNotLoaded() {
  return (
    <p className="note note-failure" role="alert">
      {words.help.notLoaded}
    </p>
  );
}

/** The help, opened at a measurement or, with null, at its contents. */
export function HelpDialog(props: { readonly measurement: MeasurementId | null; readonly onClose: () => void }) {
  return (
    <Modal heading={words.help.heading} closeLabel={words.help.close} onClose={props.onClose} wide>
      <Suspense fallback={<p className="note">{words.help.loading}</p>}>
        <HelpPages first={props.measurement} />
      </Suspense>
    </Modal>
  );
}
