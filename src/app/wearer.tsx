import { createRoot } from 'react-dom/client';
import { version } from '../../package.json';
import { invariant } from '../core/result.js';
import { createCameras } from '../devices/cameras.js';
import { createSealing } from '../devices/sealing.js';
import { createSpokenPrompts } from '../devices/spoken-prompts.js';
import { parseInvitation } from '../session/invitation.js';
import type { LanguageStore } from '../session/ports.js';
import { firstAvailable, loadWords } from '../ui/available-languages.js';
import { MeasuringContext } from '../ui/equipment.js';
import { ENGLISH_TAG, speak } from '../ui/language.js';
import { Speaking } from '../ui/speaking.js';
import { WearerCrash } from '../ui/wearer-crash.js';
import type { WearerEquipment } from '../ui/wearer-equipment.js';
import { WearerScreen } from '../ui/wearer-screen.js';
import '../ui/styles/wearer.css';
import { laterDevices } from './later-devices.js';

// Nothing here opens the database, the local storage or a service worker: the phone keeps nothing of this page.

/** The language is chosen anew each time. */
const forgetful: LanguageStore = { load: () => null, save: () => false };

/** Shows the page of the invitation in the fragment; rejects where its words cannot be loaded. */
export async function showWearersPage(): Promise<void> {
  const equipment: WearerEquipment = {
    measuring: { ...laterDevices, cameras: createCameras('user') },
    loadMeasureFace: async () => (await import('./reasoning.js')).reasoning.measureFace,
    sealing: createSealing(),
    prompts: createSpokenPrompts(),
    appVersion: version,
    support: supportHere(),
  };

  const invited = parseInvitation(location.hash, new Date());

  const wanted = invited.ok ? [invited.value.language, ...navigator.languages] : navigator.languages;
  const tag = firstAvailable(wanted);
  const spoken = await loadWords(tag);
  if (spoken !== null) {
    speak(spoken, tag);
  } else {
    // Another language is better than none; without English there is nothing to be said, and main.tsx says so.
    const english = await loadWords(ENGLISH_TAG);
    invariant(english !== null, 'the words of the page can be loaded');
    speak(english, ENGLISH_TAG);
  }

  const root = document.getElementById('root');
  invariant(root !== null, 'index.html has an element #root');
  createRoot(root).render(
    <MeasuringContext value={equipment.measuring}>
      <Speaking
        store={forgetful}
        screen={() => (
          <WearerCrash>
            <WearerScreen equipment={equipment} invited={invited} />
          </WearerCrash>
        )}
      />
    </MeasuringContext>,
  );
}

/** Whether this browser has what looking at pictures and sealing take. */
function supportHere(): WearerEquipment['support'] {
  if (!isSecureContext) return 'insecure';
  const hasAll =
    'mediaDevices' in navigator &&
    'requestVideoFrameCallback' in HTMLVideoElement.prototype &&
    'OffscreenCanvas' in globalThis &&
    'createImageBitmap' in globalThis &&
    'Worker' in globalThis &&
    'WebAssembly' in globalThis &&
    'subtle' in crypto;
  return hasAll ? 'supported' : 'unsupported';
}
