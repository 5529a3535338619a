import { describe, expect, it } from 'vitest';
import { EXAMPLE_CAMERA_PROFILE, exampleProfile } from '../../tests/support/example-profile.js';
import { chosenProfile, countsFor, profileForCamera } from './profile-choice.js';

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

describe('a camera that is opened', () => {
  it('gets the newest profile that was made with it at its resolution', () => {
    expect(profileForCamera(shelf, null, camera)).toBe('newer');
    expect(profileForCamera(shelf, 'other', camera)).toBe('newer');
    expect(profileForCamera(shelf, 'files', camera)).toBe('newer');
    expect(profileForCamera(shelf, null, { ...camera, widthPx: 1920, heightPx: 1080 })).toBe('large');
  });

  it('keeps an older one of its own that was chosen', () => {
    expect(profileForCamera(shelf, 'desk', camera)).toBe('desk');
  });

  it('without a profile of its own keeps one from files or of another resolution, and drops that of another camera', () => {
    const unknown = { ...camera, label: 'Cam C' };
    expect(profileForCamera(shelf, null, unknown)).toBeNull();
    expect(profileForCamera(shelf, 'files', unknown)).toBe('files');
    expect(profileForCamera(shelf, 'desk', unknown)).toBeNull();
    expect(profileForCamera([large], 'large', camera)).toBe('large');
    expect(profileForCamera(shelf, 'gone', unknown)).toBeNull();
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
