/** Who a file for a clinic's system names. */
export type NamedAs = 'code' | 'name';

/** Texts of the file for a clinic's system. */
export interface FhirWords {
  readonly title: string;
  readonly lead: string;
  readonly whose: string;
  readonly named: Record<NamedAs, { readonly name: string; readonly about: string }>;
  readonly name: string;
  readonly save: (weeks: number) => string;
  readonly saved: (sets: number, entries: number) => string;
  /** Records that are shown in the file but not whole, for what was typed in them. */
  readonly notWhole: (n: number) => string;
}
