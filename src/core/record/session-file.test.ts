import { Ajv2020 } from 'ajv/dist/2020.js';
import formats from 'ajv-formats';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import version1Sheet from '../../../tests/fixtures/sessions/version-1.sheet.json' with { type: 'json' };
import version2Sheet from '../../../tests/fixtures/sessions/version-2.sheet.json' with { type: 'json' };
import { sampleSession, sampleSessions } from '../../../tests/support/sample-sessions.js';
import { sessionArbitrary } from '../../../tests/support/session-arbitrary.js';
import { sessionFileJsonSchema } from '../../../tests/support/session-file-json-schema.js';
import { parseTypedSheet, sessionOfSheet } from './kept-sheet.js';
import { LARGEST_SESSION_FILE_CHARACTERS, parseSessionFile, writeSessionFile } from './session-file.js';
import published from './session-file.schema.json' with { type: 'json' };

const AT = '2026-11-25T10:00:00.000Z';
const FRESH = { id: 'fresh', at: AT };
const FIXTURES = new URL('../../../tests/fixtures/sessions/', import.meta.url);
const fixture = (name: string): string => readFileSync(new URL(name, FIXTURES), 'utf8');

const ajv = new Ajv2020({ strict: true, allErrors: false });
formats(ajv);
const isValid = ajv.compile(published);

const two = [sampleSession(1), sampleSession(2)];
const written = writeSessionFile(two, { writtenAt: AT });

describe('a file of sessions', () => {
  it('gives the same sessions back, whatever was typed', () => {
    fc.assert(
      fc.property(fc.array(sessionArbitrary, { maxLength: 4 }), (sessions) => {
        const text = writeSessionFile(sessions, { writtenAt: AT });
        expect(parseSessionFile(text, FRESH)).toEqual({ ok: true, value: sessions });
        expect(isValid(JSON.parse(text)), JSON.stringify(isValid.errors)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it('gives the same sessions back with a byte-order mark before them', () => {
    expect(parseSessionFile(`\uFEFF${written}`, FRESH)).toEqual({ ok: true, value: two });
  });

  it('carries what DICOM calls the distances, and does not read it', () => {
    const dicom = { '00460062': { vr: 'FD', Value: [60.1] } };
    const text = writeSessionFile(two, { writtenAt: AT, dicomOf: ({ id }) => (id === two[0]!.id ? dicom : null) });
    const sessions = (JSON.parse(text) as { sessions: readonly { dicom?: object }[] }).sessions;
    expect(sessions.map((session) => session.dicom)).toEqual([dicom, undefined]);
    expect(isValid(JSON.parse(text)), JSON.stringify(isValid.errors)).toBe(true);
    expect(parseSessionFile(text, FRESH)).toEqual({ ok: true, value: two });
  });

  it('has a line for each session', () => {
    expect(written.trimEnd().split('\n')).toHaveLength(4);
  });

  it('of no sessions is one all the same', () => {
    const none = writeSessionFile([], { writtenAt: AT });
    expect(parseSessionFile(none, FRESH)).toEqual({ ok: true, value: [] });
    expect(isValid(JSON.parse(none))).toBe(true);
  });

  it.each([
    [1, version1Sheet],
    [2, version2Sheet],
  ])('may be a sheet of version %s', (_version, sheet) => {
    const text = JSON.stringify(sheet);
    const expected = parseTypedSheet(text);
    expect(expected).not.toBeNull();
    expect(parseSessionFile(text, FRESH)).toEqual({ ok: true, value: [expected && sessionOfSheet(expected, FRESH)] });
  });

  it('as version 3 wrote it is read for ever', () => {
    const read = parseSessionFile(fixture('version-3.sessions.json'), FRESH);
    const [first, second] = read.ok ? read.value : [];
    expect(first?.sheet.readers.first.history).toHaveLength(5);
    expect(first?.sheet.readers.second.readings.pdFar).toBe('64');
    expect(first?.camera?.estimates.headYaw.value).toBe(-1.5);
    expect(first?.camera?.estimates.pupilDiameterR?.value).toBe(3.4);
    expect(second?.origin).toEqual({
      kind: 'distant',
      invitationId: 'Zk3pX0dJq2uYc8VtR5bN1w',
      answerId: 'a8VtR5bN1wZk3pX0dJq2uQ',
      receivedAt: '2026-11-25T08:00:00Z',
    });
    expect(second?.camera?.kind).toBe('sweep');
    expect(isValid(JSON.parse(fixture('version-3.sessions.json'))), JSON.stringify(isValid.errors)).toBe(true);
  });

  const broken: readonly (readonly [string, string, object])[] = [
    ['no JSON', written.slice(0, -3), { kind: 'not-json' }],
    ['something else', '{"type":"FeatureCollection"}', { kind: 'not-a-session-file' }],
    ['nothing', 'null', { kind: 'not-a-session-file' }],
    ['a damaged sheet of an older version', '{"version":2}', { kind: 'not-a-session-file' }],
    ['a newer version', fixture('version-4.sessions.json'), { kind: 'file-newer', version: 4 }],
    [
      'a version that never was',
      written.replace('"version":3', '"version":1'),
      { kind: 'file-damaged', path: ['version'] },
    ],
    ['no time', written.replace(AT, 'today'), { kind: 'file-damaged', path: ['writtenAt'] }],
    [
      'no list',
      `{"format":"glabella-sessions","version":3,"writtenAt":"${AT}","sessions":{}}`,
      { kind: 'file-damaged', path: ['sessions'] },
    ],
    ['a session that is none', written.replace(two[1]!.id, '?'), { kind: 'file-damaged', path: ['sessions', 1, 'id'] }],
  ];
  it.each(broken)('with %s is refused, and by the published schema too', (_what, text, failure) => {
    expect(parseSessionFile(text, FRESH)).toEqual({ ok: false, failure });
    if (text !== broken[0]![1]) expect(isValid(JSON.parse(text))).toBe(false);
  });

  it('that is too large is refused without being looked at', () => {
    const characters = LARGEST_SESSION_FILE_CHARACTERS + 1;
    expect(parseSessionFile(' '.repeat(characters), FRESH)).toEqual({
      ok: false,
      failure: { kind: 'file-too-large', characters, limit: LARGEST_SESSION_FILE_CHARACTERS },
    });
  });

  it('of a thousand sessions comes back equal', () => {
    const many = sampleSessions(1000);
    expect(parseSessionFile(writeSessionFile(many, { writtenAt: AT }), FRESH)).toEqual({ ok: true, value: many });
  });
});

describe('the published schema', () => {
  it('is what the code checks; `npm run session-schema` writes it anew', () => {
    expect(published).toEqual(sessionFileJsonSchema());
  });

  it.each([
    ['an empty reading’s place', ['sheet', 'readers', 'first', 'readings', 'pdFar'], 63],
    ['a history without times', ['sheet', 'readers', 'first', 'history', 0, 'at'], undefined],
    ['an estimate without doubt', ['camera', 'estimates', 'pdFar', 'standardUncertainty'], 0],
    ['a camera of another kind', ['camera', 'kind'], 'thermal'],
  ])('refuses %s', (_what, path, value) => {
    const file = JSON.parse(written) as { sessions: unknown[] };
    let at = file.sessions[0] as Record<string | number, unknown>;
    for (const step of path.slice(0, -1)) at = at[step] as typeof at;
    at[path.at(-1)!] = value;
    const text = JSON.stringify(file);
    expect(isValid(JSON.parse(text))).toBe(false);
    expect(parseSessionFile(text, FRESH).ok).toBe(false);
  });
});
