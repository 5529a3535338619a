import { encode } from 'uqr';

/** Cells of blank margin on every side that readers rely on (ISO/IEC 18004, 5.3.8). */
const QUIET_CELLS = 4;

/**
 * A text as a QR code at error correction level M, in the smallest version that holds it. Always dark on light, whatever the colours
 * of the screen: many readers take no other.
 *
 * @param text at most 2331 bytes; a link that a phone is to read should have no more than `LINK_LIMIT`
 * @param label what it is for, to who cannot see it; the text itself should stand beside it as well
 */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { data, size } = encode(text, { ecc: 'M', boostEcc: false, border: 0 });
  const side = size + 2 * QUIET_CELLS;
  return (
    <svg className="qr-code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label={label} shapeRendering="crispEdges">
      <rect width={side} height={side} fill="#fff" />
      <path d={outline(data)} fill="#000" />
    </svg>
  );
}

/** Each run of dark cells of a row as a rectangle of its own. */
function outline(rows: readonly (readonly boolean[])[]): string {
  const steps: string[] = [];
  rows.forEach((row, y) => {
    let x = 0;
    while (x < row.length) {
      const from = x;
      while (x < row.length && row[x] === row[from]) x += 1;
      if (row[from]) steps.push(`M${from + QUIET_CELLS} ${y + QUIET_CELLS}h${x - from}v1h-${x - from}z`);
    }
  });
  return steps.join('');
}
