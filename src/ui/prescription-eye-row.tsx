import type { ReactNode } from 'react';
import type { EyePrescription, HorizontalBase, VerticalBase } from '../core/lenses/prescription.js';
import type { Side } from '../core/units/side.js';
import type { EyeField, PlacedFailure } from '../session/prescription-entry.js';
import type { TypedEye } from '../core/record/typed-prescription.js';
import { entryFailureSentence, otherFormText, placeName } from './lens-sentences.js';
import { words } from './language.js';
import { placeId } from './prescription-place.js';

const COLUMNS = 7;
const HORIZONTAL_BASES = ['in', 'out'] as const satisfies readonly HorizontalBase[];
const VERTICAL_BASES = ['up', 'down'] as const satisfies readonly VerticalBase[];

/** Powers have signs, which the number keys of some phones lack. */
const KEYS: { readonly [Field in EyeField]?: 'text' | 'decimal' } = { sphere: 'text', cylinder: 'text' };

/** The fields of one eye, and below them what is wrong with them, or the lens in its other form. */
export function PrescriptionEyeRow(props: {
  readonly side: Side;
  readonly typed: TypedEye;
  /** null as long as the prescription cannot be read */
  readonly read: EyePrescription | null;
  /** what is wrong in this row */
  readonly wrong: readonly PlacedFailure[];
  readonly onChange: (change: Partial<TypedEye>) => void;
}) {
  const { side, typed, read, wrong, onChange } = props;
  const failureOf = (field: EyeField): PlacedFailure | undefined => wrong.find(({ place }) => place.field === field);
  const input = (field: 'sphere' | 'cylinder' | 'axis' | 'add' | 'prismHorizontal' | 'prismVertical'): ReactNode => {
    const id = placeId({ side, field });
    const isWrong = failureOf(field) !== undefined;
    return (
      <input
        id={id}
        data-prescription-place
        data-needs={field === 'axis' ? placeId({ side, field: 'cylinder' }) : undefined}
        className={`prescription-${field}`}
        type="text"
        inputMode={KEYS[field] ?? 'decimal'}
        autoComplete="off"
        spellCheck={false}
        maxLength={16}
        enterKeyHint="next"
        aria-label={placeName({ side, field })}
        aria-invalid={isWrong}
        aria-describedby={isWrong ? `${id}-message` : undefined}
        value={typed[field]}
        onChange={(event) => {
          onChange({ [field]: event.currentTarget.value });
        }}
        onFocus={(event) => {
          event.currentTarget.select();
        }}
      />
    );
  };
  const base = (
    field: 'baseHorizontal' | 'baseVertical',
    bases: readonly (HorizontalBase | VerticalBase)[],
    onChoose: (base: string) => void,
  ): ReactNode => (
    <select
      id={placeId({ side, field })}
      data-prescription-place
      data-needs={placeId({ side, field: field === 'baseHorizontal' ? 'prismHorizontal' : 'prismVertical' })}
      className={typed[field] === '' ? 'is-unchosen' : undefined}
      aria-label={placeName({ side, field })}
      value={typed[field]}
      onChange={(event) => {
        onChoose(event.currentTarget.value);
      }}
    >
      {['' as const, ...bases].map((one) => (
        <option key={one} value={one}>
          {words.prescription.bases[one]}
        </option>
      ))}
    </select>
  );
  const otherForm = read === null ? null : otherFormText(read);
  return (
    <>
      <tr role="row" className="prescription-eye">
        <th role="rowheader" scope="row">
          <span aria-hidden="true">{words.sheet.side[side]}</span>
          <span className="visually-hidden">{words.prescription.eyes[side]}</span>
        </th>
        <Cell label={words.prescription.fields.sphere}>{input('sphere')}</Cell>
        <Cell label={words.prescription.fields.cylinder}>{input('cylinder')}</Cell>
        <Cell label={words.prescription.fields.axis}>{input('axis')}</Cell>
        <Cell label={words.prescription.fields.add}>{input('add')}</Cell>
        <Cell label={words.prescription.columns.horizontal}>
          {input('prismHorizontal')}{' '}
          {base('baseHorizontal', HORIZONTAL_BASES, (chosen) => {
            onChange({ baseHorizontal: HORIZONTAL_BASES.find((one) => one === chosen) ?? '' });
          })}
        </Cell>
        <Cell label={words.prescription.columns.vertical}>
          {input('prismVertical')}{' '}
          {base('baseVertical', VERTICAL_BASES, (chosen) => {
            onChange({ baseVertical: VERTICAL_BASES.find((one) => one === chosen) ?? '' });
          })}
        </Cell>
      </tr>
      {(wrong.length > 0 || otherForm !== null) && (
        <tr role="row" className="prescription-below">
          <td role="cell" colSpan={COLUMNS}>
            {wrong.map(({ place, failure }) => (
              <p key={place.field} id={`${placeId(place)}-message`} className="prescription-wrong">
                <strong>{placeName(place)}: </strong>
                {entryFailureSentence(failure, place.field)}
              </p>
            ))}
            {otherForm !== null && (
              <p className="note prescription-other-form">
                {words.prescription.otherForm} {otherForm}
              </p>
            )}
          </td>
        </tr>
      )}
    </>
  );
}

/** A cell that says its column itself where a narrow screen has no headings. */
function Cell({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <td role="cell">
      <span className="prescription-label" aria-hidden="true">
        {label}
      </span>
      <span className="prescription-inputs">{children}</span>
    </td>
  );
}
