import type { MeasurementId } from '../core/catalogue/measurement.js';
import { HelpPages } from './help-pages.js';
import { words } from './language.js';
import { Modal } from './modal.js';

/** The help, opened at a measurement or, with null, at its contents. With all its drawings it is no part of the first screen. */
export function HelpDialog(props: { readonly measurement: MeasurementId | null; readonly onClose: () => void }) {
  return (
    <Modal heading={words.help.heading} closeLabel={words.help.close} onClose={props.onClose} wide>
      <HelpPages first={props.measurement} />
    </Modal>
  );
}
