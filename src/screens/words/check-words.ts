import type { BIG_TOE, SelfCheckId } from '../../symptoms/self-check.ts';

/** Texts of the checks of strength that somebody does alone. */
export interface CheckWords {
  readonly title: string;
  readonly lead: string;
  readonly due: string;
  readonly open: string;
  readonly names: Record<SelfCheckId, string>;
  readonly how: Record<SelfCheckId, string>;
  readonly bigToe: Record<(typeof BIG_TOE)[number], string>;
  /** What today's set of big toe lifts measured, degrees; `other` null: the other side was not measured. */
  readonly toeToday: (own: string, other: string | null) => string;
  /** What the measured lift speaks for; the finger decides. */
  readonly toeHint: Record<'cannot-lift' | 'easily-pushed-down', (answer: string) => string>;
  readonly steps: string;
  readonly seconds: string;
  readonly secondsOf: (n: number) => string;
  readonly yes: string;
  readonly no: string;
  readonly keep: string;
  readonly worseTitle: string;
  readonly worse: (check: string, leg: string) => string;
  readonly worseTodo: string;
  readonly kept: string;
  readonly toToday: string;
}
