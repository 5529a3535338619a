import { describe, expect, it } from 'vitest';
import { exampleFrames, exampleMeasurement, FOUND, missed } from '../../tests/support/example-sweep.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { SweepMeasurement } from '../core/estimate/sweep.js';
import { succeed } from '../core/result.js';
import { sweepHeadline } from './sweep-headline.js';

describe('the headline of a sweep', () => {
  const frames = exampleFrames([FOUND, missed('no-card'), FOUND, FOUND, FOUND]);
  const headline = (measurement: SweepMeasurement): string =>
    sweepHeadline(measurement, frames, {
      basis: { frames, settings: DEFAULT_MEASURING_SETTINGS },
      result: succeed(measurement),
    });
  const measured = exampleMeasurement(['used', 'used', 'slipped', 'slipped']);

  it('counts all frames, those without a card as well', () => {
    expect(headline(measured)).toBe('2 of 5 frames used.');
  });

  it('says where the card slipped, by the number on the screen', () => {
    // the third that was measured is the fourth that was taken
    expect(headline({ ...measured, slippedFromFrame: 2 })).toBe(
      '2 of 5 frames used. The card slipped at frame 4; the rest was left out.',
    );
  });
});
