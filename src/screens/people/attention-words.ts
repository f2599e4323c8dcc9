import type { Attention } from '../../dose/attention.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import type { Words } from '../words/words.ts';
import { daysAgoIn } from './days-ago.ts';

/** One thing that needs attention, in a line. */
export function attentionWords(each: Attention, words: Words, today: CalendarDay): string {
  const { attention } = words.people;
  switch (each.kind) {
    case 'stopped':
      return attention.stopped[each.stop.urgency ?? 'weakness'];
    case 'flare':
      return attention.flare(daysAgoIn(words.locale, each.day, today), attention.flareWhy[each.reason]);
    case 'step-proposed': {
      const names = new Set(each.steps.map(({ exercise }) => prescribedWords(exercise, words).plural));
      return attention.step([...names].join(', '));
    }
    case 'quiet':
      return attention.quiet(each.days);
    default:
      return each satisfies never;
  }
}
