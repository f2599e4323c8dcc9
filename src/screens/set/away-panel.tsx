import { Icon } from '../parts/icon.tsx';
import type { Problem } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import './away-panel.css';
import { useRun } from './run-context.tsx';

/** In place of the picture while a set has none: why, that nothing is lost, and the way on. */
export function AwayPanel({ problem }: { readonly problem: Problem }) {
  const { problems, away } = useWords();
  const run = useRun();
  const words = problems[problem.kind](problem.detail ?? '');
  const restarting = problem.kind === 'pose-failed';
  return (
    <section className="away-panel" role="alert">
      <Icon name="warning" size={52} />
      <h2>{words.title}</h2>
      <p>{restarting ? away.restarting : `${words.todo} ${away.kept}`}</p>
      {restarting ? null : (
        <button type="button" className="button" data-look="main" onClick={run.goOn}>
          {away.goOn}
        </button>
      )}
    </section>
  );
}
