import type { ExerciseId } from '../exercises/exercise.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';

/** A knee limit outside of this means something else than a limit, deg. Chosen: the landmarks scatter by less than the least. */
const LEAST_LIMIT = 5;
const MOST_LIMIT = 90;

/** A plain number, without the kinds that `Number` also takes: empty, hexadecimal, infinite. */
const numberIn = (text: string): number | null => (/^\d+(\.\d+)?$/.test(text) ? Number(text) : null);

interface Texts {
  readonly kneeLimit: string | undefined;
  readonly onset: string | undefined;
}

/** `words` is one sentence. */
type LegRaiseError = { readonly kind: 'leg-raise-option'; readonly words: string };

/** What is said of a leg raise on the command line. */
export function legRaiseOptions(
  { kneeLimit, onset }: Texts,
  exercise: ExerciseId | null,
): Result<{ readonly kneeLimitDeg: Deg | null; readonly onsetMs: Ms | null }, LegRaiseError> {
  if ((kneeLimit !== undefined || onset !== undefined) && exercise !== 'leg-raise') {
    const option = kneeLimit === undefined ? '--onset' : '--knee-limit';
    return fail({
      kind: 'leg-raise-option',
      words: `${option} is for leg-raise, not for ${exercise ?? 'an exercise of your own'}: leave it out.`,
    });
  }
  const limit = kneeLimit === undefined ? null : numberIn(kneeLimit);
  if (kneeLimit !== undefined && (limit === null || limit < LEAST_LIMIT || limit > MOST_LIMIT)) {
    return fail({
      kind: 'leg-raise-option',
      words: `Give --knee-limit in degrees, from ${LEAST_LIMIT} to ${MOST_LIMIT}, not "${kneeLimit}".`,
    });
  }
  const seconds = onset === undefined ? null : numberIn(onset);
  if (onset !== undefined && seconds === null) {
    return fail({
      kind: 'leg-raise-option',
      words: `Give --onset in seconds from the start of the clip, such as 12.5, not "${onset}".`,
    });
  }
  return ok({ kneeLimitDeg: limit === null ? null : deg(limit), onsetMs: seconds === null ? null : ms(seconds * 1000) });
}
