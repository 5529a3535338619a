import type { FourCorners } from '../core/camera/features.js';
import type { BothSides } from '../core/units/side.js';
import { isFiniteNumber, isRecord } from './message.js';

/** Tells whether a value that came from elsewhere is of the type. */
export type Check<Value> = (value: unknown) => value is Value;

export function isPositive(value: unknown): value is number {
  return isFiniteNumber(value) && value > 0;
}

/** A whole number of things. */
export function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}

/** Checks that every member passes its own check. A member that is added to the type does not compile until it is checked. */
export function shape<Value>(members: { readonly [Key in keyof Value]-?: Check<Value[Key]> }): Check<Value> {
  const checks = Object.entries<Check<unknown>>(members);
  return (value): value is Value => isRecord(value) && checks.every(([name, check]) => check(value[name]));
}

export function orNull<Value>(check: Check<Value>): Check<Value | null> {
  return (value): value is Value | null => value === null || check(value);
}

export function listOf<Value>(check: Check<Value>): Check<readonly Value[]> {
  return (value): value is readonly Value[] => Array.isArray(value) && value.every(check);
}

export function oneOf<Word extends string | number>(...words: readonly Word[]): Check<Word> {
  return (value): value is Word => (words as readonly unknown[]).includes(value);
}

export function four<Point>(check: Check<Point>): Check<FourCorners<Point>> {
  return (value): value is FourCorners<Point> => Array.isArray(value) && value.length === 4 && value.every(check);
}

export function both<Value>(check: Check<Value>): Check<BothSides<Value>> {
  return shape<BothSides<Value>>({ R: check, L: check });
}

/** Checks a union of objects that are told apart by `kind`. A member that is added to the union does not compile until it is checked. */
export function isOneOfShapes<Union extends { readonly kind: string }>(kinds: {
  readonly [Kind in Union['kind']]: {
    readonly [Key in Exclude<keyof Extract<Union, { readonly kind: Kind }>, 'kind'>]: Check<
      Extract<Union, { readonly kind: Kind }>[Key]
    >;
  };
}): Check<Union> {
  const checks = new Map<unknown, [string, Check<unknown>][]>(
    Object.entries<Readonly<Record<string, Check<unknown>>>>(kinds).map(([kind, facts]) => [
      kind,
      Object.entries(facts),
    ]),
  );
  return (value): value is Union =>
    isRecord(value) && (checks.get(value['kind'])?.every(([name, check]) => check(value[name])) ?? false);
}
