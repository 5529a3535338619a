import { useEffect, useMemo, useState } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementById } from '../core/catalogue/catalogue.js';
import type { Measurement, MeasurementId } from '../core/catalogue/measurement.js';
import { judgedBy } from '../core/record/practice.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import type { SampledNumber } from '../core/statistics/agreement.js';
import type { ComparedPair, GroupAgreement, Grouping } from '../session/agreement-over-sessions.js';
import {
  againstOthers,
  agreementOfGroup,
  countComparable,
  groupPairs,
  pairsOfSession,
} from '../session/agreement-over-sessions.js';
import type { SessionStore, StoreFailure } from '../session/session-store.js';
import { takingTurns } from '../session/taking-turns.js';
import { useFault } from './use-fault.js';

/** Kept sessions, and in how many of them each measurement can be compared. */
export interface ComparableSessions {
  readonly records: readonly SessionRecord[];
  /** the most often compared first */
  readonly counts: readonly { readonly id: MeasurementId; readonly sessions: number }[];
}

/** What is compared, and how it is told apart. */
export interface ComparisonQuery {
  readonly id: MeasurementId;
  readonly by: Grouping;
  /** null for pictures and sweeps */
  readonly camera: ComparedPair['camera'] | null;
  readonly countsFarOff: boolean;
}

/** What one gauge or reader does, and how that differs from all others; null where too little is known of either. */
export interface ComparedGroup {
  readonly agreement: GroupAgreement;
  readonly others: SampledNumber | null;
}

/** What came out of a query. */
export interface SessionsComparison {
  readonly query: ComparisonQuery;
  /** judged as the latest session was */
  readonly measurement: Measurement;
  /** the largest first */
  readonly groups: readonly ComparedGroup[];
  readonly pairs: number;
  readonly sessions: number;
  /** readings whose camera value is covered */
  readonly covered: number;
}

/** So many records between two looks at the clock. */
const RECORDS_A_LOOK = 25;

async function comparable(records: readonly SessionRecord[], catalogue: Catalogue): Promise<ComparableSessions> {
  const turn = takingTurns();
  const counts = new Map<MeasurementId, number>();
  for (let at = 0; at < records.length; at += RECORDS_A_LOOK) {
    for (const [id, count] of countComparable(records.slice(at, at + RECORDS_A_LOOK), catalogue)) {
      counts.set(id, (counts.get(id) ?? 0) + count);
    }
    await turn();
  }
  return {
    records,
    counts: [...counts].map(([id, sessions]) => ({ id, sessions })).sort((a, b) => b.sessions - a.sessions),
  };
}

/** @returns null where nobody wants it any more */
async function compare(
  records: readonly SessionRecord[],
  query: ComparisonQuery,
  catalogue: Catalogue,
  openId: string | null,
  isWanted: () => boolean,
): Promise<SessionsComparison | null> {
  const turn = takingTurns();
  const measurement = measurementById(catalogue, query.id);
  const pairs: ComparedPair[] = [];
  let covered = 0;
  let latest: SessionRecord | null = null;
  for (const [place, record] of records.entries()) {
    const found = pairsOfSession(record, measurement, catalogue, openId);
    covered += found.covered;
    for (const pair of found.pairs) {
      if (query.camera === null || pair.camera === query.camera) pairs.push(pair);
    }
    if (found.pairs.length > 0 && (latest === null || record.begunAt > latest.begunAt)) latest = record;
    if (place % RECORDS_A_LOOK === 0) await turn();
    if (!isWanted()) return null;
  }
  const judged = latest === null ? measurement : judgedBy(latest.sheet.settings.practice, measurement);
  const agreements: GroupAgreement[] = [];
  for (const group of groupPairs(pairs, query.by)) {
    await turn();
    if (!isWanted()) return null;
    agreements.push(agreementOfGroup(group, judged.tolerance.value, query.countsFarOff));
  }
  const groups: ComparedGroup[] = [];
  for (const agreement of agreements) {
    await turn();
    groups.push({ agreement, others: againstOthers(agreement, agreements) });
  }
  return {
    query,
    measurement: judged,
    groups,
    pairs: pairs.length,
    sessions: new Set(pairs.map(({ sessionId }) => sessionId)).size,
    covered,
  };
}

/** The kept sessions, read anew when another window changed some; null until they are there. */
export function useComparableSessions(
  store: SessionStore,
  catalogue: Catalogue,
): Result<ComparableSessions, StoreFailure> | null {
  const [read, setRead] = useState<Result<ComparableSessions, StoreFailure> | null>(null);
  const [asked, setAsked] = useState(0);
  const onFault = useFault();
  useEffect(
    () =>
      store.onChangedElsewhere(() => {
        setAsked((before) => before + 1);
      }),
    [store],
  );
  useEffect(() => {
    let isWanted = true;
    const load = async (): Promise<void> => {
      const all = await store.all();
      const found = all.ok
        ? ({ ok: true, value: await comparable(all.value.records, catalogue) } as const)
        : ({ ok: false, failure: all.failure } as const);
      if (isWanted) setRead(found);
    };
    load().catch(onFault);
    return () => {
      isWanted = false;
    };
  }, [store, catalogue, asked, onFault]);
  return read;
}

/** What comes out of a query; what came out before stays until then, and null stands for nothing yet. */
export function useComparison(
  sessions: ComparableSessions | null,
  query: ComparisonQuery | null,
  catalogue: Catalogue,
  openId: string | null,
): SessionsComparison | null {
  const [comparison, setComparison] = useState<SessionsComparison | null>(null);
  const onFault = useFault();
  const text = JSON.stringify(query);
  const asked = useMemo(() => JSON.parse(text) as ComparisonQuery | null, [text]);
  useEffect(() => {
    if (sessions === null || asked === null) return;
    let isWanted = true;
    compare(sessions.records, asked, catalogue, openId, () => isWanted).then((found) => {
      if (found !== null && isWanted) setComparison(found);
    }, onFault);
    return () => {
      isWanted = false;
    };
  }, [sessions, asked, catalogue, openId, onFault]);
  return comparison;
}
