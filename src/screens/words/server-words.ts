import type { ServerError } from '../../sync/server-error.ts';
import type { SignInError } from '../../sync/sign-in/sign-in-error.ts';

/** Texts of the screen of the clinic's server. */
export interface ServerWords {
  readonly title: string;
  readonly open: { readonly name: string; readonly about: string };
  readonly none: string;
  readonly leaves: { readonly title: string; readonly self: string; readonly person: string; readonly stays: string };
  readonly address: string;
  readonly openServer: string;
  readonly signIn: {
    readonly about: string;
    readonly keep: string;
    readonly keepAbout: string;
    readonly go: string;
    readonly state: string;
    readonly in: string;
    readonly out: string;
    readonly end: string;
    readonly ended: string;
    readonly endedHere: string;
    /** One sentence each. */
    readonly faults: Readonly<Record<SignInError['kind'], string>>;
  };
  readonly automatic: {
    readonly send: string;
    readonly sendAbout: string;
    readonly takeIn: string;
    readonly takeInAbout: string;
    readonly working: string;
    readonly trouble: string;
    readonly troubleForNow: string;
    readonly signedOut: (waiting: number) => string;
    readonly look: string;
  };
  readonly intake: {
    /** Of the list, where not all of it is on this machine alone. */
    readonly lead: string;
    readonly working: string;
    readonly new: (fresh: number, grown: number) => string;
    readonly failed: string;
    readonly look: string;
  };
  readonly id: string;
  readonly idHint: string;
  readonly idWrong: string;
  readonly connect: string;
  readonly working: string;
  readonly patient: string;
  readonly waiting: string;
  readonly records: (n: number) => string;
  readonly lastSent: string;
  readonly lastTaken: string;
  readonly never: string;
  readonly send: string;
  readonly takeIn: string;
  readonly sent: (n: number) => string;
  readonly unwanted: (n: number, detail: string) => string;
  readonly taken: (fresh: number, grown: number) => string;
  readonly conflicts: (n: number) => string;
  readonly unread: (n: number) => string;
  readonly disconnect: string;
  readonly disconnectAbout: string;
  readonly fault: string;
  readonly elsewhere: string;
  /** One sentence each. */
  readonly faults: Readonly<Record<ServerError['kind'], string>>;
}
