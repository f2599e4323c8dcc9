import { type PackedPart, type PackPart, packedBy } from '../record/file/packed-part.ts';
import { type HostedService, hostedService } from './hosted-service.ts';
import type { PackingService } from './packing-service.ts';
import { WorkerLost } from './worker-guard.ts';

const startPacking = (): Promise<HostedService<PackingService>> =>
  hostedService<PackingService>(
    () => new Worker(new URL('./packing-worker.ts', import.meta.url), { type: 'module' }),
    async () => new (await import('./packing-service.ts')).PackingService(),
  );

/** Packs parts beside the page, so that it goes on reading meanwhile; what a worker leaves undone is done here. */
export function partPacker(start = startPacking): { readonly pack: PackPart; readonly end: () => void } {
  const hosted = start();
  return {
    async pack(json): Promise<PackedPart> {
      try {
        return await (await hosted).service.pack(json);
      } catch (cause) {
        if (cause instanceof WorkerLost) return packedBy(crypto)(json);
        throw cause;
      }
    },
    end: () => void hosted.then(({ end }) => end()),
  };
}
