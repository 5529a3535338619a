import { writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import * as z from 'zod/mini';
import { orderedValueSchema, orderFileSchema } from '../../src/session/order-file.js';

const DESCRIPTIONS = new Map<unknown, { readonly title: string; readonly description: string }>([
  [
    orderFileSchema,
    {
      title: 'Order of Glabella',
      description:
        'Only numbers that a person confirmed and that nothing else on the sheet contradicts; what is open is named by place. R and L are the wearer’s own right and left. Lengths are millimetres, angles degrees, powers dioptres. `dicom` holds the pupil distances of both eyes in the JSON model of DICOM PS3.18.',
    },
  ],
  [
    orderedValueSchema,
    {
      title: 'Value',
      description:
        'value is rounded to so many decimals; resolution is the step to which it is read by hand; standardUncertainty is one standard deviation in the unit of the value.',
    },
  ],
]);

/** The JSON Schema (draft 2020-12) of an order as it is written. */
export function orderFileJsonSchema(): unknown {
  const schema = z.toJSONSchema(orderFileSchema, {
    override: ({ zodSchema, jsonSchema }) => {
      Object.assign(jsonSchema, DESCRIPTIONS.get(zodSchema));
    },
  });
  return JSON.parse(JSON.stringify(schema));
}

// Run as a command it writes the schema beside the code.
if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const place = fileURLToPath(new URL('../../src/session/order-file.schema.json', import.meta.url));
  writeFileSync(place, `${JSON.stringify(orderFileJsonSchema(), null, 2)}\n`);
}
