/** Plain digits with at most one point: how a reading stands on paper. */
const WRITTEN = /^\d+(\.\d+)?$/;

/** The characters of a positive decimal number; empty for one that nobody writes (exponent, negative). */
function writtenCharacters(value: number): readonly string[] {
  const text = String(value);
  return WRITTEN.test(text) ? [...text] : [];
}

function distinctOthers(values: readonly number[], written: number): readonly number[] {
  return [...new Set(values)].filter((value) => value !== written && value > 0);
}

/**
 * All numbers that differ from `value` by two neighbouring digits that changed places, none of them with a zero in front; the point stays where it is. Each differs
 * from `value` by a multiple of nine of its last written place.
 */
export function withDigitsSwapped(value: number): readonly number[] {
  const characters = writtenCharacters(value);
  const places = characters.flatMap((character, i) => (character === '.' ? [] : [i]));
  const swapped = places.slice(1).flatMap((place, i) => {
    const before = places[i] ?? place;
    const text = characters
      .with(place, characters[before] ?? '')
      .with(before, characters[place] ?? '')
      .join('');
    // nobody writes 010 for 100; 0.5 for 5.0 is another matter
    return /^0\d/.test(text) ? [] : [Number(text)];
  });
  return distinctOthers(swapped, value);
}

/** All numbers that differ from `value` in one digit. The first digit does not become zero. */
export function withOneDigitChanged(value: number): readonly number[] {
  const characters = writtenCharacters(value);
  const changed = characters.flatMap((character, i) => {
    if (character === '.') return [];
    return [...'0123456789']
      .filter((digit) => !(i === 0 && digit === '0'))
      .map((digit) => Number(characters.with(i, digit).join('')));
  });
  return distinctOthers(changed, value);
}
