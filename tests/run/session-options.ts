import type { SetEvent } from '../../src/measure/live-view.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import type { SetStore } from '../../src/record/set-store.ts';
import type { StoreError } from '../../src/record/store-error.ts';
import type { SessionOptions } from '../../src/run/session.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { momentOf } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { fakeClient, SPEC } from './scripted-set.ts';

/** What a session told. */
export interface Heard {
  readonly events: SetEvent[];
  readonly counts: number[];
  readonly troubles: (StoreError['kind'] | null)[];
}

export const heard = (): Heard => ({ events: [], counts: [], troubles: [] });

type Given = Partial<SessionOptions> & Pick<SessionOptions, 'source'>;

/** A session over a fake client, with what the test gives. */
export const optionsOf = (given: Given, to: Heard = heard()): SessionOptions => ({
  client: fakeClient(),
  spec: SPEC,
  head: 'find',
  origin: { person: 'me', source: 'file', model: 'full', fileName: 'taps.mp4' },
  store: null,
  now: () => Date.parse(momentOf(0)),
  onView: (view) => to.counts.push(view.count),
  onEvent: (event) => to.events.push(event),
  onStoreTrouble: (error) => to.troubles.push(error?.kind ?? null),
  ...given,
});

export const freshStore = async (): Promise<SetStore> => wentWell(await openSetStore(fakeBrowser().page()));
/** Lets all that is under way without a timer come to its end. */
export const settle = async () => {
  for (let i = 0; i < 20; i += 1) await new Promise((resolve) => setImmediate(resolve));
};
export const storedSets = async (store: SetStore) => wentWell(await store.list({ limit: 50 })).sets;
