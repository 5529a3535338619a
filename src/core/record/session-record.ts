import type { Advice } from '../camera/failure.js';
import type { FaceEstimates } from '../estimate/estimate.js';
import type { SweepAdvice } from '../estimate/sweep.js';
import type { TypedSheet } from './typed-sheet.js';

/** What the camera said of a wearer. The picture itself is no part of it. */
export type CameraRecord = PictureRecord | SweepRecord;

interface CameraRecordOfAny {
  /** ISO 8601 */
  readonly takenAt: string;
  /** who saw to it that the card lay flat and the wearer looked where asked: a reader, or nobody but the wearer */
  readonly supervision: 'reader' | 'none';
  readonly estimates: FaceEstimates;
  /** at the eyes, in the picture or the middle of the frames used */
  readonly pixelsPerMm: number;
  /** whether a hand had set the lid marks; otherwise they are as they were found, in a sweep always */
  readonly lidsByHand: { readonly R: boolean; readonly L: boolean };
}

export interface PictureRecord extends CameraRecordOfAny {
  readonly kind: 'picture';
  readonly advice: readonly Advice[];
}

export interface SweepRecord extends CameraRecordOfAny {
  readonly kind: 'sweep';
  readonly advice: readonly SweepAdvice[];
  readonly framesUsed: number;
  readonly framesTaken: number;
}

/** How many places of a sheet stand how; counted when the sheet was worked out last. */
export interface FindingCounts {
  /** places with a number */
  readonly written: number;
  readonly confirmed: number;
  /** the camera's findings by their kind */
  readonly agrees: number;
  readonly disagrees: number;
  readonly cannotTell: number;
  /** what does not fit, whether or not a camera took part */
  readonly misfits: number;
}

export const NO_FINDINGS: FindingCounts = {
  written: 0,
  confirmed: 0,
  agrees: 0,
  disagrees: 0,
  cannotTell: 0,
  misfits: 0,
};

/** How a session came about. */
export type SessionOrigin =
  | { readonly kind: 'desk' }
  /** a distant wearer's answer to an invitation; times in ISO 8601 */
  | {
      readonly kind: 'distant';
      readonly invitationId: string;
      readonly answerId: string;
      readonly receivedAt: string;
    };

/** All of one visit, as it is kept and handed on. */
export interface SessionRecord {
  /** made once, never shown; a UUID */
  readonly id: string;
  /** ISO 8601, as all times here */
  readonly begunAt: string;
  readonly changedAt: string;
  readonly origin: SessionOrigin;
  /** what was typed, with the settings and the practice's gauges and tolerances that it was read with */
  readonly sheet: TypedSheet;
  /** null where no picture was measured */
  readonly camera: CameraRecord | null;
  readonly findings: FindingCounts;
}

/** What a list shows of a session. */
export interface SessionSummary {
  readonly id: string;
  readonly begunAt: string;
  readonly changedAt: string;
  readonly origin: SessionOrigin['kind'];
  /** as typed; empty where nothing was */
  readonly wearer: string;
  readonly remark: string;
  /** the names of both readers, where typed */
  readonly readers: readonly string[];
  /** what stands in the field of the binocular PD of the first reader, or else the second; empty without one */
  readonly binocularPd: string;
  readonly camera: CameraRecord['kind'] | null;
  readonly findings: FindingCounts;
}

export function summaryOf({ id, begunAt, changedAt, origin, sheet, camera, findings }: SessionRecord): SessionSummary {
  const { first, second } = sheet.readers;
  return {
    id,
    begunAt,
    changedAt,
    origin: origin.kind,
    wearer: sheet.notes.wearer.trim(),
    remark: sheet.notes.remark.trim(),
    readers: [first.reader.trim(), second.reader.trim()].filter((name) => name !== ''),
    binocularPd: first.readings.pdFar.trim() || second.readings.pdFar.trim(),
    camera: camera?.kind ?? null,
    findings,
  };
}
