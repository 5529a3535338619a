import type { LensKind } from '../core/lenses/prescription.js';
import type { EyeField } from '../session/prescription-entry.js';
import { listInEnglish } from './list-in-english.js';

const FIELDS: Readonly<Record<EyeField, string>> = {
  sphere: 'Sphere',
  cylinder: 'Cylinder',
  axis: 'Axis',
  add: 'Add',
  prismHorizontal: 'Prism in or out',
  baseHorizontal: 'Base in or out',
  prismVertical: 'Prism up or down',
  baseVertical: 'Base up or down',
};

export const prescriptionWords = {
  heading: 'Prescription',
  caption: 'What is prescribed, right eye above left',
  eye: 'Eye',
  fields: FIELDS,
  sideNames: { R: 'right', L: 'left' },
  /** a field as it is called alone */
  placeName: (field: string, side: string): string => `${field}, ${side}`,
  /** a prism; the amount carries its sign */
  prism: {
    in: (amount: string): string => `${amount} base in`,
    out: (amount: string): string => `${amount} base out`,
    up: (amount: string): string => `${amount} base up`,
    down: (amount: string): string => `${amount} base down`,
  },
  /** the sign of prism dioptres, as it is said */
  prismDioptres: 'prism dioptres',
  /** on the order, before the addition */
  add: (power: string): string => `Add ${power}`,
  columns: { horizontal: 'Prism in/out', vertical: 'Prism up/down' },
  eyes: { R: 'Right', L: 'Left' },
  bases: { '': 'base', in: 'in', out: 'out', up: 'up', down: 'down' },
  vertexDistance: 'Tested at (vertex distance)',
  vertexNote: 'mm; empty where it is not written',
  kind: 'Kind of lens',
  kinds: {
    'single-vision': 'single vision',
    multifocal: 'bifocal or trifocal',
    progressive: 'progressive',
  } satisfies Record<LensKind, string>,
  hint: 'Powers need a sign (or “plano”); either sign of cylinder. Enter goes on, Shift and Enter back.',
  stillNeeded: (places: readonly string[]): string => `Still to be typed: ${listInEnglish(places)}.`,
  otherForm: 'same lens:',
  check: 'Look again:',
};
