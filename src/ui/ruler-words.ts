export const rulerWords = {
  lane: (side: 'R' | 'L' | null, difference: string, low: string, high: string, tolerance: string): string =>
    `${side === null ? '' : side === 'R' ? 'Right: ' : 'Left: '}hand minus camera ${difference} mm, 95 % interval ${low} to ${high} mm, tolerance plus or minus ${tolerance} mm`,
};
