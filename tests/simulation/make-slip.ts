import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import type { Restoration, Slip, SlipKind } from '../../src/core/crosscheck/slip.js';
import { SLIP_KINDS } from '../../src/core/crosscheck/slip.js';
import { unreachable } from '../../src/core/result.js';
import type { Gauge } from '../../src/core/reading/gauge.js';
import type { SeededRandom } from '../support/seeded-random.js';

/** What stands on a simulated sheet. */
export type Written = { readonly [Name in ReadingName]?: number };

/** The gauges that the readings were taken with, as the sheet knows them; a plain rule where there is none. */
export type GaugesInUse = { readonly [Name in ReadingName]?: Gauge };

/** All that a slip depends on. */
export interface SlipScene {
  readonly written: Written;
  readonly inUse: GaugesInUse;
  /** all gauges of the practice */
  readonly gauges: readonly Gauge[];
  readonly workingDistanceMm: number;
  readonly catalogue: Catalogue;
}

/** A slip that was made, and the sheet with it. */
export interface MadeSlip {
  readonly slip: Slip;
  readonly written: Written;
}

const FAR_AND_NEAR = [
  ['pdFar', 'pdNear'],
  ['monoPdR', 'monoNearR'],
  ['monoPdL', 'monoNearL'],
] as const satisfies readonly (readonly [ReadingName, ReadingName])[];

const WHOLE_AND_EYES = [
  ['pdFar', 'monoPdR', 'monoPdL'],
  ['pdNear', 'monoNearR', 'monoNearL'],
] as const satisfies readonly (readonly [ReadingName, ReadingName, ReadingName])[];

/** How often another place or kind is tried before a sheet is taken to have no room for a slip. */
const TRIES = 60;

/**
 * Makes one slip: each kind equally often, at a place where it can happen, and never one that changes nothing or writes what
 * the sheet would refuse. Null where none is found.
 */
export function makeSlip(scene: SlipScene, touched: ReadonlySet<ReadingName>, random: SeededRandom): MadeSlip | null {
  const { written, catalogue } = scene;
  for (let i = 0; i < TRIES; i += 1) {
    const kind = pick(SLIP_KINDS, random);
    const changes = changesOf(kind, scene, random);
    if (changes === null || changes.some(([name]) => touched.has(name))) continue;
    const isPossible = changes.every(([name, value]) => {
      const { isSigned, plausible } = measurementOfReading(catalogue, name);
      return (isSigned || value > 0) && value >= plausible.hard.low && value <= plausible.hard.high;
    });
    if (!isPossible || changes.every(([name, value]) => value === written[name])) continue;
    const restorations = changes.map(([name, value]): Restoration => {
      return { name, written: value, restored: written[name] ?? 0 };
    });
    return { slip: { kind, restorations }, written: { ...written, ...Object.fromEntries(changes) } };
  }
  return null;
}

type Changes = readonly (readonly [ReadingName, number])[];

