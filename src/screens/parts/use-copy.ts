import { useState } from 'react';

/** Copies a text to the clipboard. `copied`: null before it was tried, false where there is no clipboard or it was refused. */
export function useCopy(): { readonly copied: boolean | null; readonly copy: (text: string) => Promise<boolean> } {
  const [copied, setCopied] = useState<boolean | null>(null);
  const copy = async (text: string) => {
    let went = true;
    try {
      await navigator.clipboard.writeText(text);
    } catch {
      went = false;
    }
    setCopied(went);
    return went;
  };
  return { copied, copy };
}
