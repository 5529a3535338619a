import { describe, expect, it } from 'vitest';
import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { GaugeDraft } from './practice-gauge-draft.js';
import { draftOfGauge, EMPTY_GAUGE_DRAFT, exampleScale, parseGaugeDraft } from './practice-gauge-draft.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const TODAY = '2024-02-29';

const GOOD: GaugeDraft = {
  name: ' Long rule ',
  serves: ['monocularPd'],
  resolution: '0,5',
  zeroOffset: '10',
  bias: '-0.25',
  checkedOn: TODAY,
};

function problemsOf(change: Partial<GaugeDraft>): unknown {
  return parseGaugeDraft({ ...GOOD, ...change }, 'one', catalogue, TODAY).problems;
}

describe('a gauge from the fields of its form', () => {
  it('has its numbers, with point or comma, and no blanks about its name', () => {
    expect(parseGaugeDraft(GOOD, 'one', catalogue, TODAY).gauge).toEqual({
      id: 'one',
      name: 'Long rule',
      serves: ['monocularPd'],
      resolution: 0.5,
      zeroOffset: 10,
      bias: -0.25,
      checkedOn: TODAY,
    });
  });

  it('needs no check', () => {
    expect(parseGaugeDraft({ ...GOOD, checkedOn: '' }, 'one', catalogue, TODAY).gauge?.checkedOn).toBeNull();
  });

  it.each([
    [{ name: '  ' }, { name: 'empty' }],
    [{ serves: [] }, { serves: 'serves-nothing' }],
    [{ serves: ['monocularPd', 'frontalAngle'] }, { serves: 'mixed-units' }],
    [{ resolution: '0' }, { resolution: 'not-positive' }],
    [{ resolution: '50' }, { resolution: 'too-large' }],
    [{ zeroOffset: 'ten' }, { zeroOffset: 'not-a-number' }],
    [{ zeroOffset: '-1000' }, { zeroOffset: 'too-large' }],
    [{ bias: '' }, { bias: 'empty' }],
    [{ checkedOn: '2024-03-01' }, { checkedOn: 'in-future' }],
  ] as const)('is refused for %j', (change, problems) => {
    expect(problemsOf(change)).toEqual(problems);
  });

  it('tells all that is wrong at once', () => {
    expect(Object.keys(problemsOf(EMPTY_GAUGE_DRAFT) as object)).toEqual(['name', 'serves', 'resolution']);
  });

  it('comes back from its own fields as it was', () => {
    for (const gauge of EXAMPLE_GAUGES) {
      expect(parseGaugeDraft(draftOfGauge(gauge), gauge.id, catalogue, TODAY).gauge).toEqual(gauge);
    }
  });
});

it('the example is what the scale shows for a usual value, in steps of the scale', () => {
  const mean = catalogue.find(({ id }) => id === 'headWidth')?.population.mean ?? NaN;
  const scale = exampleScale({ serves: ['headWidth'], zeroOffset: 10, bias: 0, resolution: 1 }, catalogue);
  expect(Math.abs(scale + 10 - mean)).toBeLessThanOrEqual(0.5);
  expect(Number.isInteger(scale)).toBe(true);
});
