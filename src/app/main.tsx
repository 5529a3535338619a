import { createRoot } from 'react-dom/client';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { invariant } from '../core/result.js';
import { createSealing } from '../devices/sealing.js';
import { createOffline } from '../devices/offline.js';
import { firstAvailable, loadWords } from '../ui/available-languages.js';
import { isInvitation } from '../session/is-invitation.js';
import type { LanguageStore } from '../session/ports.js';
import { createSessionKeeper } from '../session/session-keeper.js';
import { CrashBoundary } from '../ui/crash-boundary.js';
import type { Equipment } from '../ui/equipment.js';
import { EquipmentContext } from '../ui/equipment.js';
import { ENGLISH_TAG, speak, words } from '../ui/language.js';
import { createLater, loadAllLater } from '../ui/later.js';
import { NewerBar } from '../ui/newer-bar.js';
import { OfflineLine } from '../ui/offline-line.js';
import { Desk } from '../ui/desk.js';
import { Speaking } from '../ui/speaking.js';
import { whenIdle } from '../ui/when-idle.js';
import { Profiles } from '../ui/use-profiles.js';
import '../ui/styles/screen.css';
import { demo } from './demo/demo.js';
import { createLocalLanguageStore } from './local-language-store.js';
import { createLocalShutterStore } from './local-shutter-store.js';
import { createLocalSingleKeyStore } from './local-single-key-store.js';
import { laterAudit, laterDevices } from './later-devices.js';
import { orderPdf, printFiles } from './print-files.js';

// Which of the two pages this is stands in the fragment, which no server sees.
const isInvited = isInvitation(location.hash);
addEventListener('hashchange', () => {
  // A link that is opened in the page that is open already loads nothing by itself.
  if (isInvited || isInvitation(location.hash)) location.reload();
});
// Not awaited here: files that are loaded later import this one, and would wait for its end. In a task of its own: running through
// all files is long enough for one.
setTimeout(() => {
  void (isInvited ? openWearersPage() : openDesk());
}, 0);

/** The page of a distant wearer: it takes nothing of the desk but what both need, and keeps nothing. */
async function openWearersPage(): Promise<void> {
  try {
    const { showWearersPage } = await import('./wearer.js');
    await showWearersPage();
  } catch (error) {
    const text = document.createElement('p');
    text.setAttribute('role', 'alert');
    text.textContent = words.offline.partMissing;
    document.getElementById('root')?.replaceChildren(text);
    throw error;
  }
}

/** The desk of a practice, with all that is kept on this device. */
async function openDesk(): Promise<void> {
  const sealing = createSealing();
  const languageStore = createLocalLanguageStore();
  const opened = import('./kept-here.js').then(async ({ createLocalProfileStore, openDatabase }) => ({
    ...(await openDatabase(sealing)),
    profiles: createLocalProfileStore(),
  }));
  const [{ database, outage, profiles }] = await Promise.all([opened, speakFirst(languageStore)]);
  const keeper = createSessionKeeper(database.sessions, {
    onWritten: ({ record, revision }) => {
      window.dispatchEvent(new CustomEvent('glabella-saved', { detail: { id: record.id, revision } }));
    },
    onFault: reportError,
  });

  const equipment: Equipment = {
    ...laterDevices,
    audit: laterAudit,
    print: printFiles,
    orderPdf,
    database,
    outage,
    sealing,
    keeper,
    profiles,
    shutter: createLocalShutterStore(),
    singleKeys: createLocalSingleKeyStore(),
    reasoning: createLater(async () => (await import('./reasoning.js')).reasoning),
    catalogue: assembleCatalogue(OUTSIDE_TABLES),
    exampleGauges: EXAMPLE_GAUGES,
    demo,
  };

  // while developing, what was changed is to be seen at once
  const offline = createOffline(import.meta.env.PROD);

  const root = document.getElementById('root');
  invariant(root !== null, 'index.html has an element #root');
  createRoot(root).render(
    <CrashBoundary keeper={keeper} catalogue={equipment.catalogue}>
      <EquipmentContext value={equipment}>
        <Speaking
          store={languageStore}
          screen={() => (
            <>
              <NewerBar offline={offline} />
              <Profiles>
                <Desk />
              </Profiles>
              <OfflineLine offline={offline} />
            </>
          )}
        />
      </EquipmentContext>
    </CrashBoundary>,
  );

  // Dialogs and the like open at once if they are there before they are wanted.
  whenIdle(loadAllLater);
}

/** Speaks the language that was chosen last, or else the first one that the browser asks for. */
async function speakFirst(store: LanguageStore): Promise<void> {
  const tag = firstAvailable([store.load() ?? [], navigator.languages].flat());
  // English is built in, without what is only said later.
  const spoken = tag === ENGLISH_TAG ? null : await loadWords(tag);
  // Without its file the screen speaks English.
  if (spoken !== null) speak(spoken, tag);
}
