import { exerciseOf } from '../../exercises/catalogue.ts';
import type { ExerciseId, SeenBy } from '../../exercises/exercise.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { useStickerWords } from '../words/sticker-catalogues.ts';

interface SeenByChoiceProps {
  readonly exercise: ExerciseId;
  /** Of the group of buttons, one on its screen. */
  readonly name: string;
  readonly hint?: string;
  readonly chosen: SeenBy;
  readonly onChoose: (by: SeenBy) => void;
}

/** By the camera alone, or through stickers. Nothing for exercises that are measured in one way only. */
export function SeenByChoice({ exercise, name, chosen, onChoose, ...hint }: SeenByChoiceProps) {
  const { by, ways } = useStickerWords();
  const { seenBy } = exerciseOf(exercise);
  if (seenBy.length < 2) return null;
  return (
    <OptionCards
      legend={by}
      {...hint}
      name={name}
      options={seenBy.map((value) => ({ value, ...ways[value] }))}
      chosen={chosen}
      onChoose={onChoose}
    />
  );
}
