/** One way to press a shortcut. */
export interface Stroke {
  /** as `KeyboardEvent.key` has it; letters in small */
  readonly key: string;
  /** Ctrl, or Command on an Apple keyboard */
  readonly command?: true;
  readonly shift?: true;
}

/** What has the focus, or stands open, while a shortcut works. */
export const SHORTCUT_GROUPS = [
  'anywhere',
  'readings',
  'search',
  'prescription',
  'picture',
  'sessions',
  'plots',
] as const;

export type ShortcutGroup = (typeof SHORTCUT_GROUPS)[number];

interface Shortcut {
  readonly group: ShortcutGroup;
  readonly strokes: readonly Stroke[];
}

/** All keys that do something here. What works and what is listed both come from it; dialogs are closed by the browser's own key. */
export const SHORTCUTS = {
  list: { group: 'anywhere', strokes: [{ key: '?' }, { key: 'f1' }] },
  undo: { group: 'anywhere', strokes: [{ key: 'z', command: true }] },
  redo: {
    group: 'anywhere',
    strokes: [
      { key: 'z', command: true, shift: true },
      { key: 'y', command: true },
    ],
  },
  search: { group: 'anywhere', strokes: [{ key: '/' }] },
  nextReading: { group: 'readings', strokes: [{ key: 'enter' }] },
  previousReading: { group: 'readings', strokes: [{ key: 'enter', shift: true }] },
  rowBelow: { group: 'readings', strokes: [{ key: 'arrowdown' }] },
  rowAbove: { group: 'readings', strokes: [{ key: 'arrowup' }] },
  nextFound: { group: 'search', strokes: [{ key: 'arrowdown' }] },
  previousFound: { group: 'search', strokes: [{ key: 'arrowup' }] },
  goToFound: { group: 'search', strokes: [{ key: 'enter' }] },
  leaveSearch: { group: 'search', strokes: [{ key: 'escape' }] },
  nextPlace: { group: 'prescription', strokes: [{ key: 'enter' }] },
  previousPlace: { group: 'prescription', strokes: [{ key: 'enter', shift: true }] },
  movePoint: { group: 'picture', strokes: arrows() },
  movePointFinely: { group: 'picture', strokes: arrows().map((stroke) => ({ ...stroke, shift: true })) },
  intoSessions: { group: 'sessions', strokes: [{ key: 'arrowdown' }] },
  nextSession: { group: 'sessions', strokes: [{ key: 'arrowdown' }] },
  previousSession: { group: 'sessions', strokes: [{ key: 'arrowup' }] },
  firstSession: { group: 'sessions', strokes: [{ key: 'home' }] },
  lastSession: { group: 'sessions', strokes: [{ key: 'end' }] },
  nextDifference: { group: 'plots', strokes: [{ key: 'arrowright' }, { key: 'arrowup' }] },
  previousDifference: { group: 'plots', strokes: [{ key: 'arrowleft' }, { key: 'arrowdown' }] },
  tenDifferencesOn: { group: 'plots', strokes: [{ key: 'pageup' }] },
  tenDifferencesBack: { group: 'plots', strokes: [{ key: 'pagedown' }] },
  firstDifference: { group: 'plots', strokes: [{ key: 'home' }] },
  lastDifference: { group: 'plots', strokes: [{ key: 'end' }] },
  openDifference: { group: 'plots', strokes: [{ key: 'enter' }] },
} as const satisfies Readonly<Record<string, Shortcut>>;

export type ShortcutId = keyof typeof SHORTCUTS;

export const SHORTCUT_IDS = Object.keys(SHORTCUTS) as readonly ShortcutId[];

/** What of a keyboard event tells a stroke; both the browser's and React's events are such. */
interface PressedKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
  readonly nativeEvent?: { readonly isComposing: boolean };
  readonly isComposing?: boolean;
}

/** Whether this key is the shortcut. While a character is being composed none is. */
export function isPressed(id: ShortcutId, event: PressedKey): boolean {
  if (event.altKey || (event.nativeEvent ?? event).isComposing === true) return false;
  const strokes: readonly Stroke[] = SHORTCUTS[id].strokes;
  return strokes.some(
    (stroke) =>
      stroke.key === event.key.toLowerCase() &&
      (event.ctrlKey || event.metaKey) === (stroke.command === true) &&
      // With which keys a sign is typed differs from keyboard to keyboard.
      (isSign(stroke) || event.shiftKey === (stroke.shift === true)),
  );
}

/** Whether it is a single character: it may be switched off, since whoever dictates would press it by speaking (WCAG 2.1.4). */
export function isSign({ key, command }: Stroke): boolean {
  return key.length === 1 && command !== true;
}

function arrows(): readonly Stroke[] {
  return [{ key: 'arrowleft' }, { key: 'arrowright' }, { key: 'arrowup' }, { key: 'arrowdown' }];
}
