import { readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import { cameraSayOf, MEASURED_ERRORS } from './help-camera.js';
import { Page } from './help-pages.js';
import { GENERAL_TOPICS, matchingMeasurements } from './help-topics.js';
import { words } from './language.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

function textOf(markup: string): string {
  return markup
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ');
}

function pageOf(topic: Parameters<typeof Page>[0]['topic']): string {
  return renderToStaticMarkup(<Page topic={topic} catalogue={catalogue} heading={null} />);
}

describe('the page of a measurement', () => {
  it.each(catalogue)('says of $id what it is, how it is taken, what is allowed, and the caution', (measurement) => {
    const { id, tolerance } = measurement;
    const { caution, definition, howTaken, name, withSquint } = words.measurements[id];
    const text = textOf(pageOf(id));
    for (const said of [name, definition, howTaken, tolerance.source, caution ?? '', withSquint ?? ''])
      expect(text).toContain(said);
    expect(text.includes(words.help.caution)).toBe(caution !== null);
    expect(text.includes(words.help.sides.each)).toBe(measurement.fields.length > 1);
    expect(text.includes(words.help.signed)).toBe(measurement.isSigned);
  });

  it.each(catalogue)('draws $id under its name, with nothing that a strict security policy refuses', ({ id }) => {
    const markup = pageOf(id);
    const [, title] = /<svg[^>]*aria-labelledby="([^"]+)"/.exec(markup) ?? [];
    expect(markup).toContain(`<title id="${title}">`);
    expect(markup).toMatch(/<svg[^>]*role="img"/);
    expect(markup).not.toMatch(/ style=|<style|href=/);
    // A number that went astray would be written into a path.
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map(([, one]) => one);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('says of what the camera measures that it does, and of all else that it does not', () => {
    const seen = catalogue.filter((measurement) => cameraSayOf(measurement) !== 'nothing').map(({ id }) => id);
    expect(seen).toEqual([
      ...['binocularPd', 'monocularPd', 'nearPd', 'monocularNearPd', 'lidAperture', 'pupilDiameter', 'irisDiameter'],
      ...['headWidth', 'templeWidth', 'distanceBetweenRims10', 'distanceBetweenRims15'],
    ]);
    expect(textOf(pageOf('crestHeight'))).toContain(words.help.noCamera);
    expect(textOf(pageOf('headWidth'))).toContain('within 2.7 mm of the truth, 95 of 100 within 8.8 mm');
  });

  it('repeats the errors that the README states', () => {
    const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
    const rows: Readonly<Partial<Record<MeasurementId, string>>> = {
      binocularPd: 'binocular PD, distance',
      monocularPd: 'PD of each eye',
      lidAperture: 'lid aperture',
      headWidth: 'head width',
      templeWidth: 'temple width',
    };
    const stated = Object.entries(rows).map(([id, row]) => {
      const cells = readme.match(new RegExp(`\\| ${row} +\\|(.*)`))?.[1]?.split('|') ?? [];
      const [picture, , sweep] = cells.map((cell) => cell.split('/').map(Number));
      return [
        id,
        {
          picture: { half: picture?.[0], most: picture?.[1] },
          sweep: { half: sweep?.[0], most: sweep?.[1] },
        },
      ] as const;
    });
    expect(MEASURED_ERRORS).toEqual(Object.fromEntries(stated));
  });
});

describe('the general pages', () => {
  it.each(GENERAL_TOPICS)('%s: has text and a caution', (topic) => {
    const text = textOf(pageOf(topic));
    const { heading, cautions, text: paragraphs } = words.help.general[topic];
    expect(cautions.length).toBeGreaterThan(0);
    for (const said of [heading, ...paragraphs, ...cautions]) expect(text).toContain(said);
  });
});

describe('the search', () => {
  const found = (typed: string): readonly MeasurementId[] => matchingMeasurements(typed, catalogue).map(({ id }) => id);

  it('knows the names of the trade, and puts what is called just that first', () => {
    expect(found('BVD')).toEqual(['backVertexDistance']);
    expect(found('a')[0]).toBe('boxLensWidth');
    expect(found('bridge height')).toEqual(['crestHeight']);
    expect(found('pd near')).toEqual(['nearPd', 'monocularNearPd']);
  });

  it('shows all where nothing is sought, and none where nothing is called that', () => {
    expect(found('  ')).toHaveLength(catalogue.length);
    expect(found('zebra')).toEqual([]);
  });
});
