import { useState } from 'react';
import type { SessionSummary } from '../core/record/session-record.js';
import type { AuditTotals } from '../session/audit.js';
import { createAuditTally } from '../session/audit-findings.js';
import { findingsAskedFor } from '../session/audit-list.js';
import type { AuditState } from '../session/audit-run.js';
import { isoDay } from '../session/iso-day.js';
import type { AuditedExport, AuditFileTools } from './audit-files.js';
import { auditJsonFrame, auditJsonRecord, auditTableHeader, auditTableRows, writeInSlices } from './audit-files.js';
import { downloadFile } from './download-file.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { fieldDecimalSign } from './numbers.js';
import { nameShown } from './sessions-table.js';
import type { AuditListInHand } from './use-audit-list.js';
import { useFault } from './use-fault.js';

type Format = 'csv' | 'json';

type Stage =
  | { readonly kind: 'idle' }
  | { readonly kind: 'making'; readonly done: number; readonly all: number }
  | { readonly kind: 'made'; readonly count: number; readonly fileName: string };

/** The flagged records that are listed, as a file. */
export function AuditSaving(props: {
  readonly state: AuditState;
  readonly list: AuditListInHand;
  readonly summaries: ReadonlyMap<string, SessionSummary>;
}) {
  const { state, summaries } = props;
  const { lines, query, vocabulary } = props.list;
  const { catalogue } = useEquipment();
  const [stage, setStage] = useState<Stage>({ kind: 'idle' });
  const onFault = useFault();

  const save = async (format: Format): Promise<void> => {
    if (stage.kind === 'making') return;
    const all = lines.length;
    setStage({ kind: 'making', done: 0, all });
    const tools: AuditFileTools = {
      catalogue,
      nameOf: ({ origin }) => {
        if (origin.kind === 'table') return origin.record;
        const summary = summaries.get(origin.sessionId);
        return summary === undefined ? null : `${nameShown(summary)}, ${isoDay(new Date(summary.begunAt))}`;
      },
    };
    const findingsOf = findingsAskedFor(query, vocabulary);
    const fileName = `glabella-flagged-${isoDay(new Date())}.${format}`;
    const content = await contentOf(format, state, tools, (pieceOf) =>
      writeInSlices(
        lines,
        ({ row }) => pieceOf({ row, findings: findingsOf(row) }),
        (done) => {
          setStage({ kind: 'making', done, all });
        },
      ),
    );
    downloadFile(content, fileName, format === 'csv' ? 'text/csv' : 'application/json');
    setStage({ kind: 'made', count: all, fileName });
  };
  const button = (format: Format, said: string) => (
    <button
      type="button"
      aria-disabled={stage.kind === 'making'}
      onClick={() => {
        save(format).catch(onFault);
      }}
    >
      {said}
    </button>
  );

  return (
    <div className="audit-saving">
      <div className="actions" role="group" aria-label={words.audit.save}>
        <span aria-hidden="true">{words.audit.save}</span>
        {button('csv', words.audit.saveCsv)}
        {button('json', words.audit.saveJson)}
      </div>
      <p className="note">{words.audit.saveNote}</p>
      <p role="status">
        {stage.kind === 'making' && words.audit.making(stage.done, stage.all)}
        {stage.kind === 'made' && words.audit.saved(stage.count, stage.fileName)}
      </p>
    </div>
  );
}

async function contentOf(
  format: Format,
  state: AuditState,
  tools: AuditFileTools,
  write: (pieceOf: (exported: AuditedExport) => string) => Promise<readonly string[]>,
): Promise<Blob> {
  if (format === 'csv') {
    const decimalSign = fieldDecimalSign();
    const rows = await write((exported) => auditTableRows(exported, tools, decimalSign));
    return new Blob([auditTableHeader(decimalSign), ...rows]);
  }
  const { before, between, after } = auditJsonFrame(totalsOf(state));
  const records = await write((exported) => auditJsonRecord(exported, tools));
  return new Blob([before, ...records.flatMap((one, index) => (index === 0 ? [one] : [between, one])), after]);
}

/** Of an audit that was stopped, what it had looked through by then. */
function totalsOf({ stage, rows }: AuditState): AuditTotals {
  if (stage.kind === 'done') return stage.totals;
  const tally = createAuditTally();
  for (const { record } of rows) tally.add(record.readingCount, record.misfits);
  return { ...tally.totals(), recordCount: stage.kind === 'stopped' ? stage.recordCount : rows.length };
}
