import { useEffect, useRef, useState } from 'react';
import type { AuditStage, AuditSubject } from '../session/audit-run.js';
import { auditProgress } from './audit-sentences.js';
import { words } from './language.js';
import { WorkProgress } from './work-progress.js';

/** Chosen: a screen reader that is told more often never comes to the end of a sentence. */
const TOLD_EVERY_MS = 2000;

/** How far an audit has come, with the button that ends it. */
export function AuditProgress(props: {
  readonly running: Extract<AuditStage, { kind: 'running' }>;
  readonly subject: AuditSubject;
  readonly onStop: () => void;
}) {
  const stop = useRef<HTMLButtonElement>(null);
  const said = auditProgress(props.running, props.subject);
  useEffect(() => {
    // what was pressed to begin has gone
    stop.current?.focus();
  }, []);
  return (
    <div className="audit-running">
      <WorkProgress what={said} share={props.running.share} />
      <button ref={stop} type="button" onClick={props.onStop}>
        {words.audit.stop}
      </button>
      <p className="visually-hidden" role="status">
        {useNowAndThen(said)}
      </p>
    </div>
  );
}

/** What is said, as it stood at the last full two seconds; nothing before the first are over. */
function useNowAndThen(said: string): string {
  const latest = useRef(said);
  const [told, setTold] = useState('');
  useEffect(() => {
    latest.current = said;
  }, [said]);
  useEffect(() => {
    const timer = setInterval(() => {
      setTold(latest.current);
    }, TOLD_EVERY_MS);
    return () => {
      clearInterval(timer);
    };
  }, []);
  return told;
}
