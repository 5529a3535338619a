import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import type { PictureFeatures } from '../core/camera/features.js';
import { hasWritten, otherReader } from '../session/entries.js';
import { parsePrintScale } from '../session/measuring-settings.js';
import type { SheetState } from '../session/sheet.js';
import { straightestFrame } from '../session/sweep-frames.js';
import type { SheetMeasurement } from '../session/camera-record.js';
import type { SheetInHand } from './use-sheet.js';
import { usePaperProfile } from './profile-fact.js';
import { dateText, words } from './language.js';

// The month as a word: 3/4 is April here and March there.
const WHEN = { dateStyle: 'long', timeStyle: 'short' } as const;

/** A line for the printed sheet alone: when it was printed, where the wearer looked, and which card was held. */
export function PaperFacts(props: { readonly state: SheetState; readonly measurement: SheetInHand['measurement'] }) {
  const { state, measurement } = props;
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
  const profile = usePaperProfile(state);
  const where = state.settings.gaze === 'camera' ? words.picture.gazeCamera : words.picture.gazeFar;
  return (
    <p className="paper-facts">
      {[words.paper.printed(dateText(when, WHEN)), ...whoWords(state)].join(' ')}{' '}
      {measurement?.ok === true &&
        `${words.paper.looked(where)} ${cardWords(state)} ${sweepWords(state, measurement.value)} ${profile}`}
    </p>
  );
}

/** Whose sheet it is, who read, and what of the wearer changes how it was read. */
function whoWords({ notes, reader, readers }: SheetState): readonly string[] {
  const other = otherReader(reader);
  const [name, otherName] = [inSentence(readers[reader].reader), inSentence(readers[other].reader)];
  const wearer = inSentence(notes.wearer);
  return [
    ...(wearer === '' ? [] : [words.paper.wearer(wearer)]),
    ...(name === '' ? [] : [words.paper.readBy(name)]),
    ...(hasWritten(readers[other]) && otherName !== '' ? [words.paper.alsoReadBy(otherName)] : []),
    ...(notes.squint ? [words.paper.squint] : []),
    ...(notes.light === null ? [] : [words.paper.light(words.paper.lights[notes.light])]),
    ...(notes.remark.trim() === '' ? [] : [words.paper.remark(notes.remark.trim())]),
  ];
}

/** A name at the end of a sentence: the stop of an initial is the sentence's as well. */
function inSentence(name: string): string {
  return name.trim().replace(/\.$/, '');
}

function sweepWords({ picture }: SheetState, measurement: SheetMeasurement): string {
  return measurement.kind === 'sweep' && picture.kind === 'swept'
    ? words.paper.sweep(measurement.framesUsed, picture.frames.length)
    : '';
}

/** The features that speak for what was measured; null without any. */
function shownFeatures(picture: SheetState['picture']): PictureFeatures | null {
  if (picture.kind === 'measured') return picture.marking.found;
  if (picture.kind !== 'swept') return null;
  const outcome = straightestFrame(picture.frames)?.outcome;
  return outcome?.kind === 'found' ? outcome.features : null;
}

function cardWords({ picture, settings }: SheetState): string {
  const { card, checkLengthText } = settings;
  // Markers that were seen say more than the setting: only the printed card has them.
  const areMarkersSeen = shownFeatures(picture)?.card.source === 'markers';
  if (card === 'bought' && !areMarkersSeen) return words.paper.bought;
  return parsePrintScale(checkLengthText)?.ok === true
    ? words.paper.markerCard(checkLengthText.trim())
    : words.paper.markerCardUnmeasured;
}
