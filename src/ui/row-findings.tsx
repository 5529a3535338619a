import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Misfit } from '../session/misfits.js';
import type { FieldRow, SheetRow } from '../session/rows.js';
import { FindingMark } from './finding-mark.js';
import { findingReason, findingWord, spokenName } from './sentences.js';
import { probableExplanation, rowMark } from './slip-marks.js';
import { listWords } from './slip-places.js';
import { words } from './language.js';
import type { SheetInHand } from './use-sheet.js';

/** What the comparison with the camera says of a row. */
export function Findings({ row }: { readonly row: SheetRow }) {
  const { fields, covered } = row;
  const found = fields.filter(({ finding }) => finding !== null);
  if (found.length === 0) {
    const isAlone = !covered && fields.some(({ estimate, reading }) => estimate !== null && !reading.ok);
    return isAlone ? <em className="cover">{words.sheet.preFitting}</em> : null;
  }
  return saidTogether(found).map(({ sides, kind, word, reason }) => (
    <p key={sides.join('')} className={`finding finding-${kind}`}>
      <FindingMark kind={kind} />
      <span>
        {sides.length > 0 && <span className="finding-side">{listWords(sides)}</span>}
        <strong>{word}</strong>
        <span className="reason"> {reason}</span>
      </span>
    </p>
  ));
}

/** Whether something about this reading does not fit, be it said by its finding or by its mark. */
export function isInDoubt(field: FieldRow, sheet: SheetInHand): boolean {
  return field.finding?.kind === 'disagrees' || rowMark(field.field, sheet) !== null;
}

/** In a few words what does not fit about the readings of a row; the list of what does not fit says more. */
export function DoubtMarks({ row, sheet }: { readonly row: SheetRow; readonly sheet: SheetInHand }) {
  const marks = new Map<string, string[]>();
  for (const { field, side } of row.fields) {
    const mark = rowMark(field, sheet);
    if (mark !== null && !isSaidInFull(field, sheet))
      marks.set(mark, [...(marks.get(mark) ?? []), ...(side === null ? [] : [words.sheet.side[side]])]);
  }
  return [...marks].map(([mark, sides]) => (
    <p key={mark} className="finding finding-doubt">
      <svg className="finding-mark" viewBox="0 0 16 16" aria-hidden="true">
        <rect x="0.75" y="0.75" width="14.5" height="14.5" rx="3" />
        <path d="M8 3.6V9.2M8 11.9V12.2" />
      </svg>
      <span>
        {sides.length > 0 && <span className="finding-side">{listWords(sides)}</span>}
        <strong>{mark}</strong>
      </span>
    </p>
  ));
}

const SAID_IN_FULL: readonly Misfit['kind'][] = ['refused', 'readers-differ', 'far-off-repeat'];

/** Whether a sentence beside the hand readings says it already: of what cannot be, of repeats and of readers. */
function isSaidInFull(name: ReadingName, { misfits }: SheetInHand): boolean {
  const isRestored = misfits.some((misfit) =>
    probableExplanation(misfit)?.slips.some(({ restorations }) => restorations.some((one) => one.name === name)),
  );
  const first = misfits.find(({ names }) => names.includes(name));
  return !isRestored && first !== undefined && SAID_IN_FULL.includes(first.kind);
}

interface SaidFinding {
  readonly sides: readonly string[];
  readonly kind: Finding['kind'];
  readonly word: string;
  readonly reason: string;
}

/** The findings of a row; where both sides say the same, it is said once. */
function saidTogether(fields: readonly FieldRow[]): readonly SaidFinding[] {
  const said: SaidFinding[] = [];
  for (const { side, finding, areLidsFound, source } of fields) {
    if (finding === null) continue;
    const sides = side === null ? [] : [words.sheet.side[side]];
    const reason = findingReason(finding, areLidsFound, source);
    const same = said.findIndex((one) => one.kind === finding.kind && one.reason === reason);
    const before = said[same];
    if (before === undefined) said.push({ sides, kind: finding.kind, word: findingWord(finding), reason });
    else said[same] = { ...before, sides: [...before.sides, ...sides], word: findingWord(finding, true) };
  }
  return said;
}

/** What a screen reader is told when the findings of a row change. */
export function findingsSpoken(row: SheetRow): string {
  return row.fields
    .flatMap(({ side, finding, areLidsFound, source }) =>
      finding === null
        ? []
        : [
            words.sheet.findingOf(
              spokenName(row.measurement, side),
              findingWord(finding),
              findingReason(finding, areLidsFound, source),
            ),
          ],
    )
    .join(' ');
}
