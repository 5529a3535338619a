import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { PDFDict, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { EXAMPLE_ORDER } from '../../tests/support/example-order-document.js';
import type { Paper } from './layout.js';
import type { OrderDocument } from './order-document.js';
import type { OrderFonts } from './order-pdf.js';
import { orderPdf } from './order-pdf.js';

// What is checked here is read back by pdfjs, which shares nothing with the library that wrote it.

/** One point of PDF in mm: an inch over 72 (ISO 32000-1, 8.3.2.3). */
const MM_PER_POINT = 25.4 / 72;

/** What printers leave blank at the edge of the paper: 6 mm, common practice. */
const BLANK_EDGE_MM = 6;

let fonts: OrderFonts;

beforeAll(async () => {
  const font = (name: string): Promise<Uint8Array> =>
    readFile(new URL(`../../node_modules/@expo-google-fonts/source-sans-3/${name}.ttf`, import.meta.url));
  fonts = {
    regular: await font('400Regular/SourceSans3_400Regular'),
    semiBold: await font('600SemiBold/SourceSans3_600SemiBold'),
  };
});

interface ReadText {
  readonly text: string;
  readonly leftPt: number;
  readonly rightPt: number;
  readonly baselinePt: number;
  readonly sizePt: number;
}

interface ReadPage {
  /** what is neither tagged nor marked as decoration */
  readonly unmarked: readonly string[];
  /** all that is read aloud, in the order of the page */
  readonly heard: readonly string[];
  readonly widthPt: number;
  readonly heightPt: number;
  readonly texts: readonly ReadText[];
  readonly structure: unknown;
}

interface ReadPdf {
  readonly pages: readonly ReadPage[];
  /** all that is written, with single spaces */
  readonly text: string;
  readonly info: Readonly<Record<string, unknown>>;
  readonly language: unknown;
  readonly isMarked: boolean;
}

async function read(bytes: Uint8Array): Promise<ReadPdf> {
  const { getDocument, VerbosityLevel } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  // pdfjs keeps the bytes for itself.
  const task = getDocument({ data: bytes.slice(), verbosity: VerbosityLevel.ERRORS, useSystemFonts: false });
  const file = await task.promise;
  const { info } = await file.getMetadata();
  const pages: ReadPage[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const { items } = await page.getTextContent({ disableNormalization: true, includeMarkedContent: true });
    const unmarked: string[] = [];
    const heard: string[] = [];
    let mark: string | null = null;
    for (const item of items) {
      if (!('str' in item)) mark = item.type === 'endMarkedContent' ? null : markOf(item);
      else if (item.str.trim() === '') continue;
      else if (mark === null) unmarked.push(item.str);
      else if (mark !== 'Artifact') heard.push(item.str);
    }
    const [left = NaN, bottom = NaN, right = NaN, top = NaN] = page.view;
    pages.push({
      widthPt: right - left,
      heightPt: top - bottom,
      unmarked,
      heard,
      texts: items
        .flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []))
        .map(({ str, transform, width }) => {
          const [sizePt, , , , leftPt, baselinePt] = transform as [number, number, number, number, number, number];
          return { text: str, leftPt, rightPt: leftPt + width, baselinePt, sizePt };
        }),
      structure: await page.getStructTree(),
    });
  }
  const marked = (await file.getMarkInfo()) as { readonly Marked?: boolean } | null;
  const text = pages.flatMap(({ texts }) => texts.map((one) => one.text)).join(' ');
  await task.destroy();
  return {
    pages,
    text: plain(text),
    info: info as Readonly<Record<string, unknown>>,
    language: (info as Readonly<Record<string, unknown>>)['Language'],
    isMarked: marked?.Marked === true,
  };
}

/** Of what the text is a part; the types of pdfjs leave it out. */
function markOf(item: object): string {
  return 'tag' in item && typeof item.tag === 'string' ? item.tag : '';
}

const known = new Map<OrderDocument, Map<Paper, Promise<ReadPdf>>>();

/** Each order is written and read once. */
function pdfOf(order: OrderDocument, paper: Paper): Promise<ReadPdf> {
  const ofOrder = known.get(order) ?? new Map<Paper, Promise<ReadPdf>>();
  known.set(order, ofOrder);
  const pdf = ofOrder.get(paper) ?? orderPdf(order, paper, fonts).then(read);
  ofOrder.set(paper, pdf);
  return pdf;
}

