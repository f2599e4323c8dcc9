import { FilesetResolver, PoseLandmarker } from '@mediapipe/tasks-vision';
import type { Picture, PictureSize, QuarterTurn } from '../capture/frame.ts';
import type { ScratchCanvas } from '../capture/scratch-canvas.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Ms, ratio } from '../units.ts';
import type { Landmark } from './landmarks.ts';
import type { Delegate } from './model.ts';
import { fromTurned } from './turned-picture.ts';

/** Why the pose model can't run here. */
export type LandmarkerError =
  | { readonly kind: 'pose-wasm'; readonly detail: string }
  | { readonly kind: 'pose-model'; readonly detail: string };

/**
 * The pose model on this machine: one landmarker, one pose, no masks (more than one leaks memory in some browsers).
 * `detect` takes a picture that is `turn` clockwise from upright and returns points of the upright picture, px.
 */
export interface Landmarker {
  readonly detect: (
    image: Picture | ScratchCanvas,
    tMs: Ms,
    turn: QuarterTurn,
    upright: PictureSize,
  ) => readonly Landmark[] | null;
  /** Forgets the tracked person; the next frame is searched afresh. */
  readonly forget: () => Promise<void>;
  readonly close: () => void;
}

const wordsOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));

/** The least step between two timestamps that the model's graph accepts, ms. */
const LEAST_STEP_MS = 0.001;
/** Between the last picture of one track and the first of the next, on the model's clock. Chosen: one frame. */
const FRESH_TRACK_MS = 33;

/**
 * Loads the model.
 * @param wasmBase address of the folder with the wasm files, on our own origin
 * @param bundle bytes of a pose bundle (`models/`)
 */
export async function loadLandmarker(
  wasmBase: string,
  bundle: Uint8Array,
  delegate: Delegate,
): Promise<Result<Landmarker, LandmarkerError>> {
  let fileset: Awaited<ReturnType<typeof FilesetResolver.forVisionTasks>>;
  try {
    fileset = await FilesetResolver.forVisionTasks(wasmBase, true);
  } catch (cause) {
    return fail({ kind: 'pose-wasm', detail: wordsOf(cause) });
  }
  const options = {
    baseOptions: { modelAssetBuffer: bundle, delegate },
    runningMode: 'VIDEO',
    numPoses: 1,
    outputSegmentationMasks: false,
  } as const;
  try {
    const inner = await PoseLandmarker.createFromOptions(fileset, options);
    return ok(wrap(inner));
  } catch (cause) {
    return fail({ kind: 'pose-model', detail: wordsOf(cause) });
  }
}

function wrap(inner: PoseLandmarker): Landmarker {
  // The library's own clock outlives the graph: it sends each frame's last packet at the latest time it has ever seen, so that time may
  // never go back, not even for a rebuilt graph or a new source that starts again at 0. The steps within a track stay as they are.
  let graphMs = 0;
  let offsetMs: number | null = null;
  return {
    detect(image, tMs, turn, upright) {
      offsetMs ??= graphMs + FRESH_TRACK_MS - tMs;
      graphMs = Math.max(tMs + offsetMs, graphMs + LEAST_STEP_MS);
      const found = inner.detectForVideo(image, graphMs).landmarks[0];
      if (!found || found.length === 0) return null;
      return found.map((p) => ({ ...fromTurned(p, turn, upright), visibility: ratio(p.visibility ?? 0) }));
    },
    async forget() {
      // Leaving and re-entering video mode rebuilds the graph, which is the only way to drop its tracked region.
      await inner.setOptions({ runningMode: 'IMAGE' });
      await inner.setOptions({ runningMode: 'VIDEO' });
      offsetMs = null;
    },
    close: () => inner.close(),
  };
}
