import * as v from 'valibot';
import { create } from 'zustand';
import { EXERCISE_IDS, type ExerciseId, type SeenBy } from '../../exercises/exercise.ts';
import { KNEE_LIMIT_DEG } from '../../measure/knee-limit.ts';
import type { HeadTowards } from '../../pose/head-up.ts';
import type { Side } from '../../pose/landmarks.ts';
import { POSE_MODELS, type PoseModel } from '../../pose/model.ts';
import { littleMemory } from '../../run/little-memory.ts';
import { type Deg, deg } from '../../units.ts';
import { LANGUAGES, type Language } from '../words/languages.ts';

/** Fewest and most repetitions a set may ask for. Chosen: common doses are 10 to 20. */
export const LEAST_REPS = 1;
export const MOST_REPS = 99;

/** The knee limits that can be chosen: below, every raise is flagged; above, none is. Chosen. */
export const KNEE_LIMITS = { leastDeg: 5, mostDeg: 45, stepDeg: 5 } as const;

/** What was chosen last; offered again next time. */
export interface Choices {
  readonly exercise: ExerciseId;
  readonly side: Side;
  /** How an exercise is seen that can be seen in several ways. */
  readonly by: SeenBy;
  readonly targetReps: number;
  readonly model: PoseModel;
  readonly head: HeadTowards;
  /** Leg raise: from how much knee bend on a raise is flagged. */
  readonly kneeLimitDeg: Deg;
  readonly deviceId: string | null;
  readonly sound: boolean;
  /** Null: the browser's. */
  readonly language: Language | null;
  /** Whether the browser tells that a set is due. */
  readonly messages: boolean;
}

const DEFAULTS: Choices = {
  exercise: 'foot-tap',
  side: 'left',
  by: 'pose',
  targetReps: 10,
  model: littleMemory() ? 'lite' : 'full',
  head: 'find',
  kneeLimitDeg: KNEE_LIMIT_DEG,
  deviceId: null,
  sound: true,
  messages: false,
  language: null,
};

const KEY = 'evenside.choices';

/** Each remembered value stands for itself: one that no longer fits falls back alone. */
const Remembered = v.object({
  exercise: v.fallback(v.picklist(EXERCISE_IDS), DEFAULTS.exercise),
  side: v.fallback(v.picklist(['left', 'right']), DEFAULTS.side),
  by: v.fallback(v.picklist(['pose', 'stickers']), DEFAULTS.by),
  targetReps: v.fallback(v.pipe(v.number(), v.integer(), v.minValue(LEAST_REPS), v.maxValue(MOST_REPS)), DEFAULTS.targetReps),
  model: v.fallback(v.picklist(POSE_MODELS), DEFAULTS.model),
  head: v.fallback(v.picklist(['left', 'right', 'find']), DEFAULTS.head),
  kneeLimitDeg: v.fallback(
    v.pipe(v.number(), v.minValue(KNEE_LIMITS.leastDeg), v.maxValue(KNEE_LIMITS.mostDeg), v.transform(deg)),
    DEFAULTS.kneeLimitDeg,
  ),
  deviceId: v.fallback(v.nullable(v.string()), DEFAULTS.deviceId),
  sound: v.fallback(v.boolean(), DEFAULTS.sound),
  language: v.fallback(v.nullable(v.picklist(LANGUAGES)), DEFAULTS.language),
  messages: v.fallback(v.boolean(), DEFAULTS.messages),
});

/** The choices in a remembered text; what is missing or no longer fits gets its default. */
export function choicesIn(text: string | null): Choices {
  let data: unknown = null;
  try {
    data = JSON.parse(text ?? 'null');
  } catch {
    return DEFAULTS;
  }
  const read = v.safeParse(Remembered, data);
  return read.success ? read.output : DEFAULTS;
}

// Storage can be switched off by the browser; then nothing is remembered, and everything else works.
function remembered(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function remember(choices: Choices): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(choices));
  } catch {
    // See `remembered`.
  }
}

interface ChoicesState {
  readonly choices: Choices;
  /** The video file to be measured; never remembered. */
  readonly file: File | null;
  readonly choose: (change: Partial<Choices>) => void;
  readonly takeFile: (file: File) => void;
}

export const useChoices = create<ChoicesState>((set, get) => ({
  choices: choicesIn(remembered()),
  file: null,
  choose: (change) => {
    const choices = { ...get().choices, ...change };
    set({ choices });
    remember(choices);
  },
  takeFile: (file) => set({ file }),
}));
