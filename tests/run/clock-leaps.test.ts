/** The wall clock is set back or ahead while a set runs: its times, its count and the day it belongs to are those it began with. */
import { expect, test } from 'vitest';
import { localTime } from '../../src/dose/local-time.ts';
import { footTap } from '../../src/exercises/foot-tap.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, markOnset, startSet, stepSet } from '../../src/measure/set.ts';
import { doseLogOf } from '../../src/record/dose-log-of.ts';
import { setEndMs } from '../../src/record/set-end.ts';
import type { FrameSource } from '../../src/run/frame-source.ts';
import { returningCamera } from '../../src/run/returning-camera.ts';
import { type FrameObserver, startSession } from '../../src/run/session.ts';
import { BREAK_MS } from '../../src/run/set-clock.ts';
import { movementsAt, recording, sitting, specOf } from '../measure/pose-builder.ts';
import { wentWell } from '../record/went-well.ts';
import { pictures, SIZE } from './scripted-set.ts';
import { freshStore, optionsOf, storedSets } from './session-options.ts';

const HOUR_MS = 3_600_000;
/** Eight taps: one each 1.2 s, from 1.2 s on. */
const EVERY_MS = 1200;
const seen = recording({
  lastsMs: 16_000,
  bodyAt: (t) =>
    sitting({ ankleDeg: movementsAt(t, { everyMs: EVERY_MS, lastsMs: 800, ranges: [0, 0, 12, 12, 12, 12, 12, 12, 12, 12] }) }),
  flow: true,
});
const BEGINS = Date.parse('2026-03-11T10:00:00Z');

/** Runs the set in front of a camera while the wall clock leaps before the n-th picture; the pictures' own clock goes on. */
async function setWith(leap: { readonly at: number; readonly byMs: number } | null) {
  const { frame } = pictures();
  let shown = 0;
  const wallMs = () => BEGINS + (seen[shown]?.tMs ?? 0) + (leap && shown >= leap.at ? leap.byMs : 0);
  const camera: FrameSource = {
    size: SIZE,
    live: true,
    stop: () => undefined,
    async *frames() {
      for (shown = 0; shown < seen.length; shown += 1) yield frame(seen[shown]?.tMs ?? 0);
    },
  };
  let breaks = 0;
  const source = returningCamera(camera, {
    reopen: () => new Promise(() => undefined),
    onAway: () => undefined,
    onBreak: () => {
      breaks += 1;
    },
    watchChanges: () => () => undefined,
    visible: () => true,
    wallMs,
  });
  const client: FrameObserver = {
    begin: async () => undefined,
    follow: async () => [],
    observe: async ({ tMs }) => ({ ...(seen[shown] as Observation), tMs }),
  };
  const store = await freshStore();
  const origin = { person: 'me', source: 'camera', model: 'full' } as const;
  const options = optionsOf({ source, client, store, origin, spec: specOf(footTap, 'left', 8), now: wallMs });
  const set = wentWell(await startSession(options, { startSet, stepSet, markOnset, finishSet }).done);
  expect(await storedSets(store)).toEqual([set]);
  return { set, breaks };
}

/** In the middle of the fourth tap. */
const IN_A_TAP = seen.findIndex(({ tMs }) => tMs > 5 * EVERY_MS + 700);

test('set back by an hour, nothing of the set is otherwise', async () => {
  const plain = await setWith(null);
  expect(plain.set.reps).toHaveLength(8);
  for (const at of [40, IN_A_TAP, 300]) {
    const { set, breaks } = await setWith({ at, byMs: -HOUR_MS });
    expect(breaks).toBe(0);
    expect({ ...set, id: '', startedAt: '' }).toEqual({ ...plain.set, id: '', startedAt: '' });
  }
});

test('set ahead by a day, which looks as if the machine had slept: one break, and only the tap under way is not counted', async () => {
  const plain = await setWith(null);
  const { set, breaks } = await setWith({ at: IN_A_TAP, byMs: 24 * HOUR_MS });
  expect(breaks).toBe(1);
  expect(set.startedAt).toBe(plain.set.startedAt);
  const leapMs = seen[IN_A_TAP]?.tMs ?? 0;
  const stepMs = leapMs - (seen[IN_A_TAP - 1]?.tMs ?? 0);
  const whole = plain.set.reps.map(({ peakMs }) => peakMs).filter((peakMs) => Math.abs(peakMs - leapMs) > EVERY_MS / 2);
  expect(whole).toHaveLength(7);
  const expected = whole.map((peakMs) => (peakMs < leapMs ? peakMs : peakMs + BREAK_MS - stepMs));
  expect(set.reps.filter(({ complete }) => !complete).map(({ flags }) => flags)).toEqual([['partial', 'tracking-gap']]);
  const counted = set.reps.filter(({ complete }) => complete).map(({ peakMs }) => peakMs);
  expect(counted).toHaveLength(7);
  for (const [i, peakMs] of counted.entries()) expect(Math.abs(peakMs - (expected[i] ?? 0))).toBeLessThan(40);
});

test.each([-HOUR_MS, 24 * HOUR_MS])(
  'by %i ms, the set belongs to the day on which it began, and ends soon after it',
  async (byMs) => {
    const { set } = await setWith({ at: IN_A_TAP, byMs });
    const [one] = doseLogOf([], [set], 'Europe/Madrid').done;
    expect(one?.day).toBe(localTime({ nowMs: BEGINS, timeZone: 'Europe/Madrid' }).day);
    const lastedMs = setEndMs(set) - Date.parse(set.startedAt);
    expect(lastedMs).toBeGreaterThan(7 * EVERY_MS);
    expect(lastedMs).toBeLessThan(16_000 + BREAK_MS);
  },
);
