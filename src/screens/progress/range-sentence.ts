import type { RangeDifference, TooFewRepetitions } from '../../compare/range-difference.ts';
import type { RangeProgress } from '../../dose/range-progress.ts';
import type { Result } from '../../result.ts';
import { deg } from '../../units.ts';
import { degreesIn } from '../result/degrees.ts';
import type { ProgressWords } from '../words/progress-words.ts';

/** A difference in words: more, less, or none that is sure. */
function differenceIn(
  compared: Result<RangeDifference, TooFewRepetitions>,
  words: {
    readonly more: (d: string) => string;
    readonly less: (d: string) => string;
    readonly none: string;
    readonly tooFew: string;
  },
  locale: string,
): string {
  if (!compared.ok) return words.tooFew;
  const { differenceDeg, verdict } = compared.value;
  if (verdict === 'within-error') return words.none;
  return (differenceDeg > 0 ? words.more : words.less)(degreesIn(locale)(deg(Math.abs(differenceDeg))));
}

/** How far the leg goes, whether that has changed, and how it stands to the other leg, in sentences. */
export function rangeSentence({ days, change, otherSide }: RangeProgress, words: ProgressWords, locale: string): string {
  const degrees = degreesIn(locale);
  const last = days.at(-1);
  const { further: more, less, noChange: none, tooFew } = words;
  return [
    ...(last ? [words.rangeNow(degrees(last.rangeDeg), degrees(last.bandDeg))] : []),
    ...(last?.target ? [words.target[last.target]] : []),
    ...(change ? [differenceIn(change, { more, less, none, tooFew }, locale)] : []),
    ...(otherSide
      ? [differenceIn(otherSide, { more: words.otherFurther, less: words.otherLess, none: words.otherAlike, tooFew }, locale)]
      : []),
  ].join(' ');
}
