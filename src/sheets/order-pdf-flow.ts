/** A line of what is written or drawn across its width; lines are laid below each other without a gap. */
export interface FlowLine<Ink> {
  readonly heightPt: number;
  /** placed within the line: points from its top left corner, y down */
  readonly inks: readonly Ink[];
}

/** Lines that stay together as long as they fit one empty column. */
export interface FlowPiece<Ink> {
  readonly lines: readonly FlowLine<Ink>[];
  /** left out at the top of a column */
  readonly gapBeforePt: number;
  /** said again where this piece begins a column that is not the one in which its table began; empty for all that is no table */
  readonly headAgain: readonly FlowLine<Ink>[];
}

/** Pieces below each other over the whole width, or in two columns that are balanced. */
export type FlowBand<Ink> =
  | { readonly kind: 'full'; readonly pieces: readonly FlowPiece<Ink>[] }
  | {
      readonly kind: 'columns';
      /** over both columns; not parted from them */
      readonly heading: FlowPiece<Ink> | null;
      /** pieces of one group stay in one column where there is room for that */
      readonly groups: readonly (readonly FlowPiece<Ink>[])[];
      readonly gapBeforePt: number;
    };

export interface FlowFrame {
  readonly heightPt: number;
  readonly widthPt: number;
  readonly columnGapPt: number;
}

/** A line with its top left corner: points from the corner of the frame, y down. */
export interface PlacedLine<Ink> {
  readonly xPt: number;
  readonly yPt: number;
  readonly line: FlowLine<Ink>;
}

/** Less than this is not begun on: the columns start on the next page. Chosen. */
const LEAST_COLUMN_PT = 90;

/** In how small steps the height of balanced columns is sought. Chosen. */
const BALANCE_STEP_PT = 2;

/** Width of each of two columns. */
export function columnWidthPt({ widthPt, columnGapPt }: FlowFrame): number {
  return (widthPt - columnGapPt) / 2;
}

/** All lines on their pages: nothing is left out, cut, or placed outside the frame as long as one line alone fits it. */
export function flow<Ink>(bands: readonly FlowBand<Ink>[], frame: FlowFrame): readonly (readonly PlacedLine<Ink>[])[] {
  const pages: PlacedLine<Ink>[][] = [[]];
  let yPt = 0;
  const turnPage = (): void => {
    pages.push([]);
    yPt = 0;
  };
  const put = (placed: readonly PlacedLine<Ink>[], topPt: number): void => {
    for (const one of placed) pages.at(-1)?.push({ ...one, yPt: one.yPt + topPt });
  };
  const putPiece = (piece: FlowPiece<Ink>): void => {
    const heightPt = heightOf(piece.lines);
    const gapPt = yPt === 0 ? 0 : piece.gapBeforePt;
    if (yPt > 0 && yPt + gapPt + heightPt > frame.heightPt && heightPt <= frame.heightPt) turnPage();
    yPt += yPt === 0 ? 0 : gapPt;
    for (const line of piece.lines) {
      if (yPt > 0 && yPt + line.heightPt > frame.heightPt) turnPage();
      put([{ xPt: 0, yPt: 0, line }], yPt);
      yPt += line.heightPt;
    }
  };

  for (const band of bands) {
    if (band.kind === 'full') {
      for (const piece of band.pieces) putPiece(piece);
      continue;
    }
    const { heading, groups, gapBeforePt } = band;
    const whole = groups.map(joined);
    const headingPt = heading === null ? 0 : heightOf(heading.lines);
    const roomPt = (): number => frame.heightPt - yPt - (yPt === 0 ? 0 : gapBeforePt) - headingPt;
    const fitted = balancedWhole(whole, roomPt(), frame);
    // Small columns rather begin a page than be parted.
    if (fitted === null && yPt > 0) {
      const onNextPage = balancedWhole(whole, frame.heightPt - headingPt, frame);
      const isSmall = onNextPage !== null && onNextPage.heightPt < frame.heightPt / 4;
      if (isSmall || roomPt() < LEAST_COLUMN_PT) turnPage();
    }
    yPt += yPt === 0 ? 0 : gapBeforePt;
    if (heading !== null) putPiece({ ...heading, gapBeforePt: 0 });
    let left: readonly FlowPiece<Ink>[] = [];
    const all = balancedWhole(whole, frame.heightPt - yPt, frame);
    if (all !== null) {
      put(all.placed, yPt);
      yPt += all.heightPt;
    } else {
      left = groups.flat();
    }
    while (left.length > 0) {
      const rest = balanced(left, frame.heightPt - yPt, frame);
      const filled = rest ?? filledColumns(left, frame.heightPt - yPt, frame);
      put(filled.placed, yPt);
      yPt += filled.heightPt;
      left = filled.left;
      if (left.length > 0) turnPage();
    }
  }
  return pages;
}

