import { describe, expect, it } from 'vitest';
import { exampleAnswer, exampleJpeg } from '../../tests/support/example-answer.js';
import type { Answer } from './answer.js';
import { ANSWER_LIMIT_BYTES, ANSWER_PICTURE_LIMIT_BYTES, answerSchema, writeAnswer } from './answer.js';

function written(answer: Answer): Record<string, unknown> {
  return JSON.parse(writeAnswer(answer)) as Record<string, unknown>;
}

describe('the text of an answer', () => {
  it.each([
    ['with two pictures', exampleAnswer()],
    ['without pictures', exampleAnswer({ pictures: null })],
    ['from a file', exampleAnswer({ device: { widthPx: 4032, heightPx: 3024, facing: null } })],
  ])('comes back %s', (_name, answer) => {
    expect(answerSchema.parse(written(answer))).toEqual(answer);
  });

  it('names its format and version', () => {
    expect(written(exampleAnswer())).toMatchObject({ format: 'glabella-answer', version: 1 });
  });

  it('holds the largest pictures below its own limit', () => {
    const bytes = exampleJpeg(ANSWER_PICTURE_LIMIT_BYTES);
    const { pictures } = exampleAnswer();
    if (pictures === null) throw new Error('no pictures');
    const largest = exampleAnswer({
      pictures: {
        consent: { ...pictures.consent, wording: 'ä'.repeat(4000) },
        pictures: [1, 2].map(() => ({ widthPx: 4000, heightPx: 2000, bytes })),
      },
    });
    const text = writeAnswer(largest);
    // A head of a few hundred bytes and a tag for each 64 KiB come on top.
    expect(Buffer.byteLength(text)).toBeLessThan(ANSWER_LIMIT_BYTES - 20_000);
    expect(answerSchema.safeParse(JSON.parse(text)).success).toBe(true);
  });
});

describe('what is no answer', () => {
  const { pictures, camera, conditions, device, ...others } = written(exampleAnswer());
  const whole = { ...others, pictures, camera, conditions, device };
  const agreed = pictures as { consent: object; pictures: readonly object[] };
  const [picture] = agreed.pictures;

  it.each([
    ['an id that is not of 128 bits', { id: 'a' }],
    ['another invitation id', { invitationId: '../../etc' }],
    ['a language that is none', { language: '<script>' }],
    ['a measurement that somebody supervised', { camera: { ...(camera as object), supervision: 'reader' } }],
    ['no measurement', { camera: null }],
    ['a time that is none', { camera: { ...(camera as object), takenAt: 'yesterday' } }],
    ['a card of another kind', { conditions: { ...(conditions as object), card: 'library' } }],
    ['a scale beyond any printer', { conditions: { ...(conditions as object), printScale: 3 } }],
    ['conditions that nobody confirmed or denied', { conditions: { card: 'bought', printScale: 1, gaze: 'far' } }],
    ['a picture of no size', { device: { ...(device as object), widthPx: 0 } }],
    ['pictures without consent', { pictures: { pictures: [picture] } }],
    ['pictures with consent to nothing', { pictures: { ...agreed, consent: { ...agreed.consent, wording: '' } } }],
    ['consent without pictures', { pictures: { ...agreed, pictures: [] } }],
    ['three pictures', { pictures: { ...agreed, pictures: [picture, picture, picture] } }],
    ['a picture in another form', { pictures: { ...agreed, pictures: [{ ...picture, bytes: 'R0lGODlhAQ==' }] } }],
    ['a picture that was cut off', { pictures: { ...agreed, pictures: [{ ...picture, bytes: '/9j/4AAA' }] } }],
    ['a picture in no base64', { pictures: { ...agreed, pictures: [{ ...picture, bytes: '/9j/4*==' }] } }],
    [
      'a picture that is too large',
      {
        pictures: {
          ...agreed,
          pictures: [
            { ...picture, bytes: Buffer.from(exampleJpeg(ANSWER_PICTURE_LIMIT_BYTES + 3)).toString('base64') },
          ],
        },
      },
    ],
  ])('%s', (_name, change) => {
    expect(answerSchema.safeParse(whole).success).toBe(true);
    expect(answerSchema.safeParse({ ...whole, ...change }).success).toBe(false);
  });
});
