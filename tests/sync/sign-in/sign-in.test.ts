/** Sign-in as SMART App Launch 2.2 has it (https://hl7.org/fhir/smart-app-launch/STU2.2/app-launch.html), against an authorization server of our own. */
import { describe, expect, test } from 'vitest';
import { challengeOf, newSecret } from '../../../src/sync/sign-in/oauth.ts';
import { addressOf } from '../../../src/sync/sign-in/question.ts';
import { scopesFor } from '../../../src/sync/sign-in/scopes.ts';
import { livedRecords } from '../../fhir/lived-records.ts';
import { wentWell } from '../../record/went-well.ts';
import { machine } from '../machine.ts';
import { clinic, PAGE, PATIENT, patientOf, questionFor, requestsTo, signedIn } from './signed-in.ts';
import { CLIENT } from './smart-endpoint.ts';

test('a verifier becomes the challenge of RFC 7636, appendix B', async () => {
  expect(await challengeOf('dBjftJeZ4CVP-mB92K27uhbUJU1p1r_wW1gFWFOEjXk')).toBe('E9Melhoa2OwvFrEMTJguCHaoeK1t8URWbuGJSstw-cM');
});

test('secrets are of the length and letters that RFC 7636 asks for, and none comes twice', () => {
  const secrets = Array.from({ length: 100 }, newSecret);
  for (const secret of secrets) expect(secret).toMatch(/^[A-Za-z0-9\-._~]{43,128}$/);
  expect(new Set(secrets).size).toBe(100);
});

test('the person is sent on with all that the guide asks for, the secret itself left out', async () => {
  const server = await clinic();
  const { server: smart } = await requestsTo(server, Date.now);
  const question = questionFor(server);
  const asked = new URL(addressOf(smart, question, 'the-challenge'));
  expect(asked.origin + asked.pathname).toBe(`${server.origin}/authorize`);
  expect(Object.fromEntries(asked.searchParams)).toEqual({
    response_type: 'code',
    client_id: CLIENT,
    redirect_uri: PAGE,
    scope:
      'launch/patient patient/Patient.r patient/DocumentReference.crs patient/Observation.cus patient/CarePlan.cus patient/ServiceRequest.cus patient/QuestionnaireResponse.cs patient/Device.cs online_access',
    state: question.state,
    aud: server.base,
    code_challenge: 'the-challenge',
    code_challenge_method: 'S256',
  });
  expect(asked.href).not.toContain(question.verifier);
  expect(scopesFor('therapist', false)).not.toMatch(/patient\//);
});

describe('records of somebody who signed in', () => {
  test('are sent as a patient and taken in as a therapist, with no more than the scopes that were asked for', async () => {
    const server = await clinic();
    const own = await signedIn(server, 'patient', false);
    expect(own.session.tokens()?.patient).toBe('invented-1');
    const patient = await machine(server.base, PATIENT, 'own', { access: own.session });
    const { sets, diary } = livedRecords();
    await patient.has(sets);
    wentWell(await patient.store.diary.add(diary));
    expect(wentWell(await patient.send()).unwanted).toEqual([]);
    const desk = await signedIn(server, 'therapist', false);
    expect(desk.session.tokens()?.patient).toBeNull();
    const therapist = await machine(server.base, PATIENT, 'looked-after', { access: desk.session });
    expect(wentWell(await therapist.takeIn()).fresh).toBe(sets.length + diary.length);
    expect(server.seen.refused).toEqual([]);
    expect(await therapist.all()).toEqual(await patient.all());
  });

  test('of another patient are out of reach, and so is everything without a token', async () => {
    const server = await clinic();
    const { session } = await signedIn(server, 'patient', false);
    expect((await patientOf(server.base, session, 'invented-1')).ok).toBe(true);
    expect(await patientOf(server.base, session, 'invented-2')).toEqual({
      ok: false,
      error: { kind: 'not-allowed', status: 403 },
    });
    expect((await fetch(`${server.base}/Patient/invented-1`)).status).toBe(401);
  });
});
