import type { DiaryStore } from './diary-store.ts';
import type { SetStore } from './set-store.ts';

/** All that is kept on this machine: the measured sets and the diary, in one database. */
export interface Store extends SetStore {
  readonly diary: DiaryStore;
}
