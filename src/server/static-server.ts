import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join, normalize, resolve, sep } from 'node:path';
import { acceptedEncoding, encode, isCompressible } from './content-encoding.js';
import type { Encoding } from './content-encoding.js';
import { mimeType } from './mime-type.js';
import { cacheControl, securityHeaders } from './security-headers.js';

/** Only this computer can reach the server. */
export const HOST = '127.0.0.1';

/** A running server. */
export interface RunningServer {
  /** for example `http://127.0.0.1:4173/` */
  readonly address: string;
  close(): Promise<void>;
}

/** The bytes of a file in an encoding; `tag` tells one state of the file from another. */
type EncodedFile = (path: string, tag: string, encoding: Encoding) => Promise<Buffer>;

/** Serves the files of `folder` with the security headers; it never writes and knows no other request than GET and HEAD. */
export function createStaticServer(folder: string): Server {
  const root = resolve(folder);
  const encoded = rememberEncoded();
  return createServer((request, response) => {
    answer(root, encoded, request, response).catch(() => {
      if (response.headersSent) response.destroy();
      else refuse(response, 500, 'The file could not be read.');
    });
  });
}

/** Compresses each state of a file once. */
function rememberEncoded(): EncodedFile {
  const known = new Map<string, { readonly tag: string; readonly bytes: Promise<Buffer> }>();
  return (path, tag, encoding) => {
    const key = `${encoding} ${path}`;
    const before = known.get(key);
    if (before?.tag === tag) return before.bytes;
    const bytes = readEncoded(path, encoding);
    bytes.catch(() => known.delete(key));
    known.set(key, { tag, bytes });
    return bytes;
  };
}

/** As the build has it where it is there, and of no older file; else compressed now. */
async function readEncoded(path: string, encoding: Encoding): Promise<Buffer> {
  const made = `${path}.${encoding}`;
  const [plainState, madeState] = await Promise.all([stat(path), stat(made).catch(() => null)]);
  if (madeState?.isFile() === true && madeState.mtimeMs >= plainState.mtimeMs) return readFile(made);
  return encode(await readFile(path), encoding);
}

async function answer(
  root: string,
  encoded: EncodedFile,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const pathname = decodedPathname(request.url ?? '/');
  for (const [name, value] of Object.entries(securityHeaders(pathname ?? '/'))) response.setHeader(name, value);
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    refuse(response, 405, 'Only GET and HEAD are answered.');
    return;
  }
  const path =
    pathname === null ? null : join(root, normalize(pathname.endsWith('/') ? `${pathname}index.html` : pathname));
  if (path === null || !path.startsWith(root + sep)) {
    refuse(response, 404, 'Not found.');
    return;
  }
  const found = await stat(path).catch(() => null);
  if (found === null || !found.isFile()) {
    refuse(response, 404, 'Not found.');
    return;
  }
  const type = mimeType(path);
  const compressible = isCompressible(type, found.size);
  const encoding = compressible ? acceptedEncoding(request.headers['accept-encoding']) : null;
  const state = `${found.size.toString(36)}-${Math.round(found.mtimeMs).toString(36)}`;
  // Each encoding is a representation with a tag of its own (RFC 9110, 8.8.3.3).
  const tag = `"${state}${encoding === null ? '' : `-${encoding}`}"`;
  response.setHeader('Cache-Control', cacheControl(pathname ?? '/'));
  response.setHeader('ETag', tag);
  if (compressible) response.setHeader('Vary', 'Accept-Encoding');
  if (request.headers['if-none-match'] === tag) {
    response.statusCode = 304;
    response.end();
    return;
  }
  response.setHeader('Content-Type', type);
  if (encoding !== null) {
    const bytes = await encoded(path, state, encoding);
    response.setHeader('Content-Encoding', encoding);
    response.setHeader('Content-Length', bytes.length);
    response.end(request.method === 'HEAD' ? undefined : bytes);
    return;
  }
  response.setHeader('Content-Length', found.size);
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  const file = createReadStream(path);
  file.on('error', () => response.destroy());
  response.on('close', () => file.destroy());
  file.pipe(response);
}

/** The path of a request's address, decoded; null where it is malformed or has a zero byte. */
function decodedPathname(url: string): string | null {
  try {
    const pathname = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? '/');
    return pathname.startsWith('/') && !pathname.includes('\0') ? pathname : null;
  } catch {
    return null;
  }
}

function refuse(response: ServerResponse, status: number, sentence: string): void {
  response.statusCode = status;
  response.setHeader('Content-Type', 'text/plain; charset=utf-8');
  response.end(`${sentence}\n`);
}

/**
 * Starts the server at `port` or, where that is busy and `goUp` is set, at the next free one (of 50). Rejects with the
 * error of the last try. Port 0 stands for any free port.
 */
export async function startStaticServer(folder: string, port: number, goUp: boolean): Promise<RunningServer> {
  const server = createStaticServer(folder);
  const last = goUp ? port + 50 : port;
  for (let candidate = port; ; candidate += 1) {
    try {
      await listen(server, candidate);
      break;
    } catch (error) {
      const busy = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
      if (!busy || candidate >= last) throw error;
    }
  }
  const { port: taken } = server.address() as AddressInfo;
  return {
    address: `http://${HOST}:${taken}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((done, failed) => {
    const onError = (error: Error): void => failed(error);
    server.once('error', onError);
    server.listen(port, HOST, () => {
      server.off('error', onError);
      done();
    });
  });
}
