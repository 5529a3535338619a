import type { OrderDocument, OrderFact, OrderGroup, OrderSection, OrderTable } from './order-document.js';
import type { FlowBand, FlowFrame, FlowLine, FlowPiece } from './order-pdf-flow.js';
import { columnWidthPt } from './order-pdf-flow.js';
import type { Tag } from './order-pdf-tags.js';
import { tag, within } from './order-pdf-tags.js';
import type { Typeface } from './order-pdf-typeface.js';

/** Text or a rule within a line: points from the line's top left corner, y down. */
export type OrderInk =
  | {
      readonly kind: 'text';
      readonly text: string;
      readonly style: TextStyle;
      readonly xPt: number;
      readonly baselinePt: number;
      /** null where it is not read aloud: it was read before */
      readonly tag: Tag | null;
    }
  | {
      readonly kind: 'rule';
      readonly xPt: number;
      readonly widthPt: number;
      readonly yPt: number;
      readonly strokePt: number;
      readonly gray: number;
    };

export interface TextStyle {
  readonly weight: 'regular' | 'semiBold';
  readonly sizePt: number;
  readonly leadingPt: number;
  /** 0 is black, 1 white */
  readonly gray: number;
}

export type Typefaces = Readonly<Record<TextStyle['weight'], Typeface>>;

type Line = FlowLine<OrderInk>;
type Piece = FlowPiece<OrderInk>;
type Band = FlowBand<OrderInk>;

const INK = 0;
const SOFT = 0.33;
const HAIR = 0.68;

const TITLE: TextStyle = { weight: 'semiBold', sizePt: 17, leadingPt: 21, gray: INK };
const NOTICE: TextStyle = { weight: 'semiBold', sizePt: 10, leadingPt: 14, gray: INK };
const LABEL: TextStyle = { weight: 'regular', sizePt: 7.5, leadingPt: 10, gray: SOFT };
const FACT: TextStyle = { weight: 'semiBold', sizePt: 10, leadingPt: 12.5, gray: INK };
const HEADING: TextStyle = { weight: 'semiBold', sizePt: 10, leadingPt: 14, gray: INK };
const BODY: TextStyle = { weight: 'regular', sizePt: 9.25, leadingPt: 11.75, gray: INK };
const VALUE: TextStyle = { weight: 'semiBold', sizePt: 9.75, leadingPt: 11.75, gray: INK };
const SIDE: TextStyle = { ...VALUE, sizePt: 9.25 };
const DOUBT: TextStyle = { weight: 'regular', sizePt: 8, leadingPt: 11.75, gray: SOFT };
const NOTATION: TextStyle = { weight: 'semiBold', sizePt: 11, leadingPt: 14, gray: INK };
const SMALL: TextStyle = { weight: 'regular', sizePt: 7.5, leadingPt: 9.5, gray: SOFT };

/** Paper on both sides of a hairline between rows. */
const ROW_PADDING_PT = 0.9;
const HAIR_PT = 0.35;
const SECTION_GAP_PT = 11;
const CELL_GAP_PT = 6;
const BULLET = '\u2022';
const BULLET_INDENT_PT = 9;
const FACT_GAP_PT = 14;
/** What each of the facts beside each other has of the width: the last one tells who and when. */
const FACT_SHARES = [0.32, 0.22, 0.46];
const TABLE_GAP_PT = 9;
/** Room to write a name in. */
const SIGNING_ROOM_PT = 24;

/** How close all stands: factors on the size of letters, the height of lines, and what is left free. */
export interface Density {
  readonly letters: number;
  readonly lines: number;
  readonly gaps: number;
}

/** With room to read in. */
export const CALM: Density = { letters: 1, lines: 1, gaps: 1 };

/** Chosen: a full order with its open points fits one page, and its letters stay as large as on the print page. */
export const DENSE: Density = { letters: 0.95, lines: 0.87, gaps: 0.5 };

/**
 * The whole order as bands for one frame, and its tags. All words are in letters that the faces have.
 *
 * @param aboutLetters a sentence about letters that are not shown; null where all are
 */
