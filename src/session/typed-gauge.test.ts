import { describe, expect, it } from 'vitest';
import { parseGauge } from './typed-gauge.js';

const typed = { name: ' End rule ', resolution: '0,5', zeroOffset: '4', bias: '-0.2', checkedOn: '2026-02-28' };

describe('a typed gauge', () => {
  it('is read with point or comma, and what may be left empty is nothing', () => {
    const gauge = { name: 'End rule', resolution: 0.5, zeroOffset: 4, bias: -0.2, checkedOn: '2026-02-28' };
    expect(parseGauge(typed)).toEqual({ ok: true, value: gauge });
    expect(parseGauge({ ...typed, zeroOffset: '', bias: ' ', checkedOn: '' })).toEqual({
      ok: true,
      value: { ...gauge, zeroOffset: 0, bias: 0, checkedOn: null },
    });
  });

  it('tells of every field that cannot be used, and why', () => {
    expect(parseGauge({ name: ' ', resolution: '', zeroOffset: 'ten', bias: '500', checkedOn: '2026-02-30' })).toEqual({
      ok: false,
      failure: [
        { field: 'name', kind: 'missing' },
        { field: 'resolution', kind: 'missing' },
        { field: 'zeroOffset', kind: 'not-a-number', typed: 'ten' },
        { field: 'bias', kind: 'beyond-limits', lowest: -200, highest: 200 },
        { field: 'checkedOn', kind: 'not-a-day', typed: '2026-02-30' },
      ],
    });
  });

  it.each(['0', '-1', '11'])('has no step of %s', (resolution) => {
    expect(parseGauge({ ...typed, resolution })).toMatchObject({
      failure: [{ field: 'resolution', kind: 'beyond-limits' }],
    });
  });

  it.each(['28.2.2026', '2026-2-28', '2026-13-01', 'today'])('was not checked on %s', (checkedOn) => {
    expect(parseGauge({ ...typed, checkedOn })).toMatchObject({ failure: [{ field: 'checkedOn', kind: 'not-a-day' }] });
  });
});
