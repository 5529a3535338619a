import { writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import * as z from 'zod/mini';
import { estimateSchema } from '../../src/core/record/measured-schema.js';
import { sessionFileSchema } from '../../src/core/record/session-file.js';
import { confirmationsSchema, gaugeSchema, readingsSchema } from '../../src/core/record/session-parts.js';
import {
  cameraRecordSchema,
  findingCountsSchema,
  sessionOriginSchema,
  typedSheetSchema,
} from '../../src/core/record/session-schema.js';

/** What a reader of the schema has to know beyond the names. */
const DESCRIPTIONS = new Map<unknown, { readonly title: string; readonly description: string }>([
  [
    sessionFileSchema,
    {
      title: 'Sessions of Glabella',
      description:
        'Each session is one visit of a wearer. R and L are the wearer’s own right and left. Lengths are in millimetres, angles in degrees. Properties that are not named here are passed over.',
    },
  ],
  [
    typedSheetSchema,
    {
      title: 'Sheet',
      description:
        'What two readers typed, as they typed it, with the settings, gauges and tolerances that it was read with. What a gauge adds is not in the texts.',
    },
  ],
  [
    readingsSchema,
    {
      title: 'Readings',
      description:
        'By place: one number, repeats parted by spaces or semicolons, or a series of trials; a comma is a decimal comma.',
    },
  ],
  [gaugeSchema, { title: 'Gauge', description: 'The value is the scale reading plus zeroOffset less bias.' }],
  [
    confirmationsSchema,
    {
      title: 'Confirmations',
      description: 'By place: who stood for which text. It counts while that text stands there.',
    },
  ],
  [
    cameraRecordSchema,
    {
      title: 'Camera',
      description: 'What one picture, or one sweep of frames, said. The picture is no part of the file.',
    },
  ],
  [
    findingCountsSchema,
    { title: 'Findings', description: 'How many places stood how when the sheet was worked out last.' },
  ],
  [sessionOriginSchema, { title: 'Origin', description: 'Taken at the desk, or by a distant wearer alone.' }],
  [
    estimateSchema,
    {
      title: 'Estimate',
      description:
        'standardUncertainty is one standard deviation; low and high bound the 95 % interval; the squares of the budget add up to the square of standardUncertainty.',
    },
  ],
]);

/** The JSON Schema (draft 2020-12) of a file of sessions as it may be read. */
export function sessionFileJsonSchema(): unknown {
  const schema = z.toJSONSchema(sessionFileSchema, {
    io: 'input',
    reused: 'ref',
    override: ({ zodSchema, jsonSchema }) => {
      Object.assign(jsonSchema, DESCRIPTIONS.get(zodSchema));
    },
  });
  return JSON.parse(JSON.stringify(schema));
}

// Run as a command it writes the schema beside the code.
if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const place = fileURLToPath(new URL('../../src/core/record/session-file.schema.json', import.meta.url));
  writeFileSync(place, `${JSON.stringify(sessionFileJsonSchema(), null, 2)}\n`);
}
