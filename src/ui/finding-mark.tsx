import type { Finding } from '../core/crosscheck/finding.js';

const SIGNS: Readonly<Record<Finding['kind'], string>> = {
  agrees: 'M4 6.5H12M4 9.5H12',
  disagrees: 'M4 6.5H12M4 9.5H12M10.5 3.5L5.5 12.5',
  'cannot-tell': 'M5.8 6.2A2.2 2.2 0 1 1 8.9 8.1C8.2 8.5 8 8.9 8 9.7M8 11.9V12.2',
};

/** A sign beside the word of a finding: equal, not equal, or a question. The word says the same. */
export function FindingMark({ kind }: { readonly kind: Finding['kind'] }) {
  return (
    <svg className="finding-mark" viewBox="0 0 16 16" aria-hidden="true">
      <rect x="0.75" y="0.75" width="14.5" height="14.5" rx="3" />
      <path d={SIGNS[kind]} />
    </svg>
  );
}
