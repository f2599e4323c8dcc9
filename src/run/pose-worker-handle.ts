import { type Remote, releaseProxy, wrap } from 'comlink';
import type { PoseService } from './pose-service.ts';

/** A worker with the pose service in it, and how to end it. */
export interface PoseWorkerHandle {
  readonly service: Remote<PoseService>;
  readonly end: () => void;
}

export function startPoseWorker(): PoseWorkerHandle {
  const worker = new Worker(new URL('./pose-worker.ts', import.meta.url), { type: 'module' });
  const service = wrap<PoseService>(worker);
  return {
    service,
    end() {
      service[releaseProxy]();
      worker.terminate();
    },
  };
}
