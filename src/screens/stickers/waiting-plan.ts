import { create } from 'zustand';
import type { SetPlan } from '../services.ts';

/** The set that waits for its stickers to be shown; null: none does. Never remembered. */
export const useWaitingPlan = create<{ readonly plan: SetPlan | null }>(() => ({ plan: null }));
