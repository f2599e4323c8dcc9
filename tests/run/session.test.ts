import { describe, expect, test, vi } from 'vitest';
import { VideoFileBroken } from '../../src/capture/video-file.ts';
import { footTap } from '../../src/exercises/foot-tap.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, markOnset, startSet, stepSet } from '../../src/measure/set.ts';
import type { SetStore } from '../../src/record/set-store.ts';
import type { FrameSource } from '../../src/run/frame-source.ts';
import { type FrameObserver, type Session, startSession } from '../../src/run/session.ts';
import { ms } from '../../src/units.ts';
import { movementsAt, recording, sitting, specOf } from '../measure/pose-builder.ts';
import { momentOf, rep } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { fakeClient, fileSource, pictures, SPEC, scriptedMeasure } from './scripted-set.ts';
import { freshStore, type Heard, heard, optionsOf, settle, storedSets } from './session-options.ts';

describe('a set from a file', () => {
  test('is measured whole, stored as finished and given back as it is stored', async () => {
    const { all, frame } = pictures();
    const store = await freshStore();
    const to = heard();
    const source = fileSource(frame, 30);
    const { done } = startSession(optionsOf({ source, store }, to), scriptedMeasure({ readyAt: 2, repsAt: [10, 20] }));
    const set = wentWell(await done);
    expect(set).toMatchObject({ state: 'finished', reps: [rep(1), rep(2)], startedAt: momentOf(0), fileName: 'taps.mp4' });
    expect(await storedSets(store)).toEqual([set]);
    expect(to.events.map(({ kind }) => kind)).toEqual(['ready', 'rep', 'rep']);
    expect(to.counts.length).toBe(30);
    expect(to.troubles).toEqual([]);
    await settle();
    expect(all.map(({ closed }) => closed)).toEqual(Array.from({ length: 30 }, () => 1));
    expect(source.stopped()).toBeGreaterThan(0);
  });

  test('keeps the dose it was done for', async () => {
    const store = await freshStore();
    const options = optionsOf({ source: fileSource(pictures().frame, 9), store, spec: { ...SPEC, targetReps: 12 } });
    const set = wentWell(await startSession(options, scriptedMeasure({ readyAt: 0, repsAt: [3] })).done);
    expect(set.targetReps).toBe(12);
    expect(await storedSets(store)).toEqual([set]);
  });

  test('every observation goes to whoever records, in order', async () => {
    const times: number[] = [];
    const source = fileSource(pictures().frame, 5);
    const options = optionsOf({ source, onObservation: ({ tMs }) => times.push(tMs) });
    await startSession(options, scriptedMeasure({})).done;
    expect(times).toEqual([0, 33, 66, 99, 132]);
  });

  test('one frame is in work at a time, and one more at most is decoded ahead', async () => {
    const { all, frame } = pictures();
    const open: number[] = [];
    const client = fakeClient(async () => {
      await settle();
      open.push(all.filter(({ closed }) => closed === 0).length);
    });
    await startSession(optionsOf({ source: fileSource(frame, 6), client }), scriptedMeasure({})).done;
    expect(client.most()).toBe(1);
    expect(Math.max(...open)).toBe(2);
  });

  test('that goes on after the dose, and after the person was away, is counted and stored to its end', async () => {
    const bodyAt = (t: number) =>
      t > 7500 && t < 14_200
        ? null
        : sitting({
            ankleDeg: movementsAt(t, { everyMs: 1200, lastsMs: 800, ranges: [12, 12, 12, 0, 0, 0, 0, 0, 0, 0, 0, 12, 12] }),
          });
    const seen = recording({ lastsMs: 18_000, bodyAt, flow: true });
    const store = await freshStore();
    const counted: number[] = [];
    const watch = (live: boolean, to: Heard) => {
      const source = { ...fileSource(pictures().frame, seen.length), live };
      let frame = 0;
      const client: FrameObserver = {
        begin: async () => undefined,
        follow: async () => [],
        observe: async () => seen[frame++] as Observation,
      };
      const appended: SetStore = {
        ...store,
        append: async (header, reps) => {
          counted.push(...reps.map(({ number }) => number));
          return store.append(header, reps);
        },
      };
      const options = optionsOf({ source, client, store: appended, spec: specOf(footTap, 'left', 2) }, to);
      return startSession(options, { startSet, stepSet, markOnset, finishSet }).done;
    };
    const file = heard();
    const set = wentWell(await watch(false, file));
    expect(set).toMatchObject({ targetReps: 2, result: { count: 5, frames: seen.length } });
    expect(file.counts.at(-1)).toBe(5);
    expect(file.events.map(({ kind }) => kind)).not.toContain('ended');
    expect(counted).toEqual([1, 2, 3, 4, 5]);
    // The very same pictures from a camera end when the dose is done and nothing follows.
    const camera = heard();
    expect(wentWell(await watch(true, camera)).reps.length).toBe(3);
    expect(camera.events.at(-1)).toEqual({ kind: 'ended', why: 'target-reached' });
  });

  test('repetitions found only after the set are stored too', async () => {
    const store = await freshStore();
    const measure = scriptedMeasure({ foundAfterwards: [rep(1)] });
    const set = wentWell(await startSession(optionsOf({ source: fileSource(pictures().frame, 4), store }), measure).done);
    expect(await storedSets(store)).toEqual([set]);
    expect(set.reps).toEqual([rep(1)]);
  });

  test('in which nothing was measured is not stored, and the result tells why', async () => {
    const store = await freshStore();
    const outcome = await startSession(optionsOf({ source: fileSource(pictures().frame, 4), store }), scriptedMeasure({})).done;
    expect(outcome).toMatchObject({ ok: false, error: { kind: 'nothing-measured', result: { count: 0 } } });
    expect(await storedSets(store)).toEqual([]);
  });
});

