import { useRef } from 'react';
import { useCopy } from '../parts/use-copy.ts';
import { useWords } from '../words/words-context.tsx';

/** The link, to be copied by a button or by hand. */
export function GiveLink({ link }: { readonly link: string }) {
  const { give } = useWords().handOver;
  const field = useRef<HTMLInputElement>(null);
  const { copied, copy } = useCopy();
  const take = async () => {
    if (await copy(link)) return;
    // The person copies what is marked.
    field.current?.focus();
    field.current?.select();
  };
  return (
    <li>
      <h2>{give.link}</h2>
      <p>{give.linkAbout}</p>
      <input ref={field} type="text" readOnly value={link} aria-label={give.link} onFocus={(e) => e.target.select()} />
      <button type="button" className="button" onClick={() => void take()}>
        {give.linkCopy}
      </button>
      <p role="status">{copied === null ? '' : copied ? give.linkCopied : give.linkByHand}</p>
    </li>
  );
}
