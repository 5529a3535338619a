import { describe, expect, it } from 'vitest';
import { deriveMarkerPatterns } from './derive-marker-patterns.js';
import table from './markers-4x4-50.json' with { type: 'json' };

describe('markers-4x4-50.json', () => {
  it('holds what the installed OpenCV draws for the ids 0 to 16', async () => {
    expect(table.markers).toEqual(await deriveMarkerPatterns());
  });

  it('holds square patterns inside a black border, no two alike in any of four turns', () => {
    const quarterTurn = (rows: readonly string[]): string[] =>
      rows.map((_, index) =>
        rows
          .map((row) => row.charAt(index))
          .reverse()
          .join(''),
      );
    const turns = table.markers.flatMap(({ rows }) => {
      const once = quarterTurn(rows);
      const twice = quarterTurn(once);
      return [rows, once, twice, quarterTurn(twice)].map((turned) => turned.join('\n'));
    });
    expect(new Set(turns).size).toBe(17 * 4);
    for (const { rows } of table.markers) {
      expect(rows.join('\n')).toMatch(/^#{6}\n(#[#.]{4}#\n){4}#{6}$/);
    }
  });
});
