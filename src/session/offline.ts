/** How much of the app lies on this device, so that it can be used without a network. Bytes are those of the files as they are kept. */
export type KeptFiles =
  /** nobody can tell: there is no service worker, as in some private windows, or it is not asked yet */
  | { readonly kind: 'unknown' }
  | { readonly kind: 'fetching'; readonly keptBytes: number; readonly allBytes: number }
  | { readonly kind: 'complete'; readonly allBytes: number }
  | {
      readonly kind: 'incomplete';
      readonly keptBytes: number;
      readonly allBytes: number;
      readonly why: KeepingFailure;
    };

/**
 * Why files are missing: the line broke off or the server refused (it goes on by itself); the device keeps no more; the
 * server has files of another build, which comes as a newer version.
 */
export type KeepingFailure = 'network' | 'storage' | 'other-build';

/**
 * Whether this page is of the version that would open next: `waiting` until the user takes the newer one; `taken` where
 * another window took it, so that this page is the last of the older one.
 */
export type NewerVersion = 'none' | 'waiting' | 'taken';

export interface OfflineStatus {
  readonly files: KeptFiles;
  readonly newer: NewerVersion;
}

export const OFFLINE_UNKNOWN: OfflineStatus = { files: { kind: 'unknown' }, newer: 'none' };

/** Keeps the app on this device and watches for newer versions of it. */
export interface OfflinePort {
  /** As it is now; the same object until something changes. */
  readonly status: () => OfflineStatus;
  /** Calls the listener whenever the status changed, until the function that it returns is called. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Fetches what is missing, now. */
  readonly goOn: () => void;
  /** Loads the page again in its newer version. What is kept on the device stays; what is only on the screen goes. */
  readonly takeNewer: () => void;
}