describe('stopping', () => {
  test('keeps what was measured as finished, without waiting for a frame in work', async () => {
    const { all, frame } = pictures();
    const store = await freshStore();
    const hung = new Promise<void>(() => undefined);
    const client = fakeClient((tMs) => (tMs > 300 ? hung : Promise.resolve()));
    const to = heard();
    const session: Session = startSession(
      optionsOf({ source: fileSource(frame, 99), client, store }, to),
      scriptedMeasure({ readyAt: 0, repsAt: [5] }),
    );
    await vi.waitFor(() => expect(to.counts.length).toBe(10));
    session.stop();
    const set = wentWell(await session.done);
    expect(set).toMatchObject({ state: 'finished', reps: [rep(1)] });
    await settle();
    // All but the one that hangs in the model, which is the model's to close.
    expect(all.filter(({ closed }) => closed !== 1).map(({ tMs }) => tMs)).toEqual([330]);
    session.stop();
  });

  test('is no break, even when the source was closed first and broke', async () => {
    const { frame } = pictures();
    const source: FrameSource = {
      ...fileSource(frame, 0),
      async *frames() {
        for (let i = 0; i < 9; i += 1) yield frame(i * 33);
        // The break is heard of first, the stop in the same moment.
        queueMicrotask(() => queueMicrotask(() => session.stop()));
        throw new VideoFileBroken(ms(264));
      },
    };
    const session: Session = startSession(optionsOf({ source }), scriptedMeasure({ readyAt: 0, repsAt: [5] }));
    expect(wentWell(await session.done)).toMatchObject({ state: 'finished', reps: [rep(1)] });
  });

  test('before the first frame ends the session', async () => {
    const { all, frame } = pictures();
    const session = startSession(optionsOf({ source: fileSource(frame, 5) }), scriptedMeasure({ readyAt: 0 }));
    session.stop();
    expect(await session.done).toMatchObject({ ok: false, error: { kind: 'nothing-measured' } });
    await settle();
    expect(all.every(({ closed }) => closed === 1)).toBe(true);
  });
});

describe('symptoms that begin', () => {
  test('are noted with the frame that is looked at, and stored with the set', async () => {
    const store = await freshStore();
    const measure = scriptedMeasure({ readyAt: 0, repsAt: [3] });
    const source = fileSource(pictures().frame, 8);
    const session = startSession(
      optionsOf({ source, store, onObservation: ({ tMs }) => void (tMs === 132 && session.markOnset()) }),
      measure,
    );
    const set = wentWell(await session.done);
    expect(set.result?.onset).toEqual({ tMs: 132, angleDeg: null });
    expect(await storedSets(store)).toEqual([set]);
  });

  test('told of twice, the first word stands', async () => {
    const session = startSession(
      optionsOf({ source: fileSource(pictures().frame, 8), onObservation: () => session.markOnset() }),
      scriptedMeasure({ readyAt: 0, repsAt: [3] }),
    );
    expect(wentWell(await session.done).result?.onset?.tMs).toBe(0);
  });
});
