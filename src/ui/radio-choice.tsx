import { useId } from 'react';

/** One of a few, each a radio button with its words. */
export function RadioChoice<Value extends string | number>(props: {
  readonly legend: string;
  readonly values: readonly Value[];
  readonly chosen: Value;
  readonly wordsOf: (value: Value) => string;
  readonly onChoose: (value: Value) => void;
}) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend>{props.legend}</legend>
      {props.values.map((value) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            checked={props.chosen === value}
            onChange={() => {
              props.onChoose(value);
            }}
          />
          {props.wordsOf(value)}
        </label>
      ))}
    </fieldset>
  );
}
