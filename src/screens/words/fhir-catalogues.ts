import { enFhir } from './en-fhir.ts';
import { esFhir } from './es-fhir.ts';
import type { FhirWords } from './fhir-words.ts';
import { type Language, languageOf } from './languages.ts';
import { useWords } from './words-context.tsx';

/** A part of each catalogue that is loaded with the report, which alone needs it. */
export const FHIR_CATALOGUES: Readonly<Record<Language, FhirWords>> = { en: enFhir, es: esFhir };

/** The one in the user's language. */
export const useFhirWords = (): FhirWords => FHIR_CATALOGUES[languageOf(null, [useWords().locale])];
