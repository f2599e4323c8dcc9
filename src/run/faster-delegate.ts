import { transfer } from 'comlink';
import type { Delegate, PoseModel } from '../pose/model.ts';
import { littleMemory } from './little-memory.ts';
import { startPoseWorker } from './pose-worker-handle.ts';

/** A trial that takes longer than this, loading included, has lost. Without a graphics card the GPU path takes 16 s for its first picture. */
const TRIAL_LIMIT_MS = 4000;
const ROUNDS = 5;
/** The GPU must be faster by this factor: a tie goes to the CPU, whose figures are the same on every machine. Chosen. */
const CLEARLY = 1.15;

/** Under which name the browser's local storage remembers which was faster, 'CPU' or 'GPU'. */
export const delegateKey = (model: PoseModel): string => `evenside.delegate.${model}`;

function remembered(model: PoseModel): Delegate | null {
  try {
    const kept = localStorage.getItem(delegateKey(model));
    return kept === 'CPU' || kept === 'GPU' ? kept : null;
  } catch {
    return null;
  }
}

function remember(model: PoseModel, delegate: Delegate): void {
  try {
    localStorage.setItem(delegateKey(model), delegate);
  } catch {
    // A browser that stores nothing times again next time.
  }
}

/** From now on the CPU is taken: the graphics card has failed in a set. */
export const distrustGpu = (model: PoseModel): void => remember(model, 'CPU');

/** Which of both runs the model faster on this machine: timed for a moment the first time, remembered after. */
export async function fasterDelegate(model: PoseModel, wasmBase: string, bundle: Uint8Array): Promise<Delegate> {
  const known = remembered(model);
  if (known) return known;
  // A machine with little memory must not load the model twice, and the page's own thread not be held up by a trial.
  if (littleMemory() || typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return 'CPU';
  // One after the other: side by side they would slow each other down.
  const cpu = await trial('CPU', wasmBase, bundle);
  const gpu = await trial('GPU', wasmBase, bundle);
  const faster: Delegate = gpu !== null && (cpu === null || gpu * CLEARLY < cpu) ? 'GPU' : 'CPU';
  remember(model, faster);
  return faster;
}

/** Milliseconds a picture in a throwaway worker; null when it fails or takes too long. */
async function trial(delegate: Delegate, wasmBase: string, bundle: Uint8Array): Promise<number | null> {
  const { service, end } = await startPoseWorker();
  const picture = await createImageBitmap(new ImageData(640, 480));
  let timer: ReturnType<typeof setTimeout> | undefined;
  const limit = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), TRIAL_LIMIT_MS);
  });
  const run = async (): Promise<number | null> => {
    const loaded = await service.load({ wasmBase, bundle, delegate });
    return loaded.ok ? service.time(transfer(picture, [picture]), ROUNDS) : null;
  };
  try {
    return await Promise.race([run().catch(() => null), limit]);
  } finally {
    clearTimeout(timer);
    end();
  }
}
