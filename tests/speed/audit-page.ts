import { createAudit } from '../../src/devices/audit.js';
import type { AuditTotals, FlaggedRecord } from '../../src/session/audit.js';

/** What one audit took, as the page saw it. */
export interface AuditFigures {
  readonly ms: number;
  readonly totals: AuditTotals;
  /** places of the records in which a reading is suspected or cannot be */
  readonly suspected: readonly number[];
  /** how often the page heard how far it was, and its longest wait for that */
  readonly progressCount: number;
  readonly longestSilenceMs: number;
  /** tasks over 50 ms on the page's own thread, as the browser reports them */
  readonly longTasksMs: readonly number[];
}

/** What the bench asks of its page. */
export interface AuditBench {
  /** Looks through the file that was put into the page's input, keeping all that is flagged, as the screen does. */
  run(): Promise<AuditFigures>;
}

declare global {
  interface Window {
    auditBench?: AuditBench;
  }
}

const audit = createAudit();

window.auditBench = {
  run: async () => {
    const file = document.querySelector('input')?.files?.[0];
    if (file === undefined) throw new Error('No file was put into the input.');
    const longTasksMs: number[] = [];
    const observer = new PerformanceObserver((list) => {
      longTasksMs.push(...list.getEntries().map(({ duration }) => duration));
    });
    observer.observe({ type: 'longtask' });
    const flagged: FlaggedRecord[] = [];
    const heardMs: number[] = [performance.now()];
    const startMs = performance.now();
    const outcome = await audit.audit(
      { kind: 'table', file },
      {
        onProgress: () => heardMs.push(performance.now()),
        onFlagged: (records) => flagged.push(...records),
      },
      new AbortController().signal,
    );
    const ms = performance.now() - startMs;
    // what the observer has not told yet
    await new Promise((resolve) => setTimeout(resolve, 200));
    observer.disconnect();
    if (!outcome.ok) throw new Error(`The audit failed: ${JSON.stringify(outcome.failure)}`);
    const waits = heardMs.slice(1).map((at, i) => at - heardMs[i]!);
    return {
      ms,
      totals: outcome.value,
      suspected: flagged
        .filter(({ misfits }) => misfits.some(({ kind }) => kind === 'suspected' || kind === 'refused'))
        .map(({ place }) => place),
      progressCount: waits.length,
      longestSilenceMs: Math.max(...waits),
      longTasksMs,
    };
  },
};
