/** Who signs in: a patient for their own records, or a therapist for those whom they look after. */
export type Role = 'patient' | 'therapist';

/**
 * What is done with each type, and nothing more: records are created unless they are there (`c`, `s`), what shows them is put in the place of what is there
 * (`u`), documents are looked for and read (`r`, `s`). SMART App Launch 2.2, scopes for requesting FHIR resources.
 */
const DONE = [
  'Patient.r',
  'DocumentReference.crs',
  'Observation.cus',
  'CarePlan.cus',
  'ServiceRequest.cus',
  'QuestionnaireResponse.cs',
  'Device.cs',
] as const;

/**
 * The scopes that are asked for. Not who the person is (`openid`, `fhirUser`): nothing here needs it.
 * @param keep also when the person is gone
 */
export function scopesFor(role: Role, keep: boolean): string {
  const level = role === 'patient' ? 'patient' : 'user';
  const context = role === 'patient' ? ['launch/patient'] : [];
  return [...context, ...DONE.map((each) => `${level}/${each}`), keep ? 'offline_access' : 'online_access'].join(' ');
}
