import { type HostedService, hostedService } from './hosted-service.ts';
import type { PoseService } from './pose-service.ts';

/** Loading and timing take as long as the machine needs. */
const PATIENT = ['load', 'time'];

/** A worker with the pose service in it, or the page's own thread where there is none. */
export const startPoseWorker = (): Promise<HostedService<PoseService>> =>
  hostedService<PoseService>(
    () => new Worker(new URL('./pose-worker.ts', import.meta.url), { type: 'module' }),
    async () => new (await import('./pose-service.ts')).PoseService(),
    PATIENT,
  );
