import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// Shows the import rules offences that they have to catch, in a project of its own outside of this one.

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

interface Offence {
  readonly file: string;
  readonly source: string;
  readonly rule: string;
}

const OFFENCES: readonly Offence[] = [
  { file: 'src/core/units/a.ts', source: "import '../../session/target.js';", rule: 'imports-of-core' },
  {
    file: 'src/core/units/b.ts',
    source: "import type { T } from '../../ui/target.js'; export type U = T;",
    rule: 'imports-of-core',
  },
  { file: 'src/core/units/c.ts', source: "import '../estimate/target.js';", rule: 'order-of-core-units' },
  { file: 'src/core/camera/d.ts', source: "import '../estimate/target.js';", rule: 'order-of-core-camera' },
  { file: 'src/core/estimate/e.ts', source: "import '../crosscheck/target.js';", rule: 'order-of-core-estimate' },
  { file: 'src/core/optics/f.ts', source: "import '../units/target.js';", rule: 'core-knows-its-folders' },
  { file: 'src/core/reading/g.ts', source: "import 'node:fs';", rule: 'core-is-pure' },
  { file: 'src/core/reading/h.ts', source: "import 'fflate';", rule: 'core-is-pure' },
  {
    file: 'src/core/reading/i.ts',
    source: "import data from '../../../calibration/target.json'; void data;",
    rule: 'imports-of-core',
  },
  { file: 'src/core/reading/j.test.ts', source: "import '../../app/target.js';", rule: 'imports-of-tests-beside-core' },
  { file: 'src/protocol/a.ts', source: "import '../session/target.js';", rule: 'imports-of-protocol' },
  { file: 'src/workers/a.ts', source: "import '../devices/target.js';", rule: 'imports-of-workers' },
  { file: 'src/sheets/a.ts', source: "import '../session/target.js';", rule: 'imports-of-sheets' },
  { file: 'src/session/a.ts', source: "import '../ui/target.js';", rule: 'imports-of-session' },
  { file: 'src/session/b.ts', source: "import 'react';", rule: 'react-only-in-ui-and-app' },
  { file: 'src/devices/a.ts', source: "import '../app/target.js';", rule: 'imports-of-devices' },
  { file: 'src/devices/b.ts', source: "import '@mediapipe/tasks-vision';", rule: 'vision-libraries-only-in-workers' },
  { file: 'src/app/a.ts', source: "import '@techstark/opencv-js';", rule: 'vision-libraries-only-in-workers' },
  { file: 'src/app/b.ts', source: "import '../server/target.js';", rule: 'imports-of-app' },
  { file: 'src/ui/a.ts', source: "import '../devices/target.js';", rule: 'imports-of-ui' },
  { file: 'src/ui/b.ts', source: "export const load = () => import('../workers/target.js');", rule: 'imports-of-ui' },
  { file: 'src/ui/c.ts', source: "import '../app/target.js';", rule: 'imports-of-ui' },
  { file: 'src/ui/d.ts', source: "import 'node:path';", rule: 'node-only-in-tools' },
  { file: 'src/ui/e.ts', source: "import './f.js';", rule: 'no-cycles' },
  { file: 'src/ui/g.ts', source: "import './nowhere.js';", rule: 'resolvable' },
  { file: 'src/ui/h.ts', source: "import '../../calibration/derive.js';", rule: 'imports-of-ui' },
  { file: 'models/a.ts', source: "import '../src/ui/target.js';", rule: 'imports-of-models' },
];

/** Imports that the table of folders allows. */
const LEGAL: readonly Omit<Offence, 'rule'>[] = [
  {
    file: 'src/core/estimate/legal.ts',
    source: "import '../camera/target.js'; import '../result.js'; import 'zod';",
  },
  {
    file: 'src/core/reading/legal.test.ts',
    source: "import 'node:fs'; import '../../../tests/support/target.js'; import 'vitest';",
  },
  { file: 'src/workers/card/legal.ts', source: "import '@techstark/opencv-js'; import '../../protocol/target.js';" },
  {
    file: 'src/ui/legal.ts',
    source: "import 'react'; import '../session/target.js'; import '../../calibration/target.json';",
  },
  {
    file: 'src/app/legal.ts',
    source: "import '../ui/target.js'; import '../devices/target.js'; import '../../calibration/tables.js';",
  },
  { file: 'tests/browser/legal.ts', source: "import '../../src/server/target.js'; import '../../src/app/target.js';" },
];

const FOLDERS = [
  'app',
  'core/camera',
  'core/crosscheck',
  'core/estimate',
  'core/units',
  'devices',
  'protocol',
  'server',
  'session',
  'ui',
  'workers',
];

interface Violation {
  readonly from: string;
  readonly rule: { readonly name: string };
}

let folder: string;
let violations: readonly Violation[];

async function write(file: string, source: string): Promise<void> {
  await mkdir(dirname(join(folder, file)), { recursive: true });
  await writeFile(join(folder, file), source);
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'glabella-imports-'));
  for (const name of ['.dependency-cruiser.cjs', 'tsconfig.json', 'package.json'])
    await cp(join(PROJECT, name), join(folder, name));
  await symlink(join(PROJECT, 'node_modules'), join(folder, 'node_modules'), 'dir');
  for (const name of FOLDERS) await write(`src/${name}/target.ts`, 'export type T = number;');
  await write('src/core/result.ts', 'export {};');
  await write('tests/support/target.ts', 'export {};');
  await write('src/ui/f.ts', "import './e.js';");
  await write('calibration/target.json', '{}');
  await write('calibration/tables.ts', 'export {};');
  await write('calibration/derive.ts', 'export {};');
  for (const { file, source } of [...OFFENCES, ...LEGAL]) await write(file, source);

  const program = join(PROJECT, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const words = [
    '--config',
    '.dependency-cruiser.cjs',
    '--output-type',
    'json',
    'src',
    'models',
    'calibration',
    'tests',
  ];
  const output = await new Promise<string>((done) => {
    // it ends with the number of offences as its exit code
    execFile(process.execPath, [program, ...words], { cwd: folder, maxBuffer: 64e6 }, (_, stdout) => done(stdout));
  });
  violations = (JSON.parse(output) as { summary: { violations: Violation[] } }).summary.violations;
}, 60_000);

afterAll(async () => {
  await rm(folder, { recursive: true });
});

describe('import rules', () => {
  it.each(OFFENCES)('catch $file: $source', ({ file, rule }) => {
    expect(violations.filter(({ from }) => from === file).map((violation) => violation.rule.name)).toContain(rule);
  });

  it.each(LEGAL)('let $file pass', ({ file }) => {
    expect(violations.filter(({ from }) => from === file)).toEqual([]);
  });
});
