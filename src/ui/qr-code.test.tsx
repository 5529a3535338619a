import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { paintRectangles } from '../../tests/support/detect-markers.js';
import { readQrCode } from '../../tests/support/read-qr-code.js';
import { LINK_LIMIT, linkOf, makeInvitation } from '../session/invitation.js';
import { QrCode } from './qr-code.js';

const CELL_PX = 4;

interface DrawnCode {
  /** with its margin */
  readonly sideCells: number;
  readonly rectangles: readonly { readonly x: number; readonly y: number; readonly width: number }[];
}

/** The code as its markup draws it. */
function drawn(text: string): DrawnCode {
  const markup = renderToStaticMarkup(<QrCode text={text} label="A link" />);
  const sideCells = Number(/viewBox="0 0 (\d+) \1"/.exec(markup)?.[1]);
  expect(markup).toContain(`<rect width="${sideCells}" height="${sideCells}" fill="#fff"></rect>`);
  const outline = /<path d="([^"]+)" fill="#000"/.exec(markup)?.[1] ?? '';
  const steps = [...outline.matchAll(/M(\d+) (\d+)h(\d+)v1h-(\d+)z/g)];
  // Nothing of the outline is drawn in another way.
  expect(steps.map(([step]) => step).join('')).toBe(outline);
  return {
    sideCells,
    rectangles: steps.map(([, x, y, width]) => ({ x: Number(x), y: Number(y), width: Number(width) })),
  };
}

function painted({ sideCells, rectangles }: DrawnCode) {
  const sidePx = sideCells * CELL_PX;
  return paintRectangles(
    sidePx,
    sidePx,
    rectangles.map(({ x, y, width }) => ({
      leftPx: x * CELL_PX,
      topPx: y * CELL_PX,
      rightPx: (x + width) * CELL_PX,
      bottomPx: (y + 1) * CELL_PX,
    })),
  );
}

/** A link with letters of all kinds, this long. */
function linkOfLength(letters: number): string {
  const beginning = 'https://example.org/#';
  return beginning + Array.from({ length: letters - beginning.length }, (_, place) => 'aB3-_x.Z9'[place % 9]).join('');
}

function versionOf({ sideCells }: DrawnCode): number {
  // ISO/IEC 18004, 5.3.1: 21 cells for version 1, 4 more for each version; the margin of 4 on both sides
  return (sideCells - 8 - 17) / 4;
}

describe('QrCode', () => {
  it.each([22, 40, 41, 84, 120, 180, 181, 250, 330, LINK_LIMIT])(
    'draws a link of %d letters that OpenCV reads back',
    async (letters) => {
      const link = linkOfLength(letters);
      expect(await readQrCode(painted(drawn(link)))).toBe(link);
    },
  );

  it('draws a whole invitation that OpenCV reads back', async () => {
    const invitation = makeInvitation(
      {
        recipient: `age1${'q3'.repeat(29)}`,
        practice: 'Brillen Müller & Töchter, Große Straße 12',
        language: 'de',
        cards: ['bought', 'printed'],
        asksForPictures: true,
        days: 14,
      },
      'AbCdEfGhIjKlMnOpQrStUg',
      new Date('2026-03-01T10:00:00Z'),
    );
    const link = linkOf(invitation, 'https://glabella.example.org/desk/index.html');
    if (!link.ok) throw new Error(link.failure.kind);
    const code = drawn(link.value);
    expect(versionOf(code)).toBeLessThanOrEqual(15);
    expect(await readQrCode(painted(code))).toBe(link.value);
  });

  // ISO/IEC 18004, table 7: bytes that versions 1, 10 and 15 hold at level M
  it.each([
    [14, 1],
    [15, 2],
    [213, 10],
    [214, 11],
    [LINK_LIMIT, 15],
    [LINK_LIMIT + 1, 16],
  ])('holds %d letters in version %d', (letters, version) => {
    expect(versionOf(drawn('a'.repeat(letters)))).toBe(version);
  });

  it('keeps a margin of four cells, and has a name and no style of its own', () => {
    const code = drawn('https://example.org/');
    expect(Math.min(...code.rectangles.map(({ x }) => x))).toBe(4);
    expect(Math.min(...code.rectangles.map(({ y }) => y))).toBe(4);
    expect(Math.max(...code.rectangles.map(({ x, width }) => x + width))).toBe(code.sideCells - 4);
    const markup = renderToStaticMarkup(<QrCode text="a" label="Link for the wearer" />);
    expect(markup).toContain('role="img" aria-label="Link for the wearer"');
    expect(markup).not.toContain('style=');
  });
});
