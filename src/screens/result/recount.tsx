import type { MeasuredRep, SetResult } from '../../measure/set-result.ts';
import { Notice } from '../parts/notice.tsx';
import type { RecountWords } from '../words/recount-words.ts';
import { useWords } from '../words/words-context.tsx';

type Reason = Exclude<keyof RecountWords, 'title'>;
const REASONS: readonly Reason[] = ['small', 'gap', 'unfinished', 'unsure', 'more'];

function reasonOf({ complete, flags }: MeasuredRep): Reason {
  if (complete) return 'more';
  if (flags.includes('doubtful')) return 'unsure';
  if (flags.includes('unfinished')) return 'unfinished';
  return flags.includes('tracking-gap') ? 'gap' : 'small';
}

/** Why the count is another than the one that was shown while the set ran; nothing where it is the same. */
export function Recount({ of }: { readonly of: Pick<SetResult, 'reps' | 'notFound'> }) {
  const { recount } = useWords();
  const { reps, notFound = 0 } = of;
  const judged = reps.filter((rep) => rep.flags.includes('recounted')).map(reasonOf);
  const reasons = [...judged, ...Array<Reason>(notFound).fill('unsure')];
  if (reasons.length === 0) return null;
  const now = reps.filter((rep) => rep.complete).length;
  const more = reasons.filter((reason) => reason === 'more').length;
  const shown = now + reasons.length - 2 * more;
  return (
    <Notice icon="search" look="calm" title={recount.title(shown, now)}>
      <ul>
        {REASONS.map((reason) => {
          const n = reasons.filter((each) => each === reason).length;
          return n === 0 ? null : <li key={reason}>{recount[reason](n)}</li>;
        })}
      </ul>
    </Notice>
  );
}
