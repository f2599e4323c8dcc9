import * as v from 'valibot';
import { fail, ok, type Result } from '../result.ts';
import { type Deg, deg, type Ms, ms, type Ratio, ratio } from '../units.ts';

/** An exercise as a therapist defines it, see docs/exercise-format.md. */
export interface ExerciseDefinition {
  readonly name: string;
  readonly angle: 'ankle-dorsiflexion' | 'leg-elevation' | 'knee-flexion' | 'foot-elevation';
  readonly direction: 'rises' | 'falls';
  readonly posture: 'upright' | 'lying' | 'standing';
  /** Which leg it is for: the one that the camera sees. */
  readonly side: 'left' | 'right' | 'either';
  readonly noticeDeg: Deg;
  readonly leastDeg: Deg;
  readonly completeShare: Ratio;
  readonly leastMs: Ms;
}

/** `words`: one sentence, what is wrong and what to do. */
export type DefinitionError = { readonly kind: 'definition'; readonly words: string };

/** Bounds of what makes sense. Chosen: below the least, noise is counted; above the most, nothing is. */
const BOUNDS = {
  nameCharacters: 60,
  noticeDeg: [1, 30],
  leastDeg: [1, 120],
  completeShare: [0.2, 0.95],
  leastMs: [100, 10_000],
} as const;

const oneOf = <const T extends readonly string[]>(field: string, values: T) =>
  v.picklist(values, `${field} must be one of ${values.join(', ')}: write one of them.`);

/** What stood in the file, not longer than some words, as a sentence repeats it. 60 characters, chosen. */
const brief = (text: string): string => (text.length > 60 ? `${Array.from(text).slice(0, 60).join('')} …` : text);

const within = (field: 'noticeDeg' | 'leastDeg' | 'completeShare' | 'leastMs', unit: string) => {
  const [least, most] = BOUNDS[field];
  const words = `${field} must be a number from ${least} to ${most}${unit}: write such a number without quotes.`;
  return v.pipe(v.number(words), v.finite(words), v.minValue(least, words), v.maxValue(most, words));
};

const NAME = `name must be a text of 1 to ${BOUNDS.nameCharacters} characters on one line: give the exercise a short name.`;

const definitionShape = v.pipe(
  v.strictObject(
    {
      name: v.pipe(
        v.string(NAME),
        v.check((name) => name.trim() === name && name.length > 0 && name.length <= BOUNDS.nameCharacters, NAME),
        v.check((name) => !/\p{Cc}/u.test(name), NAME),
      ),
      angle: oneOf('angle', ['ankle-dorsiflexion', 'leg-elevation', 'knee-flexion', 'foot-elevation']),
      direction: oneOf('direction', ['rises', 'falls']),
      posture: oneOf('posture', ['upright', 'lying', 'standing']),
      side: oneOf('side', ['left', 'right', 'either']),
      noticeDeg: v.pipe(within('noticeDeg', ' degrees'), v.transform(deg)),
      leastDeg: v.pipe(within('leastDeg', ' degrees'), v.transform(deg)),
      completeShare: v.pipe(within('completeShare', ''), v.transform(ratio)),
      leastMs: v.pipe(within('leastMs', ' ms'), v.transform(ms)),
    },
    (issue) =>
      issue.expected === 'never'
        ? `${brief(issue.received)} is no field of an exercise: take it out or correct its spelling.`
        : `The exercise must be an object with every field of docs/exercise-format.md, not ${brief(issue.received)}: write it as shown there.`,
  ),
  v.check(
    ({ noticeDeg, leastDeg }) => leastDeg >= noticeDeg,
    'leastDeg must not be smaller than noticeDeg: raise it, or lower noticeDeg.',
  ),
  v.check(
    ({ angle, posture }) => angle !== 'leg-elevation' || posture === 'lying',
    'posture must be lying for leg-elevation, which is measured from the resting leg on the mat: write lying.',
  ),
);

export const exerciseDefinitionShape = definitionShape satisfies v.GenericSchema<unknown, ExerciseDefinition>;

/** Reads a definition from a parsed JSON value. */
export function readDefinition(value: unknown): Result<ExerciseDefinition, DefinitionError> {
  const parsed = v.safeParse(definitionShape, value, { abortEarly: true });
  if (parsed.success) return ok(parsed.output);
  const [issue] = parsed.issues;
  const key = issue.path?.at(-1)?.key;
  const missing = issue.expected !== 'never' && issue.received === 'undefined' && key !== undefined;
  return fail({
    kind: 'definition',
    words: missing ? `${String(key)} is missing: add it, see docs/exercise-format.md.` : issue.message,
  });
}
