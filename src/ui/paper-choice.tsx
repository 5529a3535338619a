import { useId } from 'react';
import type { Paper } from '../session/ports.js';
import { words } from './language.js';

/** Chooses the paper that a PDF is made for. */
export function PaperChoice(props: { readonly paper: Paper; readonly onChoose: (paper: Paper) => void }) {
  const id = useId();
  return (
    <p className="labelled">
      <label htmlFor={id}>{words.print.paper}</label>
      <select
        id={id}
        value={props.paper}
        onChange={(event) => {
          props.onChoose(event.currentTarget.value === 'letter' ? 'letter' : 'a4');
        }}
      >
        <option value="a4">{words.print.a4}</option>
        <option value="letter">{words.print.letter}</option>
      </select>
    </p>
  );
}
