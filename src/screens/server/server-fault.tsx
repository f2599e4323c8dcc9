import { DayProblem } from '../day/day-problem.tsx';
import { Notice } from '../parts/notice.tsx';
import type { Problem } from '../services.ts';
import { useServerWords } from '../words/server-catalogues.ts';
import type { ServerWords } from '../words/server-words.ts';
import type { ServerFault } from './server-services.ts';

const isServerFault = (fault: Problem | ServerFault): fault is ServerFault =>
  fault.kind === 'server' || fault.kind === 'sign-in' || fault.kind === 'elsewhere';

function sentenceOf(fault: ServerFault, words: ServerWords): string {
  if (fault.kind === 'elsewhere') return words.elsewhere;
  return fault.kind === 'sign-in' ? words.signIn.faults[fault.error.kind] : words.faults[fault.error.kind];
}

/** What the server itself says of it. */
function detailOf(fault: ServerFault): string {
  return fault.kind !== 'elsewhere' && 'detail' in fault.error ? fault.error.detail : '';
}

/** Why it did not work, in one sentence. @param title what it was, where that is not plain */
export function ServerFaultNotice({ fault, title }: { readonly fault: Problem | ServerFault | null; readonly title?: string }) {
  const words = useServerWords();
  if (!fault) return null;
  if (!isServerFault(fault)) return <DayProblem problem={fault} />;
  return (
    <Notice icon="warning" look="fault" title={title ?? words.fault} alert>
      <p>{sentenceOf(fault, words)}</p>
      {detailOf(fault) ? <p className="soft">{detailOf(fault)}</p> : null}
    </Notice>
  );
}
