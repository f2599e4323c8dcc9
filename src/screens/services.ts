import type { JointAngle } from '../angles/joint-angle.ts';
import type { CameraDevice } from '../capture/camera.ts';
import type { Crop } from '../capture/crop.ts';
import type { Frame, PictureSize } from '../capture/frame.ts';
import type { Photo } from '../capture/photo.ts';
import type { SharedWindow } from '../capture/shared-window.ts';
import type { VideoFile } from '../capture/video-file.ts';
import type { DoseLog } from '../dose/dose-log.ts';
import type { PrescribedExercise } from '../dose/prescribed-exercise.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { LiveView, SetEvent } from '../measure/live-view.ts';
import type { Observation } from '../measure/observation.ts';
import type { HeadTowards } from '../pose/head-up.ts';
import type { Side } from '../pose/landmarks.ts';
import type { PoseModel } from '../pose/model.ts';
import type { DiaryEntry } from '../record/diary-entry.ts';
import type { Damaged } from '../record/diary-store.ts';
import type { PersonId } from '../record/person.ts';
import type { RepRef } from '../record/rep-edit.ts';
import type { StoredSet } from '../record/stored-set.ts';
import type { Result } from '../result.ts';
import type { StickerHint } from '../run/sticker-service.ts';
import type { NamedStickers, StickerStart, StickerTask } from '../run/sticker-start.ts';
import type { ToeOrder } from '../stickers/arrange.ts';
import type { StickerRefusal } from '../stickers/refusal.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import type { SkinRefusal } from '../stickers/skin-points.ts';
import type { Sticker } from '../stickers/sticker-at.ts';
import type { Deg, Ms, Ratio } from '../units.ts';
import type { LockServices } from './lock/lock-services.ts';
import type { MessageServices } from './message-services.ts';
import type { PeopleServices } from './people/people-services.ts';
import type { Problem, ProblemKind } from './problem.ts';
import type { RecordServices } from './record/record-services.ts';
import type { KnownServer } from './server/known-server.ts';
import type { ServerServices } from './server/server-services.ts';
import type { HereServices } from './stored/here-services.ts';

/** Where a set's pictures come from. */
export type PictureKind = 'camera' | 'file' | 'example';

export type { Problem, ProblemKind };

/** A set as the screens show it. */
export type ShownSet = StoredSet & {
  /** False: it was measured, but this page alone holds it. */
  readonly onDisk: boolean;
};

/** What a browser must have for anything to work. */
export type MissingFeature = 'secure-context';

/**
 * What goes less well here: no pose model (`no-webgl2`), pictures are copied and films read slowly (`no-webcodecs`), all of it on the page's own thread (`on-page`),
 * the quick model (`little-memory`).
 */
export type Limit = 'no-webgl2' | 'no-webcodecs' | 'on-page' | 'little-memory';

export type Pictures =
  | { readonly kind: 'camera'; readonly deviceId: string | null }
  /** `fromMs`: on the film's own clock, where measuring begins; left out: at its first picture. */
  | { readonly kind: 'file'; readonly file: File; readonly fromMs?: Ms }
  | { readonly kind: 'example' }
  | { readonly kind: 'window'; readonly shared: SharedWindow; readonly crop: Crop | null };

/** The sets on this machine. */
export interface StoredSets {
  /** Newest first. */
  readonly sets: readonly ShownSet[];
  /** How many are stored but can't be read. */
  readonly damaged: number;
}

/** What leads somebody through a set: how far to move, how long to hold, how fast. */
export interface SetGuide extends Pick<PrescribedExercise, 'target' | 'tempoS'> {
  /** Seconds; 0: not held. */
  readonly holdS: number;
}

