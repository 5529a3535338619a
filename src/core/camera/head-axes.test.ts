import { describe, expect, it } from 'vitest';
import { anglesOfAxes, axesOfHead } from './head-axes.js';

describe('axesOfHead', () => {
  it('has the wearer’s left at the right of the picture, up upwards and the face towards the camera', () => {
    const { left, up, forward } = axesOfHead({ yawRad: 0, pitchRad: 0, rollRad: 0 });
    left.forEach((value, i) => expect(value).toBeCloseTo([1, 0, 0][i]!, 12));
    up.forEach((value, i) => expect(value).toBeCloseTo([0, -1, 0][i]!, 12));
    forward.forEach((value, i) => expect(value).toBeCloseTo([0, 0, -1][i]!, 12));
  });

  it('turns the face to picture right for positive yaw, and down for positive pitch', () => {
    const turned = axesOfHead({ yawRad: 0.3, pitchRad: 0, rollRad: 0 });
    expect(turned.forward[0]).toBeCloseTo(Math.sin(0.3), 12);
    const nodding = axesOfHead({ yawRad: 0, pitchRad: 0.2, rollRad: 0 });
    expect(nodding.forward[1]).toBeCloseTo(Math.sin(0.2), 12);
  });

  it('is undone by anglesOfAxes', () => {
    const head = { yawRad: 0.21, pitchRad: -0.13, rollRad: 0.08 };
    const back = anglesOfAxes(axesOfHead(head));
    expect(back.yawRad).toBeCloseTo(head.yawRad, 12);
    expect(back.pitchRad).toBeCloseTo(head.pitchRad, 12);
    expect(back.rollRad).toBeCloseTo(head.rollRad, 12);
  });
});
