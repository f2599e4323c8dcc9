import type { Side } from '../../pose/landmarks.ts';
import { BIG_TOE, HEEL_WALK_STEPS, type SelfCheckId } from '../../symptoms/self-check.ts';
import { OneOf } from '../feel/one-of.tsx';
import type { CheckWords } from '../words/check-words.ts';
import { useWords } from '../words/words-context.tsx';

/** Seconds offered for a heel stand. Chosen: finer is not told apart by counting, longer is not needed to see weakness. */
const SECONDS = [0, 2, 5, 10, 15, 20] as const;

/** The answers that a check can have, as buttons. */
function optionsOf(check: SelfCheckId, words: CheckWords): readonly { readonly value: string; readonly name: string }[] {
  if (check === 'big-toe') return BIG_TOE.map((value) => ({ value, name: words.bigToe[value] }));
  if (check === 'heel-walk')
    return Array.from({ length: HEEL_WALK_STEPS + 1 }, (_, i) => ({ value: String(i), name: String(i) }));
  if (check === 'heel-stand') return SECONDS.map((s) => ({ value: String(s), name: words.secondsOf(s) }));
  return [
    { value: 'no', name: words.no },
    { value: 'yes', name: words.yes },
  ];
}

interface CheckQuestionProps {
  readonly check: SelfCheckId;
  readonly side: Side;
  /** What was measured of it today; null: nothing was. The answer stays the person's own. */
  readonly measured: string | null;
  readonly chosen: string;
  readonly onChoose: (value: string) => void;
}

/** One check of one leg. */
export function CheckQuestion({ check, side, measured, chosen, onChoose }: CheckQuestionProps) {
  const all = useWords();
  const words = all.check;
  const sides = check === 'big-toe' ? all.feet : all.sides;
  const unit = check === 'heel-walk' ? ` (${words.steps})` : '';
  return (
    <>
      <OneOf
        name={`${check} ${side}`}
        legend={`${sides[side].leg}${unit}`}
        options={optionsOf(check, words)}
        chosen={chosen}
        onChoose={onChoose}
      />
      {measured === null ? null : <p className="self-check-measured">{measured}</p>}
    </>
  );
}
