import { expect, test } from 'vitest';
import { openSetStore } from '../../src/record/open-store.ts';
import { exerciseWords } from '../../src/screens/parts/exercise-words.ts';
import { en } from '../../src/screens/words/en.ts';
import { fakeBrowser } from './fake-browser.ts';
import { HEEL_SLIDE } from './own-definitions.ts';
import { header, idOf, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

test('a set of a therapist’s own exercise is stored with its definition and shown by its name', async () => {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  const own = header({ exercise: 'own', definition: HEEL_SLIDE });
  wentWell(await store.end(own, { state: 'finished', result: { ...result([rep(1)]), exercise: 'own' } }));
  const read = wentWell(await store.read(idOf(1)));
  expect(read.definition).toEqual(HEEL_SLIDE);
  expect(exerciseWords(read, en.exercises)).toEqual({ plural: 'Heel slide', angle: 'knee' });
});

test.each([
  { what: 'an own exercise without its definition', head: header({ exercise: 'own' }) },
  { what: 'a definition beside a catalogue exercise', head: header({ definition: HEEL_SLIDE }) },
])('$what is not written', async ({ head }) => {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  expect((await store.begin(head)).ok).toBe(false);
});
