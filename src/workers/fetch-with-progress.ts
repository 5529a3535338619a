import type { FaultCode } from '../protocol/message.js';
import { readBytes } from '../protocol/read-bytes.js';
import { Fault } from './message-loop.js';

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
  try {
    return await readBytes(response.body, (loaded) => {
      onBytes(loaded, total);
    });
  } catch (error) {
    throw new Fault(code, `${address}: ${String(error)}`);
  }
}
