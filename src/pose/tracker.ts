import { type Picture, type QuarterTurn, uprightSize } from '../capture/frame.ts';
import { scratchCanvas } from '../capture/scratch-canvas.ts';
import type { Ms } from '../units.ts';
import { findHead, type HeadTowards, headUpTurn, type Posture } from './head-up.ts';
import type { Landmarker } from './landmarker.ts';
import type { Landmark, PoseFrame, Side } from './landmarks.ts';
import { type Steadiness, watchLengths } from './steadiness.ts';
import { drawTurned } from './turned-picture.ts';

/** What the tracker must know of the set. */
export interface PoseView {
  readonly posture: Posture;
  readonly head: HeadTowards;
  readonly side: Side;
}

/** Follows one person through a set. */
export interface PoseTracker {
  /** @param turn clockwise turn that sets `image` upright; points come back in px of the upright picture */
  readonly observe: (image: Picture, turn: QuarterTurn, tMs: Ms) => Promise<PoseFrame>;
}

const plus = (a: QuarterTurn, b: QuarterTurn): QuarterTurn => ((a + b) % 360) as QuarterTurn;

/**
 * A tracker over `landmarker` for one set. Lying people are drawn with the head up (the model knows upright people best),
 * and a track whose leg changes its length is dropped and searched afresh.
 */
export function startTracker(landmarker: Landmarker, view: PoseView): PoseTracker {
  const canvas = scratchCanvas(1, 1);
  let head: 'left' | 'right' | null = view.head === 'find' ? null : view.head;
  let lengths: Steadiness | null = null;

  const detect = (image: Picture, turn: QuarterTurn, bodyTurn: QuarterTurn, tMs: Ms): readonly Landmark[] | null => {
    const upright = uprightSize(image, turn);
    const total = plus(turn, bodyTurn);
    if (total === 0) return landmarker.detect(image, tMs, bodyTurn, upright);
    drawTurned(canvas, image, total);
    return landmarker.detect(canvas, tMs, bodyTurn, upright);
  };

  const find = async (image: Picture, turn: QuarterTurn, tMs: Ms): Promise<'left' | 'right' | null> => {
    await landmarker.forget();
    const asLeft = detect(image, turn, headUpTurn('left'), tMs);
    await landmarker.forget();
    const asRight = detect(image, turn, headUpTurn('right'), tMs);
    await landmarker.forget();
    return findHead(asLeft, asRight);
  };

  return {
    async observe(image, turn, tMs) {
      if (view.posture === 'lying' && !head) {
        head = await find(image, turn, tMs);
        if (!head) return { tMs, landmarks: null };
      }
      const landmarks = detect(image, turn, view.posture === 'lying' && head ? headUpTurn(head) : 0, tMs);
      if (!landmarks) return { tMs, landmarks: null };
      const watched = watchLengths(lengths, landmarks, view.side, tMs);
      lengths = watched.state;
      if (watched.astray) {
        await landmarker.forget();
        lengths = null;
        if (view.head === 'find') head = null;
      }
      return { tMs, landmarks };
    },
  };
}
