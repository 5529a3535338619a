import { afterEach, describe, expect, it, vi } from 'vitest';
import { createLocalShutterStore } from './local-shutter-store.js';

describe('the store of how pictures are taken', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  const store = createLocalShutterStore();

  it('gives back what was chosen last; pictures are taken by themselves before', () => {
    const kept = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    expect(store.load()).toBe('by-itself');
    expect(store.save('by-hand')).toBe(true);
    expect(store.load()).toBe('by-hand');
    expect(store.save('by-itself')).toBe(true);
    expect(store.load()).toBe('by-itself');
  });

  it('says so where storage is forbidden', () => {
    const refuse = (): never => {
      throw new DOMException('no', 'SecurityError');
    };
    vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse });
    expect(store.load()).toBe('by-itself');
    expect(store.save('by-hand')).toBe(false);
  });
});
