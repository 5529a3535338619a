import type { LightLevel } from '../core/record/wearer-notes.js';

export const notesWords = {
  heading: 'Wearer and notes',
  wearer: 'Wearer',
  wearerNote: 'as you call them',
  squint: 'Squint: both eyes never fixate together',
  squintChanges: (names: string): string => `Measure with the other eye covered: ${names}.`,
  light: 'Light for pupil diameters',
  noLight: 'not noted',
  lights: { bright: 'bright', room: 'room light', dim: 'dim' } satisfies Record<LightLevel, string>,
  lightMissing: 'A pupil’s diameter says little without the light it was read in.',
  remark: 'Remark',
};
