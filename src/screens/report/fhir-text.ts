import { version } from '../../../package.json';
import { collectionBundle } from '../../fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../fhir/naming.ts';
import { type Period, recordsOfPeriod } from '../../fhir/period.ts';
import type { Subject } from '../../fhir/prepared.ts';
import { type LeftOut, resourcesOf } from '../../fhir/resources.ts';
import type { Everything } from '../services.ts';

export interface FhirText {
  readonly text: string;
  readonly sets: number;
  readonly entries: number;
  readonly leftOut: readonly LeftOut[];
}

/**
 * The records of some days as the text of a FHIR bundle.
 * @param texts whether what somebody typed goes along
 * @param at ISO 8601, UTC
 */
export function fhirText(
  { sets, diary }: Everything,
  subject: Subject,
  texts: boolean,
  period: Period & { readonly timeZone: string },
  at: string,
  newId: () => string,
): FhirText {
  const found = recordsOfPeriod(sets, diary, period, period.timeZone);
  const own = diary.filter(({ origin }) => origin === 'own');
  const { prepared, leftOut } = resourcesOf(
    { naming: DEFAULT_NAMING, subject, version, texts, diary: own },
    found.sets,
    found.entries,
  );
  const running = leftOut.filter(({ why }) => why === 'running').length;
  return {
    text: JSON.stringify(collectionBundle(prepared, newId, at)),
    sets: found.sets.length - running,
    entries: found.entries.length,
    leftOut,
  };
}
