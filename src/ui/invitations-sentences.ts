import { unreachable } from '../core/result.js';
import type { Answer } from '../session/answer.js';
import type { IntakeFailure } from '../session/answer-intake.js';
import type { LinkFailure } from '../session/invitation.js';
import type { SentInvitation } from '../session/invitation-list.js';
import { statusOf } from '../session/invitation-list.js';
import type { KeyBackupFailure, NewKeyFailure } from '../session/practice-key.js';
import type { SealFailure } from '../session/sealing.js';
import { dayText } from './day-text.js';
import { dateText, words } from './language.js';
import { formatNumber } from './numbers.js';
import type { Saying } from './saying.js';
import { isStoreFailure, storeFailureSaying } from './store-sentences.js';

const BYTES_PER_MEGABYTE = 1e6;

function momentText(moment: string): string {
  return dateText(new Date(moment), { dateStyle: 'long', timeStyle: 'short' });
}

/** The day here of a moment (ISO 8601). */
export function momentDayText(moment: string): string {
  return dateText(new Date(moment), { dateStyle: 'long' });
}

/** Why nobody was invited, or a file was not taken in as an answer, and what to do. */
export function invitationFailureSaying(failure: IntakeFailure | NewKeyFailure | SealFailure | LinkFailure): Saying {
  if (isStoreFailure(failure)) return storeFailureSaying(failure);
  const said = words.invitations.failure;
  switch (failure.kind) {
    case 'sealing-not-loadable':
      return said.notLoadable;
    case 'sealing-unsupported':
      return said.unsupported;
    case 'keys-damaged':
      return said.keysDamaged;
    case 'link-too-long':
      return said.linkTooLong(failure.letters, failure.limit);
    case 'no-recipient':
      return said.badRecipient;
    case 'passphrase-empty':
      return words.handOn.noPassphrase;
    case 'no-answer':
      return failure.sealedWith === 'passphrase' ? said.noAnswerPassphrase : said.noAnswer;
    case 'too-large':
      return said.tooLarge(
        formatNumber(failure.bytes / BYTES_PER_MEGABYTE, 1),
        formatNumber(failure.limitBytes / BYTES_PER_MEGABYTE, 0),
      );
    case 'truncated':
      return said.truncated;
    case 'altered':
      return said.altered;
    case 'for-another-key':
      return said.forAnotherKey;
    case 'no-such-invitation':
      return said.noSuchInvitation;
    case 'replayed':
      return said.replayed(momentText(failure.at));
    case 'invitation-answered':
      return said.invitationAnswered(momentText(failure.at));
    case 'invitation-withdrawn':
      return said.invitationWithdrawn(momentText(failure.at));
    case 'expired':
      return said.expired(dayText(failure.expiresOn));
    case 'newer-version':
      return said.newerVersion;
    case 'unreadable':
      return said.unreadable;
    default:
      return unreachable(failure);
  }
}

/** Why a backup gave no keys. */
export function keyBackupFailureSaying(failure: KeyBackupFailure): Saying {
  const said = words.invitations.failure;
  switch (failure.kind) {
    case 'sealing-not-loadable':
    case 'sealing-unsupported':
      return invitationFailureSaying(failure);
    case 'too-large':
    case 'not-sealed':
    case 'no-key-backup':
      return said.noBackup;
    case 'truncated':
      return words.handOn.failure.truncated;
    case 'altered':
      return words.handOn.failure.altered;
    case 'wrong-passphrase':
      return words.handOn.failure.wrongPassphrase;
    case 'passphrase-too-costly':
      return words.handOn.failure.tooCostly;
    case 'newer-version':
      return said.backupNewer;
    default:
      return unreachable(failure);
  }
}

/** How an invitation stands. */
export function statusSentence(sent: SentInvitation, now: Date): string {
  const said = words.invitations.list.status;
  const status = statusOf(sent, now);
  switch (status) {
    case 'out':
      return said.out(dayText(sent.invitation.expiresOn));
    case 'answered':
      return said.answered(momentDayText(sent.answer?.at ?? sent.invitation.madeAt));
    case 'expired':
      return said.expired(dayText(sent.invitation.expiresOn));
    case 'withdrawn':
      return said.withdrawn(momentDayText(sent.withdrawnAt ?? sent.invitation.madeAt));
    default:
      return unreachable(status);
  }
}

/** What of a wearer's own words about the circumstances is remarked on the sheet; empty where all was as asked. */
export function conditionsRemark({ glassesOff, evenLight, cardFlat }: Answer['conditions']): string {
  const said = words.invitations.conditions;
  const sentences = [
    ...(glassesOff ? [] : [said.glassesOn]),
    ...(evenLight ? [] : [said.unevenLight]),
    ...(cardFlat ? [] : [said.cardNotFlat]),
  ];
  return sentences.length === 0 ? '' : said.remark(sentences);
}
