import type { RangeDifference, Verdict } from '../../compare/range-difference.ts';
import type { Target } from '../../dose/prescribed-exercise.ts';
import type { RangeProgress } from '../../dose/range-progress.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { degreesIn } from '../result/degrees.ts';
import type { ReportWords } from '../words/report-words.ts';

/** With more days than this, only the drawing and the files show each of them. Chosen: what two weeks have. */
const MOST_DAYS_WRITTEN = 14;

/** A signed difference against what it must exceed, in words. */
function differenceIn(
  { differenceDeg, limitDeg, verdict }: RangeDifference,
  words: Record<Verdict, (d: string, limit: string) => string>,
  locale: string,
): string {
  const signed = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1, signDisplay: 'exceptZero' });
  return words[verdict](signed.format(differenceDeg), degreesIn(locale)(limitDeg));
}

/** How far one leg went, in sentences for a therapist: every day, against the target, what changed, and the other leg. */
export function rangeLines(
  { days, change, otherSide }: RangeProgress,
  target: Target,
  { measured, prescribed }: Pick<ReportWords, 'measured' | 'prescribed'>,
  locale: string,
): readonly string[] {
  const degrees = degreesIn(locale);
  const last = days.at(-1);
  const written = days.slice(-MOST_DAYS_WRITTEN).map(({ day, rangeDeg }) => `${shortDayIn(locale, day)} ${degrees(rangeDeg)}`);
  const lines: string[] = [];
  if (last) {
    const [said, error] = [written.join('; '), degrees(last.bandDeg)];
    lines.push(written.length < days.length ? measured.dailyLast(said, error, written.length) : measured.daily(said, error));
  }
  if (last?.target && target.kind === 'range')
    lines.push(measured.target[last.target](prescribed.range(target.fromDeg, target.toDeg)));
  if (!change) lines.push(measured.onlyDay);
  else lines.push(change.ok ? differenceIn(change.value, measured.change, locale) : measured.changeTooFew);
  if (!otherSide) lines.push(measured.noOther);
  else lines.push(otherSide.ok ? differenceIn(otherSide.value, measured.otherLeg, locale) : measured.otherTooFew);
  return lines;
}
