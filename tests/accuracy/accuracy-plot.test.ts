import { describe, expect, it } from 'vitest';
import { plotAccuracy } from './accuracy-plot.js';
import { comparedPicture, comparedSweep, estimateOf, truthEntry } from './compared-examples.js';
import type { ComparedRun } from './compared.js';

const frame = truthEntry('s0.jpg', { sweep: 's', frame: 0, eyePlaneDistance: 500 });
const RUN: ComparedRun = {
  title: 'A run of <heads> & "cards"',
  pictures: [
    comparedPicture(truthEntry('near.jpg', { eyePlaneDistance: 400 }), {
      estimates: { pdFar: estimateOf(65, 0.5), headWidth: estimateOf(150, 1) },
    }),
    comparedPicture(truthEntry('far.jpg', { eyePlaneDistance: 600 }), { estimates: { pdFar: estimateOf(62, 0.5) } }),
    comparedPicture(truthEntry('none.jpg'), { ok: false, reason: 'no-face' }),
    comparedPicture(frame, { estimates: { pdFar: estimateOf(64, 0.25) } }),
  ],
  sweeps: [comparedSweep([frame], { estimates: { pdFar: estimateOf(64.2, 0.1) } })],
};

interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Tag[];
  text: string;
}

/** Reads strict XML without comments and sections; throws where a tag is not closed or a character not escaped. */
function parseXml(source: string): Tag {
  const root: Tag = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  const body = source.replace(/^<\?xml [^?]*\?>\n/, '');
  const token = /<\/([\w-]+)>|<([\w-]+)((?: [\w:-]+="[^"<>]*")*)(\/?)>|([^<>]+)/gy;
  while (token.lastIndex < body.length) {
    const from = token.lastIndex;
    const match = token.exec(body);
    if (match === null) throw new Error(`No XML: ${body.slice(from, from + 60)}`);
    const [, closed, opened, attributes, single, text] = match;
    const current = open.at(-1) ?? root;
    for (const part of [attributes, text])
      if (/&(?!(amp|lt|gt|quot);)/.test(part ?? '')) throw new Error(`Not escaped: ${part ?? ''}`);
    if (closed !== undefined) {
      if (current.name !== closed) throw new Error(`${closed} closes ${current.name}.`);
      open.pop();
    } else if (opened !== undefined) {
      const pairs = [...(attributes ?? '').matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, key, value]) => [key, value]);
      if (new Set(pairs.map(([key]) => key)).size < pairs.length) throw new Error(`${opened} says a thing twice.`);
      const tag: Tag = {
        name: opened,
        attributes: Object.fromEntries(pairs) as Record<string, string>,
        children: [],
        text: '',
      };
      current.children.push(tag);
      if (single === '') open.push(tag);
    } else current.text += text ?? '';
  }
  if (open.length > 1) throw new Error(`${open.at(-1)?.name ?? ''} is not closed.`);
  const [top] = root.children;
  if (top === undefined || root.children.length > 1) throw new Error('One element holds all.');
  return top;
}

function all(tag: Tag): readonly Tag[] {
  return [tag, ...tag.children.flatMap(all)];
}

function childOf(tag: Tag | undefined, name: string): Readonly<Record<string, number>> {
  const child = tag?.children.find((one) => one.name === name);
  if (child === undefined) throw new Error(`No ${name}.`);
  return Object.fromEntries(Object.entries(child.attributes).map(([key, value]) => [key, Number(value)]));
}

