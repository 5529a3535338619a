import { describe, expect, it } from 'vitest';
import version1Session from '../../../tests/fixtures/sessions/version-1.session.json' with { type: 'json' };
import version1Sheet from '../../../tests/fixtures/sessions/version-1.sheet.json' with { type: 'json' };
import version2Session from '../../../tests/fixtures/sessions/version-2.session.json' with { type: 'json' };
import version2Sheet from '../../../tests/fixtures/sessions/version-2.sheet.json' with { type: 'json' };
import { sampleSession } from '../../../tests/support/sample-sessions.js';
import { parseKeptSheet, sessionOfSheet } from './kept-sheet.js';
import type { SessionRecord } from './session-record.js';
import type { DamagePath } from './session-schema.js';
import { parseSessionRecord, SESSION_VERSION } from './session-schema.js';

const session = sampleSession(1);

/** A copy of the sample in which the value at a path is another one. */
function withValue(path: DamagePath, value: unknown): unknown {
  const copy: unknown = JSON.parse(JSON.stringify(session));
  let at = copy as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) at = at[step] as typeof at;
  at[path.at(-1) ?? ''] = value;
  return copy;
}

describe('a session', () => {
  it('of this version comes back as it was', () => {
    expect(parseSessionRecord(SESSION_VERSION, JSON.parse(JSON.stringify(session)))).toEqual({
      ok: true,
      value: session,
    });
  });

  it('loses what the catalogue of today does not know', () => {
    const raw = JSON.parse(JSON.stringify(session)) as {
      extra?: string;
      sheet: { readers: { first: { readings: Record<string, string>; history: object[] } } };
      camera: { estimates: Record<string, unknown> };
    };
    raw.extra = 'x';
    raw.sheet.readers.first.readings['hatSize'] = '58';
    raw.sheet.readers.first.history.push({ name: 'hatSize', text: '58', by: '', at: null });
    raw.camera.estimates['hatSize'] = raw.camera.estimates['pdFar'];
    expect(parseSessionRecord(SESSION_VERSION, raw)).toEqual({ ok: true, value: session });
  });

  it('of a later version is refused', () => {
    const raw = { ...session, soulWeight: 21 };
    expect(parseSessionRecord(SESSION_VERSION + 1, raw)).toEqual({
      ok: false,
      failure: { kind: 'record-newer', version: SESSION_VERSION + 1 },
    });
    expect(raw).toEqual({ ...session, soulWeight: 21 });
  });

  it.each([0, 1, 2, 2.5, Number.NaN])('cannot have been of version %s', (version) => {
    expect(parseSessionRecord(version, session)).toEqual({
      ok: false,
      failure: { kind: 'record-damaged', path: ['version'] },
    });
  });

  const damages: readonly (readonly [DamagePath, unknown])[] = [
    [['id'], ''],
    [['id'], '../x'],
    [['id'], 'x'.repeat(65)],
    [['begunAt'], '2026-13-01T00:00:00Z'],
    [['changedAt'], '2026-11-25'],
    [['origin', 'kind'], 'post'],
    [['sheet', 'reader'], 'third'],
    [['sheet', 'notes', 'wearer'], 'x'.repeat(201)],
    [['sheet', 'readers', 'second', 'readings', 'pdFar'], 63],
    [['sheet', 'readers', 'first', 'history', 3, 'text'], null],
    [['sheet', 'readers', 'first', 'history', 3, 'at'], 'now'],
    [['sheet', 'settings', 'practice', 'standard'], 'mine'],
    [['camera', 'supervision'], 'perhaps'],
    [['camera', 'pixelsPerMm'], 0],
    [['camera', 'estimates', 'pdFar', 'standardUncertainty'], 0],
    [['camera', 'takenAt'], null],
    [['findings', 'written'], -1],
    [['findings', 'written'], 1.5],
  ];
  it.each(damages)('that is damaged at %j (%j) is refused with the place', (path, value) => {
    expect(parseSessionRecord(SESSION_VERSION, withValue(path, value))).toEqual({
      ok: false,
      failure: { kind: 'record-damaged', path },
    });
  });

  it('has a bound on what a history may hold', () => {
    const { sheet } = session;
    const entry = sheet.readers.first.history[0]!;
    const first = { ...sheet.readers.first, history: Array.from({ length: 20_001 }, () => entry) };
    const endless: SessionRecord = { ...session, sheet: { ...sheet, readers: { ...sheet.readers, first } } };
    expect(parseSessionRecord(SESSION_VERSION, endless)).toEqual({
      ok: false,
      failure: { kind: 'record-damaged', path: ['sheet', 'readers', 'first', 'history'] },
    });
  });
});

// The sessions beside the sheets were written by hand from the description of the versions.
describe('a sheet of an older version becomes a session of today', () => {
  it.each([
    [1, version1Sheet, version1Session],
    [2, version2Sheet, version2Session],
  ])('from version %s', (_version, sheet, expected) => {
    const kept = parseKeptSheet(sheet);
    const { id, begunAt: at } = expected;
    const read = parseSessionRecord(SESSION_VERSION, expected);
    expect(read.ok).toBe(true);
    expect({ ok: true, value: kept && sessionOfSheet(kept, { id, at }) }).toEqual(read);
  });
});
