// @vitest-environment jsdom
/** What somebody needs who does not know an exercise: a drawing of it and what to do in words, in every language. A new exercise without them fails here. */
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { isPrescribedExerciseId } from '../../src/dose/prescribed-exercise.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { EXERCISE_IDS, type ExerciseId } from '../../src/exercises/exercise.ts';
import { newId } from '../../src/record/new-id.ts';
import { ExerciseDrawing } from '../../src/screens/choose/exercise-drawing.tsx';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { LANGUAGES, loadWords } from '../../src/screens/words/languages.ts';
import { WordsContext } from '../../src/screens/words/words-context.tsx';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

/** Words of a sentence that says more than a name. Chosen: "Sitting: lift the foot, lower it" has six. */
const LEAST_WORDS = 6;

const prescribed = (exercise: ExerciseId) => {
  if (!isPrescribedExerciseId(exercise)) throw new Error(`every exercise is to be prescribed, ${exercise} can't be`);
  return exercise;
};

describe.each(EXERCISE_IDS)('%s', (id) => {
  test.each(LANGUAGES)('has its name and its steps in words: %s', async (language) => {
    const { exercises, choose } = await loadWords(language);
    const { name, plural, about, angle } = exercises[id];
    for (const each of [name, plural, angle]) expect(each.trim()).not.toBe('');
    expect(about).toMatch(/\.$/);
    expect(about.split(/\s+/).length).toBeGreaterThanOrEqual(LEAST_WORDS);
    // One step after the other.
    expect(about).toMatch(/[:,;.].+[,;.]/);
    const { posture } = exerciseOf(id);
    expect(choose.camera[posture]).toMatch(/\.$/);
    expect(choose.cameraDrawing[posture]).not.toBe('');
  });

  test('is not said in the same words as another, nor in those of another language', async () => {
    const all = await Promise.all(LANGUAGES.map(async (language) => (await loadWords(language)).exercises));
    const abouts = all.flatMap((exercises) => EXERCISE_IDS.map((other) => exercises[other].about));
    for (const exercises of all) expect(abouts.filter((about) => about === exercises[id].about)).toHaveLength(1);
  });

  test('is drawn, each leg as the mirror image of the other, and no other is drawn like it', () => {
    const drawn = (exercise: ExerciseId, side: 'left' | 'right') => {
      const { container } = render(<ExerciseDrawing exercise={prescribed(exercise)} side={side} />);
      return container.innerHTML;
    };
    const [left, right] = [drawn(id, 'left'), drawn(id, 'right')];
    expect(left).toContain('class="move"');
    expect(left).not.toBe(right);
    expect(left.replace(/ transform="[^"]*"/, '')).toBe(right.replace(/ transform="[^"]*"/, ''));
    expect(EXERCISE_IDS.filter((other) => drawn(other, 'left') === left)).toEqual([id]);
  });

  test.each(LANGUAGES)('stands with a drawing and its steps where it begins: %s', async (language) => {
    const words = await loadWords(language);
    const { services, entries } = fakeServices();
    const item = startingDose(prescribed(id), newId(), ['left']);
    entries.push(
      {
        ...entryNow(),
        kind: 'prescription',
        by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
        revises: null,
        items: [item],
        selfChecks: { checks: [], sides: [], everyDays: 7 },
      },
      { ...entryNow(), kind: 'red-flags', answers: ALL_NO },
    );
    const { container } = shownAt(`/today/go/${item.id}/left`, services, (app) => (
      <WordsContext value={words}>{app}</WordsContext>
    ));
    const steps = await screen.findByText(words.exercises[id].about);
    const drawing = container.querySelector('.go-what svg');
    expect(drawing).not.toBeNull();
    // Either its own name, or it is left out beside the words that say the same.
    expect(drawing?.getAttribute('aria-hidden') === 'true' || (drawing?.getAttribute('aria-label') ?? '') !== '').toBe(true);
    expect(steps.closest('.go-what')).not.toBeNull();
  });
});