describe('plotAccuracy', () => {
  const drawing = parseXml(plotAccuracy(RUN));
  const tags = all(drawing);
  const group = (name: string) => tags.filter(({ attributes }) => attributes['class'] === name);
  const texts = tags.filter(({ name }) => name === 'text').map(({ text }) => text);
  const titled = (start: string) =>
    tags.find(({ children }) => children.some(({ name, text }) => name === 'title' && text.startsWith(start)));

  it('is well-formed, with a name and a size to print', () => {
    expect(drawing.attributes).toMatchObject({ xmlns: 'http://www.w3.org/2000/svg', width: '180mm', role: 'img' });
    expect(drawing.attributes['aria-label']).toContain('A run of &lt;heads&gt; &amp; &quot;cards&quot;');
  });

  it('marks everything that was measured, each kind by its own shape', () => {
    expect(group('still')).toHaveLength(2);
    expect(group('frame')).toHaveLength(1);
    expect(group('sweep')).toHaveLength(1);
    expect(group('sweep')[0]?.children.map(({ name }) => name)).toEqual(['title', 'line', 'path']);
    expect(childOf(group('still')[0], 'circle')['r']).toBeGreaterThan(childOf(group('frame')[0], 'circle')['r'] ?? NaN);
    expect(texts).toEqual(expect.arrayContaining(['still (2)', 'frame of a sweep, alone (1)']));
  });

  it('puts points where they belong', () => {
    const places = ['near.jpg', 's0.jpg', 'far.jpg'].map((name) => childOf(titled(name), 'circle'));
    const [near, middle, far] = places.map((place) => ({ x: place['cx'] ?? NaN, y: place['cy'] ?? NaN }));
    if (near === undefined || middle === undefined || far === undefined) throw new Error('Three points.');
    // 400, 500 and 600 mm are evenly spaced; errors of +1, 0 and -2 mm
    expect(middle.x - near.x).toBeGreaterThan(0);
    expect(far.x - middle.x).toBeCloseTo(middle.x - near.x, 1);
    expect(middle.y - near.y).toBeGreaterThan(0);
    expect(far.y - middle.y).toBeCloseTo(2 * (middle.y - near.y), 1);
  });

  it('draws bars of 1.96 standard uncertainties', () => {
    const perMm =
      (childOf(titled('s0.jpg'), 'circle')['cy'] ?? NaN) - (childOf(titled('near.jpg'), 'circle')['cy'] ?? NaN);
    const bar = childOf(titled('near.jpg'), 'line');
    const circle = childOf(titled('near.jpg'), 'circle');
    // 0.5 mm of uncertainty; coordinates are rounded to 0.01
    expect((bar['y2'] ?? NaN) - (bar['y1'] ?? NaN)).toBeCloseTo(2 * 1.96 * 0.5 * perMm, 1);
    expect(((bar['y2'] ?? NaN) + (bar['y1'] ?? NaN)) / 2).toBeCloseTo(circle['cy'] ?? NaN, 1);
  });

  it('draws the coverage from none to all', () => {
    const [singles] = group('coverage-pd');
    const heights = (singles?.children ?? [])
      .filter(({ name }) => name === 'circle')
      .map(({ attributes }) => Number(attributes['cy']));
    // errors over uncertainties are 2, -4 and 0: a third up to k = 1.75, two thirds from 2 on. The panel is 270 high below 535
    const third = (share: number) => 805 - 270 * share;
    expect(heights).toHaveLength(11);
    for (const height of heights.slice(0, 6)) expect(height).toBeCloseTo(third(1 / 3), 1);
    for (const height of heights.slice(6)) expect(height).toBeCloseTo(third(2 / 3), 1);
    expect(group('band')).toHaveLength(2);
  });

  it('keeps every mark, bar and band inside the drawing', () => {
    const numbers = (tag: Tag, keys: readonly string[]) =>
      keys.flatMap((key) => (tag.attributes[key] === undefined ? [] : [Number(tag.attributes[key])]));
    for (const tag of tags) {
      for (const x of numbers(tag, ['x', 'x1', 'x2', 'cx'])) expect(x).toSatisfy((at: number) => at >= 0 && at <= 900);
      for (const y of numbers(tag, ['y', 'y1', 'y2', 'cy'])) expect(y).toSatisfy((at: number) => at >= 0 && at <= 900);
    }
  });

  it('is drawn without sweeps, and without anything', () => {
    const none = all(parseXml(plotAccuracy({ title: 'Nothing', pictures: [], sweeps: [] })));
    expect(none.filter(({ text }) => text === 'none measured')).toHaveLength(2);
    const stills = all(parseXml(plotAccuracy({ ...RUN, sweeps: [] })));
    expect(stills.filter(({ text }) => text === 'none measured')).toHaveLength(1);
  });
});
