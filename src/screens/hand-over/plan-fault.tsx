import type { PlanError } from '../../record/plan-error.ts';
import { Notice } from '../parts/notice.tsx';
import { useWords } from '../words/words-context.tsx';

/** Why something is no plan that can be taken, and what to do. Nothing was kept of it. */
export function PlanFault({ error }: { readonly error: PlanError | { readonly kind: 'file-unreadable' } }) {
  const { take } = useWords().handOver;
  const { title, todo } = take.faults[error.kind];
  return (
    <Notice icon="warning" look="fault" title={title} alert>
      <p>{todo}</p>
      {error.kind === 'plan-wrong' ? <p className="soft small">{take.where(`${error.where}: ${error.what}`)}</p> : null}
    </Notice>
  );
}
