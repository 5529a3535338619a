import { describe, expect, it } from 'vitest';
import { EXAMPLE_CAMERA_PROFILE, exampleProfile } from '../../tests/support/example-profile.js';
import type { LiveCamera } from './profile-choice.js';
import { chosenProfile, countsFor, FROM_FILES, profileFor } from './profile-choice.js';
import type { StoredProfile } from './stored-profile.js';

const desk = exampleProfile({ id: 'desk', cameraLabel: 'Cam A', madeOn: '2026-01-01' });
const newer = exampleProfile({ id: 'newer', cameraLabel: 'Cam A', madeOn: '2026-02-01' });
const large = exampleProfile({
  id: 'large',
  cameraLabel: 'Cam A',
  profile: { ...EXAMPLE_CAMERA_PROFILE, widthPx: 1920, heightPx: 1080 },
});
const files = exampleProfile({ id: 'files', cameraLabel: null });
const other = exampleProfile({ id: 'other', cameraLabel: 'Cam B' });
const shelf = [large, newer, desk, files, other];
const camera = { label: 'Cam A', widthPx: 1280, heightPx: 720 };

const forCamera = (profiles: readonly StoredProfile[], idForFiles: string | null, live: LiveCamera | null) =>
  profileFor(profiles, idForFiles, { kind: 'camera', camera: live })?.id ?? null;

describe('pictures by a camera', () => {
  it('use the newest profile that was made with it at its resolution, whatever was chosen for files', () => {
    expect(forCamera(shelf, null, camera)).toBe('newer');
    for (const id of ['other', 'files', 'desk']) expect(forCamera(shelf, id, camera)).toBe('newer');
    expect(forCamera(shelf, null, { ...camera, widthPx: 1920, heightPx: 1080 })).toBe('large');
  });

  it('use one of another resolution in the same proportions, and name one of others', () => {
    expect(forCamera([large], null, camera)).toBe('large');
    const fourByThree = { ...camera, widthPx: 640, heightPx: 480 };
    expect(forCamera([large, files], null, fourByThree)).toBe('large');
    expect(countsFor(large, fourByThree)).toBe(false);
  });

  it('use none where the camera has none, also where one was chosen for files', () => {
    const unknown = { ...camera, label: 'Cam C' };
    for (const id of [null, 'files', 'desk', 'gone']) expect(forCamera(shelf, id, unknown)).toBeNull();
  });

  it('use none where the camera cannot be told', () => {
    const unnamed = exampleProfile({ id: 'unnamed', cameraLabel: '' });
    expect(forCamera([unnamed], 'unnamed', { ...camera, label: '' })).toBeNull();
    expect(forCamera(shelf, 'desk', null)).toBeNull();
  });
});

describe('pictures from files', () => {
  it('use the profile that was chosen for them, of whatever camera', () => {
    expect(profileFor(shelf, 'desk', FROM_FILES)).toBe(desk);
    expect(profileFor(shelf, null, FROM_FILES)).toBeNull();
    expect(profileFor(shelf, 'gone', FROM_FILES)).toBeNull();
  });
});

describe('a chosen profile', () => {
  it('is none where it is on the shelf no more', () => {
    expect(chosenProfile(shelf, 'gone')).toBeNull();
    expect(chosenProfile(shelf, null)).toBeNull();
    expect(chosenProfile(shelf, 'desk')).toBe(desk);
  });

  it('counts for pictures of its own proportions', () => {
    expect(countsFor(desk, { widthPx: 1920, heightPx: 1080 })).toBe(true);
    expect(countsFor(desk, { widthPx: 1280, heightPx: 960 })).toBe(false);
    expect(countsFor(desk, { widthPx: 720, heightPx: 1280 })).toBe(false);
  });
});
