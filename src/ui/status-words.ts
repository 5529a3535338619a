import type { SourceStatus } from '../core/catalogue/source-status.js';

/** How far a published or customary number may be relied on. */
export const statusWords = {
  long: {
    verified: 'seen in the source',
    'verified-secondary': 'seen in a text that reports the source',
    computed: 'computed from open data',
    derived: 'worked out from the source',
    'common-practice': 'common practice',
    'from-memory': 'from memory, not checked',
    chosen: 'chosen for this app',
  } satisfies Record<SourceStatus, string>,
  /** in a word or two, for the row of the sheet */
  short: {
    verified: 'published',
    'verified-secondary': 'published',
    computed: 'computed',
    derived: 'derived',
    'common-practice': 'customary',
    'from-memory': 'unchecked',
    chosen: 'chosen',
  } satisfies Record<SourceStatus, string>,
};
