import { type Attention, attentionOn, urgencyOf } from '../../dose/attention.ts';
import type { PersonFacts } from '../../dose/person-facts.ts';
import type { ListedPerson } from '../../record/people-store.ts';
import type { Person } from '../../record/person.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import type { PeopleOrder } from './people-view.ts';

/** One person as the list shows them on a day. */
export interface PersonLine {
  readonly person: Person;
  /** Null while they are worked out. */
  readonly facts: PersonFacts | null;
  readonly attention: readonly Attention[];
}

export const personLine = ({ person, facts }: ListedPerson, day: CalendarDay): PersonLine => ({
  person,
  facts,
  attention: facts ? attentionOn(facts, person.seenUntil, day) : [],
});

/** Letters alone: without case and accents, so that "jose" finds "José". */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();

/** Those whose name has the text in it, in the order asked for; people alike in it go by name. */
export function orderedLines(
  lines: readonly PersonLine[],
  search: string,
  order: PeopleOrder,
  locale: string,
): readonly PersonLine[] {
  const wanted = plain(search.trim());
  const byName = new Intl.Collator(locale, { sensitivity: 'base', numeric: true }).compare;
  const before = (a: PersonLine, b: PersonLine): number => {
    if (order === 'attention') return urgencyOf(a.attention) - urgencyOf(b.attention);
    if (order === 'heard') return byName(b.facts?.lastActivity ?? '', a.facts?.lastActivity ?? '');
    return 0;
  };
  return lines
    .filter(({ person }) => plain(person.name).includes(wanted))
    .toSorted((a, b) => before(a, b) || byName(a.person.name, b.person.name));
}
