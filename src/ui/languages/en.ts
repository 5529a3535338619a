import { agreementWords } from '../agreement-words.js';
import { crashWords } from '../crash-words.js';
import { demoWords } from '../demo-words.js';
import { deskWords } from '../desk-words.js';
import { doubtSourceWords } from '../doubt-source-words.js';
import { findingWords } from '../finding-words.js';
import { footerWords } from '../footer-words.js';
import { frameFailureWords } from '../frame-failure-words.js';
import { grammarWords } from '../grammar-words.js';
import { handWords } from '../hand-words.js';
import { headerWords } from '../header-words.js';
import { helpButtonWords } from '../help-button-words.js';
import { holdingWords } from '../holding-words.js';
import { languageWords } from '../language-words.js';
import { lengthFailureWords } from '../length-failure-words.js';
import { measurementsWords } from '../measurements-words.js';
import { measuringFailureWords } from '../measuring-failure-words.js';
import { misfitWords } from '../misfit-words.js';
import { newsWords } from '../news-words.js';
import { notesWords } from '../notes-words.js';
import { offlineWords } from '../offline-words.js';
import { pictureAdviceWords } from '../picture-advice-words.js';
import { pictureWords } from '../picture-words.js';
import { progressWords } from '../progress-words.js';
import { readerWords } from '../reader-words.js';
import { readingFailureWords } from '../reading-failure-words.js';
import { rulerWords } from '../ruler-words.js';
import { searchWords } from '../search-words.js';
import { sheetWords } from '../sheet-words.js';
import { slipWords } from '../slip-words.js';
import { slipsInShortWords } from '../slips-in-short-words.js';
import { statusWords } from '../status-words.js';
import { storeWords } from '../store-words.js';
import { stripWords } from '../strip-words.js';
import { sweepAdviceWords } from '../sweep-advice-words.js';
import { sweepFailureWords } from '../sweep-failure-words.js';
import { sweepGapWords } from '../sweep-gap-words.js';
import { sweepWords } from '../sweep-words.js';

/**
 * The words of the first screen in English, part by part; those of all other parts stand in english-later.ts. What both consist
 * of is what every other language must have as well: the compiler names what is missing there.
 */
export const english = {
  grammar: grammarWords,
  measurements: measurementsWords,
  agreement: agreementWords,
  crash: crashWords,
  demo: demoWords,
  desk: deskWords,
  footer: footerWords,
  hand: handWords,
  header: headerWords,
  helpButton: helpButtonWords,
  holding: holdingWords,
  language: languageWords,
  misfit: misfitWords,
  news: newsWords,
  notes: notesWords,
  offline: offlineWords,
  picture: pictureWords,
  reader: readerWords,
  ruler: rulerWords,
  search: searchWords,
  sheet: sheetWords,
  slipsInShort: slipsInShortWords,
  store: storeWords,
  strip: stripWords,
  sweep: sweepWords,
  doubtSource: doubtSourceWords,
  status: statusWords,
  readingFailure: readingFailureWords,
  finding: findingWords,
  lengthFailure: lengthFailureWords,
  slip: slipWords,
  measuringFailure: measuringFailureWords,
  pictureAdvice: pictureAdviceWords,
  progress: progressWords,
  frameFailure: frameFailureWords,
  sweepGap: sweepGapWords,
  sweepFailure: sweepFailureWords,
  sweepAdvice: sweepAdviceWords,
};