export function orderBands(
  order: OrderDocument,
  aboutLetters: string | null,
  faces: Typefaces,
  frame: FlowFrame,
  density: Density,
): { readonly bands: readonly Band[]; readonly root: Tag } {
  const root = tag('Document');
  const { widthPt } = frame;
  const writer = new BlockWriter(faces, root, density);
  const bands: Band[] = [
    { kind: 'full', pieces: writer.head(order, aboutLetters, widthPt) },
    { kind: 'full', pieces: writer.prescription(order, widthPt) },
  ];
  if (order.tables.length > 0) {
    const columns = writer.columns(order.tables, columnWidthPt(frame));
    const groups = order.tables.map((table) => writer.table(table, columns, order.continued));
    bands.push({ kind: 'columns', heading: null, groups, gapBeforePt: writer.gap(SECTION_GAP_PT) });
  }
  const missing = order.missing.map((sentence, index) => ({
    ...piece(writer.paragraph(sentence, index === 0 ? NOTICE : BODY, widthPt)),
    gapBeforePt: index === 0 ? writer.gap(SECTION_GAP_PT) : 0,
  }));
  bands.push({ kind: 'full', pieces: [...missing, ...order.sections.flatMap((one) => writer.section(one, widthPt))] });
  bands.push({ kind: 'full', pieces: [writer.signature(order.signature, frame)] });
  bands.push(writer.cautions(order.cautions, frame));
  return { bands, root };
}

/** Lines of one text; the first begins at the top of its block. */
interface Cell {
  readonly text: string;
  readonly style: TextStyle;
  readonly xPt: number;
  readonly widthPt: number;
  readonly align: 'left' | 'right';
  readonly tag: Tag | null;
}

/** Where the columns of all tables of the order stand, so that they stand below each other. */
interface TableColumns {
  readonly widthPt: number;
  readonly valuePt: number;
  readonly doubtPt: number;
  readonly markPt: number;
}

const SIDE_PT = 13;
/** Of a table's width, for the values at most; the rest is for what they are. Chosen. */
const MOST_OF_VALUES = 0.52;

class BlockWriter {
  constructor(
    private readonly faces: Typefaces,
    private readonly root: Tag,
    private readonly density: Density,
  ) {}

  /** What is left free, in points. */
  gap(pt: number): number {
    return this.density.gaps * pt;
  }

  private at({ sizePt, leadingPt, ...style }: TextStyle): TextStyle {
    return { ...style, sizePt: this.density.letters * sizePt, leadingPt: this.density.lines * leadingPt };
  }

  head(order: OrderDocument, aboutLetters: string | null, widthPt: number): readonly Piece[] {
    const notice = order.notice === null ? [] : this.paragraph(order.notice, NOTICE, widthPt);
    return [
      piece(this.paragraph(order.title, TITLE, widthPt, within(this.root, tag('H1')))),
      piece([...notice, space(this.gap(4))]),
      ...this.facts(order.facts, widthPt).map(piece),
      ...(aboutLetters === null ? [] : [piece([space(this.gap(3)), ...this.paragraph(aboutLetters, BODY, widthPt)])]),
      piece([space(this.gap(5)), rule(widthPt, 0, 1.1, INK)]),
    ];
  }

  /** Three beside each other, each below its label. */
  private facts(facts: readonly OrderFact[], widthPt: number): readonly (readonly Line[])[] {
    const rows = Array.from({ length: Math.ceil(facts.length / FACT_SHARES.length) }, (_, row) =>
      facts.slice(FACT_SHARES.length * row, FACT_SHARES.length * (row + 1)),
    );

    return rows.map((row) =>
      beside(
        row.map(({ label, values }, index) => {
          const place = {
            xPt: FACT_SHARES.slice(0, index).reduce((sum, share) => sum + share, 0) * widthPt,
            widthPt: (FACT_SHARES[index] ?? 0) * widthPt - (index === FACT_SHARES.length - 1 ? 0 : FACT_GAP_PT),
            align: 'left',
            tag: within(this.root, tag('P')),
          } as const;
          return [
            ...this.cell({ ...place, text: label, style: LABEL }),
            ...values.flatMap((text) => this.cell({ ...place, text, style: FACT })),
          ];
        }),
      ),
    );
  }

