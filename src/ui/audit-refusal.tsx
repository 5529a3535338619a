import { unreachable } from '../core/result.js';
import type { AuditFailure } from '../session/audit.js';
import type { RecordTableFailure } from '../session/record-table.js';
import type { StoreFailure } from '../session/session-store.js';
import { FailureNote } from './failure-note.js';
import { words } from './language.js';
import { problemPlace, problemSentence } from './record-problem-sentences.js';
import type { Saying } from './saying.js';
import { isStoreFailure, storeFailureSaying } from './store-sentences.js';

/** Why no record was looked through, and what to do. */
export function AuditRefusal({ failure }: { readonly failure: AuditFailure | StoreFailure }) {
  return (
    <section className="audit-refusal audit-outcome" tabIndex={-1}>
      <FailureNote saying={refusalSaying(failure)} />
      {failure.kind === 'table-refused' && <ProblemTable {...failure} />}
    </section>
  );
}

function refusalSaying(failure: AuditFailure | StoreFailure): Saying {
  if (isStoreFailure<AuditFailure>(failure)) return storeFailureSaying(failure);
  switch (failure.kind) {
    case 'table-refused':
      return { what: words.audit.refused(failure.problemCount), next: words.audit.refusedNext };
    case 'file-unreadable':
      return words.audit.fileUnreadable;
    case 'audit-stopped':
      return words.audit.auditStopped;
    default:
      return unreachable(failure);
  }
}

function ProblemTable({ problems, problemCount }: RecordTableFailure) {
  const more = problemCount - problems.length;
  return (
    <>
      <table className="audit-problems">
        <caption className="visually-hidden">{words.audit.problems}</caption>
        <thead>
          <tr>
            <th scope="col">{words.audit.problemPlace}</th>
            <th scope="col">{words.audit.problem}</th>
          </tr>
        </thead>
        <tbody>
          {problems.map((problem, index) => (
            // they stand in the order of the file, and never change
            <tr key={index}>
              <th scope="row">{problemPlace(problem)}</th>
              <td>{problemSentence(problem)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more > 0 && <p>{words.audit.moreProblems(more)}</p>}
    </>
  );
}
