import { completeEnglish } from '../../src/ui/language.js';

// Tests of what is said begin with all words of the screen: what is loaded when is a matter of the browser.
await completeEnglish();
