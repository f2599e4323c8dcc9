import { useState } from 'react';
import { EraseForm } from '../lock/erase-form.tsx';
import { Notice } from '../parts/notice.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';

/** Deletes everything in two steps: what will be gone, and a typed word. */
export function DeleteAll() {
  const { erase } = useStoredWords();
  const [asked, setAsked] = useState(false);
  return (
    <section>
      <h2>{erase.title}</h2>
      {asked ? (
        <Notice icon="warning" look="caution" title={erase.about}>
          <ul>
            {erase.what.map((part) => (
              <li key={part}>{part}</li>
            ))}
          </ul>
          <EraseForm />
          <button type="button" className="button" onClick={() => setAsked(false)}>
            {erase.cancel}
          </button>
        </Notice>
      ) : (
        <button type="button" className="button" onClick={() => setAsked(true)}>
          {erase.begin}
        </button>
      )}
    </section>
  );
}
