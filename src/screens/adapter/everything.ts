import type { PersonStore } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Everything, Problem } from '../services.ts';
import { allSets } from './all-sets.ts';
import { problemOf } from './problem-of.ts';

/** Reads every set and the whole diary. */
export async function everythingIn(opening: Promise<Result<PersonStore, StoreError>>): Promise<Result<Everything, Problem>> {
  const store = await opening;
  if (!store.ok) return fail(problemOf(store.error));
  const sets = await allSets(store.value);
  if (!sets.ok) return fail(problemOf(sets.error));
  const diary = await store.value.diary.all();
  if (!diary.ok) return fail(problemOf(diary.error));
  const damaged = [...sets.value.damaged, ...diary.value.damaged];
  return ok({ sets: sets.value.sets, diary: diary.value.entries, damaged });
}
