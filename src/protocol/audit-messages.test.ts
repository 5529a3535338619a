import { describe, expect, it } from 'vitest';
import { parseFromAuditWorker, parseToAuditWorker } from './audit-messages.js';

const HEAD = { v: 1, id: 7 };

describe('messages to the audit worker', () => {
  it('are read with all their parts', () => {
    const file = new Blob(['pd_far_mm\n63\n']);
    for (const message of [
      { ...HEAD, kind: 'open-table', file, turns: { mine: 1, among: 2 } },
      { ...HEAD, kind: 'open-sessions', records: [{ id: 'a' }] },
      { ...HEAD, kind: 'go-on' },
      { ...HEAD, kind: 'cancel' },
    ]) {
      expect(parseToAuditWorker(message)).toEqual(message);
    }
  });

  it.each([
    ['no file', { ...HEAD, kind: 'open-table', file: 'pd_far_mm\n63\n', turns: { mine: 0, among: 1 } }],
    ['no turns', { ...HEAD, kind: 'open-table', file: new Blob([]) }],
    ['no records', { ...HEAD, kind: 'open-sessions' }],
    ['records that are none', { ...HEAD, kind: 'open-sessions', records: [1] }],
    ['another version', { ...HEAD, v: 2, kind: 'go-on' }],
    ['an unknown kind', { ...HEAD, kind: 'go-back' }],
  ])('are refused with %s', (_, message) => {
    expect(parseToAuditWorker(message)).toBeNull();
  });
});

describe('messages from the audit worker', () => {
  const part = { ...HEAD, kind: 'audit-part', looked: 2, flagged: [{}], totals: null };

  it('are read with all their parts', () => {
    for (const message of [
      { ...HEAD, kind: 'audit-opened', recordCount: 2 },
      { ...HEAD, kind: 'table-refused', failure: {} },
      { ...HEAD, kind: 'file-unreadable' },
      { ...HEAD, kind: 'progress', share: 0.5 },
      part,
    ]) {
      expect(parseFromAuditWorker(message)).toEqual(message);
    }
  });

  it.each([
    ['half a record', { ...HEAD, kind: 'audit-opened', recordCount: 1.5 }],
    ['no count', { ...part, looked: -1 }],
    ['no list', { ...part, flagged: null }],
    ['nothing about totals', { ...part, totals: undefined }],
    ['an unknown kind', { ...part, kind: 'audit-whole' }],
  ])('are refused with %s', (_, message) => {
    expect(parseFromAuditWorker(message)).toBeNull();
  });
});
