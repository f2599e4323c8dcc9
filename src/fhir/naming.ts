import type { Identifier } from '@medplum/fhirtypes';

/** Under which address our identifiers, code systems and questionnaires are known. */
export interface Naming {
  /** A URI without a slash at its end. Need not be reachable; who runs a server may put one of their own. */
  readonly base: string;
}

/** `.invalid` never resolves (RFC 6761): no reader asks anybody for it. */
export const DEFAULT_NAMING: Naming = { base: 'https://evenside.invalid/fhir' };

/** Version of the code systems and questionnaires; raised whenever a code or a question changes its meaning. */
export const TERMS_VERSION = '1';

/**
 * What an identifier names. `record`: a set, an entry of the diary or an edit, by its own UUID. `line`: a line of one prescription, `PRESCRIPTION/LINE`.
 * `onset`: the angle where symptoms began in a set, by the set's UUID. `device`: a version of the program.
 */
type IdKind = 'record' | 'line' | 'onset' | 'person' | 'device';

export const idSystem = ({ base }: Naming, kind: IdKind): string => `${base}/id/${kind}`;
export const identifier = (
  naming: Naming,
  kind: IdKind,
  value: string,
): Identifier & Required<Pick<Identifier, 'system' | 'value'>> => ({
  system: idSystem(naming, kind),
  value,
});

export const codeSystemUrl = ({ base }: Naming, name: string): string => `${base}/CodeSystem/${name}`;
export const questionnaireUrl = ({ base }: Naming, name: string): string => `${base}/Questionnaire/${name}`;
