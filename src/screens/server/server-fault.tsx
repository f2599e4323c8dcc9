import { DayProblem } from '../day/day-problem.tsx';
import { Notice } from '../parts/notice.tsx';
import type { Problem } from '../services.ts';
import { useServerWords } from '../words/server-catalogues.ts';
import type { ServerFault } from './server-services.ts';

const isServerFault = (fault: Problem | ServerFault): fault is ServerFault =>
  fault.kind === 'server' || fault.kind === 'elsewhere';

/** Why it did not work, in one sentence. */
export function ServerFaultNotice({ fault }: { readonly fault: Problem | ServerFault | null }) {
  const words = useServerWords();
  if (!fault) return null;
  if (!isServerFault(fault)) return <DayProblem problem={fault} />;
  return (
    <Notice icon="warning" look="fault" title={words.fault} alert>
      <p>{fault.kind === 'elsewhere' ? words.elsewhere : words.faults[fault.error.kind]}</p>
      {fault.kind === 'server' && 'detail' in fault.error && fault.error.detail ? (
        <p className="soft">{fault.error.detail}</p>
      ) : null}
    </Notice>
  );
}
