import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { flaggedRecord, suspectedBy, unusualAt } from '../../tests/support/flagged-records.js';
import { MemorySessionStore } from '../../tests/support/memory-session-store.js';
import { bracketedEnglish, strangeTexts } from '../../tests/support/pseudo-language.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { AuditFailure, AuditTotals } from '../session/audit.js';
import { joinTotals } from '../session/audit-findings.js';
import type { AuditRun } from '../session/audit-run.js';
import { createAuditRun } from '../session/audit-run.js';
import { AuditScreen } from './audit-screen.js';
import type { Equipment } from './equipment.js';
import { EquipmentContext } from './equipment.js';
import { completeEnglish, ENGLISH_TAG, speak } from './language.js';
import { Speaking } from './speaking.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const nothing = (): void => undefined;

const FLAGGED = [
  flaggedRecord(0, '7', [suspectedBy('ten-off', 'headWidth', [143, 153], [0.8, 0.7])], { headWidth: 143 }),
  flaggedRecord(1, null, [suspectedBy('halved', 'pdFar', [31, 62], [0.7, 0.2]), unusualAt('pdNear', 80)], {
    pdFar: 31,
  }),
];

type Ending = Result<AuditTotals, AuditFailure>;

/** A run of a table that ends like this, or never. */
async function ranTo(ending: Ending | null, isFlagged: boolean): Promise<AuditRun> {
  const run = createAuditRun({
    port: {
      audit: (_source, { onFlagged, onProgress }) => {
        if (isFlagged) onFlagged(FLAGGED);
        onProgress({ stage: 'checking', share: 0.5, recordCount: 1200, flaggedCount: 2 });
        return ending === null ? new Promise(nothing) : Promise.resolve(ending);
      },
    },
    sessions: new MemorySessionStore(),
    catalogue,
    nameOf: () => '',
    clock: () => new Date(2026, 10, 26),
  });
  const ended = run.start({ kind: 'table', file: new Blob(), name: '7' });
  if (ending !== null) await ended;
  return run;
}

const DONE = succeed({ ...joinTotals([]), recordCount: 2400, withFindings: 2 });

const RUNS: Readonly<Record<string, () => Promise<AuditRun>>> = {
  'as it begins': () => Promise.resolve(createAuditRun({} as Parameters<typeof createAuditRun>[0])),
  'while it runs': () => ranTo(null, true),
  'with what was flagged': async () => {
    const run = await ranTo(DONE, true);
    run.look({ ...run.now().view, opened: new Set([0, 1]) });
    return run;
  },
  'with nothing flagged': () => ranTo(DONE, false),
  'with a refused table': () =>
    ranTo(
      fail({
        kind: 'table-refused',
        problems: [{ kind: 'empty' }, { kind: 'field-count', line: 4, found: 2, expected: 5 }],
        problemCount: 40,
      }),
      false,
    ),
  'with a file that went': () => ranTo(fail({ kind: 'file-unreadable' }), false),
  'where what looks through stopped': () => ranTo(fail({ kind: 'audit-stopped' }), false),
};

describe('the screen of many records', () => {
  beforeEach(async () => {
    speak(await bracketedEnglish(), ENGLISH_TAG);
  });
  afterEach(async () => {
    speak(await completeEnglish(), ENGLISH_TAG);
  });

  it.each(Object.entries(RUNS))('has no words but those of the language: %s', async (_, ran) => {
    const run = await ran();
    const markup = renderToStaticMarkup(
      <EquipmentContext value={{ catalogue } as Equipment}>
        <Speaking
          store={{ load: () => null, save: () => true }}
          screen={() => (
            <AuditScreen run={run} store={new MemorySessionStore()} openId="s" onOpen={nothing} onBack={nothing} />
          )}
        />
      </EquipmentContext>,
    );
    expect(markup).toContain('\u27e6');
    // names of columns are those of the file
    const strange = strangeTexts(markup.replaceAll(/<code>.*?<\/code>/g, '')).filter((text) =>
      // units may stand alone
      /\p{L}{2}/u.test(text.replaceAll(/(?<!\p{L})mm(?!\p{L})/gu, '')),
    );
    expect(strange).toEqual([]);
  });
});
