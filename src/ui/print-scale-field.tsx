import { parsePrintScale } from '../session/measuring-settings.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import { LengthField } from './length-field.js';
import { formatPercent } from './numbers.js';
import { printCheckSentence } from './sentences.js';
import { words } from './language.js';

/** The measured length of the printed line, and what follows from it. */
export function PrintScaleField(props: {
  readonly settings: SheetSettings;
  readonly onChange: (change: Partial<SheetSettings>) => void;
}) {
  const scale = parsePrintScale(props.settings.checkLengthText);
  const result =
    scale === null
      ? words.settings.unchecked
      : !scale.ok
        ? ''
        : scale.value === 1
          ? words.settings.trueSize
          : words.settings.scaled(formatPercent(scale.value * 100, 1));
  return (
    <LengthField
      label={words.settings.checkLength}
      text={props.settings.checkLengthText}
      note={`${words.settings.checkLengthNote} ${result}`}
      problem={scale?.ok === false ? printCheckSentence(scale.failure) : null}
      onType={(text) => {
        // Whoever measures the printed line holds the printed card.
        props.onChange({ checkLengthText: text, card: 'printed' });
      }}
    />
  );
}
