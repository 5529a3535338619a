import { createRoot } from 'react-dom/client';
import canonicalFace from '../../calibration/canonical-face.json';
import contactDepth from '../../calibration/contact-depth.json';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { reconcile } from '../core/crosscheck/reconcile.js';
import { createMeasureFace } from '../core/estimate/measure-face.js';
import { invariant } from '../core/result.js';
import { createCameras } from '../devices/cameras.js';
import { createPictures } from '../devices/pictures.js';
import { createSweep } from '../devices/sweep.js';
import { createVision } from '../devices/vision.js';
import { firstAvailable, loadWords } from '../ui/available-languages.js';
import { createSessionKeeper } from '../session/session-keeper.js';
import { CrashBoundary } from '../ui/crash-boundary.js';
import type { Equipment } from '../ui/equipment.js';
import { EquipmentContext } from '../ui/equipment.js';
import { speak } from '../ui/language.js';
import { Desk } from '../ui/desk.js';
import { Speaking } from '../ui/speaking.js';
import { Profiles } from '../ui/use-profiles.js';
import '../ui/styles/screen.css';
import { demo } from './demo/demo.js';
import { createLocalLanguageStore } from './local-language-store.js';
import { createLocalProfileStore } from './local-profile-store.js';
import { openDatabase } from './open-database.js';
import { orderPdf, printFiles } from './print-files.js';

const database = await openDatabase();
const keeper = createSessionKeeper(database.sessions, ({ record, revision }) => {
  window.dispatchEvent(new CustomEvent('glabella-saved', { detail: { id: record.id, revision } }));
});

const equipment: Equipment = {
  vision: createVision(),
  sweep: createSweep(),
  pictures: createPictures(),
  cameras: createCameras(),
  print: printFiles,
  orderPdf,
  database,
  keeper,
  profiles: createLocalProfileStore(),
  measureFace: createMeasureFace({ canonicalFace, contactDepth }),
  reconcile,
  catalogue: assembleCatalogue(OUTSIDE_TABLES),
  exampleGauges: EXAMPLE_GAUGES,
  demo,
};

const languageStore = createLocalLanguageStore();
const tag = firstAvailable([languageStore.load() ?? [], navigator.languages].flat());
const spoken = await loadWords(tag);
// Without its file the screen speaks English.
if (spoken !== null) speak(spoken, tag);

const root = document.getElementById('root');
invariant(root !== null, 'index.html has an element #root');
createRoot(root).render(
  <CrashBoundary keeper={keeper} catalogue={equipment.catalogue}>
    <EquipmentContext value={equipment}>
      <Speaking
        store={languageStore}
        screen={() => (
          <Profiles>
            <Desk />
          </Profiles>
        )}
      />
    </EquipmentContext>
  </CrashBoundary>,
);
