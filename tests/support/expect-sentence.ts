import { expect } from 'vitest';

/** A sentence for people: begins with a capital, ends with a full stop, and shows nothing of the code. */
export function expectSentence(text: string): void {
  expect(text).toMatch(/^[A-Z“].*\.$/);
  expect(text).not.toMatch(/undefined|NaN|\[object|[a-z]-[a-z]+-[a-z]+:/);
}
