import { afterEach, describe, expect, it, vi } from 'vitest';
import { createLocalLanguageStore } from './local-language-store.js';

describe('the store of the language', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  const store = createLocalLanguageStore();

  it('gives back what was chosen last', () => {
    const kept = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    expect(store.load()).toBeNull();
    expect(store.save('fr')).toBe(true);
    expect(store.save('de')).toBe(true);
    expect(store.load()).toBe('de');
  });

  it('says so where storage is forbidden', () => {
    const refuse = (): never => {
      throw new DOMException('no', 'SecurityError');
    };
    vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse });
    expect(store.load()).toBeNull();
    expect(store.save('de')).toBe(false);
  });
});
