import type { CodeableConcept, Coding } from '@medplum/fhirtypes';
import type { Side } from '../pose/landmarks.ts';
import { type SiteRegion, siteCode, siteName } from './body-site.ts';
import { codeSystemUrl, type Naming } from './naming.ts';
import { TERMS, type Term, type TermSystem } from './terms.ts';

/** Codes of HL7's own code systems that we use, as the R4 definitions have them. */
const HL7 = {
  category: 'http://terminology.hl7.org/CodeSystem/observation-category',
  absent: 'http://terminology.hl7.org/CodeSystem/data-absent-reason',
} as const;

/** One of our codes. */
export const coding = <S extends TermSystem>(naming: Naming, system: S, code: Term<S>): Coding => ({
  system: codeSystemUrl(naming, system),
  code,
  display: (TERMS[system] as Readonly<Record<string, string>>)[code] ?? code,
});

/** @param text what is said in this place, when it is more than the code's meaning */
export const concept = <S extends TermSystem>(naming: Naming, system: S, code: Term<S>, text?: string): CodeableConcept => ({
  coding: [coding(naming, system, code)],
  ...(text === undefined ? {} : { text }),
});

export const siteCoding = (naming: Naming, region: SiteRegion, side: Side): Coding => ({
  system: codeSystemUrl(naming, 'body-site'),
  code: siteCode(region, side),
  display: siteName(region, side),
});
export const site = (naming: Naming, region: SiteRegion, side: Side): CodeableConcept => ({
  coding: [siteCoding(naming, region, side)],
});

const CATEGORIES = { therapy: 'Therapy', exam: 'Exam' } as const;
/** `therapy`: an exercise that was done. `exam`: an angle that a therapist marked. */
export const category = (code: keyof typeof CATEGORIES): CodeableConcept[] => [
  { coding: [{ system: HL7.category, code, display: CATEGORIES[code] }] },
];

const ABSENT = { unknown: 'Unknown', 'not-performed': 'Not Performed' } as const;
/** Why there is no value. `not-performed`: nobody measured it. `unknown`: it was measured, and nothing was found. */
export const absent = (code: keyof typeof ABSENT): { dataAbsentReason: CodeableConcept } => ({
  dataAbsentReason: { coding: [{ system: HL7.absent, code, display: ABSENT[code] }] },
});
