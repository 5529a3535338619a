import { useId, useState } from 'react';
import type { PassphraseProblem } from '../session/passphrase.js';
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
  readonly problem: PassphraseProblem | null;
  readonly onEnter: () => void;
}) {
  const { typed, onTyped, problem, onEnter } = props;
  const id = useId();
  const [isShown, setIsShown] = useState(false);
  const strength = passphraseStrength(typed.once);
  return (
    <div className="passphrase">
      <PassphraseInput
        label={words.handOn.passphrase}
        isNew
        isShown={isShown}
        isInvalid={problem === 'empty' || problem === 'too-short'}
        describedBy={`${id}-strength ${id}-caution`}
        typed={typed.once}
        onTyped={(once) => {
          onTyped({ ...typed, once });
        }}
        onEnter={onEnter}
      />
      <p id={`${id}-strength`} className="note passphrase-strength" role="status">
        {strength === 'too-short'
          ? words.handOn.strength[strength](SHORTEST_PASSPHRASE)
          : words.handOn.strength[strength]}
      </p>
      <PassphraseInput
        label={words.handOn.again}
        isNew
        isShown={isShown}
        isInvalid={problem === 'not-the-same'}
        typed={typed.again}
        onTyped={(again) => {
          onTyped({ ...typed, again });
        }}
        onEnter={onEnter}
      />
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
  const [isShown, setIsShown] = useState(false);
  return (
    <div className="passphrase">
      <PassphraseInput label={words.handOn.passphrase} isNew={false} isShown={isShown} {...props} />
      <ShowTyped isShown={isShown} onShown={setIsShown} />
    </div>
  );
}

function PassphraseInput(props: {
  readonly label: string;
  readonly isNew: boolean;
  readonly isShown: boolean;
  readonly isInvalid: boolean;
  /** ids of what is said of it */
  readonly describedBy?: string;
  readonly typed: string;
  readonly onTyped: (typed: string) => void;
  readonly onEnter: () => void;
}) {
  const id = useId();
  return (
    <p className="passphrase-field">
      <label htmlFor={id}>{props.label}</label>
      <input
        id={id}
        type={props.isShown ? 'text' : 'password'}
        autoComplete={props.isNew ? 'new-password' : 'current-password'}
        autoCapitalize="none"
        spellCheck={false}
        maxLength={PASSPHRASE_LIMIT}
        aria-invalid={props.isInvalid}
        aria-describedby={props.describedBy}
        value={props.typed}
        onChange={(event) => {
          props.onTyped(event.currentTarget.value);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && !event.nativeEvent.isComposing) props.onEnter();
        }}
      />
    </p>
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
