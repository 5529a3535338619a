import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

/** How a body can be compressed on its way, by its name in HTTP. */
export type Encoding = 'br' | 'gzip';

/** The best first. */
const ENCODINGS: readonly Encoding[] = ['br', 'gzip'];

/** Chosen: compressing more than this takes longer than a computer needs to send it to itself. */
export const COMPRESSED_UP_TO_BYTES = 1_000_000;

const TEXT_TYPE = /^(text\/|application\/(json|manifest\+json)|image\/svg\+xml)/;

/** Whether a file of this media type and size goes over the line compressed where the browser wants it so. */
export function isCompressible(type: string, sizeBytes: number): boolean {
  return TEXT_TYPE.test(type) && sizeBytes <= COMPRESSED_UP_TO_BYTES;
}

/** The best encoding that the header Accept-Encoding allows (RFC 9110, 12.5.3); null for the plain bytes. */
export function acceptedEncoding(header: string | undefined): Encoding | null {
  const weights = new Map<string, number>();
  for (const part of (header ?? '').split(',')) {
    const [name = '', ...parameters] = part.split(';').map((piece) => piece.trim().toLowerCase());
    const weight = parameters.find((parameter) => parameter.startsWith('q='));
    if (name !== '') weights.set(name, weight === undefined ? 1 : Number(weight.slice(2)));
  }
  const allowed = ENCODINGS.filter((encoding) => (weights.get(encoding) ?? weights.get('*') ?? 0) > 0);
  return allowed[0] ?? null;
}

/** The bytes as Brotli at its best: several times as slow as `encode`, for files that are compressed once and sent often. */
export function encodeFirmly(bytes: Uint8Array): Promise<Buffer> {
  return promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } });
}

/** The bytes in that encoding, quickly. */
export function encode(bytes: Uint8Array, encoding: Encoding): Promise<Buffer> {
  return encoding === 'gzip'
    ? promisify(gzip)(bytes, { level: constants.Z_BEST_COMPRESSION })
    : promisify(brotliCompress)(bytes, {
        params: {
          // Chosen: the best ones take ten times as long for a tenth less.
          [constants.BROTLI_PARAM_QUALITY]: 9,
          [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
        },
      });
}
