import type { Words } from '../words/words.ts';
import type { CheckRow } from './check-rows.ts';

/** What a check of strength found, in words. */
export function foundIn(
  { check, found }: { readonly check: CheckRow['check']; readonly found: CheckRow['first']['found'] },
  words: Words,
): string {
  const { check: said, report } = words;
  switch (found) {
    case 'cannot-lift':
    case 'easily-pushed-down':
    case 'as-strong':
      return said.bigToe[found];
    case 'yes':
    case 'no':
      return said[found];
    case 'not-answered':
      return words.progress.unsaid;
    default:
      return check === 'heel-walk' ? report.checks.steps(found) : said.secondsOf(found);
  }
}
