import type { Facing } from '../../angles/joint-angle.ts';
import type { PictureSize } from '../../capture/frame.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { facingOf } from '../../measure/leg-sample.ts';
import type { LegDrawing } from '../../measure/live-view.ts';
import type { SetResult } from '../../measure/set-result.ts';
import type { Ms } from '../../units.ts';
import type { Problem } from '../services.ts';
import type { Run } from '../set/run.ts';
import type { DeskTask } from './desk-choice.ts';

/** One picture of a film that was watched. */
export interface FilmFrame {
  /** The file's own time of it. */
  readonly tMs: Ms;
  readonly leg: LegDrawing | null;
}

/** A film that was measured as a whole, to be looked at picture by picture. */
export interface Film extends DeskTask {
  readonly file: File;
  readonly size: PictureSize;
  /** In order of time; at least one. */
  readonly frames: readonly FilmFrame[];
  /** Null: no movement was followed in it. */
  readonly result: SetResult | null;
  /** What was in the way of measuring all of it. */
  readonly problem: Problem | null;
}

/** Keeps where the leg was seen in each picture of a film, while it is measured. @returns the end of it */
export function watchLegs(run: Run, legs: Map<Ms, LegDrawing | null>): () => void {
  return run.moment.subscribe((now, before) => {
    // A new time is a picture that is yet to be looked at; what is told at the same time was seen in it.
    if (run.state.getState().plan?.pictures.kind === 'file' && now.tMs === before.tMs) legs.set(now.tMs, now.leg);
  });
}

export const framesOf = (legs: ReadonlyMap<Ms, LegDrawing | null>): readonly FilmFrame[] =>
  [...legs].map(([tMs, leg]) => ({ tMs, leg })).toSorted((a, b) => a.tMs - b.tMs);

/** Which way the leg points in most pictures of a film: a leg that is raised high points the other way. Null: it was never seen. */
export function facingIn({ frames, exercise }: Pick<Film, 'frames' | 'exercise'>): Facing | null {
  const { posture } = exerciseOf(exercise);
  const seen = frames.flatMap(({ leg }) => (leg ? [facingOf(leg, posture)] : []));
  const left = seen.filter((facing) => facing === 'left').length;
  return seen.length === 0 ? null : left >= seen.length / 2 ? 'left' : 'right';
}

/** The picture of a film nearest to a time. */
export const frameNear = (frames: readonly FilmFrame[], tMs: Ms): number =>
  frames.reduce((best, { tMs: at }, i) => (Math.abs(at - tMs) < Math.abs((frames[best] as FilmFrame).tMs - tMs) ? i : best), 0);
