import { unreachable } from '../core/result.js';
import type { InvitationFailure } from '../session/invitation.js';
import type { SealFailure } from '../session/sealing.js';
import type { SaidConditions, TakenEstimates } from '../session/wearer-visit.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { SweepTrouble } from '../session/sweep-frames.js';
import { dayText } from './day-text.js';
import { words } from './language.js';
import type { Saying } from './saying.js';

/** Why a link is no invitation that counts, and what the wearer does about it. */
export function refusedSaying(failure: InvitationFailure): Saying {
  const said = words.wearer.refused;
  switch (failure.kind) {
    case 'no-invitation':
      return said.noInvitation;
    case 'damaged':
      return said.damaged;
    case 'newer-version':
      return said.newer;
    case 'expired':
      return said.expired(dayText(failure.expiresOn), failure.practice);
    default:
      return unreachable(failure);
  }
}

/** Why there is no estimate, and what the wearer does about it. */
export function wearerFailureSaying({ kind }: MeasuringFailure | SweepTrouble, isOnline: boolean): Saying {
  const isOfNetwork = kind === 'model-not-loadable' || kind === 'vision-not-loadable';
  return isOfNetwork && !isOnline ? words.wearer.noNetwork : words.wearer.failure[kind];
}

/** Why there is no file, and what the wearer does about it. */
export function wearerSealSaying({ kind }: SealFailure, isOnline: boolean): Saying {
  const said = words.wearer.file.failed;
  switch (kind) {
    case 'sealing-not-loadable':
      return isOnline ? said.notLoadable : words.wearer.noNetwork;
    case 'sealing-unsupported':
      return said.unsupported;
    case 'no-recipient':
    // Nothing is sealed with a passphrase here.
    case 'passphrase-empty':
      return said.noRecipient;
    default:
      return unreachable(kind);
  }
}

/** What would have made it better, in plain sentences; each once. */
export function betterSentences(taken: TakenEstimates, conditions: SaidConditions): readonly string[] {
  const said = words.wearer;
  return [
    ...new Set([
      ...taken.measurement.advice.map(({ kind }) => said.advice[kind]),
      ...(conditions.glassesOff ? [] : [said.conditions.glasses]),
      ...(conditions.evenLight ? [] : [said.conditions.light]),
      ...(conditions.cardFlat ? [] : [said.conditions.flat]),
    ]),
  ];
}
