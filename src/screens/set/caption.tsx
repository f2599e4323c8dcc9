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
  const beside = said === null ? '' : captionBeside(said, shown);
  // These two stand beside the hold and the count.
  if (beside === '' || beside === set.holdDoneVoice || beside === set.smallVoice) return null;
  // Heard already, and what stands in the banner is read aloud: once is enough.
  return (
    <p className="set-caption" aria-hidden="true">
      {beside}
    </p>
  );
}
