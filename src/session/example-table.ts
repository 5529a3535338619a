import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { FittingRecord } from './record-table.js';
import { writeRecordTable } from './record-table.js';

const plain = (...scale: readonly number[]) => ({ scale, zeroOffset: null });
const gauged = (zeroOffset: number, ...scale: readonly number[]) => ({ scale, zeroOffset });

/** Invented, two of them with slips: both eyes' distance at the wrong ten, and crest heights of which one lost its sign. */
const INVENTED: readonly FittingRecord[] = [
  {
    id: 'invented 1',
    workingDistanceMm: 400,
    readings: {
      pdFar: plain(63, 63.5, 63),
      monoPdR: plain(31.5),
      monoPdL: plain(31.5),
      pdNear: plain(59),
      headWidth: gauged(12, 140),
    },
    estimates: { pdFar: { value: 63.2, standardUncertainty: 0.5 } },
  },
  {
    id: 'invented 2',
    workingDistanceMm: 400,
    readings: {
      pdFar: plain(56),
      monoPdR: plain(33),
      monoPdL: plain(33),
      pdNear: plain(62),
      headWidth: gauged(12, 146),
    },
    estimates: { pdFar: { value: 65.7, standardUncertainty: 0.6 } },
  },
  {
    id: 'invented 3',
    workingDistanceMm: 350,
    readings: {
      pdFar: plain(60),
      monoPdR: plain(30),
      monoPdL: plain(30),
      pdNear: plain(55.5),
      headWidth: gauged(12, 133),
    },
    estimates: {},
  },
  {
    id: 'invented 4',
    workingDistanceMm: 400,
    readings: {
      pdFar: plain(62),
      monoPdR: plain(31),
      monoPdL: plain(31),
      pdNear: plain(85),
      headWidth: gauged(12, 138),
    },
    estimates: {},
  },
];

/** A table of records that shows what one may hold: repeats, an amount that a gauge needs, the camera's estimate. */
export function exampleTable(catalogue: Catalogue): string {
  return writeRecordTable(INVENTED, catalogue);
}
