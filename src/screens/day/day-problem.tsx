import { Notice } from '../parts/notice.tsx';
import type { Problem } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

/** What went wrong with the diary, when something did. */
export function DayProblem({ problem }: { readonly problem: Problem | null }) {
  const { problems } = useWords();
  if (!problem) return null;
  const words = problems[problem.kind](problem.detail ?? '');
  return (
    <Notice icon="warning" look="fault" title={words.title} alert>
      <p>{words.todo}</p>
    </Notice>
  );
}
