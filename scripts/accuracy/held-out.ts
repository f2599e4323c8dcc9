import { mean } from 'simple-statistics';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';
import type { ClipOutcome } from './clip-outcome.ts';
import { EXERCISE_NAME } from './exercise-name.ts';
import { plain } from './numbers.ts';
import { table } from './table.ts';

/** The part of the report on clips that were rendered after the intervals had been set, and set nothing; empty without any. */
export function heldOutPart(outcomes: readonly ClipOutcome[]): string {
  const held = outcomes.filter((o) => o.source === 'fused' && o.clip.truth.heldOut);
  const rows = EXERCISE_IDS.flatMap((exercise) => {
    const own = held.filter((o) => o.exercise === exercise);
    const matched = own.flatMap((o) => o.matched);
    if (matched.length === 0) return [];
    const holding = matched.filter((m) => m.held).length;
    return [
      [
        EXERCISE_NAME[exercise],
        String(own.length),
        String(matched.length),
        plain(mean(matched.map((m) => Math.abs(m.rangeErrorDeg))), 2),
        plain(mean(matched.map((m) => m.uncertaintyDeg)), 1),
        `${holding} of ${matched.length}`,
      ],
    ];
  });
  if (rows.length === 0) return '';
  return `## Clips that set nothing

Rendered after the constants of the intervals had been chosen, of other bodies, views, light and ranges, and only measured. They are also in the tables above.

${table(['exercise', 'clips', 'repetitions', 'range: mean abs. error', 'interval, -+', 'intervals that hold the truth'], rows)}
`;
}
