// `npm start`: installs, assembles the landmark model, builds and serves, each only where it is needed.
// `--no-serve` stops before serving.
import { spawn } from 'node:child_process';
import { install, isBuildStale, nodeComplaint, PROJECT, run } from './installation.mjs';

const complaint = nodeComplaint();
if (complaint !== null) {
  console.error(complaint);
  process.exit(1);
}

/** Ends with a sentence where a step failed. */
function demand(code, sentence) {
  if (code === 0) return;
  console.error(sentence);
  process.exit(code);
}

demand(await install(), 'The packages could not be installed; the lines above say why.');
demand(await run('npm', ['run', '--silent', 'models']), 'The landmark model could not be assembled.');
if (isBuildStale()) {
  console.log('Building the page …');
  const code = await run('npm', ['run', '--silent', 'build', '--', '--logLevel', 'warn']);
  demand(code, 'The page could not be built.');
}

if (!process.argv.includes('--no-serve')) {
  const server = spawn(process.execPath, ['--import', 'tsx', 'src/server/serve.ts'], {
    cwd: PROJECT,
    stdio: 'inherit',
  });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
  server.on('exit', (code) => process.exit(code ?? 1));
}