/** Everything that is decided before a set begins. */
export interface SetPlan {
  readonly pictures: Pictures;
  readonly exercise: ExerciseId;
  readonly side: Side;
  readonly targetReps: number | null;
  readonly model: PoseModel;
  readonly head: HeadTowards;
  /** Leg raise: from how much knee bend on a raise is flagged. */
  readonly kneeLimitDeg: Deg;
  readonly guide: SetGuide;
  /** Nerve glide: where symptoms began when the straight leg was last raised, elevation of the leg; left out: not known. */
  readonly elevationLimitDeg?: Deg;
  /** How its stickers are come by; left out: they are looked for in its pictures where the exercise is seen by stickers, and else there are none. */
  readonly stickers?: StickerStart;
  /** False: nothing of it goes to the disk; the page holds it until it is closed. Left out: it does. */
  readonly stored?: false;
  /** The line of a prescription that it is a set of; left out when it is none. */
  readonly line?: { readonly prescriptionId: string; readonly itemId: string };
}

/** The opened source: its picture, and how long it lasts when that is known. */
export interface OpenedPictures {
  readonly size: PictureSize;
  readonly durationMs: Ms | null;
  /** A camera's own picture, to be shown until the first frame has been looked at. */
  readonly preview: MediaStream | null;
}

/** What a running set tells. None may keep the frame or throw. */
export interface SetHooks {
  /** Share of the pose model that is here. */
  readonly onLoading: (share: Ratio) => void;
  readonly onOpened: (pictures: OpenedPictures) => void;
  /** Called before the frame goes to the model; draw it now, the image is closed later by another hand. */
  readonly onFrame: (frame: Frame) => void;
  readonly onView: (view: LiveView) => void;
  readonly onEvent: (event: SetEvent) => void;
  /** The set, or a repetition of it, is not on the disk, and why; it is tried again. Null: now it is. */
  readonly onStoreTrouble: (kind: ProblemKind | null) => void;
  /** No picture can be looked at for now, and why: the set waits and is kept. Null: it goes on. */
  readonly onAway: (problem: Problem | null) => void;
  /** Pictures go on after a break in which nothing was looked at: the machine slept, or the page was hidden. */
  readonly onBreak: () => void;
  /** Whether the screen stays on by itself; told when that changes, and once at the beginning. */
  readonly onScreenKept: (kept: boolean) => void;
}

export interface RunningSet {
  /** The stored set once it is over, whoever ended it; null when it was stopped before its pictures opened. */
  readonly done: Promise<Result<StoredSet | null, Problem>>;
  readonly stop: () => void;
  /** Symptoms begin now. */
  readonly markOnset: () => void;
  /** Tries now to have pictures again, while there are none. */
  readonly goOn: () => void;
}

/** One picture, and what the pose model sees in it. */
export interface LookedAtPhoto extends Photo {
  readonly observation: Observation;
}

/** Pictures that stand still. */
export interface StillServices {
  /** Opens a film to look at its pictures one by one. The receiver closes it. */
  readonly openFilm: (file: File) => Promise<Result<Pick<VideoFile, 'frameAt' | 'close'>, Problem>>;
  /** Opens a photo and lets the pose model look at it. The receiver closes its picture. */
  readonly photo: (
    file: File,
    plan: Pick<SetPlan, 'exercise' | 'side' | 'model'>,
    onLoading: SetHooks['onLoading'],
  ) => Promise<Result<LookedAtPhoto, Problem>>;
}

/** What a look at stickers tells. None may keep the frame or throw. */
export interface StickerLookHooks {
  readonly onOpened: (pictures: OpenedPictures) => void;
  /** Draw it now, the image is closed later by another hand. */
  readonly onFrame: (frame: Frame) => void;
  /** What is seen of the stickers that are watched, a frame at a time. */
  readonly onSeen: (observation: Observation) => void;
  /** It is over. */
  readonly onProblem: (problem: Problem) => void;
}

