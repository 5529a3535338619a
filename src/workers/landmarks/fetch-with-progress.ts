import type { FaultCode } from '../../protocol/message.js';
import { Fault } from '../message-loop.js';

/**
 * The bytes at an address of the app. `onBytes` is told of every piece with the bytes so far and, where the server says so,
 * the bytes in all. Throws a fault of the given code where the address cannot be read.
 */
export async function fetchWithProgress(
  address: string,
  code: FaultCode,
  onBytes: (loaded: number, total: number | null) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  let response: Response;
  try {
    response = await fetch(address);
  } catch (error) {
    throw new Fault(code, `${address}: ${String(error)}`);
  }
  if (!response.ok || response.body === null) throw new Fault(code, `${address}: status ${response.status}`);
  // a compressed answer gives the length of its compressed form: then the total is unknown
  const length = response.headers.has('content-encoding') ? null : response.headers.get('content-length');
  const total = length === null ? null : Number(length);
  const pieces: Uint8Array[] = [];
  let loaded = 0;
  try {
    const reader = response.body.getReader();
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
      pieces.push(piece.value);
      loaded += piece.value.length;
      onBytes(loaded, total);
    }
  } catch (error) {
    throw new Fault(code, `${address}: ${String(error)}`);
  }
  const bytes = new Uint8Array(loaded);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