  prescription({ prescription }: OrderDocument, widthPt: number): readonly Piece[] {
    const heading = this.heading(prescription.heading, widthPt);
    const table = prescription.eyes.length === 0 ? null : within(this.root, tag('Table'));
    const eyes = prescription.eyes.map(({ side, sideName, notation }) => {
      const row = within(table ?? this.root, tag('TR'));
      const th = within(row, tag('TH', { scope: 'Row', spoken: sideName }));
      const td = within(row, tag('TD'));
      return [
        rule(widthPt, this.gap(ROW_PADDING_PT), HAIR_PT, HAIR),
        ...beside([
          this.cell({ text: side, style: NOTATION, xPt: 0, widthPt: SIDE_PT, align: 'left', tag: th }),
          this.cell({ text: notation, style: NOTATION, xPt: 20, widthPt: widthPt - 20, align: 'left', tag: td }),
        ]),
      ];
    });
    const end = eyes.length === 0 ? [] : [rule(widthPt, this.gap(ROW_PADDING_PT), HAIR_PT, HAIR)];
    const style = eyes.length === 0 ? BODY : SMALL;
    const notes = prescription.notes.flatMap((note) => this.paragraph(note, style, widthPt));
    return [{ ...piece([...heading, ...eyes.flat(), ...end, ...notes]), gapBeforePt: this.gap(SECTION_GAP_PT) }];
  }

  columns(tables: readonly OrderTable[], widthPt: number): TableColumns {
    const rows = tables.flatMap(({ groups }) => groups.flatMap((group) => group.rows));
    const widest = (texts: readonly (string | null)[], style: TextStyle): number =>
      Math.max(0, ...texts.map((text) => (text === null ? 0 : this.widthOf(text, style))));
    const doubts = Math.max(
      widest(
        rows.map(({ doubt }) => doubt),
        DOUBT,
      ),
      widest(
        tables.map(({ head }) => head.doubt),
        LABEL,
      ),
    );
    const marks = Math.max(
      widest(
        rows.map(({ confirmed }) => confirmed),
        DOUBT,
      ),
      widest(
        tables.map(({ head }) => head.confirmed),
        LABEL,
      ),
    );
    return {
      widthPt,
      valuePt: this.valuesPt(
        tables.filter(({ head }) => head.doubt !== null || head.confirmed !== null),
        widthPt,
      ),
      doubtPt: doubts === 0 ? 0 : Math.min(doubts + CELL_GAP_PT, widthPt / 3),
      markPt: marks === 0 ? 0 : Math.min(marks + CELL_GAP_PT, widthPt / 4),
    };
  }

  private valuesPt(tables: readonly OrderTable[], widthPt: number): number {
    const values = tables.flatMap(({ groups }) => groups.flatMap(({ rows }) => rows.map(({ value }) => value)));
    const widest = Math.max(
      0,
      ...values.map((value) => this.widthOf(value, VALUE)),
      ...tables.map(({ head }) => this.widthOf(head.value, LABEL)),
    );
    // and a hair, lest a sum's last digit breaks the line
    return Math.min(widest + 0.1, widthPt * MOST_OF_VALUES);
  }

  table(table: OrderTable, columns: TableColumns, continued: (caption: string) => string): readonly Piece[] {
    const { widthPt } = columns;
    const { head } = table;
    const isMeasured = head.doubt !== null || head.confirmed !== null;
    const doubtPt = isMeasured ? columns.doubtPt : 0;
    const markPt = isMeasured ? columns.markPt : 0;
    const valueRightPt = widthPt - doubtPt - markPt;
    const valuePt = isMeasured ? columns.valuePt : this.valuesPt([table], widthPt);
    const places: TablePlaces = { widthPt, doubtPt, markPt, valueRightPt, valuePt };

    const whole = within(this.root, tag('Table'));
    const headLines = this.tableHead(table.caption, head, places, within(whole, tag('TR')));
    const headAgain = this.tableHead(continued(table.caption), head, places, null);
    const end = rule(widthPt, this.gap(ROW_PADDING_PT), HAIR_PT, HAIR);
    const groups = table.groups.map((group) => this.group(group, places, head, whole));
    const notes = table.notes.flatMap((note) => this.paragraph(note, SMALL, widthPt));
    const pieces = groups.map((lines, index) => {
      const isLast = index === groups.length - 1;
      const all = [...(index === 0 ? headLines : []), ...lines, ...(isLast ? [end, ...notes] : [])];
      return { ...piece(all), headAgain: index === 0 ? [] : headAgain };
    });
    return pieces.map((one, index) => ({ ...one, gapBeforePt: index === 0 ? this.gap(TABLE_GAP_PT) : 0 }));
  }

