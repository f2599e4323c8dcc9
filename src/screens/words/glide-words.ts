import type { Verdict } from '../../compare/range-difference.ts';
import type { GlideStop, LegHeld } from '../../measure/set-result.ts';
import type { GlidePattern, UnclearReason } from '../../reps/glide-coordination.ts';
import type { SymptomShift } from '../../symptoms/symptom-shift.ts';

/** Texts of finished nerve glides, and of what was felt around any set. */
export interface GlideWords {
  /** For the patient: what it was, how to do it, and why. */
  readonly said: {
    readonly rightWay: (slides: number, cycles: number) => string;
    readonly wrongWay: string;
    /** Behind `wrongWay`: how many were so. */
    readonly wrongWere: (tensions: number, cycles: number) => string;
    readonly cannotTell: string;
    readonly noCycle: string;
    readonly otherWayRound: (n: number) => string;
    readonly notClear: (n: number) => string;
    readonly howTitle: string;
    readonly how: string;
    readonly goOn: string;
    readonly todo: Record<UnclearReason, string>;
    readonly whyTitle: string;
    readonly why: string;
  };
  readonly stopped: Record<GlideStop, string>;
  readonly marks: {
    readonly title: string;
    readonly hint: string;
    readonly patterns: Record<GlidePattern, string>;
    readonly reasons: Record<UnclearReason, string>;
  };
  readonly numbers: {
    readonly share: string;
    readonly shareHint: (slides: number, cycles: number) => string;
    readonly foot: string;
    readonly head: string;
    readonly leg: string;
    readonly middle: string;
    readonly noError: string;
    readonly highest: (deg: string) => string;
    readonly limit: Record<LegHeld['limitFrom'], (deg: string) => string>;
    readonly over: string;
    readonly maybeOver: string;
    readonly notSeen: string;
  };
  readonly curve: {
    readonly title: string;
    readonly hint: string;
    readonly alt: (slides: number, tensions: number, unclear: number) => string;
  };
  /** For the therapist, in the trade's terms. */
  readonly cycles: {
    readonly summary: string;
    readonly columns: {
      readonly number: string;
      readonly at: string;
      readonly pattern: string;
      readonly phase: string;
      readonly sure: string;
      readonly foot: string;
      readonly head: string;
      readonly why: string;
    };
    readonly patterns: Record<GlidePattern, string>;
    readonly explained: string;
  };
  readonly felt: {
    readonly title: string;
    readonly before: string;
    readonly after: string;
    readonly strength: (points: number) => string;
    readonly nothing: string;
    readonly unsaid: string;
    readonly notTold: string;
    readonly moved: Record<Exclude<SymptomShift['kind'], 'unknown'>, string>;
  };
  readonly compare: {
    readonly title: string;
    readonly share: string;
    readonly head: string;
    readonly leg: string;
    readonly verdict: string;
    readonly verdicts: Record<Verdict, (limitDeg: string) => string>;
    readonly noError: string;
    readonly otherHeight: string;
  };
  /** Of one set or of several, for the therapist. */
  readonly told: {
    readonly slides: (slides: number, cycles: number) => string;
    /** What has to be looked at first. @param line exercise and leg */
    readonly wrongWay: (line: string, day: string, count: string) => string;
    readonly share: (percent: string) => string;
    readonly tension: (n: number) => string;
    readonly unclear: (n: number) => string;
    readonly sets: (n: number) => string;
    readonly leg: (held: string) => string;
    readonly limit: Record<LegHeld['limitFrom'], (deg: string) => string>;
    readonly overLimit: (deg: string) => string;
    readonly stopped: Record<GlideStop, string>;
    readonly stoppedSets: (n: number) => string;
    readonly lastSet: (day: string) => string;
    readonly felt: (sets: string) => string;
    readonly table: string;
    readonly columns: {
      readonly slides: string;
      readonly foot: string;
      readonly head: string;
      readonly leg: string;
      readonly felt: string;
      readonly early: string;
    };
  };
}
