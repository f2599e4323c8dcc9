import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import type { Context } from '../../src/fhir/prepared.ts';
import { resourcesOf } from '../../src/fhir/resources.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { idOf } from '../record/set-builders.ts';

/** Ids that count up. */
export function counting(): () => string {
  let n = 900_000;
  return () => {
    n += 1;
    return idOf(n);
  };
}

export const contextOf = (diary: readonly DiaryEntry[], over: Partial<Context> = {}): Context => ({
  naming: DEFAULT_NAMING,
  subject: { kind: 'own', id: idOf(700), name: 'Ina Invented' },
  version: '0.1.0',
  texts: true,
  diary,
  ...over,
});

/** All resources of somebody's records. */
export const preparedOf = (
  { sets, diary }: { readonly sets: readonly StoredSet[]; readonly diary: readonly DiaryEntry[] },
  over: Partial<Context> = {},
) => resourcesOf(contextOf(diary, over), sets, diary);