function plain(text: string): string {
  return text.replaceAll(/[\s\u00a0]+/g, ' ').trim();
}

/** Every text of an order that must be on paper. */
function textsOf(order: OrderDocument): readonly string[] {
  const all: string[] = [];
  const take = (one: unknown, name: string): void => {
    // Heard, not seen, or the name of a column that the caption stands over.
    if (['language', 'sideName', 'measurement', 'side'].includes(name) && typeof one === 'string') return;
    if (typeof one === 'string') all.push(one);
    else if (typeof one === 'object' && one !== null) Object.entries(one).forEach(([key, part]) => take(part, key));
  };
  take(order, '');
  return all;
}

function withTables(order: OrderDocument, times: number): OrderDocument {
  return { ...order, tables: Array.from({ length: times }, () => order.tables).flat() };
}

describe.each([
  // 210 x 297 mm and 8.5 x 11 in, each by hand in points to a thousandth
  ['a4', 595.276, 841.89],
  ['letter', 612, 792],
] as const)('an order on %s', (paper, widthPt, heightPt) => {
  it('has one page of exactly that size', async () => {
    const pdf = await pdfOf(EXAMPLE_ORDER, paper);
    expect(pdf.pages).toHaveLength(1);
    const [page] = pdf.pages;
    expect(page?.widthPt).toBe(widthPt);
    expect(page?.heightPt).toBe(heightPt);
  });

  it('says all that the order says, and its page', async () => {
    const pdf = await pdfOf(EXAMPLE_ORDER, paper);
    // The rows of a table are long apart in the file when a head is wrapped: each text is looked for by itself.
    for (const text of textsOf(EXAMPLE_ORDER)) expect(pdf.text).toContain(plain(text));
    expect(pdf.text).toContain('page 1 of 1');
    expect(pdf.text).not.toContain('\u25a1');
  });

  it('has what belongs to a row on one line: side, value and doubt, R above L', async () => {
    const [page] = (await pdfOf(EXAMPLE_ORDER, paper)).pages;
    const lines = new Map<number, string[]>();
    for (const { text, baselinePt } of page?.texts ?? []) {
      const key = Math.round(10 * baselinePt);
      lines.set(key, [...(lines.get(key) ?? []), plain(text)]);
    }
    const line = (...texts: readonly string[]): number => {
      const found = [...lines].find(([, those]) => texts.every((text) => those.includes(text)));
      if (found === undefined) throw new Error(`No line has ${texts.join(' and ')}.`);
      return found[0];
    };
    const right = line('PD of each eye', 'R', '31.5 mm', '± 0.5 mm');
    const left = line('L', '32.1 mm', '± 0.6 mm');
    expect(right).toBeGreaterThan(left);
    expect(line('Projection', '−1.5 mm', '± 1.2 mm')).toBeGreaterThan(0);
  });
});

