import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addedByGauge, checkOfGauge, gaugedValue, type Gauge } from './gauge.js';

const gauge: Gauge = {
  id: 'projection-rule',
  name: 'Projection rule',
  serves: ['bridgeProjection'],
  resolution: 0.5,
  zeroOffset: 10,
  bias: 0,
  checkedOn: '2026-01-31',
};

describe('the sum of a gauge', () => {
  it('adds the offset and takes the bias off', () => {
    expect(gaugedValue(27, gauge)).toEqual({ scale: 27, value: 37 });
    expect(gaugedValue(27, { ...gauge, bias: 0.3 })).toEqual({ scale: 27, value: 36.7 });
    expect(gaugedValue(-3.5, { ...gauge, zeroOffset: 0, bias: -0.2 })).toEqual({ scale: -3.5, value: -3.3 });
    expect(addedByGauge({ ...gauge, zeroOffset: 10.1, bias: 0.2 })).toBe(9.9);
  });

  it('leaves what a plain rule shows', () => {
    expect(gaugedValue(63.5, null)).toEqual({ scale: 63.5, value: 63.5 });
    expect(addedByGauge(null)).toBe(0);
  });

  it('is what paper gives, to the tenth', () => {
    const tenths = fc.integer({ min: -2000, max: 2000 });
    fc.assert(
      fc.property(tenths, tenths, tenths, (scale, zeroOffset, bias) => {
        const { value } = gaugedValue(scale / 10, { ...gauge, zeroOffset: zeroOffset / 10, bias: bias / 10 });
        // a sum of tenths that is nothing is a plain zero
        expect(value).toBe((scale + zeroOffset - bias) / 10 + 0);
      }),
    );
  });
});

describe('the check of a gauge', () => {
  it.each([
    ['2026-01-31', { kind: 'recent', daysAgo: 0 }],
    ['2026-03-01T08:30:00.000Z', { kind: 'recent', daysAgo: 29 }],
    ['2027-01-31', { kind: 'recent', daysAgo: 365 }],
    ['2027-02-01', { kind: 'old', daysAgo: 366, limitDays: 365 }],
    ['2026-01-30', { kind: 'unknown' }],
  ])('on %s is %j', (today, check) => {
    expect(checkOfGauge(gauge, today)).toEqual(check);
  });

  it.each([null, '', 'spring', '2026-02-30', '2026-13-01', '26-01-01'])('noted as %j is unknown', (checkedOn) => {
    expect(checkOfGauge({ ...gauge, checkedOn }, '2026-06-01')).toEqual({ kind: 'unknown' });
  });

  it('takes another limit', () => {
    expect(checkOfGauge(gauge, '2026-02-28', 14)).toEqual({ kind: 'old', daysAgo: 28, limitDays: 14 });
  });

  it('counts the leap day', () => {
    expect(checkOfGauge({ ...gauge, checkedOn: '2028-02-28' }, '2028-03-01')).toEqual({ kind: 'recent', daysAgo: 2 });
  });

  it('refuses a today that is no day', () => {
    expect(() => checkOfGauge(gauge, 'today')).toThrow('day of the calendar');
  });
});
