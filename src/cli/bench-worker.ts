/** The bench's own worker: the pose model with nothing around it, and the parts of a frame's work timed one by one. */
import '../run/own-scripts.ts';
import { FilesetResolver, PoseLandmarker } from '@mediapipe/tasks-vision';
import { expose } from 'comlink';
import { readLuma } from '../capture/luma.ts';
import type { Segment } from '../flow/leg-motion.ts';
import { type LegTracker, startLegTracker } from '../flow/leg-tracker.ts';
import type { Landmark, Side } from '../pose/landmarks.ts';
import { fromTurned } from '../pose/turned-picture.ts';
import { ms, ratio } from '../units.ts';

/** Milliseconds of the parts of one frame's work. */
export interface FrameCost {
  readonly reading: number;
  readonly model: number;
  readonly flow: number;
  readonly followed: boolean;
}

export class BenchService {
  private landmarker: PoseLandmarker | null = null;
  private legs: LegTracker | null = null;
  private segments: readonly Segment[] = [];
  /** The model's clock: it never goes back, not even for another video. */
  private clockMs = 0;

  /** Loads the model with the product's own options. */
  async load(wasmBase: string, modelAssetBuffer: Uint8Array): Promise<void> {
    const fileset = await FilesetResolver.forVisionTasks(wasmBase, true);
    this.landmarker = await PoseLandmarker.createFromOptions(fileset, {
      baseOptions: { modelAssetBuffer, delegate: 'CPU' },
      runningMode: 'VIDEO',
      numPoses: 1,
      outputSegmentationMasks: false,
    });
  }

  /** Milliseconds that the model takes for upright, decoded pictures, all together. Closes them. */
  bare(pictures: readonly VideoFrame[], stepMs: number): number {
    const landmarker = this.ready();
    const from = performance.now();
    for (const picture of pictures) landmarker.detectForVideo(picture, this.tick(stepMs));
    const took = performance.now() - from;
    for (const picture of pictures) picture.close();
    return took;
  }

  begin(segments: readonly Segment[], side: Side): void {
    this.segments = segments;
    this.legs = startLegTracker(segments, side);
  }

  /** One frame as the product looks at it, part by part. Closes the picture. */
  async cost(picture: VideoFrame, tMs: number, stepMs: number): Promise<FrameCost> {
    const { legs } = this;
    if (!legs) throw new Error('cost requires a set that has begun, got none');
    const upright = { width: picture.displayWidth, height: picture.displayHeight };
    const start = performance.now();
    const luma = await readLuma(picture, 0);
    const read = performance.now();
    const found = this.ready().detectForVideo(picture, this.tick(stepMs)).landmarks[0];
    const seen = performance.now();
    const points = found?.map((p): Landmark => ({ ...fromTurned(p, 0, upright), visibility: ratio(p.visibility ?? 0) })) ?? null;
    const before = performance.now();
    const motion = legs.observe(luma, points, ms(tMs));
    const after = performance.now();
    picture.close();
    const followed = this.segments.every((segment) => motion[segment] !== null);
    return { reading: read - start, model: seen - read, flow: after - before, followed };
  }

  private tick(stepMs: number): number {
    this.clockMs += stepMs;
    return this.clockMs;
  }

  private ready(): PoseLandmarker {
    if (!this.landmarker) throw new Error('BenchService requires a loaded model, got none');
    return this.landmarker;
  }
}

expose(new BenchService());
