import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { TypedSheet } from '../core/record/typed-sheet.js';
import { binocularDistances } from './binocular-distances.js';
import { NEW_DESK, newSession } from './new-session.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

const distancesOf = (sheet: TypedSheet) =>
  binocularDistances({ ...newSession('a', '2026-11-25T10:00:00.000Z', NEW_DESK), sheet }, catalogue);

describe('binocular distances of a session', () => {
  it('are the mean of repeats, and nothing where nothing can be read', () => {
    expect(distancesOf(filledSheet({ pdFar: '63 63,5 64', pdNear: 'about 60' }))).toEqual({
      distanceMm: 63.5,
      nearMm: null,
    });
    expect(distancesOf(filledSheet({}, { second: { pdNear: '60' } }))).toEqual({ distanceMm: null, nearMm: 60 });
  });

  it('are both readers’ mean where they agree, and nobody’s where they differ', () => {
    expect(distancesOf(filledSheet({ pdFar: '63', pdNear: '60' }, { second: { pdFar: '64', pdNear: '70' } }))).toEqual({
      distanceMm: 63.5,
      nearMm: null,
    });
  });

  it('have what the gauge needs added', () => {
    const gauge = {
      id: 'g',
      name: 'G',
      serves: ['binocularPd'],
      resolution: 1,
      zeroOffset: 2,
      bias: 0,
      checkedOn: null,
    } as const;
    const practice = { gauges: [gauge], gaugeInUse: { binocularPd: 'g' } };
    expect(distancesOf(filledSheet({ pdFar: '61' }, { practice })).distanceMm).toBe(63);
  });
});
