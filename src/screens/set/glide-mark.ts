import type { GlideCycle } from '../../reps/glide-coordination.ts';

/** What is told of a cycle while the set runs; `hidden`: foot or head was not seen. */
export type GlideMark = 'slide' | 'tension' | 'unclear' | 'hidden';

export const markOf = ({ pattern, reason }: Pick<GlideCycle, 'pattern' | 'reason'>): GlideMark =>
  reason === 'foot-hidden' || reason === 'head-hidden' || reason === 'head-seldom' ? 'hidden' : pattern;
