import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Reading } from '../core/reading/reading.js';
import type { Repeats } from '../core/reading/repeats.js';
import type { SheetRow } from '../session/rows.js';
import { differenceScale } from './difference-scale.js';
import { KeyEntry, LaneAxis, LaneGrid, LaneSvg, Mark, SHAPES, along } from './lane-parts.js';
import { words } from './language.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { spokenName } from './sentences.js';

/** Something that one reader read several times. */
export interface RepeatedPlace {
  readonly row: SheetRow;
  readonly name: ReadingName;
  /** such as `PD of each eye, right` */
  readonly spoken: string;
  /** name or place of the reader */
  readonly reader: string;
  readonly repeats: Repeats;
}

/** What was read several times on the open sheet, and at the same places by the other reader as far as the open one may see it. */
export function repeatedPlaces(
  rows: readonly SheetRow[],
  readers: { readonly open: string; readonly other: string },
): readonly RepeatedPlace[] {
  return rows.flatMap((row) =>
    row.fields.flatMap(({ field, side, reading, other }) => {
      const place = (reader: string, read: Reading | null): readonly RepeatedPlace[] => {
        const repeats = read?.origin?.repeats ?? null;
        if (repeats === null || repeats.values.length < 2) return [];
        return [{ row, name: field, spoken: spokenName(row.measurement, side), reader, repeats }];
      };
      return [
        ...place(readers.open, reading.ok ? reading.value : null),
        ...place(readers.other, other?.reading?.ok === true ? other.reading.value : null),
      ];
    }),
  );
}

const HEIGHT = 40;
const VALUES_Y = 20;
/** Equal readings lie so far below one another, and no more than three deep. */
const STACK_STEP = 6;
const STACK_DEPTH = 2;

/** Readings of the same place around their mean, and the room that repeats may take. All places share a unit. */
export function RepeatsLanes({ places }: { readonly places: readonly RepeatedPlace[] }) {
  const reach = Math.max(
    ...places.map(({ repeats }) => Math.max(repeats.criticalRange ?? 0, 1.1 * repeats.range) / 2),
    ...places.flatMap(({ repeats }) => repeats.values.map(({ value }) => Math.abs(value - repeats.mean))),
  );
  const scale = differenceScale(reach);
  return (
    <div className="lanes">
      <LaneAxis scale={scale} />
      <ul>
        {places.map(({ row, name, spoken, reader, repeats }) => {
          const numbers = repeats.values.map(({ value }) => value);
          const middle = (Math.max(...numbers) + Math.min(...numbers)) / 2 - repeats.mean;
          const room = (repeats.criticalRange ?? 0) / 2;
          const { unit } = row.measurement;
          return (
            <li key={`${name} ${reader}`} className="lane-row">
              <p className="lane-name">
                {spoken} <small>{reader}</small>
              </p>
              <div className="lane-plot">
                <LaneSvg
                  height={HEIGHT}
                  label={words.differences.repeats.lane(
                    spoken,
                    reader,
                    numbers.map(plainNumber),
                    saidOf(repeats, unit),
                  )}
                >
                  <LaneGrid scale={scale} height={HEIGHT} />
                  <g className="lane-room">
                    <line x1={along(scale, middle - room)} x2={along(scale, middle + room)} y1={8} y2={8} />
                    <line x1={along(scale, middle - room)} x2={along(scale, middle - room)} y1={8} y2={14} />
                    <line x1={along(scale, middle + room)} x2={along(scale, middle + room)} y1={8} y2={14} />
                  </g>
                  <line
                    className={repeats.beyondRepeatability ? 'lane-range is-off' : 'lane-range'}
                    x1={along(scale, Math.min(...numbers) - repeats.mean)}
                    x2={along(scale, Math.max(...numbers) - repeats.mean)}
                    y1={VALUES_Y}
                    y2={VALUES_Y}
                  />
                  {stacked(numbers).map(({ value, place, depth }) => (
                    <Mark
                      key={place}
                      x={along(scale, value - repeats.mean)}
                      y={VALUES_Y + STACK_STEP * Math.min(depth, STACK_DEPTH)}
                      d={repeats.farOff.includes(place) ? SHAPES.smallDiamond : SHAPES.ring}
                      className={repeats.farOff.includes(place) ? 'lane-repeat is-off' : 'lane-repeat'}
                    />
                  ))}
                </LaneSvg>
              </div>
              <div className="lane-said">
                <p className={repeats.beyondRepeatability ? 'is-off' : undefined}>{saidOf(repeats, unit)}</p>
                {repeats.beyondRepeatability && <p className="is-off">{words.differences.repeats.beyond}</p>}
                {repeats.farOff.map((place) => (
                  <p key={place} className="is-off">
                    {words.differences.repeats.farOff(plainNumber(numbers[place] ?? Number.NaN))}
                  </p>
                ))}
              </div>
            </li>
          );
        })}
      </ul>
    </div>
  );
}

/** How many readings before each were equal to it, so that each can be seen. */
function stacked(numbers: readonly number[]) {
  return numbers.map((value, place) => ({
    value,
    place,
    depth: numbers.slice(0, place).filter((earlier) => earlier === value).length,
  }));
}

function saidOf(repeats: Repeats, unit: 'mm' | 'deg'): string {
  return words.differences.repeats.said(
    withUnit(plainNumber(repeats.range), unit),
    withUnit(formatNumber(repeats.criticalRange ?? 0, 1), unit),
  );
}

/** What the signs of the repeats mean. */
export function RepeatsKey() {
  const { keys } = words.differences.repeats;
  return (
    <ul className="lane-key" aria-label={words.differences.key.heading}>
      <KeyEntry words={keys.value}>
        <Mark x="17" y={8} d={SHAPES.ring} className="lane-repeat" />
      </KeyEntry>
      <KeyEntry words={keys.farOff}>
        <Mark x="17" y={8} d={SHAPES.smallDiamond} className="lane-repeat is-off" />
      </KeyEntry>
      <KeyEntry words={keys.room}>
        <path className="lane-room" d="M3 11V5H31V11" />
      </KeyEntry>
    </ul>
  );
}

/** The numbers of all repeats. */
export function RepeatsTable({ places }: { readonly places: readonly RepeatedPlace[] }) {
  const { columns } = words.differences.repeats;
  return (
    <table className="numbers">
      <thead>
        <tr>
          <th scope="col">{columns.place}</th>
          <th scope="col">{columns.reader}</th>
          <th scope="col">{columns.values}</th>
          <th scope="col">{columns.mean}</th>
          <th scope="col">{columns.range}</th>
          <th scope="col">{columns.room}</th>
        </tr>
      </thead>
      <tbody>
        {places.map(({ row, name, spoken, reader, repeats }) => (
          <tr key={`${name} ${reader}`}>
            <th scope="row">{spoken}</th>
            <td>{reader}</td>
            <td>{repeats.values.map(({ value }) => plainNumber(value)).join(' ')}</td>
            <td>{withUnit(plainNumber(repeats.mean), row.measurement.unit)}</td>
            <td>{plainNumber(repeats.range)}</td>
            <td>{formatNumber(repeats.criticalRange ?? 0, 1)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
