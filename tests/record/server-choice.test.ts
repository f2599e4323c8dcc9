import { expect, test } from 'vitest';
import { openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import { fakeBrowser } from './fake-browser.ts';
import { idOf } from './set-builders.ts';
import { wentWell } from './went-well.ts';

const HERE = 'https://fhir.example.org/r4';
const connection = (server: string, patient = 'Patient/one') => ({
  person: SELF,
  server,
  patient,
  cursor: null,
  sentAt: null,
  takenAt: null,
});

test('what was chosen for a server holds for it alone, and for nobody else', async () => {
  const sync = await wentWell(await openSetStore(fakeBrowser().page())).sync();
  const nothing = { automatic: false, refreshToken: null };
  expect(wentWell(await sync.choice(SELF, HERE))).toEqual({ person: SELF, server: HERE, ...nothing });
  wentWell(await sync.choose(SELF, HERE, { automatic: true }));
  wentWell(await sync.choose(SELF, HERE, { refreshToken: 'invented' }));
  expect(wentWell(await sync.choice(SELF, HERE))).toMatchObject({ automatic: true, refreshToken: 'invented' });
  expect(wentWell(await sync.choice(SELF, 'https://elsewhere.example'))).toMatchObject(nothing);
  expect(wentWell(await sync.choice(idOf(7), HERE))).toMatchObject(nothing);
  expect(wentWell(await sync.choices(HERE)).map(({ person }) => person)).toEqual([SELF]);
  expect(wentWell(await sync.choices('https://elsewhere.example'))).toEqual([]);
});

test('connecting leaves it, disconnecting forgets it, the token too', async () => {
  const sync = await wentWell(await openSetStore(fakeBrowser().page())).sync();
  wentWell(await sync.choose(SELF, HERE, { automatic: true, refreshToken: 'invented' }));
  wentWell(await sync.save(connection(HERE)));
  wentWell(await sync.save(connection(HERE, 'Patient/two')));
  expect(wentWell(await sync.choice(SELF, HERE)).refreshToken).toBe('invented');
  wentWell(await sync.disconnect(SELF));
  expect(wentWell(await sync.choice(SELF, HERE))).toMatchObject({ automatic: false, refreshToken: null });
});
