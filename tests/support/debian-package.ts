import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Installs a package of Debian where that can be done without asking. Whether it is there then is for the caller to see. */
export function installDebianPackage(name: string): void {
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0) return;
  console.log(`Installing ${name} for the tests …`);
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const words of [
    ['update', '-q'],
    ['install', '-y', '-q', '--no-install-recommends', name],
  ]) {
    spawnSync('apt-get', words, { stdio: ['ignore', 'ignore', 'inherit'], env: environment });
  }
}
