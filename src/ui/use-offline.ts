import { useSyncExternalStore } from 'react';
import type { OfflinePort, OfflineStatus } from '../session/offline.js';

/** How much of the app lies on this device, and whether a newer one is there, as of this moment. */
export function useOffline(offline: OfflinePort): OfflineStatus {
  return useSyncExternalStore(offline.subscribe, offline.status, offline.status);
}
