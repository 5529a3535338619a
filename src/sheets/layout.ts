/** The papers that sheets are laid out for. */
export type Paper = 'a4' | 'letter';

export interface PageSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Upright. A4 by ISO 216; US Letter is 8.5 x 11 inches of 25.4 mm. */
export const PAPER_SIZES_MM: Readonly<Record<Paper, PageSize>> = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
};

/** Free of ink on every side, mm. Chosen: printers leave up to about 6 mm blank, and a sheet is held somewhere. */
export const SHEET_MARGIN_MM = 15;

/** A place on a sheet: millimetres from its top left corner, x to the right, y down. */
export interface SheetPoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** A rectangle on a sheet, by its top left corner. */
export interface SheetRectangle extends SheetPoint {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Black rectangles that are painted in one go, so that no hair of white shows where two of them touch. */
export interface FillElement {
  readonly kind: 'fill';
  readonly rectangles: readonly SheetRectangle[];
}

/** A straight black stroke, drawn with its middle on the line between the two ends and cut off square there. */
export interface LineElement {
  readonly kind: 'line';
  readonly from: SheetPoint;
  readonly to: SheetPoint;
  readonly strokeMm: number;
}

/** The outline of a rectangle with round corners; the middle of its stroke is the edge of the rectangle. */
export interface OutlineElement {
  readonly kind: 'outline';
  readonly rectangle: SheetRectangle;
  readonly cornerRadiusMm: number;
  readonly strokeMm: number;
}

/** One line of text in the letters of Western European languages (WinAnsi). It is not broken: a layout knows no widths of letters. */
export interface TextElement {
  readonly kind: 'text';
  readonly text: string;
  /** on the baseline: the text's left end, middle or right end, as `anchor` says */
  readonly at: SheetPoint;
  readonly anchor: 'left' | 'middle' | 'right';
  /** nominal size of the letters */
  readonly sizeMm: number;
  readonly weight: 'regular' | 'bold';
}

export type SheetElement = FillElement | LineElement | OutlineElement | TextElement;

/** One printable page in millimetres. Reads as data; the PDF writer adds nothing to it. */
export interface SheetLayout extends PageSize {
  readonly title: string;
  readonly elements: readonly SheetElement[];
}

/** Sizes of letters, mm. */
export const TEXT_SIZES_MM = { title: 7, heading: 4.2, body: 3.4, small: 2.7 } as const;

/** From baseline to baseline of running text. */
const LINE_ADVANCE_MM = 4.8;

/** Lines of running text below each other, the first one's baseline beginning at `at`. */
export function paragraph(at: SheetPoint, lines: readonly string[]): readonly TextElement[] {
  return lines.map((text, index) => ({
    kind: 'text',
    text,
    at: { xMm: at.xMm, yMm: at.yMm + index * LINE_ADVANCE_MM },
    anchor: 'left',
    sizeMm: TEXT_SIZES_MM.body,
    weight: 'regular',
  }));
}

/** A heading whose baseline begins at `at`. */
export function heading(at: SheetPoint, text: string): TextElement {
  return { kind: 'text', text, at, anchor: 'left', sizeMm: TEXT_SIZES_MM.heading, weight: 'bold' };
}

/** The title of a sheet with one line that says what the sheet is for. */
export function sheetHead(title: string, purpose: string): readonly TextElement[] {
  return [
    {
      kind: 'text',
      text: title,
      at: { xMm: SHEET_MARGIN_MM, yMm: 22 },
      anchor: 'left',
      sizeMm: TEXT_SIZES_MM.title,
      weight: 'bold',
    },
    ...paragraph({ xMm: SHEET_MARGIN_MM, yMm: 29 }, [purpose]),
  ];
}

/** What stands at the foot of a sheet: what is drawn on it, and whose it is. */
export function sheetFoot(page: PageSize, description: string): readonly TextElement[] {
  const { widthMm, heightMm } = page;
  const yMm = heightMm - SHEET_MARGIN_MM;
  const text = { kind: 'text', sizeMm: TEXT_SIZES_MM.small } as const;
  return [
    { ...text, text: description, at: { xMm: SHEET_MARGIN_MM, yMm }, anchor: 'left', weight: 'regular' },
    { ...text, text: 'Glabella', at: { xMm: widthMm - SHEET_MARGIN_MM, yMm }, anchor: 'right', weight: 'bold' },
  ];
}
