import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { exampleProfile } from '../../tests/support/example-profile.js';
import { createLocalProfileStore } from './local-profile-store.js';

/** A storage of a few letters, as a browser has one of some megabytes. */
function storageOf(letters: number): Storage {
  const kept = new Map<string, string>();
  const storage: Partial<Storage> = {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => {
      // HTML, 12.2.1: an exception of this name where the new value could not be set
      if (value.length > letters) throw new DOMException('full', 'QuotaExceededError');
      kept.set(key, value);
    },
  };
  return storage as Storage;
}

describe('the store of profiles', () => {
  beforeEach(() => {
    vi.stubGlobal('localStorage', storageOf(3000));
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  const store = createLocalProfileStore();
  const profile = exampleProfile();

  it('gives back what it keeps', () => {
    expect(store.load()).toEqual([]);
    expect(store.save([profile])).toBe(true);
    expect(store.load()).toEqual([profile]);
  });

  it('says so when it is full, and keeps what was there', () => {
    store.save([profile]);
    const many = Array.from({ length: 20 }, (_, index) => exampleProfile({ id: `p${index}` }));
    expect(store.save(many)).toBe(false);
    expect(store.load()).toEqual([profile]);
  });

  it('leaves out damaged entries, and does not throw them away', () => {
    localStorage.setItem('glabella.profiles', JSON.stringify({ version: 1, profiles: [profile, { name: 'half' }] }));
    expect(store.load()).toEqual([profile]);
    store.save([]);
    expect(localStorage.getItem('glabella.profiles')).toContain('half');
  });

  it('puts text aside that a later version wrote, before it writes', () => {
    localStorage.setItem('glabella.profiles', '{"version":2,"shelf":[]}');
    expect(store.load()).toEqual([]);
    expect(store.save([profile])).toBe(true);
    expect(localStorage.getItem('glabella.profiles.unread')).toBe('{"version":2,"shelf":[]}');
  });

  it('keeps nothing where storage is forbidden', () => {
    vi.stubGlobal('localStorage', undefined);
    expect(store.load()).toEqual([]);
    expect(store.save([profile])).toBe(false);
  });
});
