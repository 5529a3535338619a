import type { KeyboardEvent, RefObject } from 'react';
import { useId } from 'react';
import { PROFILE_NAME_LIMIT } from '../session/stored-profile.js';
import { words } from './language.js';

/** The field for the name of a profile; what is wrong with an empty one is said below, as soon as it is empty. */
export function ProfileNameField({
  label,
  name,
  emptyProblem,
  onType,
  onKeyDown,
  field,
}: {
  readonly label: string;
  readonly name: string;
  /** said while the field is empty */
  readonly emptyProblem: string;
  readonly onType: (name: string) => void;
  readonly onKeyDown?: (event: KeyboardEvent<HTMLInputElement>) => void;
  readonly field?: RefObject<HTMLInputElement | null>;
}) {
  const id = useId();
  const isEmpty = name.trim() === '';
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        maxLength={PROFILE_NAME_LIMIT}
        autoComplete="off"
        value={name}
        ref={field}
        aria-invalid={isEmpty}
        aria-describedby={`${id}-note`}
        onChange={(event) => {
          onType(event.currentTarget.value);
        }}
        onKeyDown={onKeyDown}
      />
      <p id={`${id}-note`} role="status" className={isEmpty ? 'note note-failure' : 'note'}>
        {isEmpty ? emptyProblem : words.profile.nameLimit(PROFILE_NAME_LIMIT)}
      </p>
    </>
  );
}
