import { describe, expect, it, vi } from 'vitest';
import { createLater } from './later.js';

describe('what is loaded later', () => {
  it('is there once it has come, is fetched once, and tells', async () => {
    const load = vi.fn(() => Promise.resolve('the part'));
    const later = createLater(load);
    const told = vi.fn();
    later.subscribe(told);
    expect(later.now()).toBeNull();
    later.load();
    later.load();
    await vi.waitFor(() => expect(later.now()).toBe('the part'));
    later.load();
    expect([load.mock.calls.length, told.mock.calls.length]).toEqual([1, 1]);
  });

  it('says that it failed, and can be tried again', async () => {
    const warned = vi.spyOn(console, 'warn').mockReturnValue();
    const outcomes = [Promise.reject(new TypeError('no network')), Promise.resolve('the part')];
    const later = createLater(() => outcomes.shift() ?? Promise.reject(new Error('asked too often')));
    later.load();
    await vi.waitFor(() => expect(later.hasFailed()).toBe(true));
    expect(later.now()).toBeNull();
    expect(warned).toHaveBeenCalledOnce();
    later.load();
    expect(later.hasFailed()).toBe(false);
    await vi.waitFor(() => expect(later.now()).toBe('the part'));
    warned.mockRestore();
  });
});
