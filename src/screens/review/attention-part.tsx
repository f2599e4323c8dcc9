import type { Concern } from '../../dose/concerns.ts';
import { glideCount } from '../../dose/glide-sets.ts';
import type { LineProgress } from '../../dose/progress.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { countTold } from '../glide/glide-told.ts';
import { glideVerdict } from '../glide/glide-verdict.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { Notice } from '../parts/notice.tsx';
import { useGlideWords } from '../words/glide-catalogues.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { stopIn } from './stop-in.ts';

/** One thing to look at, in sentences. */
function saidOf(found: Concern, words: Words): string {
  const { review, day, locale } = words;
  const said = review.attention;
  const name = (exercise: Parameters<typeof prescribedWords>[0]) => prescribedWords(exercise, words).plural;
  switch (found.kind) {
    case 'stopped':
      return `${said.stopped} ${stopIn(found.stop, words)}`;
    case 'contact':
      return `${said.contact(name(found.item.exercise))} ${day.proposal.flare[found.reason.kind]}`;
    case 'flares': {
      const reasons = [...new Set(found.last.lines.map(({ reason }) => reason.kind))].map((kind) => {
        const lines = found.last.lines.filter(({ reason }) => reason.kind === kind);
        return `${lines.map(({ item }) => name(item.exercise)).join(', ')}: ${day.proposal.flare[kind]}`;
      });
      return [said.flares(found.days, shortDayIn(locale, found.last.day)), ...reasons].join(' ');
    }
    case 'quiet':
      return found.lastDay === null ? said.never(found.days) : said.quiet(found.days, shortDayIn(locale, found.lastDay));
    default:
      return found satisfies never;
  }
}

/** What has to be looked at first, the gravest first; then glides that were last done the other way round. */
export function AttentionPart({ found, lines }: { readonly found: readonly Concern[]; readonly lines: readonly LineProgress[] }) {
  const words = useWords();
  const glideWords = useGlideWords();
  const { attention } = words.review;
  const tensions = lines.flatMap(({ item, side, glides }) => {
    const last = glides.at(-1);
    return last && glideVerdict(last.glide).kind === 'wrong-way' ? [{ item, side, last }] : [];
  });
  if (found.length + tensions.length === 0) return <p className="review-calm">{attention.nothing}</p>;
  const isStopped = found.some(({ kind }) => kind === 'stopped');
  return (
    <Notice icon="warning" look={isStopped ? 'fault' : 'caution'} title={attention.title}>
      <ul>
        {found.map((each) => (
          <li key={each.kind === 'contact' ? each.item.id : each.kind}>{saidOf(each, words)}</li>
        ))}
        {tensions.map(({ item, side, last }) => (
          <li key={`${item.id} ${side}`}>
            {glideWords.told.wrongWay(
              `${prescribedWords(item.exercise, words).plural}, ${limbsOf(item.exercise, words)[side].legLower}`,
              shortDayIn(words.locale, last.day),
              countTold(glideCount([last.glide]), glideWords),
            )}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
