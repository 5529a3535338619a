import type { Result } from '../core/result.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { Side } from '../core/units/side.js';
import { SIDES } from '../core/units/side.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';
import type { Order, OrderLine, OrderValue } from '../session/order.js';
import type { PrescriptionEntry, PrescriptionFailure } from '../session/prescription-entry.js';
import type {
  OrderDocument,
  OrderFact,
  OrderGroup,
  OrderPrescription,
  OrderRow,
  OrderTable,
} from '../sheets/order-document.js';
import { dateText, spokenTag, words } from './language.js';
import { formatNumber, hasDigitsBesidesZero, plainNumber, withUnit } from './numbers.js';
import type { OrderedFrame, OrderedLens } from './order-frame.js';
import { orderedFrame } from './order-frame.js';
import { eyeNotation } from './order-notation.js';
import { confirmedNumber } from './confirmed-number.js';
import type { OrderPart } from './order-parts.js';
import { ORDER_PARTS, PART_OF } from './order-parts.js';

/** All that stands on the order. */
export interface OrderContent {
  readonly order: Order;
  /** the open points, a sentence each */
  readonly doubts: readonly string[];
  readonly prescription: Result<PrescriptionEntry, PrescriptionFailure>;
  /** null where nobody typed a usable one */
  readonly effectiveDiameterMm: number | null;
  readonly notes: WearerNotes;
  /** whose readings are joined with the confirmed ones; null where nobody else read them, empty where no name was typed */
  readonly secondReader: string | null;
  readonly when: Date;
  /** the demo's wearer */
  readonly isInvented: boolean;
  /** the camera's values come from a picture that nobody but the wearer saw to */
  readonly isUnsupervised: boolean;
}

// The month as a word: 3/4 is April here and March there.
const DAY = { dateStyle: 'long' } as const;
const TIME = { timeStyle: 'short' } as const;

/** The order in the words of this moment's language; the print page and the PDF are made from it. */
export function orderDocument(content: OrderContent): OrderDocument {
  const { order, doubts, notes, when } = content;
  const confirmations = confirmationsOf(order);
  const wearer = notes.wearer.trim();
  // Kept, so that a file which is made a moment later speaks one language throughout.
  const { continued, footer, lettersMissing } = words.order;
  return {
    language: spokenTag,
    title: words.order.title,
    notice: content.isInvented ? words.order.invented : null,
    facts: [
      { label: words.order.wearer, values: [wearer === '' ? '–' : wearer] },
      { label: words.order.date, values: [dateText(when, DAY)] },
      readersFact(confirmations, content.secondReader),
    ],
    prescription: prescriptionPart(content),
    tables: [
      ...ORDER_PARTS.flatMap((part) => measuredTable(part, order, confirmations)),
      ...workedOutTable(orderedFrame(order, content.effectiveDiameterMm)),
    ],
    missing:
      order.lines.length > 0
        ? []
        : [words.order.nothingOrdered, ...(order.unconfirmed.length === 0 ? [words.order.noReadings] : [])],
    sections: [
      ...notesPart(content),
      {
        heading: words.order.doubts,
        sentences: doubts.length === 0 ? [words.order.noDoubts] : doubts,
        isList: doubts.length > 0,
      },
    ],
    signature: words.order.signature,
    cautions: {
      heading: words.order.cautions,
      sentences: [...words.order.ownCautions, ...words.footer.cautions],
      isList: true,
    },
    footer: (page, pages) => footer(wearer, page, pages),
    continued,
    lettersMissing,
  };
}

/** What one reader confirmed on one day. */
interface ConfirmedTogether {
  readonly mark: string;
  readonly by: string;
  readonly from: Date;
  readonly until: Date;
  readonly values: ReadonlySet<OrderValue>;
}

const MARKS = 'abcdefghijklmnopqrstuvwxyz';

/** In the order of time. */
function confirmationsOf(order: Order): readonly ConfirmedTogether[] {
  const together = new Map<string, OrderValue[]>();
  for (const value of order.lines
    .flatMap((line) => line.values)
    .toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at))) {
    const key = JSON.stringify([value.by.trim(), new Date(value.at).toDateString()]);
    together.set(key, [...(together.get(key) ?? []), value]);
  }
  return [...together.values()].flatMap((those, index) => {
    const [first] = those;
    const last = those.at(-1);
    if (first === undefined || last === undefined) return [];
    return {
      mark: MARKS[index] ?? String(index + 1),
      by: first.by.trim(),
      from: new Date(first.at),
      until: new Date(last.at),
      values: new Set(those),
    };
  });
}

function readersFact(confirmations: readonly ConfirmedTogether[], secondReader: string | null): OrderFact {
  const told = confirmations.map(({ mark, by, from, until }) => {
    const [begun, ended] = [dateText(from, TIME), dateText(until, TIME)];
    const reader = by === '' ? words.order.nobody : by;
    const sentence = words.order.confirmation(reader, dateText(from, DAY), begun, begun === ended ? null : ended);
    return confirmations.length === 1 ? sentence : words.order.marked(mark, sentence);
  });
  return {
    label: words.order.readers,
    values: [
      ...(told.length === 0 ? [words.order.nobody] : told),
      ...(secondReader === null ? [] : [words.order.secondReading(secondReader)]),
    ],
  };
}

