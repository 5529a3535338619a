import { z } from 'zod';

import manifestJson from './manifest.json' with { type: 'json' };

const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'SHA-256 in 64 lower-case hexadecimal digits');

const part = z.strictObject({
  /** The file's name at the end of its path in the package's table. */
  name: z.string(),
  purpose: z.string(),
  sha256,
});

const manifest = z.strictObject({
  faceLandmarks: z.strictObject({
    source: z.strictObject({
      package: z.string(),
      /** The exact version; package.json pins the same. */
      version: z.string(),
      /** SPDX identifier. */
      licence: z.string(),
      loaderFile: z.string(),
      dataFile: z.string(),
      dataSha256: sha256,
    }),
    parts: z.strictObject({ detector: part, landmarks: part, canonicalFace: part }),
    /** What the assembly must give. */
    bundle: z.strictObject({ file: z.string(), sha256, sizeBytes: z.int().positive() }),
    usedBy: z.array(z.string()),
  }),
});

/** What the repository knows of its model weights: where they come from, what they must hash to, who uses them. */
export type Manifest = z.infer<typeof manifest>;

/** The manifest beside this file. Throws when `manifest.json` does not have the shape that this module expects. */
export function readManifest(): Manifest {
  return manifest.parse(manifestJson);
}
