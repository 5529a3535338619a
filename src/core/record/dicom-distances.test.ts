import { describe, expect, it } from 'vitest';
import published from '../../../tests/fixtures/dicom/pupillary-distances.json' with { type: 'json' };
import { DICOM_DISTANCES, dicomDistances } from './dicom-distances.js';

describe('pupil distances for DICOM', () => {
  it.each(Object.entries(DICOM_DISTANCES))('name the attribute of the dictionary: %s', (_which, attribute) => {
    const inDictionary = new Map(Object.entries(published.attributes)).get(attribute.tag);
    expect(inDictionary).toMatchObject({ keyword: attribute.keyword, vr: attribute.vr });
    // one value, as is written below
    expect(inDictionary?.vm).toBe('1');
  });

  it('are values of the JSON model', () => {
    expect(dicomDistances({ distanceMm: 63.5, nearMm: 60 })).toEqual({
      '00460060': { vr: 'FD', Value: [63.5] },
      '00460062': { vr: 'FD', Value: [60] },
    });
  });

  it('leave out what is not known', () => {
    expect(dicomDistances({ distanceMm: null, nearMm: 60 })).toEqual({ '00460062': { vr: 'FD', Value: [60] } });
    expect(dicomDistances({ distanceMm: null, nearMm: null })).toEqual({});
  });
});
