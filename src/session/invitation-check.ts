/** Reversed polynomial of CRC-32 (ISO/IEC/IEEE 8802-3, clause 3.2.9). */
const POLYNOMIAL = 0xedb88320;

/** CRC-32 as in Ethernet, gzip and PNG: finds any change within four bytes, and all but one in four thousand million others. */
export function crc32(bytes: Uint8Array): number {
  let remainder = 0xffffffff;
  for (const byte of bytes) {
    remainder ^= byte;
    for (let bit = 0; bit < 8; bit += 1) {
      remainder = remainder & 1 ? (remainder >>> 1) ^ POLYNOMIAL : remainder >>> 1;
    }
  }
  return (remainder ^ 0xffffffff) >>> 0;
}
