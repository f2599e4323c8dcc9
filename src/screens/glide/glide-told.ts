import { type GlideCount, type GlideSet, glideCount } from '../../dose/glide-sets.ts';
import type { GlideResult, LegHeld } from '../../measure/set-result.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { degreesIn } from '../result/degrees.ts';
import type { GlideWords } from '../words/glide-words.ts';
import { againstLimit } from './against-limit.ts';
import { strengthsAround } from './felt-in.ts';

/** So many sets are written with what was felt around them, the latest ones. Chosen: a line or two of the report. */
const MOST_FELT = 5;

/** Cycles by their pattern; what there is none of is left out. */
export const countTold = ({ slide, cycles, tension, unclear }: GlideCount, { told }: GlideWords): string =>
  [
    told.slides(slide, cycles),
    ...(tension > 0 ? [told.tension(tension)] : []),
    ...(unclear > 0 ? [told.unclear(unclear)] : []),
  ].join(', ');

/** Where the leg was held, its limit, and whether it rose above it for sure. */
export function legTold(leg: LegHeld, { told }: GlideWords, locale: string): string {
  const degrees = degreesIn(locale);
  const held = told.leg(`${degrees(leg.medianDeg)}° ± ${degrees(leg.uncertaintyDeg)}°`);
  const over = againstLimit(leg) === 'over' ? [told.overLimit(degrees(leg.highestDeg))] : [];
  return [`${held} (${told.limit[leg.limitFrom](degrees(leg.limitDeg))})`, ...over].join(', ');
}

/** One set in a few words: which way, how high, why it was ended. */
export const setTold = (glide: GlideResult, words: GlideWords, locale: string): readonly string[] => [
  countTold(glideCount([glide]), words),
  ...(glide.legHeld ? [legTold(glide.legHeld, words, locale)] : []),
  ...(glide.stopped ? [words.told.stopped[glide.stopped]] : []),
];

/** Several sets of one leg in sentences for a therapist: all cycles, the last set's leg, early ends, and what was felt around the latest sets. */
export function glidesTold(sets: readonly GlideSet[], words: GlideWords, locale: string): readonly string[] {
  const { told } = words;
  const last = sets.at(-1);
  if (!last) return [];
  const count = glideCount(sets.map(({ glide }) => glide));
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  const share = count.slideShare === null ? [] : [told.share(percent.format(count.slideShare))];
  const early = sets.filter(({ glide }) => glide.stopped !== null).length;
  const felt = sets.flatMap(({ day, around }) => {
    const strengths = strengthsAround(around);
    return strengths === null ? [] : [`${shortDayIn(locale, day)} ${strengths}`];
  });
  return [
    `${[countTold(count, words), ...share, told.sets(sets.length)].join(' ')}.`,
    ...(last.glide.legHeld
      ? [`${told.lastSet(shortDayIn(locale, last.day))} ${legTold(last.glide.legHeld, words, locale)}.`]
      : []),
    ...(early > 0 ? [told.stoppedSets(early)] : []),
    ...(felt.length > 0 ? [told.felt(felt.slice(-MOST_FELT).join('; '))] : []),
  ];
}
