import type { SessionSummary } from '../core/record/session-record.js';
import type { AuditSubject } from '../session/audit-run.js';
import { exampleTable } from '../session/example-table.js';
import { AuditFormat } from './audit-format.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';

const EXAMPLE_NAME = 'glabella-example.csv';

/** Where the records come from that are to be looked through. */
export function AuditSource(props: {
  /** nothing was looked through yet: it is said what this is for */
  readonly isFirst: boolean;
  /** nothing was looked through, or in vain: it is said what a table has to look like */
  readonly isExplained: boolean;
  /** the sessions that are kept; null where that is not known */
  readonly kept: readonly SessionSummary[] | null;
  readonly onFile: (file: File) => void;
  readonly onStart: (subject: AuditSubject) => void;
}) {
  const { isFirst, isExplained, kept } = props;
  const { catalogue } = useEquipment();
  return (
    <section className="audit-source">
      {isFirst && <p className="note">{words.audit.intro}</p>}
      <div className={isFirst ? 'hand-on-drop' : 'hand-on-drop audit-drop'}>
        <p>{isFirst ? words.audit.drop : words.audit.dropAnother}</p>
        <div className="actions">
          <label className="file-button">
            <input
              type="file"
              accept=".csv,.tsv,.txt,text/csv"
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                event.currentTarget.value = '';
                if (file !== undefined) props.onFile(file);
              }}
            />
            <span>{isFirst ? words.audit.choose : words.audit.chooseAnother}</span>
          </label>
          {kept !== null && kept.length > 0 && (
            <button
              type="button"
              onClick={() => {
                props.onStart({ kind: 'sessions', summaries: kept, isPart: false });
              }}
            >
              {words.audit.kept(kept.length)}
            </button>
          )}
        </div>
        {kept?.length === 0 && isFirst && <p className="note">{words.audit.keptNone}</p>}
      </div>
      {isExplained && (
        <AuditFormat
          exampleName={EXAMPLE_NAME}
          onTry={() => {
            const file = new Blob([exampleTable(catalogue)], { type: 'text/csv' });
            props.onStart({ kind: 'table', file, name: EXAMPLE_NAME });
          }}
        />
      )}
    </section>
  );
}
