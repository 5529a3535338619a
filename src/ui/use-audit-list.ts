import { useDeferredValue, useMemo } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { AuditedLine, AuditedRow, AuditQuery, AuditVocabulary } from '../session/audit-list.js';
import { listAudited } from '../session/audit-list.js';
import type { AuditView } from '../session/audit-run.js';
import { auditVocabulary } from './audit-sentences.js';

/** Chosen: as many as are drawn without being felt, and more than anybody reads at once. */
export const PAGE_ROWS = 50;

/** The list of what was flagged, as it is asked for, and the page of it that is shown. */
export interface AuditListInHand {
  readonly query: AuditQuery;
  readonly vocabulary: AuditVocabulary;
  readonly lines: readonly AuditedLine[];
  readonly page: readonly AuditedLine[];
  /** the page that is shown, from 0, of so many */
  readonly pageNumber: number;
  readonly pageCount: number;
}

/**
 * Narrows and sorts after what was typed is on the screen.
 *
 * @param tag of the language that is spoken, as names are sought in it
 */
export function useAuditList(
  rows: readonly AuditedRow[],
  view: AuditView,
  catalogue: Catalogue,
  tag: string,
): AuditListInHand {
  const { query, page: wanted } = useDeferredValue(view);
  const vocabulary = useMemo(() => (tag === '' ? null : auditVocabulary(catalogue)), [catalogue, tag])!;
  const lines = useMemo(() => listAudited(rows, query, vocabulary), [rows, query, vocabulary]);
  const pageCount = Math.max(1, Math.ceil(lines.length / PAGE_ROWS));
  const pageNumber = Math.min(wanted, pageCount - 1);
  const page = useMemo(() => lines.slice(pageNumber * PAGE_ROWS, (pageNumber + 1) * PAGE_ROWS), [lines, pageNumber]);
  return { query, vocabulary, lines, page, pageNumber, pageCount };
}
