import { describe, expect, it } from 'vitest';
import version3File from '../../../tests/fixtures/sessions/version-3.sessions.json' with { type: 'json' };
import { sampleSession } from '../../../tests/support/sample-sessions.js';
import type { FieldRule, FieldRules } from './leaves-device.js';
import { DESTINATIONS, fieldsFor, LEAVES_DEVICE } from './leaves-device.js';
import type { SessionRecord } from './session-record.js';
import { parseSessionFile } from './session-file.js';

const fixtures = parseSessionFile(JSON.stringify(version3File), { id: 'x', at: '2027-01-01T00:00:00Z' });
const records = [sampleSession(1), sampleSession(2), ...(fixtures.ok ? fixtures.value : [])];

/** Every rule with the names that lead to it. */
function rulesOf(rules: object, path: readonly string[] = []): readonly (readonly [string, FieldRule])[] {
  return Object.entries(rules).flatMap(([name, rule]: [string, object]) =>
    Array.isArray(rule) ? [[[...path, name].join('.'), rule as FieldRule] as const] : rulesOf(rule, [...path, name]),
  );
}

describe('the table of what leaves this device', () => {
  it.each(['session-file', 'backup'] as const)('lets every field of a session into a %s', (destination) => {
    expect(records.length).toBe(4);
    for (const record of records) expect(fieldsFor(destination, record)).toEqual(record);
    for (const [, rule] of rulesOf(LEAVES_DEVICE)) expect(rule).toContain(destination);
  });

  it('lets nothing of a session into an invitation', () => {
    expect(rulesOf(LEAVES_DEVICE).filter(([, rule]) => rule.includes('distant-invitation'))).toEqual([]);
    const left = JSON.stringify(records.map((record) => fieldsFor('distant-invitation', record)));
    expect(left.replace(/[a-z]+(?=":)/gi, '').match(/[a-z0-9]/i)).toBeNull();
  });

  it('keeps histories, devices and ids of invitations out of tables and orders', () => {
    const paths = rulesOf(LEAVES_DEVICE)
      .filter(([, rule]) => rule.includes('spreadsheet') || rule.includes('order'))
      .map(([path]) => path);
    expect(paths.filter((path) => /history|cameraId|profileId|invitationId|answerId|advice/.test(path))).toEqual([]);
  });

  it('takes out what may not go, of whatever is there', () => {
    const record = records[2]!;
    const { sheet, camera, ...others } = fieldsFor('spreadsheet', record) as SessionRecord;
    expect(others).toEqual({
      id: record.id,
      begunAt: record.begunAt,
      changedAt: record.changedAt,
      origin: { kind: 'desk' },
      findings: record.findings,
    });
    expect(sheet.notes).toEqual(record.sheet.notes);
    expect(sheet.readers.first).toEqual({
      reader: 'A',
      readings: record.sheet.readers.first.readings,
      history: record.sheet.readers.first.history.map(() => ({})),
    });
    expect(sheet.settings.practice.gauges[0]).toEqual({ zeroOffset: -2, bias: 0.3 });
    expect(camera?.estimates).toEqual(record.camera?.estimates);
    expect(camera).not.toHaveProperty('advice');
  });

  it('knows every destination', () => {
    const used = new Set(rulesOf(LEAVES_DEVICE).flatMap(([, rule]) => rule));
    expect([...used, 'distant-invitation'].toSorted()).toEqual([...DESTINATIONS].toSorted());
  });

  it('does not compile where a field has no rule', () => {
    const { findings: _findings, ...others } = LEAVES_DEVICE;
    // @ts-expect-error: a field of the session is missing
    const withoutFindings: FieldRules<SessionRecord> = others;
    const { remark: _remark, ...notes } = LEAVES_DEVICE.sheet.notes;
    // @ts-expect-error: a field within a field is missing
    const withoutRemark: FieldRules<SessionRecord['sheet']['notes']> = notes;
    // @ts-expect-error: only some kinds of origin have it, but it is a field
    const withoutAnswer: FieldRules<SessionRecord['origin']> = { kind: [], invitationId: [], receivedAt: [] };
    expect([withoutFindings, withoutRemark, withoutAnswer]).toHaveLength(3);
  });
});
