import { useStore } from 'zustand';
import { site } from '../offline/site-here.ts';
import { Icon } from '../parts/icon.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';
import './ready-line.css';

/** One line that is there once all works without a network. */
export function ReadyLine() {
  const { offline } = useStoredWords();
  const ready = useStore(site.state, (s) => s.readiness === 'ready');
  return ready ? (
    <span className="ready-line">
      <Icon name="check" />
      {offline.states.ready}
    </span>
  ) : null;
}
