import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { Estimate, FaceEstimates } from '../core/estimate/estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { sheetRows } from '../session/rows.js';
import { openSheet } from '../session/sheet.js';
import { DEFAULT_SHEET_SETTINGS, EMPTY_TYPED_SHEET } from '../core/record/typed-sheet.js';
import { words } from './language.js';
import { RowDetails } from './row-details.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

// 0.8 and 0.6 make 1: 64 and 36 % of the variance
const PD: Estimate = {
  value: 63.2,
  standardUncertainty: 1,
  low: 61.24,
  high: 65.16,
  unit: 'mm',
  budget: [
    { source: 'contact-depth', standardUncertainty: 0.8 },
    { source: 'iris-size', standardUncertainty: 0.6 },
  ],
};

function detailsOfPd(covered: boolean): string {
  const estimates = { pdFar: PD } as unknown as FaceEstimates;
  const state = openSheet({ ...EMPTY_TYPED_SHEET, settings: { ...DEFAULT_SHEET_SETTINGS, covered } });
  const row = sheetRows(state, estimates, catalogue).find(({ fields }) => fields[0]?.field === 'pdFar')!;
  const basis = {
    features: exampleFeatures(),
    settings: DEFAULT_MEASURING_SETTINGS,
    isSweep: false,
    pixelsPerMm: 2,
    distanceMm: 500,
  };
  return renderToStaticMarkup(<RowDetails row={row} basis={basis} />).replaceAll(/[\u00a0\u202f]/g, ' ');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll("'", '&#x27;').replaceAll('"', '&quot;');
}

describe('the details of a row', () => {
  it('say in a table what the doubt is made of, largest first, and draw it for the eye alone', () => {
    const markup = detailsOfPd(false);
    const cells = [...markup.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map(([, cell]) =>
      cell!.replaceAll(/<[^>]*>/g, ''),
    );
    expect(cells).toEqual([
      ...['source', 'share', 'mm'],
      ...['how far the touched skin lies before the eyes', '64 %', '0.80'],
      ...['how wide this wearer’s irises are', '36 %', '0.60'],
      ...['Together, one standard deviation', '', '1.00'],
    ]);
    const drawings = [...markup.matchAll(/<svg[^>]*>/g)].map(([tag]) => tag);
    expect(drawings).toHaveLength(3);
    expect(drawings.every((tag) => tag.includes('aria-hidden="true"'))).toBe(true);
  });

  it('say what would help most', () => {
    // A sweep leaves 0.13 mm, the root of the squares of the table in most-helpful.ts; 1.96 of it.
    expect(detailsOfPd(false)).toContain('A sweep would bring this from ± 2.0 to about ± 0.2 mm.');
  });

  it('name the source of each number from outside, and how a squint changes the way it is taken', () => {
    const markup = detailsOfPd(true).replaceAll(/<[^>]*>/g, '');
    const { population, repeatability, tolerance } = catalogue[0]!;
    const { withSquint } = words.measurements.binocularPd;
    for (const { source } of [population, repeatability, tolerance]) expect(markup).toContain(escaped(source));
    expect(markup).toContain(`With a squint: ${escaped(withSquint!).charAt(0).toLowerCase()}`);
  });

  it('give nothing away of what is covered', () => {
    const markup = detailsOfPd(true);
    expect(markup).not.toContain('63.2');
    expect(markup).not.toContain('<svg');
    expect(markup).not.toContain('would bring');
  });
});
