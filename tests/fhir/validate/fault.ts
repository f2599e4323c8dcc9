/** One thing that a layer found wrong. */
export interface Fault {
  readonly layer: 'medplum' | 'fhir' | 'constraints' | 'bundle';
  /** Where, as the layer says it. */
  readonly where: string;
  readonly what: string;
}
