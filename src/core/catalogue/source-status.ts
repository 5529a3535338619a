/**
 * How far a published or customary number may be relied on.
 * - `verified`: seen in the source itself
 * - `verified-secondary`: seen in a text that reports the source
 * - `computed`: recomputed from open data
 * - `derived`: own arithmetic from the sources that are named
 * - `common-practice`: what the trade does, without a source
 * - `from-memory`: not seen; check before relying on it
 * - `chosen`: decided here, for the reason that stands beside it
 */
export type SourceStatus =
  'verified' | 'verified-secondary' | 'computed' | 'derived' | 'common-practice' | 'from-memory' | 'chosen';

/** Where a number comes from. */
export interface Sourced {
  /** publication, edition and clause, or the reason for a chosen value */
  readonly source: string;
  readonly status: SourceStatus;
}
