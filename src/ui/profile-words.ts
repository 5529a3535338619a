import type { BoardPosition } from '../core/camera/profile-quality.js';

/** The words about camera profiles. Sentences about their failures and weaknesses are in profile-sentences.ts. */

export const profileWords = {
  heading: 'Make a camera profile',
  close: 'Close',
  intro:
    'A camera profile says how this camera draws: its field of view, and how its lens bends lines. With it, numbers are surer. Without one everything works, with wider intervals.',
  before: [
    'Print the camera sheet (under “Card to print”) and fix the whole page to something stiff and flat. A bent sheet makes a wrong profile; its size does not matter.',
    'Use the camera as it will be used with wearers: same resolution, same zoom, no background effects.',
    'Even light, no glare on the sheet. It takes about two minutes.',
  ],
  useCamera: 'Use the camera',
  usePictures: 'Choose pictures of the sheet',
  picturesNote:
    'From disk: eight or more pictures by one camera, at one resolution, uncropped, with the sheet in different places, tilts and distances.',
  back: 'Back',

  opening: 'Opening the camera. The browser may ask for permission.',
  mirrored: 'The preview is mirrored, like a looking glass. A view is taken by itself when you hold still.',
  viewCount: (count: number): string => (count === 1 ? '1 view taken' : `${count} views taken`),
  taken: (count: number): string => `View ${count} taken.`,
  make: 'Make the profile',
  makeNow: (count: number): string => `Make the profile from these ${count} views`,
  needed: (missing: number): string => (missing === 1 ? 'At least 1 more view.' : `At least ${missing} more views.`),
  skip: 'Leave this position out',
  takeBack: 'Take the last view back',
  startAgain: 'Start again',
  moreViews: 'Take more views',
  morePictures: 'Add pictures',
  enough: 'Enough views.',
  coverageHeading: 'Where the sheet was seen',
  covered: (percent: string): string => `${percent} of the frame covered`,
  weakHeading: 'What is weak',
  notWeak: 'Nothing is weak.',

  files: 'Pictures of the sheet',
  lookingAt: (done: number, all: number): string => `Looking at picture ${done} of ${all}`,
  cornersFound: (count: number, all: number): string => `${count} of ${all} corners found`,
  otherSize: 'left out: not of the size that most of the pictures have',
  noFiles: 'No pictures yet.',
  usable: (count: number, all: number): string => `${count} of ${all} pictures can be used.`,
  tooMany: (limit: number): string => `More than ${limit} add nothing: only the first ${limit} were looked at.`,
  fileName: (widthPx: number, heightPx: number): string => `Pictures of ${widthPx} × ${heightPx}`,

  making: 'Working the profile out.',
  result: 'The profile',
  fieldOfView: 'Field of view, across',
  focalLength: 'Focal length',
  axis: 'Optical axis meets the picture at',
  distortion: 'Distortion',
  radial: 'radial k1, k2, k3',
  tangential: 'tangential p1, p2',
  fit: 'Fit (rms)',
  fitIn: (rms: string, views: number): string => `${rms} px over ${views} views`,
  resolution: 'Resolution',
  doubt: '± is half of the 95 % interval.',
  name: 'Name of the profile',
  keep: 'Keep the profile',
  unnamedCamera: 'Camera',

  section: 'Camera profile',
  counts: 'Profile that counts for pictures',
  none: 'None',
  countsNote:
    'It counts for uncropped pictures by its own camera. A camera that has a profile gets it by itself when it is opened; for files you choose it here.',
  shelf: 'Kept profiles',
  noProfiles: 'No profile was made yet.',
  facts: (resolution: string, day: string): string => `${resolution}, made on ${day}`,
  quality: (focal: string, rms: string, coverage: string): string =>
    `focal length ± ${focal}, fit ${rms} px, ${coverage} of the frame covered`,
  rename: 'Rename',
  renameOf: (name: string): string => `Rename ${name}`,
  newName: 'New name',
  saveName: 'Save the name',
  cancel: 'Cancel',
  exportOne: 'Export',
  exportOf: (name: string): string => `Export ${name}`,
  remove: 'Delete',
  removeOf: (name: string): string => `Delete ${name}`,
  removed: (name: string): string => `${name} was deleted.`,
  bringBack: 'Bring it back',
  makeOne: 'Make a camera profile',
  importOne: 'Import a profile',
  imported: (name: string): string => `${name} was imported.`,
  kept: (name: string): string => `${name} is kept and counts from now on.`,
  notKept:
    'This browser could not store the profiles: its storage is full, or not allowed. Nothing is lost yet, but they last only until this page is closed: export them now.',
  fileStem: 'glabella-camera-profile',

  fact: 'Camera profile',
  notCounting: (profileRatio: string): string =>
    `does not count here: it was made for pictures of ${profileRatio}, and this one has other proportions`,
  paper: (name: string): string => `Camera profile: ${name}.`,
} as const;

/** What is asked for, as seen in a mirrored preview: left and right are the picture's own, swapped. */
export const positionWords: Readonly<Record<BoardPosition, string>> = {
  middle: 'Hold the sheet in the middle, facing the camera.',
  nearer: 'Nearer, until the sheet fills the large outline.',
  farther: 'Farther away, into the small outline.',
  'left-top': 'Into the upper right corner.',
  'right-top': 'Into the upper left corner.',
  'right-bottom': 'Into the lower left corner.',
  'left-bottom': 'Into the lower right corner.',
  'tilted-left': 'In the middle, its right side tilted towards the camera.',
  'tilted-right': 'In the middle, its left side tilted towards the camera.',
  'tilted-top': 'In the middle, its upper side tilted towards the camera.',
  'tilted-bottom': 'In the middle, its lower side tilted towards the camera.',
  upright: 'In the middle, turned upright by a quarter turn.',
};
