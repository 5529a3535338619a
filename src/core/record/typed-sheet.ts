import type { Confirmations } from './confirmation.js';
import type { Practice } from './practice.js';
import { DEFAULT_PRACTICE } from './practice.js';
import type { ReaderId, ReaderSheet } from './reader-sheet.js';
import { EMPTY_READER_SHEET } from './reader-sheet.js';
import type { TypedPrescription } from './typed-prescription.js';
import { NO_PRESCRIPTION } from './typed-prescription.js';
import type { WearerNotes } from './wearer-notes.js';
import { NO_NOTES } from './wearer-notes.js';

/** What was chosen at this desk; lengths are kept as typed text, like the readings. */
export interface SheetSettings {
  /** where the wearer is asked to look */
  readonly gaze: 'camera' | 'far';
  /** spectacle plane to the near object, in mm, as typed */
  readonly workingDistanceText: string;
  /** the camera's values stay covered until the hand reading of their row is in */
  readonly covered: boolean;
  /** a bought card of size ID-1, or the printed marker card */
  readonly card: 'bought' | 'printed';
  /** measured length of the ruled line on the printed sheet, in mm, as typed; empty where nobody measured it */
  readonly checkLengthText: string;
  /** the camera used last; null for the device's own choice */
  readonly cameraId: string | null;
  /** the camera profile for pictures from files; null for none, and as good as none where it is on the shelf no more */
  readonly profileId: string | null;
  readonly practice: Practice;
}

export const DEFAULT_SHEET_SETTINGS: SheetSettings = {
  gaze: 'camera',
  workingDistanceText: '400',
  covered: true,
  card: 'bought',
  checkLengthText: '',
  cameraId: null,
  profileId: null,
  practice: DEFAULT_PRACTICE,
};

/** All that a reload must not lose. Pictures and what was found in them are never part of it. */
export interface TypedSheet {
  readonly readers: Readonly<Record<ReaderId, ReaderSheet>>;
  /** whose sheet is open */
  readonly reader: ReaderId;
  readonly notes: WearerNotes;
  readonly prescription: TypedPrescription;
  readonly confirmations: Confirmations;
  readonly settings: SheetSettings;
}

export const EMPTY_TYPED_SHEET: TypedSheet = {
  readers: { first: EMPTY_READER_SHEET, second: EMPTY_READER_SHEET },
  reader: 'first',
  notes: NO_NOTES,
  prescription: NO_PRESCRIPTION,
  confirmations: {},
  settings: DEFAULT_SHEET_SETTINGS,
};
