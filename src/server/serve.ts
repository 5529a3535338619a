import { fileURLToPath } from 'node:url';
import { startStaticServer } from './static-server.js';

// Serves the build at PORT, or at the first free port from 4173 on, and prints one line with the address.

const FIRST_PORT = 4173;
const folder = fileURLToPath(new URL('../../dist', import.meta.url));

const asked = process.env['PORT'] ?? '';
if (asked !== '' && !(/^\d+$/.test(asked) && Number(asked) <= 65_535)) {
  console.error(`PORT must be a number from 0 to 65535; it is "${asked}".`);
  process.exit(1);
}

try {
  const server = await startStaticServer(folder, asked === '' ? FIRST_PORT : Number(asked), asked === '');
  console.log(`Glabella runs at ${server.address} (stop it with Ctrl+C)`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void server.close().then(() => process.exit(0)));
  }
} catch (error) {
  const reason = error instanceof Error ? error.message : String(error);
  console.error(`The server could not start: ${reason}. Another port can be chosen with PORT=… npm start.`);
  process.exit(1);
}
