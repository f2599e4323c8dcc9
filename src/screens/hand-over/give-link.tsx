import { useRef, useState } from 'react';
import { useWords } from '../words/words-context.tsx';

/** The link, to be copied by a button or by hand. */
export function GiveLink({ link }: { readonly link: string }) {
  const { give } = useWords().handOver;
  const field = useRef<HTMLInputElement>(null);
  const [copied, setCopied] = useState<boolean | null>(null);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setCopied(true);
    } catch {
      // No clipboard here, or it was refused: the person copies what is marked.
      field.current?.focus();
      field.current?.select();
      setCopied(false);
    }
  };
  return (
    <li>
      <h2>{give.link}</h2>
      <p>{give.linkAbout}</p>
      <input ref={field} type="text" readOnly value={link} aria-label={give.link} onFocus={(e) => e.target.select()} />
      <button type="button" className="button" onClick={() => void copy()}>
        {give.linkCopy}
      </button>
      <p role="status">{copied === null ? '' : copied ? give.linkCopied : give.linkByHand}</p>
    </li>
  );
}
