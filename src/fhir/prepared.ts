import type { Identifier, Reference, Resource } from '@medplum/fhirtypes';
import type { DiaryEntry } from '../record/diary-entry.ts';
import type { Naming } from './naming.ts';

/** Whose records they are. `existing`: somebody whom the server knows already, e.g. `Patient/123`. */
export type Subject =
  | { readonly kind: 'own'; readonly id: string; readonly name: string | null }
  | { readonly kind: 'existing'; readonly reference: string };

/** What all resources of one bundle share. */
export interface Context {
  readonly naming: Naming;
  readonly subject: Subject;
  /** Version of the program that writes them. */
  readonly version: string;
  /** False: what somebody typed (names, notes, names of files and own exercises) is left out, and so are whole records that hold such. */
  readonly texts: boolean;
  /** The whole diary: which plan holds, and which prescription a line belongs to. */
  readonly diary: readonly DiaryEntry[];
}

export type Known = Identifier & { readonly system: string; readonly value: string };

/** A resource on its way into a bundle. */
export interface Prepared {
  readonly resource: Resource;
  /** Ours: the same for the same record, whoever writes it. Searched for, so that it is there once. */
  readonly identifier: Known;
  /** True: it may stand on the server as it was before (a set before it was changed by hand, a plan before another took its place). */
  readonly changed: boolean;
}

/** A reference by identifier; `linked` turns it into one by address where the bundle has the resource. */
export const refTo = <T extends Resource>(type: T['resourceType'], identifier: Known): Reference<T> => ({ type, identifier });
