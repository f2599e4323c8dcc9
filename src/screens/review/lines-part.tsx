import type { LineProgress } from '../../dose/progress.ts';
import { isExerciseId } from '../../exercises/exercise.ts';
import { DoneKey } from '../chart/done-strip.tsx';
import { prescribedWords } from '../day/prescribed-words.ts';
import { targetIn } from '../report/prescribed-part.tsx';
import { useWords } from '../words/words-context.tsx';
import { ChartKey, type KeySign } from './chart-key.tsx';
import { LegReview, TARGET_MARKS } from './leg-review.tsx';
import type { Reviewed } from './use-review.ts';

/** Each line of the plan, left and right side by side. */
export function LinesPart({ lines, reviewed }: { readonly lines: readonly LineProgress[]; readonly reviewed: Reviewed }) {
  const words = useWords();
  const { lines: said } = words.review;
  const items = [...new Set(lines.map(({ item }) => item))];
  const signs: readonly (readonly [KeySign, string])[] = [
    [TARGET_MARKS.within, `${said.set}, ${said.target3.within}`],
    [TARGET_MARKS.below, said.target3.below],
    [TARGET_MARKS.above, said.target3.above],
    ['error', said.error],
    ['band', said.band],
    ['reference', said.otherLeg],
  ];
  return (
    <section>
      <h2>{said.title}</h2>
      <DoneKey />
      <ChartKey signs={signs} />
      {items.map((item) => (
        <section key={item.id} className="review-item">
          <h3>{prescribedWords(item.exercise, words).plural}</h3>
          <p className="soft">
            {said.target(targetIn(item.target, words))} {isExerciseId(item.exercise) ? '' : said.notMeasured}
          </p>
          <div className="review-legs">
            {lines
              .filter((line) => line.item === item)
              .map((line) => (
                <LegReview key={line.side} line={line} reviewed={reviewed} />
              ))}
          </div>
        </section>
      ))}
    </section>
  );
}
