import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { daysLeft, lastDay, neededRegion } from './kept-picture.js';

describe('the part of a picture that is needed', () => {
  it('holds all that is marked with a margin of an iris radius, and nothing more', () => {
    const features = exampleFeatures();
    const region = neededRegion(features);
    if (region === null) throw new Error('the marks lie in the picture');
    const { radiusPx } = features.iris.R;
    // the sides of the head, the top of the card, and the lower end of the irises
    expect(region.leftPx).toBe(Math.floor(490 - radiusPx));
    expect(region.topPx).toBe(Math.floor(160 - radiusPx));
    expect(region.leftPx + region.widthPx).toBe(Math.ceil(790 + radiusPx));
    expect(region.topPx + region.heightPx).toBe(Math.ceil(Math.max(360, 350 + radiusPx) + radiusPx));
  });

  it('ends at the edges of the picture', () => {
    const features = { ...exampleFeatures(), widthPx: 780, heightPx: 365 };
    const region = neededRegion(features);
    expect(region && region.leftPx + region.widthPx).toBe(780);
    expect(region && region.topPx + region.heightPx).toBe(365);
  });
});

describe('the days of a kept picture', () => {
  const now = new Date(2026, 0, 30, 23, 50);

  it('ends so many days after today, over the end of a month and of a year', () => {
    expect(lastDay(now, 30)).toBe('2026-03-01');
    expect(lastDay(now, 365)).toBe('2027-01-30');
  });

  it('counts what is left by the calendar', () => {
    expect(daysLeft('2026-01-30', now)).toBe(0);
    expect(daysLeft('2026-03-01', now)).toBe(30);
    expect(daysLeft('2026-01-29', now)).toBe(-1);
    // over the night in which clocks change in Europe
    expect(daysLeft('2026-03-30', new Date(2026, 2, 28, 12))).toBe(2);
  });
});
