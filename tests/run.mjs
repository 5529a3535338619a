// `npm test`: everything that must hold, from a fresh clone on. Goes on after a step that failed, so that one sees all,
// and ends with one line that counts: each test of Vitest is one, and each other step is one.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { install, nodeComplaint, run } from '../src/server/installation.mjs';

const total = { passed: 0, failed: 0, skipped: 0 };
const summary = [];
const reports = mkdtempSync(join(tmpdir(), 'glabella-tests-'));

/** Runs a step under a title; `counted` gives its counts from the exit code. */
async function step(
  title,
  work,
  counted = (code) => ({ passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 }),
) {
  console.log(`\n== ${title}`);
  const startedMs = Date.now();
  const code = await work();
  const counts = counted(code);
  for (const key of Object.keys(total)) total[key] += counts[key];
  const seconds = ((Date.now() - startedMs) / 1000).toFixed(0);
  summary.push(`${counts.failed === 0 ? 'ok    ' : 'FAILED'} ${title} (${seconds} s)`);
  return counts.failed === 0;
}

/** Runs the tests of some projects of vite.config.ts and adds up their report. */
function vitest(title, ...projects) {
  const report = join(reports, `${projects[0]}.json`);
  const words = [
    'vitest',
    'run',
    ...projects.flatMap((project) => ['--project', project]),
    '--reporter=default',
    '--reporter=json',
  ];
  return step(
    title,
    () => npx([...words, `--outputFile.json=${report}`]),
    (code) => {
      const counts = countsOf(report);
      // A file that cannot be loaded, or an error outside of any test, fails the run but none of its tests.
      if (code !== 0 && counts.failed === 0) counts.failed = 1;
      return counts;
    },
  );
}

function countsOf(report) {
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(readFileSync(report, 'utf8'));
    return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests };
  } catch (error) {
    console.error(`The report of the tests cannot be read: ${error.message}`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
}

const npmRun = (script, ...words) => run('npm', ['run', '--silent', script, ...words]);
const npx = (words) => run('npx', ['--no-install', ...words]);

/** Runs a command only where nothing else wants the processor, on systems that know of that. */
const behind = (command, words) =>
  process.platform === 'win32' ? run(command, words) : run('nice', ['-n', '19', command, ...words]);

/** What needs no browser and says little unless it fails. Each uses one core. */
const checkStatically = () =>
  Promise.all([
    step('Types', () => behind('npm', ['run', '--silent', 'typecheck'])),
    step('Lint', () => behind('npx', ['--no-install', 'eslint', '.'])),
    step('Format', () => behind('npx', ['--no-install', 'prettier', '--check', '--log-level', 'warn', '.'])),
    step('Import rules', () => behind('npm', ['run', '--silent', 'import-rules'])),
  ]);

const complaint = nodeComplaint();
if (complaint !== null) console.error(complaint);
if (complaint !== null || !(await step('Packages', install))) {
  if (complaint !== null) total.failed += 1;
} else {
  await step('Chromium', () => run(process.execPath, ['--import', 'tsx', 'tests/support/chromium-executable.ts']));
  await step('Program age', () => run(process.execPath, ['--import', 'tsx', 'tests/support/age-executable.ts']));
  const assembled = await step('Landmark model', () => npmRun('models'));
  await vitest('Unit tests', 'unit', 'unit-with-words');
  const built = assembled && (await step('Build', () => npmRun('build', '--', '--logLevel', 'warn')));
  // A browser that is driven waits most of the time: the static checks fit in beside it.
  const checks = checkStatically();
  if (built) {
    await vitest('Browser tests', 'browser', 'browser-alone');
  } else {
    summary.push('FAILED Browser tests (there is no build to drive)');
    total.failed += 1;
  }
  await checks;
}

rmSync(reports, { recursive: true, force: true });
console.log(`\n${summary.join('\n')}\n`);
console.log(`${total.passed} passed, ${total.failed} failed${total.skipped > 0 ? `, ${total.skipped} skipped` : ''}`);
process.exitCode = total.failed === 0 ? 0 : 1;