/** What the slip writes and where; null where it has no place on this sheet. */
function changesOf(
  kind: SlipKind,
  { written, inUse, gauges, workingDistanceMm, catalogue }: SlipScene,
  random: SeededRandom,
): Changes | null {
  const names = Object.keys(written) as ReadingName[];
  const name = pick(names, random);
  const value = written[name] ?? 0;
  const { resolution, unit, isSigned, fields, id } = measurementOfReading(catalogue, name);
  switch (kind) {
    case 'digits-swapped': {
      const digits = value.toFixed(resolution < 1 ? 1 : 0).replace('-', '');
      const at = Math.floor(random.uniform() * (digits.length - 1));
      const [a, b] = [digits[at], digits[at + 1]];
      if (a === undefined || b === undefined || a === '.' || b === '.' || a === '0') return null;
      const swapped = Number(digits.slice(0, at) + b + a + digits.slice(at + 2));
      return b === '0' ? null : [[name, Math.sign(value) * swapped]];
    }
    case 'digit-wrong': {
      const digits = String(Math.abs(Math.trunc(value)));
      const at = Math.floor(random.uniform() * digits.length);
      const digit = Math.floor(random.uniform() * 10);
      if (String(digit) === digits[at] || (at === 0 && digit === 0)) return null;
      const changed = Number(digits.slice(0, at) + String(digit) + digits.slice(at + 1));
      return [[name, Math.sign(value) * (changed + (Math.abs(value) % 1))]];
    }
    case 'ten-off':
      return [[name, value + (random.uniform() < 0.5 ? 10 : -10)]];
    case 'sign-lost':
      return isSigned && value !== 0 ? [[name, -value]] : null;
    case 'offset-twice': {
      // the reader wrote the value where the scale reading belongs
      const offset = inUse[name]?.zeroOffset ?? 0;
      return offset === 0 ? null : [[name, value + offset]];
    }
    case 'offset-forgotten': {
      // the sheet knows of a plain rule, and a gauge was read
      const fitting = gauges.filter(({ serves, zeroOffset }) => serves.includes(id) && zeroOffset !== 0);
      return inUse[name] !== undefined || fitting.length === 0
        ? null
        : [[name, value - pick(fitting, random).zeroOffset]];
    }
    case 'point-moved':
      return [[name, value * (random.uniform() < 0.5 ? 10 : 0.1)]];
    case 'centimetres':
      return unit === 'mm' ? [[name, value / 10]] : null;
    case 'inches':
      return unit === 'mm' ? [[name, Math.round((value / 25.4) * 100) / 100]] : null;
    case 'near-for-distance':
    case 'distance-for-near': {
      const [far, near] = pick(FAR_AND_NEAR, random);
      const [from, to] = kind === 'near-for-distance' ? [near, far] : [far, near];
      const other = written[from];
      if (written[to] === undefined) return null;
      const ratio = workingDistanceMm / (workingDistanceMm + 27);
      const computed = kind === 'near-for-distance' ? (written[far] ?? 0) * ratio : (written[near] ?? 0) / ratio;
      return [[to, other ?? 0.5 * Math.round(computed / 0.5)]];
    }
    case 'half-for-whole':
    case 'whole-for-half': {
      const [whole, right, left] = pick(WHOLE_AND_EYES, random);
      const eye = random.uniform() < 0.5 ? right : left;
      const [from, to] = kind === 'half-for-whole' ? [eye, whole] : [whole, eye];
      const other = written[from];
      return other === undefined || written[to] === undefined ? null : [[to, other]];
    }
    case 'halved': {
      const [whole, right, left] = pick(WHOLE_AND_EYES, random);
      const all = written[whole];
      if (all === undefined || written[right] === undefined || written[left] === undefined) return null;
      return [
        [right, all / 2],
        [left, all / 2],
      ];
    }
    case 'sides-swapped': {
      const [right, left] = fields;
      if (right === undefined || left === undefined) return null;
      return exchanged(written, right.name, left.name);
    }
    case 'rows-swapped': {
      const other = placeBelow(name, catalogue);
      return other === null ? null : exchanged(written, name, other);
    }
    case 'row-repeated': {
      const below = placeBelow(name, catalogue);
      return below === null || written[below] === undefined ? null : [[below, value]];
    }
    default:
      return unreachable(kind);
  }
}

/** The place under this one in the next row of the same unit, on the same side where it has sides. */
function placeBelow(name: ReadingName, catalogue: Catalogue): ReadingName | null {
  const row = catalogue.findIndex(({ fields }) => fields.some((field) => field.name === name));
  const [above, below] = [catalogue[row], catalogue[row + 1]];
  if (above === undefined || below === undefined || above.unit !== below.unit) return null;
  const side = above.fields.find((field) => field.name === name)?.side;
  return (below.fields.find((field) => field.side === side) ?? below.fields[0])?.name ?? null;
}

function exchanged(written: Written, a: ReadingName, b: ReadingName): Changes | null {
  const [one, other] = [written[a], written[b]];
  return one === undefined || other === undefined || one === other
    ? null
    : [
        [a, other],
        [b, one],
      ];
}

function pick<Item>(items: readonly Item[], { uniform }: SeededRandom): Item {
  const item = items[Math.floor(uniform() * items.length)];
  if (item === undefined) throw new Error('nothing to pick from');
  return item;
}
