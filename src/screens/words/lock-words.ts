/** The way to the passphrase lock. */
export interface LockWords {
  readonly open: string;
  readonly openAbout: string;
}

/** Texts of its screens, loaded with them. */
export interface LockScreenWords {
  readonly title: string;
  readonly lead: string;
  readonly passphrase: string;
  readonly again: string;
  readonly old: string;
  readonly next: string;
  readonly show: string;
  readonly hide: string;
  readonly hint: (least: number) => string;
  readonly differs: string;
  /** How much of all records is done. */
  readonly working: (percent: number) => string;
  /** What a forgotten passphrase means. */
  readonly lost: string;
  readonly off: {
    readonly title: string;
    readonly readableTitle: string;
    readonly readable: string;
    readonly turnOn: string;
  };
  readonly on: {
    readonly title: string;
    readonly about: string;
    readonly part: string;
    readonly finish: string;
    readonly now: string;
    readonly change: string;
    readonly changed: string;
    readonly turnOff: string;
    readonly turnOffAbout: string;
  };
  readonly unlock: {
    readonly title: string;
    readonly lead: string;
    readonly do: string;
    readonly forgot: string;
    readonly erase: string;
    /** @param word to be typed */
    readonly confirm: (word: string) => string;
    /** What must be typed, in capitals. */
    readonly word: string;
    readonly erased: string;
  };
}
