import type { Side } from '../../pose/landmarks.ts';
import type { SelfCheck, SelfCheckFinding, SelfCheckId } from '../../symptoms/self-check.ts';

/** What is answered to one check of one leg; texts and numbers as the buttons have them. */
export type Answers = ReadonlyMap<string, string>;

const SIDES: readonly Side[] = ['left', 'right'];

export const answerKey = (check: SelfCheckId, side: Side): string => `${check} ${side}`;

/** The finding that a button's value stands for; without one it was not answered. */
function findingOf(check: SelfCheckId, value: string | undefined): SelfCheckFinding {
  const found = value ?? 'not-answered';
  if (found === 'not-answered') return { check, found } as SelfCheckFinding;
  return (
    check === 'heel-walk' || check === 'heel-stand' ? { check, found: Number(found) } : { check, found }
  ) as SelfCheckFinding;
}

/** All checks of both legs, answered or not. */
export const findingsOf = (checks: readonly SelfCheckId[], answers: Answers): SelfCheck['findings'] =>
  checks.flatMap((check) => SIDES.map((side) => ({ ...findingOf(check, answers.get(answerKey(check, side))), side })));