function prescriptionPart({ prescription }: OrderContent): OrderPrescription {
  if (!prescription.ok) {
    const why = prescription.failure.isEmpty ? words.order.noPrescription : words.order.badPrescription;
    return { heading: words.order.prescription, eyes: [], notes: [why] };
  }
  const { prescription: eyes } = prescription.value;
  const vertex =
    eyes.vertexDistanceMm === null
      ? words.order.noVertex
      : words.order.prescribedAt(plainNumber(eyes.vertexDistanceMm));
  return {
    heading: words.order.prescriptionFor(words.prescription.kinds[eyes.lensKind]),
    eyes: SIDES.map((side) => ({ ...sideWords(side), notation: eyeNotation(eyes[side]) })),
    notes: [`${vertex} ${words.order.prescriptionNote}`],
  };
}

function sideWords(side: Side): { readonly side: string; readonly sideName: string } {
  return { side: words.sheet.side[side], sideName: words.order.sideNames[side] };
}

function measuredTable(
  part: OrderPart,
  order: Order,
  confirmations: readonly ConfirmedTogether[],
): readonly OrderTable[] {
  const lines = order.lines.filter(({ measurement }) => PART_OF[measurement.id] === part);
  if (lines.length === 0) return [];
  const isMarked = confirmations.length > 1;
  return [
    {
      caption: words.order.parts[part],
      head: {
        measurement: words.order.measurement,
        side: words.order.side,
        value: words.order.value,
        doubt: words.order.doubtHead,
        confirmed: isMarked ? words.order.confirmedHead : null,
      },
      groups: lines.map((line) => measuredGroup(line, isMarked ? confirmations : [])),
      notes: [],
    },
  ];
}

function measuredGroup({ measurement, values }: OrderLine, marked: readonly ConfirmedTogether[]): OrderGroup {
  const { id, unit } = measurement;
  return {
    heading: words.measurements[id].shortName,
    rows: values.map((one): OrderRow => {
      const { side, text, standardUncertainty } = one;
      return {
        ...(side === null ? { side: null, sideName: null } : sideWords(side)),
        value: withUnit(confirmedNumber(text), unit),
        doubt: words.order.doubt(withUnit(formatNumber(NORMAL_95 * standardUncertainty, 1), unit)),
        confirmed: marked.find(({ values: those }) => those.has(one))?.mark ?? null,
      };
    }),
  };
}

/** What follows from the frame and the eyes' places; nothing where the numbers for it are not in the order. */
function workedOutTable({ boxedCentreDistanceMm, lenses, blankFrom }: OrderedFrame): readonly OrderTable[] {
  const sides = SIDES.filter((side) => lenses[side].inwardMm !== null || lenses[side].upMm !== null);
  const blanks = SIDES.flatMap((side) => {
    const mm = lenses[side].blankMm;
    return mm === null ? [] : [{ side, mm }];
  });
  if (boxedCentreDistanceMm === null && sides.length === 0) return [];
  const row = (side: Side | null, value: string): OrderRow => ({
    ...(side === null ? { side: null, sideName: null } : sideWords(side)),
    value,
    doubt: null,
    confirmed: null,
  });
  const groups: readonly OrderGroup[] = [
    {
      heading: words.order.boxedCentreDistance,
      rows: boxedCentreDistanceMm === null ? [] : [row(null, withUnit(formatNumber(boxedCentreDistanceMm, 1), 'mm'))],
    },
    {
      heading: words.order.decentration,
      rows: sides.map((side) => row(side, decentrationWords(lenses[side]))),
    },
    {
      heading: words.order.blank,
      // the next whole millimetre, but for the dust of the sum
      rows: blanks.map(({ side, mm }) => row(side, words.order.blankOf[blankFrom](String(Math.ceil(mm - 1e-6))))),
    },
  ];
  const { measurement, side, value } = words.order;
  return [
    {
      caption: words.order.workedOut,
      head: { measurement, side, value, doubt: null, confirmed: null },
      groups: groups.filter(({ rows }) => rows.length > 0),
      notes: [
        words.order.workedOutNote,
        ...(blanks.length === 0 ? [] : [words.order.blankNote(words.order.blankFrom[blankFrom])]),
      ],
    },
  ];
}

function decentrationWords({ inwardMm, upMm }: OrderedLens): string {
  const parts = [
    directed(inwardMm, words.order.inward, words.order.outward),
    directed(upMm, words.order.up, words.order.down),
  ].filter((part) => part !== '');
  if (parts.length > 0) return parts.join(', ');
  return inwardMm === null ? words.order.level : words.order.centred;
}

function directed(mm: number | null, positive: (mm: string) => string, negative: (mm: string) => string): string {
  const text = formatNumber(Math.abs(mm ?? 0), 1);
  if (mm === null || !hasDigitsBesidesZero(text)) return '';
  return mm > 0 ? positive(text) : negative(text);
}

function notesPart({ notes, order, isUnsupervised }: OrderContent): OrderDocument['sections'] {
  const isLightOfUse = order.lines.some(({ measurement }) => measurement.id === 'pupilDiameter');
  const sentences = [
    ...(isUnsupervised ? [words.order.unsupervised] : []),
    ...(notes.squint ? [words.order.squint] : []),
    ...(notes.light !== null && isLightOfUse ? [words.order.light(words.notes.lights[notes.light])] : []),
    ...(notes.remark.trim() === '' ? [] : [notes.remark.trim()]),
  ];
  return sentences.length === 0 ? [] : [{ heading: words.order.notes, sentences, isList: false }];
}
