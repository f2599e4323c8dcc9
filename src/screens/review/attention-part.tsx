import type { Concern } from '../../dose/concerns.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { lineName } from '../day/line-name.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { Notice } from '../parts/notice.tsx';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';

/** One thing to look at, in sentences. */
function saidOf(found: Concern, words: Words): string {
  const { review, report, day, locale } = words;
  const said = review.attention;
  const name = (exercise: Parameters<typeof prescribedWords>[0]) => prescribedWords(exercise, words).plural;
  switch (found.kind) {
    case 'stopped': {
      const { flags, weakness } = found.stop;
      const signs = flags.length > 0 ? [report.safety.yesTo, ...flags.map((flag) => day.questions.flags[flag])] : [];
      const causes = [...new Set(weakness.map(({ kind }) => report.safety.weakness[kind]))];
      return [said.stopped, ...signs, ...causes].join(' ');
    }
    case 'contact':
      return `${said.contact(name(found.item.exercise))} ${day.proposal.flare[found.reason.kind]}`;
    case 'flares': {
      const items = found.last.lines.map(({ item }) => item);
      const lines = found.last.lines.map(
        ({ item, reason }) => `${lineName(item, items, words)}: ${day.proposal.flare[reason.kind]}`,
      );
      return [said.flares(found.days, shortDayIn(locale, found.last.day)), ...lines].join(' ');
    }
    case 'quiet':
      return found.lastDay === null ? said.never(found.days) : said.quiet(found.days, shortDayIn(locale, found.lastDay));
    default:
      return found satisfies never;
  }
}

/** What has to be looked at first, the gravest first. */
export function AttentionPart({ found }: { readonly found: readonly Concern[] }) {
  const words = useWords();
  const { attention } = words.review;
  if (found.length === 0) return <p className="review-calm">{attention.nothing}</p>;
  const isStopped = found.some(({ kind }) => kind === 'stopped');
  return (
    <Notice icon="warning" look={isStopped ? 'fault' : 'caution'} title={attention.title}>
      <ul>
        {found.map((each) => (
          <li key={each.kind === 'contact' ? each.item.id : each.kind}>{saidOf(each, words)}</li>
        ))}
      </ul>
    </Notice>
  );
}
