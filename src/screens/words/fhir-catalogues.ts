import { enFhir } from './en-fhir.ts';
import { esFhir } from './es-fhir.ts';
import type { FhirWords } from './fhir-words.ts';
import type { Language } from './languages.ts';
import { useCatalogue } from './use-catalogue.ts';

/** A part of each catalogue that is loaded with the report, which alone needs it. */
export const FHIR_CATALOGUES: Readonly<Record<Language, FhirWords>> = { en: enFhir, es: esFhir };

/** The one in the user's language. */
export const useFhirWords = (): FhirWords => useCatalogue(FHIR_CATALOGUES);
