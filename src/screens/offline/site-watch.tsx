import { useEffect } from 'react';
import { useStore } from 'zustand';
import { useChoices } from '../choose/choices.ts';
import { useStoredWords } from '../words/stored-catalogues.ts';
import { site } from './site-here.ts';
import './site-watch.css';
import { useCalm } from './use-calm.ts';

/** Keeps the site and the chosen model for the time without a network; tells of a new version on screens where it may be taken. */
export function SiteWatch() {
  const { update } = useStoredWords();
  const model = useChoices((s) => s.choices.model);
  const newVersion = useStore(site.state, (s) => s.newVersion);
  const otherTab = useStore(site.state, (s) => s.otherTab);
  const calm = useCalm();
  useEffect(() => void site.start(), []);
  useEffect(() => void site.keep(model), [model]);
  useEffect(() => site.calm(calm), [calm]);
  // The place is there before the words, so that they are read out when they come.
  return (
    <div className="site-watch" aria-live="polite">
      {newVersion && calm ? (
        <>
          <p>{otherTab ? update.otherTab : update.ready}</p>
          <button type="button" className="button" onClick={() => void site.take()}>
            {update.take}
          </button>
        </>
      ) : null}
    </div>
  );
}
