import { describe, expect, test } from 'vitest';
import { CameraLost } from '../../src/capture/camera-frames.ts';
import { VideoFileBroken } from '../../src/capture/video-file.ts';
import { startSession } from '../../src/run/session.ts';
import { ms } from '../../src/units.ts';
import { rep } from '../record/set-builders.ts';
import { fakeClient, fileSource, pictures, scriptedMeasure } from './scripted-set.ts';
import { freshStore, optionsOf, settle, storedSets } from './session-options.ts';

describe('what breaks off in the middle', () => {
  const breaks = [
    ['a file', new VideoFileBroken(ms(330)), { kind: 'file-broken', readToMs: 330 }],
    ['a camera pulled out', new CameraLost('unplugged'), { kind: 'camera-lost', why: 'unplugged' }],
    ['a phone turned', new CameraLost('turned'), { kind: 'camera-lost', why: 'turned' }],
  ] as const;

  test.each(breaks)('%s: what was measured is kept, stored as interrupted, and it is said', async (_, cause, error) => {
    const { all, frame } = pictures();
    const store = await freshStore();
    const source = fileSource(frame, 30, { at: 12, cause });
    const outcome = await startSession(optionsOf({ source, store }), scriptedMeasure({ readyAt: 0, repsAt: [5, 11] })).done;
    expect(outcome).toMatchObject({ ok: false, error: { ...error, storeError: null } });
    const kept = !outcome.ok && 'kept' in outcome.error ? outcome.error.kept : null;
    expect(kept).toMatchObject({ state: 'interrupted', reps: [rep(1), rep(2)], result: { count: 2 } });
    expect(await storedSets(store)).toEqual([kept]);
    await settle();
    expect(all.every(({ closed }) => closed === 1)).toBe(true);
  });

  test('before anything was measured: nothing is kept', async () => {
    const store = await freshStore();
    const source = fileSource(pictures().frame, 9, { at: 0, cause: new VideoFileBroken(ms(0)) });
    const outcome = await startSession(optionsOf({ source, store }), scriptedMeasure({ readyAt: 1 })).done;
    expect(outcome).toEqual({ ok: false, error: { kind: 'file-broken', readToMs: 0, kept: null, storeError: null } });
    expect(await storedSets(store)).toEqual([]);
  });

  test('the pose model: what was measured is kept', async () => {
    const { all, frame } = pictures();
    const client = fakeClient(async (tMs) => {
      if (tMs > 300) throw new Error('out of memory');
    });
    const source = fileSource(frame, 30);
    const outcome = await startSession(optionsOf({ source, client }), scriptedMeasure({ readyAt: 0, repsAt: [5] })).done;
    expect(outcome).toMatchObject({
      ok: false,
      error: { kind: 'pose-failed', detail: 'out of memory', kept: { reps: [rep(1)] } },
    });
    await settle();
    expect(all.every(({ closed }) => closed === 1)).toBe(true);
    expect(source.stopped()).toBeGreaterThan(0);
  });

  test('a pose model that does not even begin', async () => {
    const client = { ...fakeClient(), begin: () => Promise.reject(new Error('no wasm')) };
    const outcome = await startSession(optionsOf({ source: fileSource(pictures().frame, 3), client }), scriptedMeasure({})).done;
    expect(outcome).toMatchObject({ ok: false, error: { kind: 'pose-failed', detail: 'no wasm', kept: null } });
  });

  test('a fault of the program is thrown, and the repetitions before it are stored', async () => {
    const store = await freshStore();
    const options = optionsOf({ source: fileSource(pictures().frame, 30), store });
    const onView = () => {
      if (views++ === 8) throw new Error('a bug');
    };
    let views = 0;
    const session = startSession({ ...options, onView }, scriptedMeasure({ readyAt: 0, repsAt: [5] }));
    await expect(session.done).rejects.toThrow('a bug');
    expect(await storedSets(store)).toMatchObject([{ state: 'interrupted', reps: [rep(1)], result: null }]);
  });
});
