import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { Answer } from './answer.js';
import type { AcceptedAnswer, AnswerFailure } from './answer-exchange.js';
import { acceptAnswer } from './answer-exchange.js';
import type { InvitationStore } from './invitation-list.js';
import { lastDay } from './kept-picture.js';
import { NEW_DESK, newSession } from './new-session.js';
import type { KeyStore, KeyStoreFailure } from './practice-key.js';
import type { SealingPort } from './sealing.js';
import type { Desk, DeskStore, PictureStore, SessionStore, StoreFailure } from './session-store.js';

/** For how many days pictures of a distant wearer are kept: the wearer agreed to no more. Chosen. */
export const ANSWER_PICTURE_DAYS = 90;

/** What taking in an answer works with. */
export interface IntakeTools {
  readonly sealing: SealingPort;
  readonly keys: KeyStore;
  readonly invitations: InvitationStore;
  readonly sessions: SessionStore;
  readonly pictures: PictureStore;
  readonly desk: DeskStore;
  /** a UUID */
  readonly newId: () => string;
  /** what is remarked on the sheet about what the wearer said; empty for nothing */
  readonly remarkOn: (conditions: Answer['conditions']) => string;
}

export type IntakeFailure = AnswerFailure | KeyStoreFailure | StoreFailure;

/** An answer that is kept as a session. */
export interface TakenIn {
  readonly sessionId: string;
  /** pictures that came along and could not be kept */
  readonly picturesLost: number;
}

/**
 * Takes in an answer: its session is kept first, then its invitation is marked as answered. Where that fails, or another window
 * was faster, the session goes again, so that no answer is taken in twice.
 */
export async function takeAnswerIn(
  tools: IntakeTools,
  file: Uint8Array,
  now: Date,
): Promise<Result<TakenIn, IntakeFailure>> {
  const { sealing, keys, invitations, sessions } = tools;
  const [known, list] = [await keys.load(), await invitations.load()];
  if (!known.ok) return known;
  if (!list.ok) return list;
  const accepted = await acceptAnswer(sealing, file, list.value, known.value, now);
  if (!accepted.ok) return accepted;
  const { answer } = accepted.value;

  const desk = await tools.desk.load();
  const record = sessionOfAnswer(accepted.value, {
    id: tools.newId(),
    now,
    desk: desk.ok && desk.value !== null ? desk.value : NEW_DESK,
    remark: tools.remarkOn(answer.conditions),
  });
  const saved = await sessions.save(record, null);
  if (!saved.ok) return saved;

  const { id: answerId, invitationId } = answer;
  const at = now.toISOString();
  const marked = await invitations.update({ kind: 'answered', invitationId, answerId, at });
  // Another window may have taken in the same file: the moment tells which of the two was first.
  const isMarked = marked.ok && marked.value.some((sent) => sent.answer?.id === answerId && sent.answer.at === at);
  if (!isMarked) {
    await sessions.remove([record.id]);
    if (!marked.ok) return marked;
    const again = await acceptAnswer(sealing, file, marked.value, known.value, now);
    return again.ok ? fail({ kind: 'no-such-invitation' }) : again;
  }
  return succeed({ sessionId: record.id, picturesLost: await keepPictures(tools, answer, record.id, now) });
}

/** The session that an answer becomes: what the wearer was asked and said stands in its settings and its remark. */
function sessionOfAnswer(
  { answer, sent }: AcceptedAnswer,
  about: { readonly id: string; readonly now: Date; readonly desk: Desk; readonly remark: string },
): SessionRecord {
  const at = about.now.toISOString();
  const begun = newSession(about.id, at, about.desk);
  const { card, gaze } = answer.conditions;
  return {
    ...begun,
    origin: { kind: 'distant', invitationId: answer.invitationId, answerId: answer.id, receivedAt: at },
    sheet: {
      ...begun.sheet,
      notes: { ...begun.sheet.notes, wearer: sent.wearer, remark: about.remark },
      settings: { ...begun.sheet.settings, card, gaze },
    },
    camera: answer.camera,
  };
}

/** Keeps the pictures that the wearer let go along; resolves with how many could not be kept. */
async function keepPictures(
  { pictures, newId }: IntakeTools,
  { pictures: agreed, camera }: Answer,
  sessionId: string,
  now: Date,
): Promise<number> {
  let lost = 0;
  for (const picture of agreed?.pictures ?? []) {
    if (agreed === null) break;
    const kept = await pictures.keep({
      id: newId(),
      sessionId,
      takenAt: camera.takenAt,
      consent: agreed.consent,
      keptUntil: lastDay(now, ANSWER_PICTURE_DAYS),
      ...picture,
    });
    if (!kept.ok) lost += 1;
  }
  return lost;
}
