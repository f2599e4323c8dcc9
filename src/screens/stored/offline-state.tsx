import { useStore } from 'zustand';
import { useChoices } from '../choose/choices.ts';
import { site } from '../offline/site-here.ts';
import { useStoredWords } from '../words/stored-catalogues.ts';
import { ReadyLine } from './ready-line.tsx';

/** Whether all works without a network, and what can be done about it. */
export function OfflineState() {
  const { offline } = useStoredWords();
  const model = useChoices((s) => s.choices.model);
  const { readiness, share } = useStore(site.state);
  const asked = readiness === 'waits' ? offline.fetch : readiness === 'failed' ? offline.again : null;
  const said = () => {
    if (readiness === 'ready' || readiness === 'no-room') return <ReadyLine />;
    return readiness === 'fetching' ? offline.fetching(Math.floor(share * 100)) : offline.states[readiness];
  };
  return (
    <section>
      <h2>{offline.title}</h2>
      <div>{said()}</div>
      {asked ? (
        <button type="button" className="button" onClick={() => void site.keep(model, true)}>
          {asked}
        </button>
      ) : null}
      {readiness === 'without' ? null : <p className="soft">{offline.install}</p>}
    </section>
  );
}
