import { describe, expect, it } from 'vitest';
import { EVERY_MEASURING_FAILURE } from '../../tests/support/every-measuring-failure.js';
import type { CameraHope } from './camera-recovery.js';
import { failureAfterRetry, isWorthTrying } from './camera-recovery.js';

const tried = (hope: CameraHope): readonly string[] =>
  Object.values(EVERY_MEASURING_FAILURE)
    .filter((failure) => isWorthTrying(failure, hope))
    .map(({ kind }) => kind);

describe('isWorthTrying', () => {
  it('tries again and again where the camera may be let go or wake up at any moment', () => {
    expect(tried({ kind: 'time-passed' })).toEqual(['camera-busy', 'camera-silent']);
  });

  it('tries again when the page is seen again, since phones take the camera away from a hidden page', () => {
    expect(tried({ kind: 'page-shown' })).toEqual(['camera-busy', 'camera-unplugged', 'camera-silent']);
  });

  it('tries again when something was plugged in', () => {
    expect(tried({ kind: 'devices' })).toEqual(['camera-missing', 'camera-busy', 'camera-unplugged', 'camera-silent']);
  });

  it('never asks for a permission again by itself, but goes on once it was given', () => {
    expect(tried({ kind: 'permission', isGranted: true })).toEqual(['camera-refused']);
    expect(tried({ kind: 'permission', isGranted: false })).toEqual([]);
  });
});

describe('failureAfterRetry', () => {
  it('still says that the camera was unplugged while it is not back', () => {
    const { 'camera-unplugged': unplugged, 'camera-missing': missing, 'camera-busy': busy } = EVERY_MEASURING_FAILURE;
    expect(failureAfterRetry(unplugged, missing)).toBe(unplugged);
    expect(failureAfterRetry(unplugged, busy)).toBe(busy);
    expect(failureAfterRetry(busy, missing)).toBe(missing);
  });
});
