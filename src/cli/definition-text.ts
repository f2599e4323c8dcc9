import { type DefinitionError, type ExerciseDefinition, readDefinition } from '../exercises/exercise-definition.ts';
import { levelsOf } from '../record/json-levels.ts';
import { fail, type Result } from '../result.ts';
import { plainWords } from './plain-words.ts';

/** Chosen: a definition is some 300 characters, one level deep. */
export const DEFINITION_LIMITS = { characters: 20_000, levels: 4 } as const;

const no = (words: string) => fail<DefinitionError>({ kind: 'definition', words });

/** Reads the text of a file that defines an exercise. All of it is checked. */
export function definitionOfText(text: string): Result<ExerciseDefinition, DefinitionError> {
  const { characters, levels } = DEFINITION_LIMITS;
  if (text.length > characters || levelsOf(text, levels) > levels)
    return no('there is far more than an exercise has: write it as docs/exercise-format.md shows.');
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return no('there is no JSON: write the exercise as docs/exercise-format.md shows.');
  }
  const read = readDefinition(value);
  // A name that stands in the file, repeated by the sentence.
  return read.ok ? read : no(plainWords(read.error.words));
}
