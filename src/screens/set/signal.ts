import type { SetPlan } from '../services.ts';
import type { Stage } from './stage.ts';

/**
 * What a raised hand, the space bar or the big button does: say where symptoms begin, end the set because they rise, or just end it. Which of them is
 * announced.
 */
export type Signal = 'onset' | 'symptoms' | 'stop';

/** Stages in which symptoms may begin: not before the set has begun, nor after it. */
export const ONSET_STAGES: readonly Stage[] = ['ready', 'counting', 'lost'];

type Planned = Pick<SetPlan, 'guide' | 'exercise'>;

/** Whether the set is one of nerve glides, held where symptoms start: when they rise, it is over. */
export const isGlide = ({ exercise }: Pick<SetPlan, 'exercise'>): boolean => exercise === 'nerve-glide';

/** Whether the set is one that goes only as far as symptoms begin, again and again. */
const asksOnset = (plan: Planned): boolean => !isGlide(plan) && plan.guide.target.kind === 'symptoms';

/** Whether there is something to be said of symptoms while it runs. */
export const asksSymptoms = (plan: Planned): boolean => isGlide(plan) || asksOnset(plan);

/** What is meant now. Symptoms begin once in a set; after that there is only the end to tell. */
export function signalOf(plan: Planned, stage: Stage, onsetMarked: boolean): Signal {
  if (!ONSET_STAGES.includes(stage)) return 'stop';
  if (isGlide(plan)) return 'symptoms';
  return asksOnset(plan) && !onsetMarked ? 'onset' : 'stop';
}
