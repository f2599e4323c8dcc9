import { exerciseOf } from '../../exercises/catalogue.ts';
import type { StickerStart } from '../../run/sticker-start.ts';
import type { SetPlan } from '../services.ts';

/** How a set's stickers are come by; null: it is seen by the pose model. */
export const stickersOfPlan = ({ exercise, stickers }: Pick<SetPlan, 'exercise' | 'stickers'>): StickerStart | null =>
  stickers ?? (exerciseOf(exercise).seenBy[0] === 'stickers' ? { kind: 'find', colour: null } : null);

/** Whether a raised hand can be seen: there is a camera, and it looks at more than a foot. */
export const seesHand = (plan: Pick<SetPlan, 'exercise' | 'stickers' | 'pictures'>): boolean =>
  plan.pictures.kind === 'camera' && !stickersOfPlan(plan);
