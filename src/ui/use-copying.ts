import { useState } from 'react';

/** Copying texts to the clipboard. */
export interface Copying {
  /** whether the last text was copied; null before the first */
  readonly copied: boolean | null;
  readonly copy: (text: string) => void;
}

export function useCopying(): Copying {
  const [copied, setCopied] = useState<boolean | null>(null);
  const copy = async (text: string): Promise<void> => {
    try {
      // There is no clipboard at all where the page did not come over https.
      await navigator.clipboard.writeText(text);
      setCopied(true);
    } catch {
      setCopied(false);
    }
  };
  return { copied, copy: (text) => void copy(text) };
}
