import { Icon, type IconName } from '../parts/icon.tsx';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { ADVICE_SIGN } from './advice-sign.ts';
import { stickersOfPlan } from './by-stickers.ts';
import './phase-banner.css';
import { hadToEnd, noteWords } from './glide-note.ts';
import { useRunState } from './run-context.tsx';
import type { RunState } from './run-state.ts';

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
    unseen,
  }: Pick<RunState, 'stage' | 'advice' | 'endedWhy' | 'pastOnset' | 'glideNote' | 'mixedUp' | 'unseen'>,
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
      if (unseen) return { sign: 'hidden', text: words.unseen[unseen] };
      return { sign: 'check', text: words.ready };
    case 'counting':
      if (pastOnset) return { sign: 'warning', text: words.pastOnset };
      if (unseen) return { sign: 'hidden', text: words.unseen[unseen] };
      return { sign: 'check', text: doneDose === null ? words.counting : words.doseDone(doneDose) };
    case 'lost':
      if (stickers && mixedUp) return { sign: 'hidden', text: words.stickers.mixedUp };
      if (stickers) return { sign: 'hidden', text: `${words.unseen[unseen ?? 'lost']} ${words.stickers.kept}` };
      return { sign: 'hidden', text: words.lost };
    case 'ended':
      return {
        sign: hadToEnd(endedWhy) ? 'warning' : 'wait',
        text: endedWhy ? (stickers && endedWhy === 'left' ? words.stickers.left : words.finishing[endedWhy]) : words.saving,
      };
    default:
      return { sign: 'wait', text: words.opening };
  }
}

/** What the banner says now. */
export function useBanner(): Banner {
  const { set, away: awayWords } = useWords();
  const away = useRunState((s) => s.away !== null);
  const stage = useRunState((s) => s.stage);
  const advice = useRunState((s) => s.advice);
  const endedWhy = useRunState((s) => s.endedWhy);
  const pastOnset = useRunState((s) => s.pastOnset);
  const glideNote = useRunState((s) => s.glideNote);
  const mixedUp = useRunState((s) => s.mixedUp);
  const unseen = useRunState((s) => s.unseen);
  const stickers = useRunState(({ plan }) => plan !== null && stickersOfPlan(plan) !== null);
  const doneDose = useRunState(({ plan, count }) => (plan?.targetReps && count >= plan.targetReps ? plan.targetReps : null));
  if (away) return { sign: 'warning', text: awayWords.banner };
  return bannerOf({ stage, advice, endedWhy, pastOnset, glideNote, mixedUp, unseen }, { doneDose, stickers }, set);
}

/** Tells in large words and colours where the set stands. */
export function PhaseBanner() {
  const stage = useRunState((s) => s.stage);
  const warns = useRunState((s) => s.away !== null || s.pastOnset || s.glideNote !== null || hadToEnd(s.endedWhy));
  const { sign, text } = useBanner();
  return (
    <div className="phase-banner" data-stage={stage} data-warns={warns} role="status">
      <Icon name={sign} size={52} />
      <p>{text}</p>
    </div>
  );
}
