import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { parsePrintScale } from '../session/measuring-settings.js';
import type { SheetState } from '../session/sheet.js';
import { paperWords as words, pictureWords } from './words.js';

// The month as a word: 3/4 is April here and March there.
const WHEN = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short' });

/** A line for the printed sheet alone: when it was printed, where the wearer looked, and which card was held. */
export function PaperFacts({ state, isMeasured }: { readonly state: SheetState; readonly isMeasured: boolean }) {
  const [when, setWhen] = useState(() => new Date());
  useEffect(() => {
    const onBeforePrint = (): void => {
      // The browser takes the page as it stands when this returns.
      flushSync(() => {
        setWhen(new Date());
      });
    };
    window.addEventListener('beforeprint', onBeforePrint);
    return () => {
      window.removeEventListener('beforeprint', onBeforePrint);
    };
  }, []);
  const where = state.settings.gaze === 'camera' ? pictureWords.gazeCamera : pictureWords.gazeFar;
  return (
    <p className="paper-facts">
      {words.printed(WHEN.format(when))} {isMeasured && `${words.looked(where)} ${cardWords(state)}`}
    </p>
  );
}

function cardWords({ picture, settings }: SheetState): string {
  const { card, checkLengthText } = settings;
  // Markers that were seen say more than the setting: only the printed card has them.
  const areMarkersSeen = picture.kind === 'measured' && picture.marking.found.card.source === 'markers';
  if (card === 'bought' && !areMarkersSeen) return words.bought;
  return parsePrintScale(checkLengthText)?.ok === true
    ? words.markerCard(checkLengthText.trim())
    : words.markerCardUnmeasured;
}