  private tableHead(caption: string, head: OrderTable['head'], places: TablePlaces, row: Tag | null): readonly Line[] {
    const th = (colSpan = 1): Tag | null =>
      row === null ? null : within(row, tag('TH', { scope: 'Column', colSpan }));
    const { widthPt, doubtPt, markPt, valueRightPt, valuePt } = places;
    if (head.doubt === null && head.confirmed === null) {
      return this.cell({ text: caption, style: HEADING, xPt: 0, widthPt, align: 'left', tag: th(3) });
    }
    const captionPt = valueRightPt - valuePt - CELL_GAP_PT;
    const label = { style: { ...LABEL, leadingPt: HEADING.leadingPt }, align: 'right' } as const;
    return beside([
      this.cell({ text: caption, style: HEADING, xPt: 0, widthPt: captionPt, align: 'left', tag: th(2) }),
      this.cell({ ...label, text: head.value, xPt: valueRightPt - valuePt, widthPt: valuePt, tag: th() }),
      head.doubt === null
        ? []
        : this.cell({ ...label, text: head.doubt, xPt: valueRightPt, widthPt: doubtPt, tag: th() }),
      head.confirmed === null
        ? []
        : this.cell({ ...label, text: head.confirmed, xPt: widthPt - markPt, widthPt: markPt, tag: th() }),
    ]);
  }

  private group(group: OrderGroup, places: TablePlaces, head: OrderTable['head'], whole: Tag): readonly Line[] {
    const { widthPt, doubtPt, markPt, valueRightPt, valuePt } = places;
    const sidesLeftPt = valueRightPt - valuePt - CELL_GAP_PT - SIDE_PT;
    const hasSides = group.rows.some(({ side }) => side !== null);
    const headingPt = (hasSides ? sidesLeftPt : sidesLeftPt + SIDE_PT) - CELL_GAP_PT;
    const headingTag = tag('TH', { scope: 'Row', rowSpan: group.rows.length });
    const heading = this.cell({
      text: group.heading,
      style: BODY,
      xPt: 0,
      widthPt: headingPt,
      align: 'left',
      tag: headingTag,
    });
    const rows = group.rows.flatMap(({ side, sideName, value, doubt, confirmed }, index) => {
      const row = within(whole, tag('TR'));
      if (index === 0) within(row, headingTag);
      const td = (spoken: string | null = null): Tag => within(row, tag('TD', { spoken }));
      const cells: (readonly Line[])[] = [
        this.cell({
          text: side ?? '',
          style: SIDE,
          xPt: sidesLeftPt,
          widthPt: SIDE_PT,
          align: 'left',
          tag: td(sideName),
        }),
        this.cell({
          text: value,
          style: VALUE,
          xPt: valueRightPt - valuePt,
          widthPt: valuePt,
          align: 'right',
          tag: td(),
        }),
      ];
      const aside = { style: DOUBT, align: 'right' } as const;
      if (head.doubt !== null) {
        cells.push(this.cell({ ...aside, text: doubt ?? '', xPt: valueRightPt, widthPt: doubtPt, tag: td() }));
      }
      if (head.confirmed !== null) {
        cells.push(this.cell({ ...aside, text: confirmed ?? '', xPt: widthPt - markPt, widthPt: markPt, tag: td() }));
      }
      return beside(cells);
    });
    return [rule(widthPt, this.gap(ROW_PADDING_PT), HAIR_PT, HAIR), ...beside([heading, rows])];
  }

  section({ heading, sentences, isList }: OrderSection, widthPt: number): readonly Piece[] {
    const list = isList ? within(this.root, tag('L')) : null;
    const head = this.heading(heading, widthPt, list);
    const items = sentences.map((sentence) =>
      list === null ? this.paragraph(sentence, BODY, widthPt) : this.item(sentence, BODY, widthPt, list),
    );
    const [first = [], ...others] = items;
    return [{ ...piece([...head, ...first]), gapBeforePt: this.gap(SECTION_GAP_PT) }, ...others.map(piece)];
  }

