import type { DoseLog } from '../../dose/dose-log.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { dayIn } from '../day/clock-words.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { whenIn } from '../parts/when.ts';
import { useWords } from '../words/words-context.tsx';

interface RemovedSetsProps {
  readonly log: Pick<DoseLog, 'removals'>;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** What was taken back in these days: that there was a set, and when it was removed. Nothing when nothing was. */
export function RemovedSets({ log, from, to }: RemovedSetsProps) {
  const words = useWords();
  const rows = log.removals.filter(({ day }) => day >= from && day <= to).toSorted((a, b) => (a.at > b.at ? -1 : 1));
  if (rows.length === 0) return null;
  const { sets } = words.review;
  return (
    <>
      <h3>{sets.removedTitle}</h3>
      <ul>
        {rows.map(({ id, what, day }) => (
          <li key={id}>
            {what ? (
              <>
                {what.exercise === 'own' ? '' : `${prescribedWords(what.exercise, words).plural}, `}
                {words.sides[what.side].legLower}, {whenIn(words.locale, what.doneAt)}
                {': '}
              </>
            ) : null}
            {sets.removedOn(dayIn(words.locale, day))}
          </li>
        ))}
      </ul>
    </>
  );
}