/** A look at the stickers before a set, in a live picture or in one of a film. What is asked is answered from the next picture; places are px of the upright picture. */
export interface StickerLook {
  /** The stickers of a joint, found by themselves. */
  readonly find: (angle: JointAngle, hint: StickerHint) => Promise<Result<NamedStickers, StickerRefusal>>;
  /** The sticker that was tapped on. */
  readonly learn: (tap: Spot) => Promise<Result<Sticker, StickerRefusal>>;
  /** Three points on bare skin, tapped while the toe rests; then watch with `{ kind: 'skin' }`, and the set begins with the same. */
  readonly tapSkin: (spots: ToeOrder<Spot>) => Promise<Result<null, SkinRefusal>>;
  /** From now on `onSeen` tells of these. The set's plan takes the same start. */
  readonly watch: (task: StickerTask) => Promise<void>;
  /** Of a film: goes to its picture at this time. */
  readonly showAt: (tMs: Ms) => void;
  /** Lets the camera go. */
  readonly stop: () => void;
}

/** What is kept of somebody's days besides the measured sets. */
export interface DiaryServices {
  /**
   * All that decides about today and the next dose.
   * @param days how far back the measured sets are read; left out: the last weeks
   */
  readonly log: (days?: number) => Promise<Result<DoseLog, Problem>>;
  /** Adds entries, all or none. */
  readonly add: (entries: readonly DiaryEntry[]) => Promise<Result<null, Problem>>;
  /** Removes every invented entry and its sets. */
  readonly removeExamples: () => Promise<Result<null, Problem>>;
}

/** All that is stored on this machine, as it goes out. */
export interface Everything {
  readonly sets: readonly StoredSet[];
  readonly diary: readonly DiaryEntry[];
  /** What is stored but can't be read. */
  readonly damaged: readonly Damaged[];
}

/** All that the screens ask of the rest of the program; sets and diary are those of one person. */
export interface AppServices {
  readonly missing: () => readonly MissingFeature[];
  /** Told before a set. */
  readonly limits: () => readonly Limit[];
  readonly cameras: () => Promise<readonly CameraDevice[]>;
  /** Asks which window to share. To be called from a click. */
  readonly shareWindow: () => Promise<Result<SharedWindow, Problem>>;
  readonly runSet: (plan: SetPlan, hooks: SetHooks) => RunningSet;
  readonly sets: () => Promise<Result<StoredSets, Problem>>;
  readonly set: (id: string) => Promise<Result<ShownSet, Problem>>;
  /** Stores a change by hand; the original stays. @returns the set with the change */
  readonly change: (id: string, change: Change) => Promise<Result<ShownSet, Problem>>;
  readonly remove: (id: string) => Promise<Result<null, Problem>>;
  /** Tries again to store a set that this page alone holds. */
  readonly store: (id: string) => Promise<Result<ShownSet, Problem>>;
  /** Such a set as a record file, for which the disk needs no room. */
  readonly fileOf: (id: string) => Promise<Result<Blob, Problem>>;
  /** Whether the browser keeps nothing: all is gone with the page. */
  readonly visitOnly: () => Promise<boolean>;
  readonly still: StillServices;
  /** Opens a camera, a shared window or a film's picture to look at stickers before a set. */
  readonly lookAtStickers: (pictures: Pictures, hooks: StickerLookHooks) => Promise<StickerLook>;
  readonly diary: DiaryServices;
  readonly everything: () => Promise<Result<Everything, Problem>>;
  readonly messages: MessageServices;
  readonly lock: LockServices;
  /** Whether a set runs, or was measured and is in this page alone: nothing may load it anew. */
  readonly busy: () => boolean;
  readonly here: HereServices;
  readonly people: PeopleServices;
  /** Loaded when it is first asked for. */
  readonly records: () => Promise<RecordServices>;
  /** The clinic's server that the page knows; loaded when it is first asked for. */
  readonly server: (known: KnownServer) => Promise<ServerServices>;
  /** Hears of each set, change or entry that was stored here for this person. @returns the end of it */
  readonly onStored: (hear: () => void) => () => void;
  /** The same with the sets and the diary of somebody else. */
  readonly of: (person: PersonId) => AppServices;
}

export type Change = { readonly kind: 'strike' | 'restore'; readonly rep: RepRef } | { readonly kind: 'add' };
