import type { SetPlan } from '../services.ts';
import type { Stage } from './stage.ts';

/** What a raised hand, the space bar or the big button does: say where symptoms begin, or end the set. Which of the two is announced. */
export type Signal = 'onset' | 'stop';

/** Stages in which symptoms may begin: not before the set has begun, nor after it. */
export const ONSET_STAGES: readonly Stage[] = ['ready', 'counting', 'lost'];

/** Whether the set is one that goes only as far as symptoms begin. */
export const asksOnset = ({ guide }: Pick<SetPlan, 'guide'>): boolean => guide.target.kind === 'symptoms';

/** What is meant now. Symptoms begin once in a set; after that there is only the end to tell. */
export const signalOf = (plan: Pick<SetPlan, 'guide'>, stage: Stage, onsetMarked: boolean): Signal =>
  asksOnset(plan) && !onsetMarked && ONSET_STAGES.includes(stage) ? 'onset' : 'stop';
