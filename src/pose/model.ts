/** The three sizes of the pose model: `lite` for slow machines, `full` the default, `heavy` the most exact. */
export const POSE_MODELS = ['lite', 'full', 'heavy'] as const;
export type PoseModel = (typeof POSE_MODELS)[number];
/** Where the model runs. Chosen by timing both on this machine, see `run/faster-delegate.ts`. */
export type Delegate = 'CPU' | 'GPU';

export const isPoseModel = (x: string): x is PoseModel => POSE_MODELS.some((m) => m === x);