  signature(text: string, frame: FlowFrame): Piece {
    const { widthPt } = frame;
    const lengthPt = columnWidthPt(frame);
    const leftPt = widthPt - lengthPt;
    const ink = { kind: 'rule', xPt: leftPt, widthPt: lengthPt, yPt: 1, strokePt: 0.7, gray: INK } as const;
    const label = this.cell({
      text,
      style: LABEL,
      xPt: leftPt,
      widthPt: lengthPt,
      align: 'left',
      tag: within(this.root, tag('P')),
    });
    return {
      ...piece([space(SIGNING_ROOM_PT), { heightPt: 3, inks: [ink] }, ...label]),
      gapBeforePt: this.gap(SECTION_GAP_PT),
    };
  }

  cautions({ heading, sentences }: OrderSection, frame: FlowFrame): Band {
    const list = tag('L');
    const head = this.heading(heading, frame.widthPt, null, { ...SMALL, weight: 'semiBold', leadingPt: 11 });
    within(this.root, list);
    const groups = sentences.map((sentence) => [piece(this.item(sentence, SMALL, columnWidthPt(frame), list))]);
    return { kind: 'columns', heading: piece(head), groups, gapBeforePt: this.gap(SECTION_GAP_PT) };
  }

  private item(sentence: string, style: TextStyle, widthPt: number, list: Tag): readonly Line[] {
    const body = within(within(list, tag('LI')), tag('LBody'));
    return beside([
      this.cell({ text: BULLET, style, xPt: 0, widthPt: BULLET_INDENT_PT, align: 'left', tag: null }),
      this.cell({
        text: sentence,
        style,
        xPt: BULLET_INDENT_PT,
        widthPt: widthPt - BULLET_INDENT_PT,
        align: 'left',
        tag: body,
      }),
    ]);
  }

  private heading(text: string, widthPt: number, before: Tag | null = null, style = HEADING): readonly Line[] {
    const h2 = tag('H2');
    const at = before === null ? -1 : this.root.parts.indexOf(before);
    if (at === -1) this.root.parts.push(h2);
    else this.root.parts.splice(at, 0, h2);
    return this.cell({ text, style, xPt: 0, widthPt, align: 'left', tag: h2 });
  }

  paragraph(text: string, style: TextStyle, widthPt: number, as = within(this.root, tag('P'))): readonly Line[] {
    return this.cell({ text, style, xPt: 0, widthPt, align: 'left', tag: as });
  }

  private cell({ text, style: calm, xPt, widthPt, align, tag: read }: Cell): readonly Line[] {
    if (text === '') return [];
    const style = this.at(calm);
    const face = this.faces[style.weight];
    return face.lines(text, style.sizePt, widthPt).map((line) => ({
      heightPt: style.leadingPt,
      inks: [
        {
          kind: 'text',
          text: line,
          style,
          xPt: align === 'left' ? xPt : xPt + widthPt - face.widthPt(line, style.sizePt),
          baselinePt: baselineOf(style),
          tag: read,
        },
      ],
    }));
  }

  private widthOf(text: string, style: TextStyle): number {
    const { weight, sizePt } = this.at(style);
    return this.faces[weight].widthPt(text, sizePt);
  }
}

interface TablePlaces extends TableColumns {
  readonly valueRightPt: number;
}

/** Of the line's height alone: letters of several sizes beside each other stand on one line. Chosen for 0.66 high capitals. */
export function baselineOf({ leadingPt }: TextStyle): number {
  return 0.755 * leadingPt;
}

function piece(lines: readonly Line[]): Piece {
  return { lines, gapBeforePt: 0, headAgain: [] };
}

function space(heightPt: number): Line {
  return { heightPt, inks: [] };
}

function rule(widthPt: number, paddingPt: number, strokePt: number, gray: number): Line {
  const heightPt = 2 * paddingPt + strokePt;
  return { heightPt, inks: [{ kind: 'rule', xPt: 0, widthPt, yPt: heightPt / 2, strokePt, gray }] };
}

/** Blocks beside each other as one: the lines of equal number become one line, as high as the highest of them. */
function beside(blocks: readonly (readonly Line[])[]): readonly Line[] {
  const count = Math.max(0, ...blocks.map((lines) => lines.length));
  return Array.from({ length: count }, (_, index) => {
    const lines = blocks.flatMap((block) => block[index] ?? []);
    return {
      heightPt: Math.max(...lines.map(({ heightPt }) => heightPt)),
      inks: lines.flatMap(({ inks }) => inks),
    };
  });
}
