import { transfer } from 'comlink';
import type { BetweenFrame, FrameTaken } from '../capture/between-frames.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Observation } from '../measure/observation.ts';
import type { HeadTowards } from '../pose/head-up.ts';
import type { LandmarkerError } from '../pose/landmarker.ts';
import type { Side } from '../pose/landmarks.ts';
import type { Delegate, PoseModel } from '../pose/model.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Ratio } from '../units.ts';
import { fasterDelegate } from './faster-delegate.ts';
import type { BundleError } from './fetch-bundle.ts';
import { startPoseWorker } from './pose-worker-handle.ts';
import { sharedBundle } from './shared-fetch.ts';
import { hasWebGl2 } from './webgl2.ts';

export type PoseClientError = BundleError | LandmarkerError;

/** The page's handle on the pose worker. */
export interface PoseClient {
  readonly begin: (spec: { readonly exercise: Exercise; readonly side: Side; readonly head: HeadTowards }) => Promise<void>;
  /**
   * Takes over the brightness of pictures since the last frame; to be called before the next one is observed. Answered before it too.
   * @returns what was seen in them, in order of time
   */
  readonly follow: (between: readonly BetweenFrame[]) => Promise<readonly Observation[]>;
  /** Takes over `frame.image`, which is closed in the worker; the pictures between are not looked at. One frame at a time. */
  readonly observe: (frame: FrameTaken) => Promise<Observation>;
  readonly close: () => void;
}

export interface PoseClientOptions {
  readonly model: PoseModel;
  /** Given: no timing, this one is used. Otherwise both are timed, once a machine. */
  readonly delegate?: Delegate;
  readonly onProgress?: (share: Ratio) => void;
  /** Address of the site's root, where `wasm/` and `models/` are; the page's own folder when left out. */
  readonly site?: string;
}

/** Starts the worker and loads the model into it. */
export async function startPoseClient(options: PoseClientOptions): Promise<Result<PoseClient, PoseClientError>> {
  // Told before anything is fetched or started: the model would load, and then fail on every picture.
  if (typeof OffscreenCanvas !== 'undefined' && !hasWebGl2()) return fail({ kind: 'pose-wasm', detail: 'no WebGL 2' });
  const { service, where, end } = await startPoseWorker();
  if (where === 'page') {
    // The model's loader is a module, which the library starts in workers only.
    end();
    return fail({ kind: 'pose-wasm', detail: 'no module worker' });
  }
  const site = options.site ?? new URL('./', document.baseURI).href;
  const bundle = await sharedBundle(site, options.model, options.onProgress ?? (() => undefined));
  if (!bundle.ok) {
    end();
    return bundle;
  }
  const wasmBase = new URL('wasm', site).href;
  const delegate = options.delegate ?? (await fasterDelegate(options.model, wasmBase, bundle.value));
  const loaded = await service.load({ wasmBase, bundle: bundle.value, delegate });
  if (!loaded.ok) {
    end();
    return loaded;
  }
  return ok({
    begin: ({ exercise, side, head }) =>
      service.begin({ posture: exercise.posture, segments: exercise.segments, held: exercise.heldLeg ?? false, side, head }),
    follow: (between) => {
      const luma = between.map(({ luma }) => luma.data.buffer);
      return service.follow(transfer(between, luma));
    },
    observe: ({ image, turn, tMs }) => service.observe(transfer(image, [image]), turn, tMs),
    close: end,
  });
}
