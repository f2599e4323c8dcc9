import type { AngleMarkFor } from '../../symptoms/angle-mark.ts';
import type { DeskSource } from '../desk/desk-choice.ts';

/** Texts of the therapist's measuring. */
export interface DeskWords {
  readonly open: string;
  readonly openAbout: string;
  readonly title: string;
  readonly lead: string;
  readonly movement: string;
  readonly sideHint: string;
  readonly source: string;
  readonly sources: Record<DeskSource, { readonly name: string; readonly about: string }>;
  readonly chooseWindow: string;
  readonly otherWindow: string;
  readonly crop: string;
  readonly cropHint: string;
  readonly edges: Record<'left' | 'right' | 'top' | 'bottom', string>;
  readonly start: string;
  readonly cropTooSmall: string;
  readonly mark: Record<AngleMarkFor, string>;
  readonly markKey: (key: string) => string;
  readonly marked: (what: string, deg: string) => string;
  readonly unseen: string;
  readonly done: string;
  readonly results: string;
  readonly none: string;
  readonly trial: (n: number) => string;
  readonly mean: string;
  readonly spread: string;
  readonly notMeasured: string;
  readonly between: (what: string) => string;
  readonly more: (leg: string, deg: string) => string;
  readonly tooFew: string;
  readonly error: (mdc: string) => string;
  readonly method: string;
  readonly copy: string;
  readonly copied: string;
  readonly forget: string;
}
