import type { PoseModel } from '../../pose/model.ts';
import { fail, ok, type Result } from '../../result.ts';
import { type PoseClient, startPoseClient } from '../../run/pose-client.ts';
import type { Ratio } from '../../units.ts';
import type { Problem } from '../services.ts';

/** Keeps the pose model of the last set ready for the next: loading it takes seconds. */
export interface PoseClients {
  readonly get: (model: PoseModel, onLoading: (share: Ratio) => void) => Promise<Result<PoseClient, Problem>>;
  /** Lets the model go, as after it failed. */
  readonly drop: () => void;
}

interface Kept {
  readonly model: PoseModel;
  readonly client: ReturnType<typeof startPoseClient>;
  /** Who is told of the loading: the set that waits for it now. */
  onLoading: (share: Ratio) => void;
}

export function poseClients(): PoseClients {
  let kept: Kept | null = null;
  const drop = () => {
    kept?.client.then((started) => started.ok && started.value.close());
    kept = null;
  };
  return {
    drop,
    async get(model, onLoading) {
      if (kept?.model !== model) {
        drop();
        const fresh: Kept = {
          model,
          onLoading,
          client: startPoseClient({ model, onProgress: (share) => fresh.onLoading(share) }),
        };
        kept = fresh;
      }
      const mine: Kept = kept;
      mine.onLoading = onLoading;
      const started = await mine.client;
      if (started.ok) return ok(started.value);
      // The next set tries anew.
      if (kept === mine) kept = null;
      return fail({ kind: started.error.kind });
    },
  };
}
