import { describe, expect, it } from 'vitest';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue, measurementById } from '../catalogue/catalogue.js';
import type { Gauge } from '../reading/gauge.js';
import type { Practice } from './practice.js';
import {
  DEFAULT_PRACTICE,
  gaugeInUse,
  gaugeOfReading,
  judgedBy,
  shownMeasurements,
  withGauge,
  withGaugeInUse,
  withGroupMoved,
  withoutGauge,
  withShown,
  withTolerance,
} from './practice.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const [first] = EXAMPLE_GAUGES;
if (first === undefined) throw new Error('no example gauge');
const calipers: Gauge = { ...first, id: 'calipers', name: 'Calipers', serves: ['headWidth', 'templeWidth'] };
const practice: Practice = withGaugeInUse(withGauge(DEFAULT_PRACTICE, calipers), 'headWidth', 'calipers');

describe('a practice', () => {
  it('shows its own blocks in its own order, without the rows that it hides', () => {
    const ids = (one: Practice) => shownMeasurements(one, catalogue).map(({ id }) => id);
    expect(ids(DEFAULT_PRACTICE)).toHaveLength(catalogue.length);
    const changed = withShown(withGroupMoved(DEFAULT_PRACTICE, 'frame', -4), 'boxLensWidth', false);
    expect(ids(changed)).toHaveLength(catalogue.length - 1);
    expect(ids(changed)[0]).toBe('boxLensHeight');
    expect(ids(withShown(changed, 'boxLensWidth', true))[0]).toBe('boxLensWidth');
  });

  it('moves blocks no further than the ends', () => {
    expect(withGroupMoved(DEFAULT_PRACTICE, 'head', 1).groupOrder).toEqual(['eyes', 'nose', 'head', 'sides', 'frame']);
    expect(withGroupMoved(DEFAULT_PRACTICE, 'eyes', -1)).toEqual(DEFAULT_PRACTICE);
    expect(withGroupMoved(DEFAULT_PRACTICE, 'frame', 9)).toEqual(DEFAULT_PRACTICE);
  });

  it('judges with its own tolerance where it set one, and says whose it is', () => {
    const headWidth = measurementById(catalogue, 'headWidth');
    expect(judgedBy(DEFAULT_PRACTICE, headWidth)).toBe(headWidth);
    const strict = withTolerance(DEFAULT_PRACTICE, 'headWidth', 1);
    expect(judgedBy(strict, headWidth).tolerance).toMatchObject({ value: 1, status: 'chosen' });
    expect(withTolerance(strict, 'headWidth', null)).toEqual(DEFAULT_PRACTICE);
  });

  it('reads with the gauge in use, and with a plain rule where there is none', () => {
    expect(gaugeInUse(practice, 'headWidth')).toBe(calipers);
    expect(gaugeOfReading(practice, 'headWidth')).toBe(calipers);
    expect(gaugeInUse(practice, 'templeWidth')).toBeNull();
    expect(gaugeOfReading(practice, 'pdFar')).toBeNull();
    expect(gaugeInUse(withGaugeInUse(practice, 'headWidth', null), 'headWidth')).toBeNull();
  });

  it('does not take a gauge for what it does not serve', () => {
    expect(withGaugeInUse(practice, 'binocularPd', 'calipers')).toEqual(practice);
    expect(withGaugeInUse(practice, 'templeWidth', 'unknown')).toEqual(practice);
  });

  it('lets a gauge change under its id, and drops what it serves no more or what is gone', () => {
    const renamed = withGauge(practice, { ...calipers, name: 'Old calipers' });
    expect(renamed.gauges).toHaveLength(1);
    expect(gaugeInUse(renamed, 'headWidth')?.name).toBe('Old calipers');
    expect(withGauge(practice, { ...calipers, serves: ['templeWidth'] }).gaugeInUse).toEqual({});
    expect(withoutGauge(practice, 'calipers')).toEqual(DEFAULT_PRACTICE);
  });
});