describe('the file', () => {
  it('embeds its fonts, only the letters that are used, and no font that a viewer has to have', async () => {
    const bytes = await orderPdf(EXAMPLE_ORDER, 'a4', fonts);
    const document = await PDFDocument.load(bytes, { updateMetadata: false });
    const dictionaries = document.context
      .enumerateIndirectObjects()
      .flatMap(([, one]) => (one instanceof PDFDict ? [one] : []));
    const ofType = (type: string): readonly PDFDict[] =>
      dictionaries.filter((one) => one.get(PDFName.of('Type')) === PDFName.of(type));
    const subtypes = ofType('Font').map((font) => font.get(PDFName.of('Subtype'))?.toString());
    expect(subtypes.sort()).toEqual(['/CIDFontType2', '/CIDFontType2', '/Type0', '/Type0']);
    const descriptors = ofType('FontDescriptor');
    expect(descriptors).toHaveLength(2);
    for (const descriptor of descriptors) {
      expect(descriptor.lookup(PDFName.of('FontFile2'))).toBeInstanceOf(PDFRawStream);
    }
    // the two font files have 380 kB each
    expect(bytes.length).toBeLessThan(80_000);
  });

  it('has title, language and tags, but neither author nor time, and is the same each time', async () => {
    const bytes = await orderPdf(EXAMPLE_ORDER, 'a4', fonts);
    const { info, language, isMarked, pages } = await read(bytes);
    expect(info['Title']).toBe('Order sheet');
    expect(language).toBe('en');
    expect(isMarked).toBe(true);
    expect(Object.keys(info)).not.toEqual(expect.arrayContaining(['Author']));
    for (const unwanted of ['Author', 'Creator', 'Producer', 'CreationDate', 'ModDate']) {
      expect(info[unwanted] ?? null, unwanted).toBeNull();
    }
    expect(Buffer.from(await orderPdf(EXAMPLE_ORDER, 'a4', fonts)).equals(Buffer.from(bytes))).toBe(true);

    const roles = JSON.stringify(pages[0]?.structure);
    for (const role of ['H1', 'H2', 'P', 'Table', 'TR', 'TH', 'TD', 'L', 'LI', 'LBody']) {
      expect(roles).toContain(`"role":"${role}"`);
    }
  });

  it('tags every piece of text: what is no decoration is read aloud, in the order of the page', async () => {
    const [page] = (await pdfOf(EXAMPLE_ORDER, 'a4')).pages;
    expect(page?.unmarked).toEqual([]);
    const heard = plain(page?.heard.join(' ') ?? '');
    expect(heard).not.toMatch(/\u2022|page 1/);
    expect(heard).toMatch(/PD of each eye R 31\.5 mm ± 0\.5 mm L 32\.1 mm ± 0\.6 mm Fitting height/);
  });
});

describe('a long order', () => {
  const open = Array.from(
    { length: 40 },
    (_, index) => `Open point number ${index + 1}: look at it before it is made.`,
  );
  const long: OrderDocument = {
    ...withTables(EXAMPLE_ORDER, 9),
    sections: [{ heading: 'Open', sentences: [...open, 'word '.repeat(1500).trim()], isList: true }],
  };

  it('goes on over pages at the same places on either paper, and nothing is lost or beyond the edge', async () => {
    const [onA4, onLetter] = await Promise.all((['a4', 'letter'] as const).map((paper) => pdfOf(long, paper)));
    const pages = onA4?.pages ?? [];
    expect(pages.length).toBeGreaterThan(3);
    expect(onLetter?.pages.map(({ texts }) => texts.map(({ text }) => text))).toEqual(
      pages.map(({ texts }) => texts.map(({ text }) => text)),
    );
    for (const text of textsOf(long)) expect(onA4?.text).toContain(plain(text).slice(0, 40));
    expect(onA4?.text.match(/\bword\b/g)).toHaveLength(1500);
    expect(onA4?.text.match(/63\.5 mm/g)).toHaveLength(9);
    for (const [index] of pages.entries()) expect(onA4?.text).toContain(`page ${index + 1} of ${pages.length}`);
  });

  it('stays within what a printer reaches on either paper, whichever of the two it was made for', async () => {
    for (const paper of ['a4', 'letter'] as const) {
      const { pages } = await pdfOf(long, paper);
      for (const { texts, heightPt, widthPt } of pages) {
        const leftMm = Math.min(...texts.map(({ leftPt }) => leftPt)) * MM_PER_POINT;
        const rightMm = (widthPt - Math.max(...texts.map(({ rightPt }) => rightPt))) * MM_PER_POINT;
        const topMm =
          (heightPt - Math.max(...texts.map(({ baselinePt, sizePt }) => baselinePt + sizePt))) * MM_PER_POINT;
        const lowestMm = (heightPt - Math.min(...texts.map(({ baselinePt }) => baselinePt))) * MM_PER_POINT;
        expect(leftMm).toBeGreaterThan(BLANK_EDGE_MM + 2.95); // half of what A4 is narrower than Letter
        expect(rightMm).toBeGreaterThan(BLANK_EDGE_MM + 2.95);
        expect(topMm).toBeGreaterThan(BLANK_EDGE_MM);
        // from the top of the shorter paper
        expect(lowestMm).toBeLessThan(279.4 - BLANK_EDGE_MM);
      }
    }
  });

  it('lays no text upon another', async () => {
    const { pages } = await pdfOf(long, 'a4');
    for (const { texts } of pages) {
      for (const [index, one] of texts.entries()) {
        const under = texts
          .slice(index + 1)
          .find(
            (other) =>
              Math.abs(other.baselinePt - one.baselinePt) < 0.6 * Math.min(one.sizePt, other.sizePt) &&
              other.leftPt < one.rightPt - 0.01 &&
              one.leftPt < other.rightPt - 0.01,
          );
        expect(under, `“${one.text}” and “${under?.text ?? ''}”`).toBeUndefined();
      }
    }
  });

  it('says again what a table is where it goes on', async () => {
    const [table] = EXAMPLE_ORDER.tables;
    if (table === undefined) throw new Error('the example has no table');
    const groups = Array.from({ length: 130 }, (_, index) => ({
      heading: `Measurement ${index + 1}${index === 3 ? '. Taken at a distance, without supervision.' : ''}`,
      rows: [{ side: null, sideName: null, value: `${index + 100} mm`, doubt: '± 0.5 mm', confirmed: 'a' }],
    }));
    const head = { ...table.head, confirmed: 'by' };
    const { text, pages } = await pdfOf({ ...EXAMPLE_ORDER, tables: [{ ...table, head, groups }] }, 'letter');
    expect(text).toContain('Centration, continued');
    expect(text).toContain('Taken at a distance');
    for (const { rows } of groups) expect(text).toContain(rows[0]?.value);
    expect(pages.length).toBeGreaterThan(1);
  });
});

