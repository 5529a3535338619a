import { useId } from 'react';

/** A field for a length in mm or another number of which the label tells the unit: the text stays as typed, and what is wrong with it is said below. */
export function LengthField(props: {
  /** where the field is to be found from elsewhere */
  readonly id?: string;
  readonly label: string;
  readonly text: string;
  readonly note: string;
  /** why the text cannot be used; null where it can */
  readonly problem: string | null;
  readonly onType: (text: string) => void;
}) {
  const ownId = useId();
  const id = props.id ?? ownId;
  return (
    <div className="length-field">
      <label htmlFor={id}>{props.label}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        maxLength={16}
        value={props.text}
        aria-invalid={props.problem !== null}
        aria-describedby={`${id}-note`}
        onChange={(event) => {
          props.onType(event.currentTarget.value);
        }}
      />
      <p id={`${id}-note`} className={props.problem === null ? 'note' : 'note note-failure'}>
        {props.problem ?? props.note}
      </p>
    </div>
  );
}
