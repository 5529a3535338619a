import { useId, useState } from 'react';
import { passphraseStrength, SHORTEST_PASSPHRASE } from '../session/passphrase.js';
import { passphraseProblemSentence } from './hand-on-sentences.js';
import { words } from './language.js';

/** Longer than any passphrase that is typed; what is longer was pasted by mistake. */
const PASSPHRASE_LIMIT = 256;

/** A passphrase as it is being typed. It lives only as long as the fields do, and is kept nowhere. */
export interface TypedPassphrase {
  readonly once: string;
  readonly again: string;
}

export const NO_PASSPHRASE: TypedPassphrase = { once: '', again: '' };

/** Asks for a new passphrase, twice. */
export function NewPassphraseFields(props: {
  readonly typed: TypedPassphrase;
  readonly onTyped: (typed: TypedPassphrase) => void;
  /** what keeps it from being used, once that was tried; null otherwise */
  readonly problem: 'empty' | 'too-short' | 'not-the-same' | null;
  readonly onEnter: () => void;
}) {
  const { typed, onTyped, problem } = props;
  const id = useId();
  const [isShown, setIsShown] = useState(false);
  const strength = passphraseStrength(typed.once);
  const type = isShown ? 'text' : 'password';
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === 'Enter' && !event.nativeEvent.isComposing) props.onEnter();
  };
  return (
    <div className="passphrase">
      <p className="passphrase-field">
        <label htmlFor={`${id}-once`}>{words.handOn.passphrase}</label>
        <input
          id={`${id}-once`}
          type={type}
          autoComplete="new-password"
          autoCapitalize="none"
          spellCheck={false}
          maxLength={PASSPHRASE_LIMIT}
          aria-invalid={problem === 'empty' || problem === 'too-short'}
          aria-describedby={`${id}-strength ${id}-caution`}
          value={typed.once}
          onChange={(event) => {
            onTyped({ ...typed, once: event.currentTarget.value });
          }}
          onKeyDown={onKeyDown}
        />
      </p>
      <p id={`${id}-strength`} className="note passphrase-strength" role="status">
        {strength === 'too-short'
          ? words.handOn.strength[strength](SHORTEST_PASSPHRASE)
          : words.handOn.strength[strength]}
      </p>
      <p className="passphrase-field">
        <label htmlFor={`${id}-again`}>{words.handOn.again}</label>
        <input
          id={`${id}-again`}
          type={type}
          autoComplete="new-password"
          autoCapitalize="none"
          spellCheck={false}
          maxLength={PASSPHRASE_LIMIT}
          aria-invalid={problem === 'not-the-same'}
          value={typed.again}
          onChange={(event) => {
            onTyped({ ...typed, again: event.currentTarget.value });
          }}
          onKeyDown={onKeyDown}
        />
      </p>
      <ShowTyped isShown={isShown} onShown={setIsShown} />
      <p id={`${id}-caution`} className="caution">
        {words.handOn.cannotRestore}
      </p>
      {problem !== null && (
        <p className="note note-failure" role="alert">
          {passphraseProblemSentence(problem)}
        </p>
      )}
    </div>
  );
}

/** Asks for the passphrase that something was locked or sealed with. */
export function PassphraseField(props: {
  readonly typed: string;
  readonly onTyped: (typed: string) => void;
  readonly isInvalid: boolean;
  readonly onEnter: () => void;
}) {
  const id = useId();
  const [isShown, setIsShown] = useState(false);
  return (
    <div className="passphrase">
      <p className="passphrase-field">
        <label htmlFor={id}>{words.handOn.passphrase}</label>
        <input
          id={id}
          type={isShown ? 'text' : 'password'}
          autoComplete="current-password"
          autoCapitalize="none"
          spellCheck={false}
          maxLength={PASSPHRASE_LIMIT}
          aria-invalid={props.isInvalid}
          value={props.typed}
          onChange={(event) => {
            props.onTyped(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && !event.nativeEvent.isComposing) props.onEnter();
          }}
        />
      </p>
      <ShowTyped isShown={isShown} onShown={setIsShown} />
    </div>
  );
}

function ShowTyped(props: { readonly isShown: boolean; readonly onShown: (isShown: boolean) => void }) {
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={props.isShown}
        onChange={(event) => {
          props.onShown(event.currentTarget.checked);
        }}
      />
      {words.handOn.show}
    </label>
  );
}
