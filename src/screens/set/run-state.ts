import type { LegDrawing, LiveGlide, SetEvent, ViewAdvice } from '../../measure/live-view.ts';
import type { StickersSeen } from '../../measure/stickers-seen.ts';
import type { GlideCycle } from '../../reps/glide-coordination.ts';
import type { UnseenReason } from '../../stickers/unseen-reason.ts';
import { type Deg, type Ms, ms, type Ratio, ratio } from '../../units.ts';
import type { OpenedPictures, Problem, SetPlan } from '../services.ts';
import type { Caption } from './caption-time.ts';
import type { GlideNote } from './glide-note.ts';
import type { Stage } from './stage.ts';
import type { StoreTrouble } from './store-trouble.ts';

/** What the set's screen shows and seldom changes. */
export interface RunState {
  readonly stage: Stage;
  readonly plan: SetPlan | null;
  readonly loaded: Ratio;
  readonly opened: OpenedPictures | null;
  readonly count: number;
  readonly partialCount: number;
  /** The most urgent one. */
  readonly advice: ViewAdvice | null;
  readonly endedWhy: Extract<SetEvent, { kind: 'ended' }>['why'] | null;
  /** Lost, because something else was taken for a sticker. */
  readonly mixedUp: boolean;
  /** Why not all stickers are measured; null: they are, or it is not known, or it may be a flicker. */
  readonly unseen: UnseenReason | null;
  /** The person has said where symptoms begin. */
  readonly onsetMarked: boolean;
  /** The last repetition went past it. */
  readonly pastOnset: boolean;
  /** Nerve glides: what each cycle was, as far as can be told live, oldest first. */
  readonly glideCycles: readonly GlideCycle[];
  /** What was last to be said of them; null: nothing, or not lately. */
  readonly glideNote: GlideNote | null;
  /** What was last said, while it is to be read; also where the sound is off. */
  readonly caption: Caption | null;
  /** Why not all of the set is on the disk; null: it is. */
  readonly storeTrouble: StoreTrouble | null;
  /** Why there are no pictures for now; null: there are. */
  readonly away: Problem | null;
  /** Nothing was looked at for a while, and since when it is again; null: not lately. */
  readonly breakSinceMs: Ms | null;
  /** So few pictures a second are looked at that quick movements are missed. */
  readonly fewPictures: boolean;
  /** The screen may go dark by itself. */
  readonly screenDims: boolean;
  readonly problem: Problem | null;
  /** The stored set, once it is over. */
  readonly finishedId: string | null;
}

/** What changes with every frame; painted by subscribers, never through React state. */
export interface Moment {
  /** Time of the newest frame, from the source's first. */
  readonly tMs: Ms;
  readonly angleDeg: Deg | null;
  readonly leg: LegDrawing | null;
  /** Of a set by stickers: where they are; null when none is seen. */
  readonly stickers: StickersSeen | null;
  /** The angle at rest; null while nothing is counted. */
  readonly restDeg: Deg | null;
  /** Where symptoms were told to begin; null: they were not, or the angle is not known. */
  readonly onsetDeg: Deg | null;
  /** For how long the movement under way has been held; null: none is. */
  readonly heldMs: Ms | null;
  /** Null for other exercises than nerve glides. */
  readonly glide: LiveGlide | null;
}

/** There is no set. */
export const IDLE: RunState = {
  stage: 'idle',
  plan: null,
  loaded: ratio(0),
  opened: null,
  count: 0,
  partialCount: 0,
  advice: null,
  endedWhy: null,
  mixedUp: false,
  unseen: null,
  onsetMarked: false,
  pastOnset: false,
  glideCycles: [],
  glideNote: null,
  caption: null,
  storeTrouble: null,
  away: null,
  breakSinceMs: null,
  fewPictures: false,
  screenDims: false,
  problem: null,
  finishedId: null,
};
/** Before the first frame. */
export const NO_MOMENT: Moment = {
  tMs: ms(0),
  angleDeg: null,
  leg: null,
  stickers: null,
  restDeg: null,
  onsetDeg: null,
  heldMs: null,
  glide: null,
};
