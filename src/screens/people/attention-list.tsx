import type { Attention } from '../../dose/attention.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { Icon, type IconName } from '../parts/icon.tsx';
import { useWords } from '../words/words-context.tsx';
import './attention-list.css';
import { attentionWords } from './attention-words.ts';

const ICONS: Readonly<Record<Attention['kind'], IconName>> = {
  stopped: 'warning',
  flare: 'warning',
  'step-proposed': 'plus',
  quiet: 'wait',
};

interface AttentionListProps {
  readonly attention: readonly Attention[];
  readonly today: CalendarDay;
}

/** What needs the therapist, a line each, the most urgent first. */
export function AttentionList({ attention, today }: AttentionListProps) {
  const words = useWords();
  return (
    <ul className="attention-list">
      {attention.map((each) => (
        <li key={each.kind} data-kind={each.kind}>
          <Icon name={ICONS[each.kind]} />
          {attentionWords(each, words, today)}
        </li>
      ))}
    </ul>
  );
}
