import type { RecordFault } from '../record/record-services.ts';
import type { NamedWords, ProblemWords } from './words.ts';

/** Whose record is taken in: anybody's of a therapist's list, one person's, one's own. */
export type BringFor = 'anybody' | 'person' | 'self';

/** Texts of the screens on which a record is sent and taken in. */
export interface RecordWords {
  readonly send: {
    readonly open: Record<'self' | 'person', string>;
    readonly title: Record<'self' | 'person', string>;
    readonly lead: Record<'self' | 'person', string>;
    readonly name: string;
    readonly nameHint: string;
    readonly seal: string;
    readonly sealed: NamedWords;
    readonly plain: NamedWords;
    readonly forgotten: string;
    readonly short: (least: number) => string;
    readonly health: ProblemWords;
    readonly save: string;
    readonly working: string;
    readonly saved: (file: string) => string;
    readonly inIt: (sets: number, entries: number) => string;
    readonly damaged: (n: number) => string;
  };
  readonly bring: {
    readonly open: Record<BringFor, NamedWords>;
    readonly title: Record<BringFor, string>;
    readonly lead: Record<BringFor, string>;
    readonly pick: string;
    readonly pickHint: string;
    readonly checking: string;
    readonly sealedTitle: string;
    readonly sealedHint: string;
    readonly unseal: string;
    readonly found: string;
    readonly whose: string;
    readonly unnamed: string;
    readonly period: string;
    readonly fromTo: (from: string, to: string) => string;
    readonly nothing: string;
    readonly holds: string;
    readonly counts: (sets: number, checkIns: number, entries: number) => string;
    readonly news: string;
    readonly fresh: (sets: number, entries: number) => string;
    readonly grown: (n: number) => string;
    readonly noNews: string;
    /** What came was removed here before. */
    readonly staysRemoved: (n: number) => string;
    /** What is here was removed where the record comes from. */
    readonly removedThere: (n: number) => string;
    readonly conflicts: (n: number) => string;
    readonly forWhom: string;
    readonly somebodyNew: NamedWords;
    readonly somebodyHere: NamedWords;
    readonly person: string;
    readonly known: (name: string) => string;
    readonly take: string;
    readonly notNow: string;
    readonly taking: string;
    readonly done: string;
    readonly toPerson: string;
    readonly toReview: string;
    readonly toToday: string;
    readonly another: string;
    readonly plan: ProblemWords;
    readonly openPlan: string;
    readonly faults: Record<Exclude<RecordFault['kind'], 'record-elsewhere' | 'record-sealed'>, ProblemWords>;
    readonly elsewhere: (name: string, n: number) => ProblemWords;
    readonly elsewhereOwn: string;
    readonly where: (place: string) => string;
  };
}
