import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AuditTotals } from '../../src/session/audit.js';
import type { RecordFindings } from './record-findings.js';
import type { SimulationReport } from './report.js';
import { BLOCK_SIZE } from './simulate-block.js';

// The command as a person runs it, in a process of its own.

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'glabella-slips-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

interface Ended {
  readonly status: number | string;
  readonly stdout: string;
  readonly stderr: string;
}

function runSlips(...words: readonly string[]): Promise<Ended> {
  return new Promise((resolve) => {
    const command = ['--import', 'tsx', 'tests/slips/slips.ts', ...words];
    execFile(process.execPath, command, (error, stdout, stderr) => {
      resolve({ status: error === null ? 0 : (error.code ?? error.message), stdout, stderr });
    });
  });
}

function fileOf(name: string, text: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe('npm run slips', { timeout: 120_000 }, () => {
  it('tells the findings of a file, on the screen and as JSON', async () => {
    const file = fileOf(
      'records.csv',
      '\uFEFFrecord;pd_far_mm;mono_pd_r_mm;mono_pd_l_mm\r\nA1;63,5;32;31,5\r\nB2;36,5;32;31,5\r\n',
    );
    const jsonFile = join(folder, 'findings.json');
    const { status, stdout, stderr } = await runSlips('--json', jsonFile, '--', file);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^B2 \(line 3\)\n.*36\.5/);
    expect(stdout).toContain('2 records read, 1 with something that does not fit:');
    const json = JSON.parse(readFileSync(jsonFile, 'utf8')) as {
      readonly summary: AuditTotals;
      readonly records: readonly RecordFindings[];
    };
    expect(json.summary).toMatchObject({ recordCount: 2, withFindings: 1 });
    expect(json.records).toMatchObject([
      { record: 'A1', line: 2, findings: [] },
      { record: 'B2', line: 3, findings: [{ kind: 'suspected' }] },
    ]);
  });

  it('refuses a file with the place of each problem, and ends with 2', async () => {
    const file = fileOf('bad.csv', 'record,pd_farr_mm,pd_near_mm\nA,63,x\nB,63\n');
    const { status, stdout, stderr } = await runSlips(file);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr.trim().split('\n')).toEqual([
      `${file}, line 1, column 2 (pd_farr_mm): No column is called “pd_farr_mm”. Is pd_far_mm meant?`,
      `${file}, line 2, column 3 (pd_near_mm): “x” is no number. Write digits only, and leave the cell empty where nothing was read.`,
      `${file}, line 3: The row has 2 fields, the header 3. Empty cells need their separators too.`,
    ]);
  });

  it('refuses what is no file, and words that it does not know', async () => {
    const none = join(folder, 'none.csv');
    const [missing, ofFolder, unknown] = await Promise.all([runSlips(none), runSlips(folder), runSlips('--fast', '1')]);
    expect(missing).toEqual({ status: 2, stdout: '', stderr: `${none}: There is no such file.\n` });
    expect(ofFolder).toMatchObject({ status: 2, stdout: '' });
    expect(unknown).toMatchObject({ status: 2, stderr: expect.stringContaining('npm run slips') as string });
  });

  it('simulates the same whoever shares the work, and writes sheets that it can read', async () => {
    // one more than a block, so that two threads have something to share
    const count = BLOCK_SIZE + 1;
    const report = async (workers: string, ...more: readonly string[]): Promise<SimulationReport> => {
      const jsonFile = join(folder, `report-${workers}.json`);
      const words = ['--seed', '4', '--count', String(count), '--workers', workers, '--json', jsonFile, ...more];
      expect(await runSlips(...words)).toMatchObject({ status: 0, stderr: '' });
      return JSON.parse(readFileSync(jsonFile, 'utf8')) as SimulationReport;
    };
    const records = join(folder, 'simulated.csv');
    const [alone, shared] = await Promise.all([report('1'), report('2', '--write', records)]);
    const figures = ({ targets, byKind, byMeasurement, calibration }: SimulationReport) => ({
      targets,
      byKind,
      byMeasurement,
      calibration,
    });
    expect(figures(shared)).toEqual(figures(alone));
    expect(shared).toMatchObject({ fittings: count, workers: 2 });
    expect(readFileSync(records, 'utf8').split('\r\n')).toHaveLength(count + 2);
  });
});
