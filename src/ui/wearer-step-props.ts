import type { Invitation } from '../session/invitation.js';
import type { ReadAloud } from './use-read-aloud.js';
import type { VisitInHand } from './use-wearer-visit.js';
import type { WearerEquipment } from './wearer-equipment.js';

/** What every step is given. */
export interface StepProps extends VisitInHand {
  readonly equipment: WearerEquipment;
  readonly invitation: Invitation;
  readonly readAloud: ReadAloud;
  readonly place: { readonly number: number; readonly all: number };
}
