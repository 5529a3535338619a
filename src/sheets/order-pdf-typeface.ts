import type { PDFDocument, PDFFont, PDFHexString } from '@cantoo/pdf-lib';
import { PDFArray, PDFHexString as HexString, PDFNumber } from '@cantoo/pdf-lib';
import type { Font } from '@cantoo/fontkit';
import fontkit from '@cantoo/fontkit';

/** Stands for every letter that the font lacks: an empty box. */
export const MISSING_LETTER = '\u25a1';

/** Letters of one font file, to be measured, broken into lines and written. */
export interface Typeface {
  readonly font: PDFFont;
  widthPt(text: string, sizePt: number): number;
  /**
   * The text in lines no wider than the column: broken at spaces, and within a word only where the word alone is too wide. Spaces
   * that do not break stay whole. At least one line.
   */
  lines(text: string, sizePt: number, widthPt: number): readonly string[];
  /** the text with `MISSING_LETTER` for whatever the font cannot write; controls and line ends become spaces */
  writable(text: string): string;
  /** for the operator TJ: the glyphs with the font's own kerning */
  encoded(text: string): PDFArray;
}

// A ligature is copied out of some viewers as one odd letter.
const FEATURES = { liga: false, dlig: false };

/**
 * Embeds the letters that will be used, and no others, in a document.
 *
 * @param name what the font is called in the file
 */
export async function embedTypeface(document: PDFDocument, bytes: Uint8Array, name: string): Promise<Typeface> {
  document.registerFontkit(fontkit);
  const font = await document.embedFont(bytes, { subset: true, customName: name, features: FEATURES });
  const metrics = fontkit.create(bytes) as Font;
  const widths = new Map<string, number>();

  const widthOfOne = (text: string): number => {
    const known = widths.get(text);
    if (known !== undefined) return known;
    const positions = metrics.layout(text, FEATURES).positions ?? [];
    const width = positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0) / metrics.unitsPerEm;
    widths.set(text, width);
    return width;
  };
  const widthPt = (text: string, sizePt: number): number => widthOfOne(text) * sizePt;
  return {
    font,
    widthPt,
    lines: (text, sizePt, columnPt) => brokenLines(text, (part) => widthPt(part, sizePt) <= columnPt),
    writable: (text) => writableText(text, (codePoint) => metrics.hasGlyphForCodePoint(codePoint)),
    encoded: (text) => {
      const { glyphs, positions } = metrics.layout(text, FEATURES);
      const codes = hexDigits(font.encodeText(text));
      const array = PDFArray.withContext(document.context);
      let run = '';
      for (const [index, glyph] of glyphs.entries()) {
        run += codes.slice(4 * index, 4 * index + 4);
        const kern = glyph.advanceWidth - (positions?.[index]?.xAdvance ?? glyph.advanceWidth);
        if (kern === 0 || index === glyphs.length - 1) continue;
        array.push(HexString.of(run));
        // TJ takes away thousandths of the size (ISO 32000-1, 9.4.3).
        array.push(PDFNumber.of(Math.round((1000 * kern) / metrics.unitsPerEm)));
        run = '';
      }
      array.push(HexString.of(run));
      return array;
    },
  };
}

function hexDigits(hex: PDFHexString): string {
  return hex.toString().slice(1, -1);
}

/** See `Typeface.lines`. */
function brokenLines(text: string, fits: (part: string) => boolean): readonly string[] {
  const lines: string[] = [];
  let line = '';
  const take = (word: string, space: string): void => {
    if (fits(line + space + word)) {
      line += space + word;
      return;
    }
    if (line !== '') lines.push(line);
    line = '';
    if (fits(word)) {
      line = word;
      return;
    }
    for (const letter of lettersOf(word)) {
      if (line !== '' && !fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  };
  for (const [, space = '', word = ''] of text.matchAll(/( *)([^ ]+)/g)) take(word, line === '' ? '' : space);
  lines.push(line);
  return lines;
}

/** See `Typeface.writable`. A letter of several code points is replaced as one. */
function writableText(text: string, has: (codePoint: number) => boolean): string {
  const letters = lettersOf(text.normalize('NFC').replaceAll(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' '));
  return letters
    .map((letter) => ([...letter].every((one) => has(one.codePointAt(0) ?? 0)) ? letter : MISSING_LETTER))
    .join('');
}

const LETTERS = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

function lettersOf(text: string): readonly string[] {
  return Array.from(LETTERS.segment(text), ({ segment }) => segment);
}
