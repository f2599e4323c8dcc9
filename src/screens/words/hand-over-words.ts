import type { PlanError } from '../../record/plan-error.ts';

/** What is the matter, and what to do. */
interface Told {
  readonly title: string;
  readonly todo: string;
}

/** Texts of giving a plan away, of the sheet that is printed, and of taking a plan on. Days come in as people write them. */
export interface HandOverWords {
  readonly give: {
    /** From today and from the plan. */
    readonly open: string;
    readonly title: string;
    readonly lead: string;
    readonly none: string;
    readonly name: string;
    readonly nameHint: string;
    readonly named: string;
    readonly print: string;
    readonly printAbout: string;
    readonly printDo: string;
    readonly file: string;
    readonly fileAbout: string;
    readonly fileSave: string;
    /** Without its ending. */
    readonly fileName: string;
    readonly link: string;
    readonly linkAbout: string;
    readonly linkCopy: string;
    readonly linkCopied: string;
    readonly linkByHand: string;
    readonly qr: string;
    readonly qrAbout: string;
    readonly qrLabel: string;
    readonly qrTooLarge: string;
    readonly onlyHere: (host: string) => string;
  };
  /** What a plan says, on the screen and on paper. */
  readonly says: {
    /** Of a line for both: the dose is for each. */
    readonly eachLeg: string;
    readonly everyDay: string;
    readonly daysAWeek: (n: number) => string;
    readonly atOwnPace: string;
    readonly rest: (seconds: number) => string;
    readonly limit: (points: number) => string;
    readonly by: (name: string) => string;
    readonly byTherapist: string;
    readonly byPatient: string;
    readonly written: (day: string) => string;
    readonly invented: string;
  };
  readonly sheet: {
    readonly title: string;
    readonly stop: string;
    readonly weaker: string;
    readonly scan: string;
    readonly foot: string;
  };
  readonly take: {
    readonly open: string;
    readonly title: string;
    readonly lead: string;
    readonly pick: string;
    readonly paste: string;
    readonly pasteHint: string;
    readonly read: string;
    readonly found: string;
    readonly instead: string;
    readonly takeOn: string;
    readonly notNow: string;
    readonly toToday: string;
    /** A therapist has opened a link where their own record is. */
    readonly whose: Told & Readonly<Record<'person' | 'open', string>>;
    readonly held: Told;
    readonly older: (day: string) => Told;
    readonly faults: Record<PlanError['kind'] | 'file-unreadable', Told>;
    /** The place in the file and what is wrong there, for who can put it right. */
    readonly where: (place: string) => string;
  };
}
