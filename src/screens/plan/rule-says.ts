import type { DoseChange, ProgressionRule, Threshold } from '../../dose/progression-rule.ts';
import type { PrescribeWords } from '../words/prescribe-words.ts';

/** A step up in one sentence: when it comes, how much, how much at most. @param place among the steps, from 0 */
export function stepSays(
  { field, by }: DoseChange,
  place: number,
  { goodDays, limits }: ProgressionRule,
  { rule }: PrescribeWords,
): string {
  return `${place === 0 ? rule.after(goodDays) : rule.next} ${rule.up[field](by, limits[field].most)}`;
}

/** What each threshold does, in one sentence with its value. */
export function thresholdSays(threshold: Exclude<Threshold, 'goodDays'>, rule: ProgressionRule, words: PrescribeWords): string {
  const { setsADay, repsASet } = rule.limits;
  const says = words.rule;
  switch (threshold) {
    case 'clearRise':
      return says.back(rule.clearRise, setsADay.least, repsASet.least);
    case 'settledWithin':
      return says.settled(rule.settledWithin);
    case 'goodDaysAfterFlare':
      return says.afterFlare(rule.goodDaysAfterFlare);
    case 'doneShare':
      return says.done(Math.round(100 * rule.doneShare));
    case 'freshDays':
      return says.fresh(rule.freshDays);
    default:
      return threshold satisfies never;
  }
}

/** The rule as it stands folded: every step up with its limit, and the step back. */
export const ruleSays = (rule: ProgressionRule, words: PrescribeWords): readonly string[] => [
  ...(rule.steps.length === 0 ? [words.rule.never] : rule.steps.map((step, i) => stepSays(step, i, rule, words))),
  thresholdSays('clearRise', rule, words),
];
