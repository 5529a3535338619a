import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { measurementsWords } from './measurements-words.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

describe('the words of the measurements', () => {
  it('show every name once', () => {
    for (const shown of ['name', 'shortName', 'definition'] as const) {
      const texts = catalogue.map(({ id }) => measurementsWords[id][shown].toLowerCase());
      expect(new Set(texts).size).toBe(catalogue.length);
    }
  });

  it('warn wherever something is held near the eyes', () => {
    const unwarned = catalogue.filter(({ group, id }) => group !== 'frame' && measurementsWords[id].caution === null);
    expect(unwarned).toEqual([]);
    const near = catalogue.filter(({ group }) => group === 'eyes' || group === 'head' || group === 'nose');
    for (const { id } of near) expect(measurementsWords[id].caution).toMatch(/\b(eyes?|lashes)\b/);
    for (const id of ['fittingHeight', 'backVertexDistance', 'pantoscopicAngle'] as const)
      expect(measurementsWords[id].caution).toMatch(/^Only with the chosen frame fitted and adjusted/);
    expect(measurementsWords.pupilDiameter.caution).toMatch(/light/);
  });

  it.each(catalogue.map(({ id, isSigned, changesWithSquint }) => [id, isSigned, changesWithSquint] as const))(
    'are sound for %s',
    (id, isSigned, changesWithSquint) => {
      const { name, shortName, definition, howTaken, caution, withSquint } = measurementsWords[id];
      // one sentence each
      expect(definition).toMatch(/^[A-Z][^.]*\.$/);
      expect(name).toMatch(/^[A-Z].*[a-z]$/);
      // a narrow column
      expect(shortName.length).toBeLessThanOrEqual(20);
      for (const sentences of [howTaken, caution, withSquint]) {
        if (sentences !== null) expect(sentences).toMatch(/^[A-Z][^.]*\.( [A-Z][^.]*\.)*$/);
      }
      if (isSigned) expect(`${definition} ${caution}`).toMatch(/negative|positive/);
      expect(withSquint !== null).toBe(changesWithSquint);
    },
  );
});
