import { newId } from '../../record/new-id.ts';
import type { Mark } from './marks.ts';

/** The marks that are taken together, from the first until they are cleared. */
export interface Session {
  readonly id: string;
  readonly marks: readonly Mark[];
  /** Ids of those that are in the diary. */
  readonly kept: ReadonlySet<string>;
}

export const freshSession = (): Session => ({ id: newId(), marks: [], kept: new Set() });
