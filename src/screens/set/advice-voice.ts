import type { ViewAdvice } from '../../measure/live-view.ts';
import { type Ms, ms } from '../../units.ts';

/** An advice is spoken once it has stood this long, so that a flicker is not. Chosen. */
const STANDS_MS = ms(1500);
/** And said again after this long, when it still stands. Chosen: time to get up and move the camera. */
const AGAIN_MS = ms(12_000);

/** When the advice was first given, and when it was last said. */
export interface AdviceVoice {
  readonly advice: ViewAdvice;
  readonly sinceMs: Ms;
  readonly saidMs: Ms | null;
}

/**
 * Follows the most urgent advice and tells when to say it.
 * @param state null before any advice
 * @param advice the most urgent one now; null when there is none
 */
export function hearAdvice(
  state: AdviceVoice | null,
  advice: ViewAdvice | null,
  nowMs: Ms,
): { readonly state: AdviceVoice | null; readonly say: ViewAdvice | null } {
  if (!advice) return { state: null, say: null };
  if (state?.advice !== advice) return { state: { advice, sinceMs: nowMs, saidMs: null }, say: null };
  const due = state.saidMs === null ? nowMs - state.sinceMs >= STANDS_MS : nowMs - state.saidMs >= AGAIN_MS;
  return due ? { state: { ...state, saidMs: nowMs }, say: advice } : { state, say: null };
}