it('an order that would only just need another page is set closer, on one', async () => {
  const onePage = { ...withTables(EXAMPLE_ORDER, 4), sections: EXAMPLE_ORDER.sections.slice(1) };
  const { pages } = await pdfOf(onePage, 'a4');
  const sizes = (texts: readonly ReadText[]): readonly number[] => texts.map(({ sizePt }) => sizePt);
  expect(pages).toHaveLength(1);
  const loose = (await pdfOf(EXAMPLE_ORDER, 'a4')).pages[0]?.texts ?? [];
  expect(Math.max(...sizes(pages[0]?.texts ?? []))).toBeLessThan(Math.max(...sizes(loose)));
  // What is to be read in a workshop is no smaller than 7 pt.
  expect(Math.min(...sizes(pages[0]?.texts ?? []))).toBeGreaterThan(7);
});

describe('letters', () => {
  it('has those of German and French, of Greek and Cyrillic, and the decimal comma', async () => {
    const order: OrderDocument = {
      ...EXAMPLE_ORDER,
      language: 'de',
      title: 'Auftragsblatt',
      facts: [{ label: 'Träger', values: ['Jörg Weißgerber-Œuvray', 'Éloïse Noël-Çelik', 'Ρόδο Щукин'] }],
      sections: [
        {
          heading: 'Bemerkungen',
          sentences: ['„Größe“ – « déjà\u202f» 31,5\u00a0mm ± 0,5\u00a0mm ≤ 1,2°'],
          isList: false,
        },
      ],
    };
    const { text, info } = await pdfOf(order, 'a4');
    expect(info['Title']).toBe('Auftragsblatt');
    for (const part of textsOf({ ...order, tables: [] })) expect(text).toContain(plain(part));
    expect(text).not.toContain('\u25a1');
  });

  it('shows a box for each letter that the fonts lack, and says so', async () => {
    const order = { ...EXAMPLE_ORDER, facts: [{ label: 'Wearer', values: ['山田 Hanako \u{1f469}\u200d\u{1f680}'] }] };
    const { text } = await pdfOf(order, 'a4');
    expect(text).toContain('\u25a1\u25a1 Hanako \u25a1');
    expect(text).toContain('\u25a1 stands for a letter that this file cannot show');
  });

  it('makes a space of what is no letter, and one letter of a base and its accent', async () => {
    const order = { ...EXAMPLE_ORDER, facts: [{ label: 'Wearer', values: ['A\tB\nC\u0000D e\u0301'] }] };
    const { text } = await pdfOf(order, 'a4');
    expect(text).toContain('A B C D é');
  });

  it('breaks a word only where it alone is too wide', async () => {
    const name = 'Donaudampfschifffahrtsgesellschaftskapitänswitwenrentenauszahlungsstellenleiterin'.repeat(2);
    const order = { ...EXAMPLE_ORDER, facts: [{ label: 'Wearer', values: [name] }] };
    const { text } = await pdfOf(order, 'a4');
    expect(text.replaceAll(' ', '')).toContain(name);
  });
});
