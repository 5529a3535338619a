import * as z from 'zod/mini';
import type { CameraRecord } from '../core/record/session-record.js';
import { cameraRecordSchema } from '../core/record/session-schema.js';
import type { CardKind, Invitation } from './invitation.js';
import { languageTagSchema } from './invitation.js';
import { RANDOM_ID_FORM } from './sealing.js';
import { fromBase64, toBase64 } from './sealing-base64.js';

/** What the wearer said before anything was measured. Nobody else saw to it. */
export interface ConfirmedConditions {
  /** what was held to the face */
  readonly card: CardKind;
  /** true length of the printed card's line over its nominal length; 1 for a bought card */
  readonly printScale: number;
  /** where the wearer was asked to look */
  readonly gaze: 'camera' | 'far';
  /** the face was lit evenly from the front */
  readonly evenLight: boolean;
  readonly glassesOff: boolean;
  /** the card lay flat, free of fingers */
  readonly cardFlat: boolean;
}

/** What the measurement was taken with, as far as it matters for it. */
export interface AnswerDevice {
  /** of the picture, or of each frame of a sweep */
  readonly widthPx: number;
  readonly heightPx: number;
  /** which camera of the phone: beside the screen, or on the back; null for a file, or where the device does not say */
  readonly facing: 'user' | 'environment' | null;
}

/** A picture that the wearer agreed to send: cropped to the part that is needed. */
export interface AnswerPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** JPEG */
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Pictures, and what the wearer agreed to; there are none without it. */
export interface AgreedPictures {
  /** when (ISO 8601) the wearer agreed, and to what, word for word, in which language (BCP 47) */
  readonly consent: { readonly at: string; readonly wording: string; readonly language: string };
  /** one or two */
  readonly pictures: readonly AnswerPicture[];
}

/** What a distant wearer sends back. */
export interface Answer {
  /** 128 random bits, as 22 letters of base64url: tells an answer that comes twice */
  readonly id: string;
  /** of the invitation that it answers: only who held its link knows it */
  readonly invitationId: Invitation['id'];
  /** which app measured, for tracing a mistake back */
  readonly appVersion: string;
  /** in which language the wearer was led (BCP 47) */
  readonly language: string;
  /** of supervision 'none' */
  readonly camera: CameraRecord;
  readonly conditions: ConfirmedConditions;
  readonly device: AnswerDevice;
  /** null where none were asked for, or the wearer did not agree */
  readonly pictures: AgreedPictures | null;
}

/** What the text of an answer begins with, and the version of its form. */
export const ANSWER_FORMAT = 'glabella-answer';
export const ANSWER_VERSION = 1;

/** Chosen: a cropped face at full resolution stays well below. */
export const ANSWER_PICTURE_LIMIT_BYTES = 1_500_000;

/** Chosen: two pictures in base64 (4/3 of their size) and the numbers. */
export const ANSWER_LIMIT_BYTES = 5_000_000;

const moment = z.iso.datetime({ offset: true });
const randomId = z.string().check(z.regex(RANDOM_ID_FORM));
const sidePx = z.int().check(z.gte(16), z.lte(20_000));

const pictureSchema: z.ZodMiniType<AnswerPicture> = z.object({
  widthPx: sidePx,
  heightPx: sidePx,
  bytes: z.pipe(
    z.string().check(z.maxLength(Math.ceil(ANSWER_PICTURE_LIMIT_BYTES / 3) * 4)),
    z.pipe(
      z.transform((text: string) => fromBase64(text)),
      z.custom<Uint8Array<ArrayBuffer>>((bytes) => bytes instanceof Uint8Array && isJpeg(bytes)),
    ),
  ),
});

/** An answer as its text holds it: pictures in base64. */
export const answerSchema: z.ZodMiniType<Answer> = z.object({
  id: randomId,
  invitationId: randomId,
  appVersion: z.string().check(z.maxLength(64)),
  language: languageTagSchema,
  camera: cameraRecordSchema.check(z.refine(({ supervision }) => supervision === 'none', { path: ['supervision'] })),
  conditions: z.object({
    card: z.enum(['bought', 'printed']),
    printScale: z.number().check(z.gte(0.5), z.lte(2)),
    gaze: z.enum(['camera', 'far']),
    evenLight: z.boolean(),
    glassesOff: z.boolean(),
    cardFlat: z.boolean(),
  }),
  device: z.object({ widthPx: sidePx, heightPx: sidePx, facing: z.nullable(z.enum(['user', 'environment'])) }),
  pictures: z.nullable(
    z.object({
      consent: z.object({
        at: moment,
        wording: z.string().check(z.minLength(1), z.maxLength(4000)),
        language: languageTagSchema,
      }),
      pictures: z.array(pictureSchema).check(z.minLength(1), z.maxLength(2)),
    }),
  ),
});

/** The text of an answer. */
export function writeAnswer(answer: Answer): string {
  const { pictures, ...others } = answer;
  const written =
    pictures === null
      ? null
      : {
          consent: pictures.consent,
          pictures: pictures.pictures.map(({ bytes, ...size }) => ({ ...size, bytes: toBase64(bytes) })),
        };
  return JSON.stringify({ format: ANSWER_FORMAT, version: ANSWER_VERSION, ...others, pictures: written });
}

/** Whether this begins and ends as a JPEG file does (ITU-T T.81, B.1.1.3: start and end of image). */
function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff && bytes.at(-2) === 0xff && bytes.at(-1) === 0xd9;
}
