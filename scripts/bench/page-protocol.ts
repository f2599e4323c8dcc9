import type { PoseModel } from '../../src/pose/model.ts';

/** What the bench asks its page to time on the clip in the file field, which shows foot taps of the left leg. */
export interface BenchOrder {
  readonly model: PoseModel;
  /** Frames that one turn of the comparison takes before the next one's. */
  readonly framesPerTurn: number;
  /** First turns that only warm up: the model finds the person, the motion takes its rest picture. */
  readonly warmUpTurns: number;
  /** Frames whose motion is timed, for each picture size. */
  readonly costFrames: number;
}

/** Milliseconds a frame, one number for each turn; the same index is the same frames in the same moment. */
export interface PathTimes {
  readonly bare: readonly number[];
  readonly landmarksOnly: readonly number[];
  readonly withFlow: readonly number[];
}

/** Milliseconds, one number a frame. */
export interface FrameCosts {
  readonly width: number;
  readonly height: number;
  /** Reading the picture's brightness out of the frame. */
  readonly reading: readonly number[];
  readonly model: readonly number[];
  readonly flow: readonly number[];
  /** In how many of these frames foot and shank were both followed. */
  readonly followed: number;
}

export interface BenchAnswer {
  readonly paths: PathTimes;
  readonly costs: readonly FrameCosts[];
}

declare global {
  interface Window {
    /** Set once the bench page is ready. */
    runBench?: (order: BenchOrder) => Promise<BenchAnswer>;
    /** Set by the bench: hears what the page is at. */
    benchProgress?: (words: string) => void;
  }
}
