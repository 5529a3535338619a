import { readFile, stat, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import {
  decodeRecordFile,
  LARGEST_TABLE_BYTES,
  readRecordTable,
  writeRecordTable,
} from '../../src/session/record-table.js';
import { joinTotals } from '../../src/session/audit-findings.js';
import type { Asked } from './parse-arguments.js';
import { parseArguments, USAGE } from './parse-arguments.js';
import { problemLines } from './problem-lines.js';
import { findingLines, summaryLines } from './record-findings.js';
import { reportOf, writeReport } from './report.js';
import { catalogue } from './run-job.js';
import { blocksOf } from './simulate-block.js';
import type { WorkForce } from './work-force.js';
import { createWorkForce } from './work-force.js';

// What does not fit in the records of a file; or, without a file, how well slips are found in simulated fittings. Ends with 0 when
// the work was done, whatever was found; with 2 where the words or the file are refused, and the reasons on the error output.

const REFUSED = 2;

/** Chosen: below this a second thread takes longer to start than it saves. */
const WORTH_A_THREAD = 500;

/** For so many fittings one sheet more is simulated on which the PD is made wrong, and one on which all sides are swapped in turn. */
const FITTINGS_PER_WRONG_PD = 10;
const FITTINGS_PER_SWAPPED_SIDES = 40;

async function examineFile(
  asked: Extract<Asked, { kind: 'records' }>,
  force: WorkForce,
  threads: number,
): Promise<number> {
  const { file, jsonFile } = asked;
  const found = await stat(file).catch(() => null);
  // each thread reads it for itself, which a pipe would not allow
  if (found?.isFile() !== true) return refuse([`${file}: There is no such file.`]);
  if (found.size > LARGEST_TABLE_BYTES) {
    const problem = { kind: 'too-large', bytes: found.size, limitBytes: LARGEST_TABLE_BYTES } as const;
    return refuse(problemLines(file, { problems: [problem], problemCount: 1 }));
  }
  const text = decodeRecordFile(await readFile(file));
  const table = text.ok ? readRecordTable(text.value, catalogue) : text;
  if (!table.ok) return refuse(problemLines(file, table.failure));
  const { recordCount } = table.value;
  const parts = Math.min(threads, Math.ceil(recordCount / WORTH_A_THREAD));
  const bound = (part: number): number => Math.round((part * recordCount) / parts);
  const outcomes = await force.run(
    Array.from({ length: parts }, (_, part) => ({
      kind: 'records' as const,
      file,
      from: bound(part),
      to: bound(part + 1),
    })),
  );
  const findings = outcomes.flatMap(({ records }) => records);
  const summary = joinTotals(outcomes.map(({ totals }) => totals));
  if (jsonFile !== null) {
    const rows = findings.map((one, index) => `${index === 0 ? '' : ',\n'}${JSON.stringify(one)}`);
    await writeFile(jsonFile, [`{"summary":${JSON.stringify(summary)},\n"records":[\n`, ...rows, '\n]}\n']);
  }
  const lines = findings.flatMap((one) => {
    const own = findingLines(one);
    return own.length === 0 ? [] : [...own, ''];
  });
  console.log([...lines, ...summaryLines(summary)].join('\n'));
  return 0;
}

async function simulate(
  { seed, count, jsonFile, recordsFile }: Extract<Asked, { kind: 'simulation' }>,
  force: WorkForce,
  threads: number,
): Promise<number> {
  const start = performance.now();
  const outcomes = await force.run(
    blocksOf(seed, count).map((block) => ({ kind: 'simulation' as const, block, withRecords: recordsFile !== null })),
  );
  const seconds = (performance.now() - start) / 1000;
  const fewer = (share: number) => blocksOf(seed, Math.ceil(count / share));
  const wrongPds = await force.run(
    fewer(FITTINGS_PER_WRONG_PD).map((block) => ({ kind: 'wrong-pds' as const, block })),
  );
  const swappedSides = await force.run(
    fewer(FITTINGS_PER_SWAPPED_SIDES).map((block) => ({ kind: 'swapped-sides' as const, block })),
  );
  const report = reportOf({
    seed,
    workers: threads,
    seconds,
    sheets: outcomes.flatMap(({ sheets }) => sheets),
    wrongPds: wrongPds.flat(),
    swappedSides: swappedSides.flat(),
  });
  if (jsonFile !== null) await writeFile(jsonFile, `${JSON.stringify(report, null, 1)}\n`);
  if (recordsFile !== null) {
    const records = outcomes.flatMap((outcome) => outcome.records);
    await writeFile(recordsFile, writeRecordTable(records, catalogue));
  }
  console.log(writeReport(report));
  return 0;
}

function refuse(lines: readonly string[]): number {
  console.error(lines.join('\n'));
  return REFUSED;
}

// Who reads only the beginning of a long list has closed the pipe behind it.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const asked = parseArguments(process.argv.slice(2));
if (asked === null) {
  process.exitCode = refuse([USAGE]);
} else {
  const threads = asked.workers ?? availableParallelism();
  const force = createWorkForce(threads);
  try {
    process.exitCode =
      asked.kind === 'records' ? await examineFile(asked, force, threads) : await simulate(asked, force, threads);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  } finally {
    await force.end();
  }
}
