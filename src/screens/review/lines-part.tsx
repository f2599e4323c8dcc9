import { legGroups } from '../../dose/leg-groups.ts';
import type { LineProgress } from '../../dose/progress.ts';
import { DoneKey } from '../chart/done-strip.tsx';
import { prescribedWords } from '../day/prescribed-words.ts';
import { targetIn } from '../report/prescribed-part.tsx';
import { useWords } from '../words/words-context.tsx';
import { ChartKey, type KeySign } from './chart-key.tsx';
import { LegReview, TARGET_MARKS } from './leg-review.tsx';
import type { Reviewed } from './use-review.ts';

const SIDES = ['left', 'right'] as const;

/** Each exercise of the plan, left and right side by side. */
export function LinesPart({ lines, reviewed }: { readonly lines: readonly LineProgress[]; readonly reviewed: Reviewed }) {
  const words = useWords();
  const { lines: said } = words.review;
  const groups = legGroups([...new Set(lines.map(({ item }) => item))]).flatMap(([first, ...more]) =>
    first ? [[first, ...more] as const] : [],
  );
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
      {groups.map((group) => (
        <section key={group[0].id} className="review-item">
          <h3>{prescribedWords(group[0].exercise, words).plural}</h3>
          {group.map((item) => (
            <p key={item.id} className="soft">
              {group.length > 1 ? `${item.sides.map((side) => words.sides[side].leg).join(', ')}. ` : ''}
              {said.target(targetIn(item.target, words))}
            </p>
          ))}
          <div className="review-legs">
            {SIDES.flatMap((side) => lines.filter((line) => line.side === side && group.includes(line.item))).map((line) => (
              <LegReview key={line.side} line={line} reviewed={reviewed} />
            ))}
          </div>
        </section>
      ))}
    </section>
  );
}
