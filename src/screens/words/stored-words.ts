import type { Persistence } from '../../record/persistence.ts';
import type { Readiness } from '../offline/site.ts';

/** Texts of what is stored here, of the time without a network, and of new versions; loaded with them. */
export interface StoredWords {
  readonly open: string;
  readonly openAbout: string;
  readonly title: string;
  readonly lead: string;
  readonly amounts: {
    readonly title: string;
    readonly kind: string;
    readonly count: string;
    readonly size: string;
    readonly sets: string;
    readonly diary: string;
    readonly people: string;
    readonly model: (name: string) => string;
    readonly program: string;
    readonly about: string;
    /** What the browser counts for this address, and how much it gives. */
    readonly room: (used: string, given: string) => string;
    readonly looking: string;
  };
  readonly keep: {
    readonly title: string;
    readonly states: Record<Persistence, string>;
    readonly ask: string;
    readonly refused: string;
  };
  readonly offline: {
    readonly title: string;
    readonly states: Record<Exclude<Readiness, 'fetching'>, string>;
    readonly fetching: (percent: number) => string;
    readonly fetch: string;
    readonly again: string;
    readonly install: string;
  };
  readonly files: {
    readonly title: string;
    readonly about: string;
    readonly save: string;
    readonly people: string;
    readonly openPeople: string;
  };
  readonly erase: {
    readonly title: string;
    readonly about: string;
    readonly what: readonly string[];
    readonly begin: string;
    readonly cancel: string;
    readonly done: string;
    readonly doneAbout: string;
    readonly anew: string;
  };
  readonly update: {
    readonly ready: string;
    readonly take: string;
    readonly otherTab: string;
  };
}