interface FilledColumns<Ink> {
  readonly placed: readonly PlacedLine<Ink>[];
  readonly heightPt: number;
  readonly left: readonly FlowPiece<Ink>[];
}

/** The same with none of the pieces parted. */
function balancedWhole<Ink>(
  pieces: readonly FlowPiece<Ink>[],
  mostPt: number,
  frame: FlowFrame,
): FilledColumns<Ink> | null {
  return pieces.some(({ lines }) => heightOf(lines) > mostPt) ? null : balanced(pieces, mostPt, frame);
}

/** Two columns as short as they can be; null where the pieces do not fit that height. */
function balanced<Ink>(pieces: readonly FlowPiece<Ink>[], mostPt: number, frame: FlowFrame): FilledColumns<Ink> | null {
  const totalPt = pieces.reduce((sum, { lines }) => sum + heightOf(lines), 0);
  for (let heightPt = totalPt / 2; heightPt < mostPt + BALANCE_STEP_PT; heightPt += BALANCE_STEP_PT) {
    const filled = filledColumns(pieces, Math.min(heightPt, mostPt), frame);
    if (filled.left.length === 0 && filled.heightPt <= mostPt) return filled;
  }
  return null;
}

function filledColumns<Ink>(pieces: readonly FlowPiece<Ink>[], heightPt: number, frame: FlowFrame): FilledColumns<Ink> {
  const placed: PlacedLine<Ink>[] = [];
  const toPlace = [...pieces];
  let lowestPt = 0;
  for (const xPt of [0, columnWidthPt(frame) + frame.columnGapPt]) {
    let yPt = 0;
    for (let piece = toPlace[0]; piece !== undefined; piece = toPlace[0]) {
      const isFirst = yPt === 0;
      const lines = isFirst ? [...piece.headAgain, ...piece.lines] : piece.lines;
      const neededPt = (isFirst ? 0 : piece.gapBeforePt) + heightOf(lines);
      if (yPt + neededPt > heightPt) {
        const fitsAnEmptyColumn = heightOf([...piece.headAgain, ...piece.lines]) <= frame.heightPt;
        if (!isFirst || fitsAnEmptyColumn) break;
        const split = splitAt(lines, heightPt);
        if (split.first.length === 0) break;
        yPt = push(placed, split.first, xPt, yPt);
        toPlace[0] = { ...piece, lines: split.rest };
        break;
      }
      yPt = push(placed, lines, xPt, yPt + (isFirst ? 0 : piece.gapBeforePt));
      toPlace.shift();
    }
    lowestPt = Math.max(lowestPt, yPt);
  }
  return { placed, heightPt: lowestPt, left: toPlace };
}

function push<Ink>(placed: PlacedLine<Ink>[], lines: readonly FlowLine<Ink>[], xPt: number, topPt: number): number {
  let yPt = topPt;
  for (const line of lines) {
    placed.push({ xPt, yPt, line });
    yPt += line.heightPt;
  }
  return yPt;
}

function splitAt<Ink>(lines: readonly FlowLine<Ink>[], heightPt: number) {
  let takenPt = 0;
  const fitting = lines.findIndex((line) => {
    takenPt += line.heightPt;
    return takenPt > heightPt;
  });
  const count = fitting === -1 ? lines.length : fitting;
  return { first: lines.slice(0, count), rest: lines.slice(count) };
}

/** A group as one piece that is not parted. */
function joined<Ink>(pieces: readonly FlowPiece<Ink>[]): FlowPiece<Ink> {
  return {
    lines: pieces.flatMap(({ lines, gapBeforePt }, index) =>
      index === 0 || gapBeforePt === 0 ? lines : [{ heightPt: gapBeforePt, inks: [] }, ...lines],
    ),
    gapBeforePt: pieces[0]?.gapBeforePt ?? 0,
    headAgain: [],
  };
}

function heightOf(lines: readonly FlowLine<unknown>[]): number {
  return lines.reduce((sum, { heightPt }) => sum + heightPt, 0);
}
