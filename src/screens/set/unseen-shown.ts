import type { UnseenReason } from '../../stickers/unseen-reason.ts';
import { type Ms, ms } from '../../units.ts';

/** Shown while the set still counts once it has stood this long, so that a flicker is not. Chosen. */
const STANDS_MS = ms(1000);

/** Why stickers are not measured, and since when. */
export interface UnseenStands {
  readonly reason: UnseenReason;
  readonly sinceMs: Ms;
}

/** Follows why stickers are not measured. @param reason null: all are @returns what is to be shown of it while the set counts; null: nothing */
export function hearUnseen(
  state: UnseenStands | null,
  reason: UnseenReason | null,
  nowMs: Ms,
): { readonly state: UnseenStands | null; readonly shown: UnseenReason | null } {
  if (!reason) return { state: null, shown: null };
  if (state?.reason !== reason) return { state: { reason, sinceMs: nowMs }, shown: null };
  return { state, shown: nowMs - state.sinceMs >= STANDS_MS ? reason : null };
}
