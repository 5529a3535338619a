import type { Answer } from '../../src/session/answer.js';
import type { Invitation } from '../../src/session/invitation.js';
import { makeInvitation } from '../../src/session/invitation.js';
import { sampleCamera } from './sample-sessions.js';
import { seededRandom } from './seeded-random.js';

/** An invented recipient, for what only hands it on. */
export const EXAMPLE_RECIPIENT = `age1${'q'.repeat(58)}`;

/** 128 bits, another for each number. */
export function exampleId(number: number): string {
  return `${number.toString(36).padStart(21, 'x')}Q`;
}

/** An invitation of 1 March 2026, ten o'clock, good for two weeks. */
export function exampleInvitation(changes: Partial<Invitation> = {}): Invitation {
  const made = makeInvitation(
    {
      recipient: EXAMPLE_RECIPIENT,
      practice: 'Optik Beispiel',
      language: 'de',
      cards: ['bought', 'printed'],
      asksForPictures: true,
      days: 14,
    },
    exampleId(1),
    new Date('2026-03-01T10:00:00Z'),
  );
  return { ...made, ...changes };
}

/** A small picture's bytes, of which only the first and the last are those of a JPEG file. */
export function exampleJpeg(length = 300): Uint8Array<ArrayBuffer> {
  const bytes = Uint8Array.from({ length }, (_, place) => (place * 37) % 256);
  bytes.set([0xff, 0xd8, 0xff, 0xe0]);
  bytes.set([0xff, 0xd9], length - 2);
  return bytes;
}

/** An answer to the example invitation, taken the day after. */
export function exampleAnswer(changes: Partial<Answer> = {}): Answer {
  return {
    id: exampleId(1001),
    invitationId: exampleId(1),
    appVersion: '0.1.0',
    language: 'de',
    camera: { ...sampleCamera(seededRandom(5), '2026-03-02T18:30:00Z'), supervision: 'none' },
    conditions: {
      card: 'bought',
      printScale: 1,
      gaze: 'camera',
      evenLight: true,
      glassesOff: true,
      cardFlat: true,
    },
    device: { widthPx: 1280, heightPx: 720, facing: 'user' },
    pictures: {
      consent: { at: '2026-03-02T18:31:00+01:00', wording: 'Ja, zwei Bilder mitschicken.', language: 'de' },
      pictures: [
        { widthPx: 640, heightPx: 320, bytes: exampleJpeg() },
        { widthPx: 320, heightPx: 160, bytes: exampleJpeg(299) },
      ],
    },
    ...changes,
  };
}
