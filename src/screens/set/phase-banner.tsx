import { Icon, type IconName } from '../parts/icon.tsx';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { ADVICE_SIGN } from './advice-sign.ts';
import { stickersOfPlan } from './by-stickers.ts';
import './phase-banner.css';
import { hadToEnd, noteWords } from './glide-note.ts';
import type { RunState } from './run.ts';
import { useRunState } from './run-context.tsx';

interface Banner {
  readonly sign: IconName;
  readonly text: string;
}

/**
 * The one sentence that matters now, with its sign.
 * @param known `doneDose`: the dose once that many are counted, null before; `stickers`: they are followed, and not a body
 */
function bannerOf(
  {
    stage,
    advice,
    endedWhy,
    pastOnset,
    glideNote,
    mixedUp,
  }: Pick<RunState, 'stage' | 'advice' | 'endedWhy' | 'pastOnset' | 'glideNote' | 'mixedUp'>,
  { doneDose, stickers }: { readonly doneDose: number | null; readonly stickers: boolean },
  words: Words['set'],
): Banner {
  if (glideNote && (stage === 'ready' || stage === 'counting')) return { sign: 'warning', text: noteWords(glideNote, words) };
  switch (stage) {
    case 'setting-up':
      return advice
        ? { sign: ADVICE_SIGN[advice], text: words.advice[advice] }
        : { sign: 'search', text: stickers ? words.stickers.looking : words.looking };
    case 'ready':
      return { sign: 'check', text: words.ready };
    case 'counting':
      if (pastOnset) return { sign: 'warning', text: words.pastOnset };
      return { sign: 'check', text: doneDose === null ? words.counting : words.doseDone(doneDose) };
    case 'lost':
      if (stickers) return { sign: 'hidden', text: mixedUp ? words.stickers.mixedUp : words.stickers.lost };
      return { sign: 'hidden', text: words.lost };
    case 'ended':
      return { sign: hadToEnd(endedWhy) ? 'warning' : 'wait', text: endedWhy ? words.finishing[endedWhy] : words.saving };
    default:
      return { sign: 'wait', text: words.opening };
  }
}

/** What the banner says now. */
export function useBanner(): Banner {
  const { set } = useWords();
  const stage = useRunState((s) => s.stage);
  const advice = useRunState((s) => s.advice);
  const endedWhy = useRunState((s) => s.endedWhy);
  const pastOnset = useRunState((s) => s.pastOnset);
  const glideNote = useRunState((s) => s.glideNote);
  const mixedUp = useRunState((s) => s.mixedUp);
  const stickers = useRunState(({ plan }) => plan !== null && stickersOfPlan(plan) !== null);
  const doneDose = useRunState(({ plan, count }) => (plan?.targetReps && count >= plan.targetReps ? plan.targetReps : null));
  return bannerOf({ stage, advice, endedWhy, pastOnset, glideNote, mixedUp }, { doneDose, stickers }, set);
}

/** Tells in large words and colours where the set stands. */
export function PhaseBanner() {
  const stage = useRunState((s) => s.stage);
  const warns = useRunState((s) => s.pastOnset || s.glideNote !== null || hadToEnd(s.endedWhy));
  const { sign, text } = useBanner();
  return (
    <div className="phase-banner" data-stage={stage} data-warns={warns} role="status">
      <Icon name={sign} size={52} />
      <p>{text}</p>
    </div>
  );
}
