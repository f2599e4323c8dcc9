import type { Stop } from '../../symptoms/may-exercise.ts';
import type { Words } from '../words/words.ts';

/** What stopped the sets, in sentences. */
export function stopIn({ flags, weakness }: Stop, { report, day }: Words): string {
  const signs = flags.length > 0 ? [report.safety.yesTo, ...flags.map((flag) => day.questions.flags[flag])] : [];
  const causes = [...new Set(weakness.map(({ kind }) => report.safety.weakness[kind]))];
  return [...signs, ...causes].join(' ');
}
