import * as v from 'valibot';
import { newId } from '../../record/new-id.ts';
import { idShape } from '../../record/shape.ts';

const KEY = 'evenside.fhir-person';

/** The code under which one's own records go out: chance, made once, so that a clinic's system takes two files for one person's. */
export function ownSubjectId(): string {
  try {
    const kept = localStorage.getItem(KEY);
    if (v.is(idShape, kept)) return kept;
    const made = newId();
    localStorage.setItem(KEY, made);
    return made;
  } catch {
    // Storage can be switched off by the browser; then each file has a code of its own.
    return newId();
  }
}
