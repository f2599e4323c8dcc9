import { useState } from 'react';
import { Notice } from '../parts/notice.tsx';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { StoredSetLine } from './stored-set-line.tsx';
import './stored-sets.css';
import { useStoredSets } from './use-stored-sets.ts';

/** How many sets are listed at first. Chosen: a week of one set a day, less the weekend. */
const FIRST = 5;

function List({ sets }: { readonly sets: readonly ShownSet[] }) {
  const { start } = useWords();
  const [all, setAll] = useState(false);
  const shown = all ? sets : sets.slice(0, FIRST);
  return (
    <>
      <ul className="set-lines">
        {shown.map((set) => (
          <li key={set.id}>
            <StoredSetLine set={set} />
          </li>
        ))}
      </ul>
      {shown.length < sets.length ? (
        <button type="button" className="button" onClick={() => setAll(true)}>
          {start.showAll(sets.length)}
        </button>
      ) : null}
    </>
  );
}

/** The sets on this machine, the newest first. */
export function StoredSets() {
  const { start, problems } = useWords();
  const sets = useStoredSets();
  const words = sets && !sets.ok ? problems[sets.error.kind](sets.error.detail ?? '') : null;
  return (
    <section className="stored-sets" aria-labelledby="stored-sets-title">
      <h2 id="stored-sets-title">{start.sets}</h2>
      {words ? (
        <Notice icon="warning" look="fault" title={words.title}>
          <p>{words.todo}</p>
        </Notice>
      ) : null}
      {sets?.ok && sets.value.sets.length === 0 ? <p className="soft">{start.noSets}</p> : null}
      {sets?.ok && sets.value.sets.length > 0 ? <List sets={sets.value.sets} /> : null}
      {sets?.ok && sets.value.damaged > 0 ? <p className="soft">{start.damaged(sets.value.damaged)}</p> : null}
    </section>
  );
}
