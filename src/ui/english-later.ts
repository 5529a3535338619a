import { paperWords } from './paper-words.js';
import { conflictWords } from './conflict-words.js';
import { auditWords } from './audit-words.js';
import { boardFailureWords } from './board-failure-words.js';
import { boardVerdictWords } from './board-verdict-words.js';
import { budgetWords } from './budget-words.js';
import { cameraWords } from './camera-words.js';
import { costSayingWords } from './cost-saying-words.js';
import { costWords } from './cost-words.js';
import { differencesWords } from './differences-words.js';
import { entryFailureWords } from './entry-failure-words.js';
import { gaugeProblemWords } from './gauge-problem-words.js';
import { handOnWords } from './hand-on-words.js';
import { handleWords } from './handle-words.js';
import { helpWords } from './help-words.js';
import { historyWords } from './history-words.js';
import { invitationsWords } from './invitations-words.js';
import { keptPictureWords } from './kept-picture-words.js';
import { lensCautionWords } from './lens-caution-words.js';
import { liveWords } from './live-words.js';
import { lockWords } from './lock-words.js';
import { orderDoubtWords } from './order-doubt-words.js';
import { orderWords } from './order-words.js';
import { overSessionsWords } from './over-sessions-words.js';
import { positionWords } from './position-words.js';
import { practiceProblemsWords } from './practice-problems-words.js';
import { practiceWords } from './practice-words.js';
import { prescriptionQuestionWords } from './prescription-question-words.js';
import { prescriptionWords } from './prescription-words.js';
import { printWords } from './print-words.js';
import { profileFileWords } from './profile-file-words.js';
import { profileWeaknessWords } from './profile-weakness-words.js';
import { profileWords } from './profile-words.js';
import { sessionsWords } from './sessions-words.js';
import { recordProblemWords } from './record-problem-words.js';
import { settingsWords } from './settings-words.js';
import { shortcutWords } from './shortcut-words.js';
import { sourceWords } from './source-words.js';
import { standardWords } from './standard-words.js';
import { undoWords } from './undo-words.js';
import { wearerWords } from './wearer-words.js';

/**
 * The words of all parts of the screen that are loaded after the first one. What the first screen says stands in
 * languages/en.ts; tests/architecture/first-words.test.ts tells where something is missing there.
 */
export const englishLater = {
  audit: auditWords,
  recordProblem: recordProblemWords,
  paper: paperWords,
  conflict: conflictWords,
  camera: cameraWords,
  cost: costWords,
  differences: differencesWords,
  handOn: handOnWords,
  handle: handleWords,
  help: helpWords,
  history: historyWords,
  keptPicture: keptPictureWords,
  invitations: invitationsWords,
  live: liveWords,
  lock: lockWords,
  orderDoubt: orderDoubtWords,
  order: orderWords,
  overSessions: overSessionsWords,
  position: positionWords,
  practiceProblems: practiceProblemsWords,
  practice: practiceWords,
  prescription: prescriptionWords,
  print: printWords,
  profile: profileWords,
  sessions: sessionsWords,
  settings: settingsWords,
  shortcut: shortcutWords,
  undo: undoWords,
  source: sourceWords,
  standard: standardWords,
  wearer: wearerWords,
  boardFailure: boardFailureWords,
  profileWeakness: profileWeaknessWords,
  boardVerdict: boardVerdictWords,
  profileFile: profileFileWords,
  gaugeProblem: gaugeProblemWords,
  budget: budgetWords,
  entryFailure: entryFailureWords,
  prescriptionQuestion: prescriptionQuestionWords,
  lensCaution: lensCautionWords,
  costSaying: costSayingWords,
};
