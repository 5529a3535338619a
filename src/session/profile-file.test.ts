import { describe, expect, it } from 'vitest';
import { exampleProfile } from '../../tests/support/example-profile.js';
import { parseKeptProfiles, parseProfileFile, writeKeptProfiles, writeProfileFile } from './profile-file.js';

const stored = exampleProfile();
const file = writeProfileFile(stored);

describe('the file of a profile', () => {
  it('comes back as it was written, without the id of the shelf', () => {
    const { id, ...loose } = stored;
    expect(parseProfileFile(file)).toEqual({ ok: true, value: loose });
    expect(file).not.toContain(id);
  });

  it('says which version it is of, for later readers', () => {
    expect(JSON.parse(file)).toMatchObject({ format: 'glabella-camera-profile', version: 1 });
  });

  it.each(['', 'no JSON', '[]', '{"fx": 1180}', '{"format":"another-program","version":1}'])(
    'is not seen in %j',
    (text) => {
      expect(parseProfileFile(text)).toEqual({ ok: false, failure: { kind: 'no-profile' } });
    },
  );

  it('of a newer version is refused as such', () => {
    expect(parseProfileFile(file.replace('"version": 1', '"version": 7'))).toEqual({
      ok: false,
      failure: { kind: 'newer-version', version: 7, knownVersion: 1 },
    });
  });

  it('that was cut off is told from another file', () => {
    expect(parseProfileFile(file.slice(0, 300))).toEqual({ ok: false, failure: { kind: 'damaged', place: null } });
  });

  it.each([
    ['a missing field', (text: string) => text.replace('"rmsPx"', '"rms"'), 'profile.rmsPx'],
    ['text for a number', (text: string) => text.replace('1180.4', '"1180.4"'), 'profile.fx'],
    ['a focal length below zero', (text: string) => text.replace('1180.4', '-1180.4'), 'profile.fx'],
    // of a picture 1280 wide: a field of view of 2 degrees
    ['a focal length of no camera', (text: string) => text.replace('1180.4', '36668'), 'profile.fx'],
    ['a middle outside of the picture', (text: string) => text.replace('633.1', '1633.1'), 'profile.cx'],
    ['a number without end', (text: string) => text.replace('0.041', '1e999'), 'profile.distortion.0'],
    ['a doubt of nothing', (text: string) => text.replace('"fx": 1.4', '"fx": 0'), 'profile.uncertainty.fx'],
    ['a day that never was', (text: string) => text.replace('2026-03-04', '2026-02-30'), 'madeOn'],
    ['a coverage beyond all', (text: string) => text.replace('0.79', '79'), 'coverage'],
    ['no name', (text: string) => text.replace('Desk camera', ' '), 'name'],
  ])('is refused with %s', (_what, change, place) => {
    const changed = change(file);
    expect(changed).not.toBe(file);
    expect(parseProfileFile(changed)).toEqual({ ok: false, failure: { kind: 'damaged', place } });
  });
});

describe('the kept shelf', () => {
  const second = exampleProfile({ id: 'desk-2', name: 'Other' });

  it('comes back', () => {
    const text = writeKeptProfiles({ profiles: [stored, second], unread: [] });
    expect(parseKeptProfiles(text)).toEqual({ profiles: [stored, second], unread: [] });
  });

  it('keeps what it cannot read, and gives the rest', () => {
    const damaged = { ...second, profile: { ...second.profile, fx: null } };
    const text = writeKeptProfiles({ profiles: [stored], unread: [damaged, 'noise'] });
    const kept = parseKeptProfiles(text);
    expect(kept).toEqual({ profiles: [stored], unread: [damaged, 'noise'] });
    expect(kept === null ? null : parseKeptProfiles(writeKeptProfiles(kept))).toEqual(kept);
  });

  it.each(['', '[]', '{"version":2,"profiles":[]}'])('is not seen in %j', (text) => {
    expect(parseKeptProfiles(text)).toBeNull();
  });
});
