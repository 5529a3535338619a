import { useMemo } from 'react';
import type { Prescription } from '../core/lenses/prescription.js';
import { SIDES } from '../core/units/side.js';
import { parseEffectiveDiameter } from '../session/prescription-entry.js';
import type { FrameWork } from '../session/prescription-frame.js';
import { fitsBox, frameWork } from '../session/prescription-frame.js';
import { frameTexts, vertexSentence } from './cost-sentences.js';
import { EFFECTIVE_DIAMETER_ID } from './place-ids.js';
import { words } from './language.js';
import { LengthField } from './length-field.js';
import type { SheetInHand } from './use-sheet.js';

const COLUMNS = ['inward', 'up', 'blank', 'inset', 'vertex'] as const;

/** What the workshop works out for the chosen frame, as far as the readings tell. */
export function CostFrame(props: {
  readonly sheet: SheetInHand;
  readonly prescription: Prescription;
  readonly values: Parameters<typeof frameWork>[0];
}) {
  const { sheet, prescription, values } = props;
  const { workingDistanceMm } = sheet.settings;
  const isProgressive = prescription.lensKind === 'progressive';
  const typed = sheet.state.prescription.effectiveDiameter;
  const diameter = useMemo(() => parseEffectiveDiameter(typed), [typed]);
  const isFitting = diameter?.ok !== true || fitsBox(diameter.value, values);
  const work = useMemo(
    () =>
      frameWork(values, prescription, {
        workingDistanceMm,
        effectiveDiameterMm: diameter?.ok === true && isFitting ? diameter.value : null,
      }),
    [values, prescription, workingDistanceMm, diameter, isFitting],
  );
  return (
    <div className="cost-frame">
      <h3>{words.cost.frame}</h3>
      <FrameTable work={work} hasInset={!isProgressive} />
      {SIDES.some((side) => work.lenses[side].blank?.isBound === true) && (
        <p className="note">{words.cost.blankOfBox}</p>
      )}
      {work.isHalved && <p className="note">{words.cost.halved}</p>}
      {isProgressive && <p className="note">{words.cost.insetOfDesign}</p>}
      {!isProgressive && work.lenses.R.nearInsetMm !== null && (
        <p className="note">{words.cost.insetNote(workingDistanceMm)}</p>
      )}
      <LengthField
        id={EFFECTIVE_DIAMETER_ID}
        label={words.cost.effectiveDiameter}
        text={typed}
        note={words.cost.effectiveDiameterNote}
        problem={diameterProblem(diameter, isFitting, values)}
        onType={(effectiveDiameter) => {
          sheet.dispatch({ kind: 'prescription-changed', change: { effectiveDiameter } });
        }}
      />
    </div>
  );
}

function FrameTable({ work, hasInset }: { readonly work: FrameWork; readonly hasInset: boolean }) {
  const lenses = SIDES.map((side) => {
    const lens = work.lenses[side];
    return { side, vertex: lens.vertex === null ? null : vertexSentence(lens.vertex), ...frameTexts(lens) };
  });
  const columns = COLUMNS.filter(
    (column) => (column !== 'inset' || hasInset) && lenses.some((lens) => lens[column] !== null),
  );
  const isFrameKnown = lenses.some(({ inward }) => inward !== null);
  return (
    <>
      {!isFrameKnown && <p className="note">{words.cost.frameNeeds}</p>}
      {columns.length > 0 && (
        <table role="table" className="cost-table">
          <caption className="visually-hidden">{words.cost.frameCaption}</caption>
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                <span className="visually-hidden">{words.prescription.eye}</span>
              </th>
              {columns.map((column) => (
                <th key={column} role="columnheader" scope="col">
                  {words.cost.rows[column]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {lenses.map((lens) => (
              <tr key={lens.side} role="row">
                <th role="rowheader" scope="row">
                  {words.sheet.side[lens.side]}
                </th>
                {columns.map((column) => (
                  <td key={column} role="cell">
                    <span className="prescription-label" aria-hidden="true">
                      {words.cost.rows[column]}
                    </span>
                    {lens[column] ?? '–'}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

function diameterProblem(
  diameter: ReturnType<typeof parseEffectiveDiameter>,
  isFitting: boolean,
  { boxLensWidth = 0, boxLensHeight = 0 }: Parameters<typeof frameWork>[0],
): string | null {
  if (diameter === null) return null;
  if (!diameter.ok) {
    return diameter.failure.kind === 'not-a-number'
      ? words.cost.diameterNoNumber
      : words.cost.diameterBeyond(diameter.failure.lowest, diameter.failure.highest);
  }
  return isFitting
    ? null
    : words.cost.diameterMisfit(Math.max(boxLensWidth, boxLensHeight), Math.hypot(boxLensWidth, boxLensHeight));
}
