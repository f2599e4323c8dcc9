import { exerciseOf } from '../../exercises/catalogue.ts';
import { useWords } from '../words/words-context.tsx';
import './caption.css';
import { captionBeside } from './caption-time.ts';
import { useBanner } from './phase-banner.tsx';
import { useRunState } from './run-context.tsx';

/** What was last said, written, for whoever does not hear it; nothing where the banner says it already. */
export function Caption() {
  const { set } = useWords();
  const said = useRunState((s) => s.caption?.text ?? null);
  const { text: shown } = useBanner();
  const counts = useRunState((s) => s.stage === 'counting');
  // A lying leg and a toe go up in the picture, any other foot moves at its lower edge: what moves stays seen.
  const goesUp = useRunState(
    ({ plan }) => plan !== null && (plan.exercise === 'toe-lift' || exerciseOf(plan.exercise).posture === 'lying'),
  );
  // Who has begun need not be told that they may; how it is ended still matters.
  const beside = said === null ? '' : captionBeside(counts ? said.replace(set.readyVoice, '').trim() : said, shown);
  // These two stand beside the hold and the count.
  if (beside === '' || beside === set.holdDoneVoice || beside === set.smallVoice) return null;
  // Heard already, and what stands in the banner is read aloud: once is enough.
  return (
    <p className="set-caption" data-at={goesUp ? 'foot' : 'head'} aria-hidden="true">
      {beside}
    </p>
  );
}
