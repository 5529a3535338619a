import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { sheetRows } from '../session/rows.js';
import { openSheet } from '../session/sheet.js';
import { matchingPlaces, namedPlaces } from './hand-matches.js';

const places = namedPlaces(sheetRows(openSheet(null), null, assembleCatalogue(OUTSIDE_TABLES)));

function found(typed: string): readonly string[] {
  return matchingPlaces(typed, places).map(({ name }) => name);
}

describe('the search for a measurement', () => {
  it('knows every place of the sheet, and shows all before anything is typed', () => {
    expect(places.map(({ name }) => name).toSorted()).toEqual([...READING_NAMES].toSorted());
    expect(found(' ')).toHaveLength(READING_NAMES.length);
  });

  it('finds a place by the beginnings of its words, in any order and case', () => {
    // the rims are measured below the crest, as their full names say
    expect(found('crest')).toEqual(['crestHeightR', 'crestHeightL', 'distanceBetweenRims10', 'distanceBetweenRims15']);
    expect(found('crest h')).toEqual(['crestHeightR', 'crestHeightL']);
    expect(found('L Cr')).toEqual(['crestHeightL']);
    expect(found('crest left')).toEqual(['crestHeightL']);
    expect(found('rest')).toEqual([]);
  });

  it('puts names that begin with what was typed before others that only have it in them', () => {
    // “Head width” begins with it; “Box width” belongs to the block “With the frame on”, whose first word is another one
    expect(found('head')[0]).toBe('headWidth');
    expect(found('width').length).toBeGreaterThan(2);
    expect(found('box').slice(0, 2)).toEqual(['boxLensWidth', 'boxLensHeight']);
  });

  it('finds places by their block', () => {
    expect(found('nose')).toContain('apicalRadius');
  });

  it('knows the other names that the trade has', () => {
    const fittingHeights = ['fittingHeightR', 'fittingHeightL'];
    const first: readonly (readonly [string, readonly string[]])[] = [
      ['mono', ['monoPdR', 'monoPdL', 'monoNearR', 'monoNearL']],
      ['IPD', ['pdFar', 'pdNear']],
      ['seg', fittingHeights],
      ['segment height', fittingHeights],
      ['pupil height', fittingHeights],
      ['OC', fittingHeights],
      ['wrap', ['faceFormAngle']],
      ['panto', ['pantoscopicAngle']],
      ['BVD', ['backVertexDistanceR', 'backVertexDistanceL']],
      ['lens size', ['boxLensWidth', 'boxLensHeight']],
      ['A', ['boxLensWidth']],
      ['b', ['boxLensHeight']],
      ['temple length', ['overallSideLength']],
      ['side length', ['overallSideLength']],
    ];
    for (const [typed, names] of first) expect([typed, found(typed).slice(0, names.length)]).toEqual([typed, names]);
    expect(found('PD').slice(0, 3)).toEqual(['pdFar', 'monoPdR', 'monoPdL']);
    const bridge = found('bridge');
    expect(bridge[0]).toBe('distanceBetweenLenses');
    expect(bridge).toEqual(
      expect.arrayContaining(['bridgeProjection', 'crestHeightR', 'distanceBetweenRims10', 'distanceBetweenRims15']),
    );
    expect(bridge).not.toContain('boxLensWidth');
  });
});
