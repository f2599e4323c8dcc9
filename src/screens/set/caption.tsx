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
  // A lying leg goes up in the picture, any other foot moves at its lower edge: what moves stays seen.
  const lies = useRunState(({ plan }) => plan !== null && exerciseOf(plan.exercise).posture === 'lying');
  const beside = said === null ? '' : captionBeside(said, shown);
  // These two stand beside the hold and the count.
  if (beside === '' || beside === set.holdDoneVoice || beside === set.smallVoice) return null;
  // Heard already, and what stands in the banner is read aloud: once is enough.
  return (
    <p className="set-caption" data-at={lies ? 'foot' : 'head'} aria-hidden="true">
      {beside}
    </p>
  );
}
