import { describe, expect, it } from 'vitest';
import { comparedPicture, comparedSweep, estimateOf, truthEntry } from './compared-examples.js';
import { writeOutcomes } from './measured-picture.js';

describe('writeOutcomes', () => {
  it('writes the members that the file promises, and no others', () => {
    const { measured: picture } = comparedPicture(truthEntry('a.jpg'), {
      estimates: { pdFar: estimateOf(64, 0.5), pupilDiameterR: estimateOf(4, 0.2) },
      irisPx: { R: [1, 2], L: [3, 4] },
      cardPx: [],
    });
    const { measured: sweep } = comparedSweep([truthEntry('s.jpg', { sweep: 's', frame: 0 })], {
      slippedFromFrame: 12,
      estimates: { pdFar: estimateOf(64, 0.1), pupilDiameterL: estimateOf(4, 0.2) },
    });
    // names and order as the issue gives them
    expect(JSON.stringify(writeOutcomes([picture], [sweep]))).toBe(
      '{"pictures":[{"file":"a.jpg","ok":true,"reason":null,"ms":300,' +
        '"estimates":{"pdFar":{"valueMm":64,"uMm":0.5,"lowMm":63.02,"highMm":64.98}},' +
        '"irisPx":{"R":[1,2],"L":[3,4]},"cardPx":[]}],' +
        '"sweeps":[{"sweep":"s","ok":true,"reason":null,"ms":6000,"framesUsed":1,"slippedFromFrame":12,' +
        '"estimates":{"pdFar":{"valueMm":64,"uMm":0.1,"lowMm":63.804,"highMm":64.196}}}]}',
    );
  });

  it('has an empty list where there are no sweeps', () => {
    expect(writeOutcomes([], [])).toEqual({ pictures: [], sweeps: [] });
  });
});
