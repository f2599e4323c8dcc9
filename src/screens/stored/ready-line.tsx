import { useStore } from 'zustand';
import { site } from '../offline/site-here.ts';
import { Icon } from '../parts/icon.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';
import './ready-line.css';

/** One line that is there once all works without a network, or once it is known that there is no room for that. */
export function ReadyLine() {
  const { offline } = useStoredWords();
  const readiness = useStore(site.state, (s) => s.readiness);
  if (readiness !== 'ready' && readiness !== 'no-room') return null;
  return (
    <span className="ready-line" data-readiness={readiness}>
      <Icon name={readiness === 'ready' ? 'check' : 'warning'} />
      {offline.states[readiness]}
    </span>
  );
}
