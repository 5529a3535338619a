import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../tests/support/seeded-random.js';
import type { SightChange } from '../../tests/support/example-sight.js';
import { exampleSight } from '../../tests/support/example-sight.js';
import { NEAR_ENOUGH_PIXELS_PER_MM } from '../core/estimate/face-estimates.js';
import type { LiveHint, LiveHints } from './live-hints.js';
import { LEAST_SHOWN_MS, nextHints, NO_HINTS, RIVAL_MS, STILL_MS, stillShare } from './live-hints.js';

const FRAME_MS = 50;

/** Lets frames come for so long, each as the function says for its time since the beginning of this part. */
function during(lengthMs: number, before: LiveHints, frame: (ms: number) => SightChange): LiveHints[] {
  const states: LiveHints[] = [];
  let hints = before;
  const beginMs = (before.lastMs ?? 0) + FRAME_MS;
  for (let ms = 0; ms < lengthMs; ms += FRAME_MS) {
    hints = nextHints(hints, exampleSight(frame(ms)), beginMs + ms);
    states.push(hints);
  }
  return states;
}

const after = (lengthMs: number, before: LiveHints, change: SightChange): LiveHints =>
  during(lengthMs, before, () => change).at(-1) ?? before;

/** What was shown, one after the other. */
const told = (states: readonly LiveHints[]): readonly (LiveHint['kind'] | null)[] =>
  states.map(({ shown }) => shown?.kind ?? null).filter((kind, i, all) => i === 0 || kind !== all[i - 1]);

const kindOf = ({ shown }: LiveHints): LiveHint['kind'] | null => shown?.kind ?? null;

describe('nextHints', () => {
  it('tells nothing before it has lasted', () => {
    expect(kindOf(after(RIVAL_MS, NO_HINTS, { face: null }))).toBeNull();
    expect(kindOf(after(RIVAL_MS + FRAME_MS, NO_HINTS, { face: null }))).toBe('no-face');
  });

  it('leads from an empty chair to the picture', () => {
    const empty = during(2_000, NO_HINTS, () => ({ face: null, card: null }));
    const far = during(2_000, empty.at(-1) ?? NO_HINTS, () => ({ pixelsPerMm: 0.9, card: null }));
    const near = during(2_000, far.at(-1) ?? NO_HINTS, () => ({ card: null }));
    const held = during(2_000, near.at(-1) ?? NO_HINTS, () => ({ card: { slantDeg: 15 } }));
    const right = during(4_000, held.at(-1) ?? NO_HINTS, () => ({}));
    expect(told([...empty, ...far, ...near, ...held, ...right])).toEqual([
      null,
      'no-face',
      'nearer',
      'no-card',
      'card-level',
      'look',
      'all-right',
    ]);
    expect(right.map(stillShare).at(-1)).toBe(1);
  });

  it('does not flicker where a number dances about its threshold', () => {
    const { normal } = seededRandom(20261126);
    const states = during(60_000, NO_HINTS, () => ({ pixelsPerMm: normal(NEAR_ENOUGH_PIXELS_PER_MM, 0.02) }));
    // With a scatter of 0.02 the way out, 0.08 away, is as good as never taken.
    expect(told(states).filter((kind) => kind !== null)).toEqual(['nearer']);
  });

  it('does not tell of a blink, but takes no picture of it', () => {
    const before = during(2_500, NO_HINTS, () => ({}));
    expect(told(before).at(-1)).toBe('all-right');
    const blink = during(250, before.at(-1) ?? NO_HINTS, () => ({ face: { opening: { R: 0.1, L: 0.1 } } }));
    expect(told(blink)).toEqual(['all-right']);
    expect(Math.max(...blink.map(stillShare))).toBe(0);
    const open = during(STILL_MS + FRAME_MS, blink.at(-1) ?? NO_HINTS, () => ({}));
    expect(open.slice(0, -1).every((hints) => stillShare(hints) < 1)).toBe(true);
    expect(open.map(stillShare).at(-1)).toBe(1);
  });

  it('asks to hold still while the eyes move, and is not fooled by jitter', () => {
    // 30 mm/s at 2 px/mm
    const moving = during(3_000, NO_HINTS, (ms) => ({ movedPx: 0.06 * ms - 90 }));
    expect(told(moving)).toEqual([null, 'hold-still']);
    const { normal } = seededRandom(7);
    const jitter = during(5_000, NO_HINTS, () => ({ movedPx: normal(0, 0.3) }));
    expect(told(jitter)).toEqual([null, 'look', 'all-right']);
    expect(jitter.map(stillShare).at(-1)).toBe(1);
  });

  it('does not believe that somebody held still while no frame came', () => {
    const before = during(2_000, NO_HINTS, () => ({}));
    const last = before.at(-1) ?? NO_HINTS;
    expect(kindOf(last)).toBe('all-right');
    const next = nextHints(last, exampleSight(), (last.lastMs ?? 0) + 5_000);
    expect(stillShare(next)).toBe(0);
  });

  it('says again where to look once the card was put down', () => {
    const right = after(4_000, NO_HINTS, {});
    const down = during(3_000, right, () => ({ card: null }));
    const again = during(4_000, down.at(-1) ?? NO_HINTS, () => ({}));
    expect(told([...down, ...again])).toEqual(['all-right', 'no-card', 'look', 'all-right']);
  });

  it('leaves every hint standing for long enough, and takes no picture where anything was wrong of late', () => {
    const part = fc.record({
      lengthMs: fc.integer({ min: 20, max: 1_500 }),
      change: fc.oneof(
        fc.constant<SightChange>({}),
        fc.constant<SightChange>({ face: null }),
        fc.constant<SightChange>({ card: null }),
        fc.double({ min: 0.8, max: 4, noNaN: true }).map((pixelsPerMm): SightChange => ({ pixelsPerMm })),
        fc.double({ min: -20, max: 20, noNaN: true }).map((slantDeg): SightChange => ({ card: { slantDeg } })),
        fc.double({ min: -20, max: 20, noNaN: true }).map((yawDeg): SightChange => ({ face: { yawDeg } })),
        fc.double({ min: -8, max: 8, noNaN: true }).map((movedPx): SightChange => ({ movedPx })),
      ),
    });
    fc.assert(
      fc.property(fc.array(part, { maxLength: 30 }), fc.integer({ min: 20, max: 140 }), (parts, frameMs) => {
        let hints = NO_HINTS;
        let atMs = 1_000;
        let shownSinceMs = atMs;
        let wrongAtMs = atMs;
        for (const { lengthMs, change } of parts) {
          const endMs = atMs + lengthMs;
          for (; atMs < endMs; atMs += frameMs) {
            const next = nextHints(hints, exampleSight(change), atMs);
            if (next.shown !== hints.shown) {
              if (hints.shown !== null) expect(atMs - shownSinceMs).toBeGreaterThanOrEqual(LEAST_SHOWN_MS);
              shownSinceMs = atMs;
            }
            if (next.problems.length > 0 || next.isMoving) wrongAtMs = atMs;
            if (stillShare(next) === 1) expect(atMs - wrongAtMs).toBeGreaterThanOrEqual(STILL_MS);
            hints = next;
          }
        }
      }),
      { seed: 6, numRuns: 100 },
    );
  });
});
