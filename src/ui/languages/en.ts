import { agreementWords } from '../agreement-words.js';
import { cameraWords } from '../camera-words.js';
import { costWords } from '../cost-words.js';
import { crashWords } from '../crash-words.js';
import { demoWords } from '../demo-words.js';
import { deskWords } from '../desk-words.js';
import { footerWords } from '../footer-words.js';
import { handOnWords } from '../hand-on-words.js';
import { handWords } from '../hand-words.js';
import { handleWords } from '../handle-words.js';
import { headerWords } from '../header-words.js';
import { helpWords } from '../help-words.js';
import { holdingWords } from '../holding-words.js';
import { invitationsWords } from '../invitations-words.js';
import { languageWords } from '../language-words.js';
import { lockWords } from '../lock-words.js';
import { misfitWords } from '../misfit-words.js';
import { newsWords } from '../news-words.js';
import { notesWords } from '../notes-words.js';
import { offlineWords } from '../offline-words.js';
import { orderDoubtWords } from '../order-doubt-words.js';
import { orderWords } from '../order-words.js';
import { paperWords } from '../paper-words.js';
import { pictureWords } from '../picture-words.js';
import { positionWords } from '../position-words.js';
import { practiceProblemsWords } from '../practice-problems-words.js';
import { practiceWords } from '../practice-words.js';
import { prescriptionWords } from '../prescription-words.js';
import { printWords } from '../print-words.js';
import { profileWords } from '../profile-words.js';
import { readerWords } from '../reader-words.js';
import { rulerWords } from '../ruler-words.js';
import { searchWords } from '../search-words.js';
import { sessionsWords } from '../sessions-words.js';
import { settingsWords } from '../settings-words.js';
import { sheetWords } from '../sheet-words.js';
import { slipsInShortWords } from '../slips-in-short-words.js';
import { standardWords } from '../standard-words.js';
import { storeWords } from '../store-words.js';
import { stripWords } from '../strip-words.js';
import { sweepWords } from '../sweep-words.js';
import { wearerWords } from '../wearer-words.js';
import { grammarWords } from '../grammar-words.js';
import { measurementsWords } from '../measurements-words.js';
import { doubtSourceWords } from '../doubt-source-words.js';
import { statusWords } from '../status-words.js';
import { readingFailureWords } from '../reading-failure-words.js';
import { findingWords } from '../finding-words.js';
import { lengthFailureWords } from '../length-failure-words.js';
import { slipWords } from '../slip-words.js';
import { conflictWords } from '../conflict-words.js';
import { measuringFailureWords } from '../measuring-failure-words.js';
import { pictureAdviceWords } from '../picture-advice-words.js';
import { progressWords } from '../progress-words.js';
import { frameFailureWords } from '../frame-failure-words.js';
import { sweepGapWords } from '../sweep-gap-words.js';
import { sweepFailureWords } from '../sweep-failure-words.js';
import { sweepAdviceWords } from '../sweep-advice-words.js';
import { boardFailureWords } from '../board-failure-words.js';
import { profileWeaknessWords } from '../profile-weakness-words.js';
import { boardVerdictWords } from '../board-verdict-words.js';
import { profileFileWords } from '../profile-file-words.js';
import { gaugeProblemWords } from '../gauge-problem-words.js';
import { budgetWords } from '../budget-words.js';
import { entryFailureWords } from '../entry-failure-words.js';
import { prescriptionQuestionWords } from '../prescription-question-words.js';
import { lensCautionWords } from '../lens-caution-words.js';
import { costSayingWords } from '../cost-saying-words.js';

/**
 * All words of the screen in English, part by part. What it consists of is what every other language must have as well: the
 * compiler names what is missing there.
 */
export const english = {
  grammar: grammarWords,
  measurements: measurementsWords,
  agreement: agreementWords,
  camera: cameraWords,
  cost: costWords,
  crash: crashWords,
  demo: demoWords,
  desk: deskWords,
  footer: footerWords,
  hand: handWords,
  handOn: handOnWords,
  handle: handleWords,
  header: headerWords,
  help: helpWords,
  holding: holdingWords,
  invitations: invitationsWords,
  language: languageWords,
  lock: lockWords,
  misfit: misfitWords,
  news: newsWords,
  notes: notesWords,
  offline: offlineWords,
  orderDoubt: orderDoubtWords,
  order: orderWords,
  paper: paperWords,
  picture: pictureWords,
  position: positionWords,
  practiceProblems: practiceProblemsWords,
  practice: practiceWords,
  prescription: prescriptionWords,
  print: printWords,
  profile: profileWords,
  reader: readerWords,
  ruler: rulerWords,
  search: searchWords,
  sessions: sessionsWords,
  settings: settingsWords,
  sheet: sheetWords,
  slipsInShort: slipsInShortWords,
  standard: standardWords,
  store: storeWords,
  strip: stripWords,
  sweep: sweepWords,
  wearer: wearerWords,
  doubtSource: doubtSourceWords,
  status: statusWords,
  readingFailure: readingFailureWords,
  finding: findingWords,
  lengthFailure: lengthFailureWords,
  slip: slipWords,
  conflict: conflictWords,
  measuringFailure: measuringFailureWords,
  pictureAdvice: pictureAdviceWords,
  progress: progressWords,
  frameFailure: frameFailureWords,
  sweepGap: sweepGapWords,
  sweepFailure: sweepFailureWords,
  sweepAdvice: sweepAdviceWords,
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
