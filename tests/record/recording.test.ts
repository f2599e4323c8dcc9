import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Observation } from '../../src/measure/observation.ts';
import { LANDMARK_COUNT, type Landmark } from '../../src/pose/landmarks.ts';
import { decodeRecording, encodeRecording } from '../../src/record/recording.ts';
import { RECORDING_LIMITS } from '../../src/record/recording-shape.ts';
import { META, observations, twelveSeconds } from './any-recording.ts';
import { wentWell } from './went-well.ts';

/** Half a unit of the last place that is kept, and the rounding of the arithmetic itself. */
const within = (kept: number, original: number, step: number) =>
  expect(Math.abs(kept - original)).toBeLessThanOrEqual(step / 2 + 1e-9);

function expectRounded(kept: Observation, original: Observation): void {
  within(kept.tMs, original.tMs, 0.001);
  expect(kept.landmarks?.length).toBe(original.landmarks?.length);
  for (const [i, point] of (original.landmarks ?? []).entries()) {
    const found = kept.landmarks?.[i] as Landmark;
    within(found.x, point.x, 0.1);
    within(found.y, point.y, 0.1);
    within(found.z, point.z, 0.1);
    within(found.visibility, point.visibility, 0.01);
  }
  expect(kept.motion === null).toBe(original.motion === null);
  for (const part of ['foot', 'shank', 'thigh'] as const) {
    const [found, turn] = [kept.motion?.[part] ?? null, original.motion?.[part] ?? null];
    expect(found === null).toBe(turn === null);
    if (!found || !turn) continue;
    within(found.turnDeg, turn.turnDeg, 0.01);
    within(found.seDeg, turn.seDeg, 0.01);
    within(found.zncc, turn.zncc, 0.001);
    expect(found.anchor).toBe(turn.anchor);
  }
  expect(kept.camera === null).toBe(original.camera === null);
  if (kept.camera && original.camera) {
    within(kept.camera.rotationDeg, original.camera.rotationDeg, 0.001);
    within(kept.camera.shiftX, original.camera.shiftX, 0.01);
    within(kept.camera.shiftY, original.camera.shiftY, 0.01);
    within(kept.camera.scale, original.camera.scale, 0.00001);
    within(kept.camera.agreement, original.camera.agreement, 0.01);
    expect(kept.camera.points).toBe(original.camera.points);
  }
  expect(kept.brightness === null).toBe(original.brightness === null);
  if (kept.brightness !== null && original.brightness !== null) within(kept.brightness, original.brightness, 0.1);
}

describe('a recording', () => {
  test('gives back what was written, to the rounding that the format states', () => {
    fc.assert(
      fc.property(observations, (original) => {
        const kept = wentWell(decodeRecording(encodeRecording(original, META)));
        const { observations: found, ...meta } = kept;
        expect(meta).toEqual(META);
        expect(found.length).toBe(original.length);
        for (const [i, each] of original.entries()) expectRounded(found[i] as Observation, each);
      }),
    );
  });

  test('read and written again is the same text, byte for byte', () => {
    fc.assert(
      fc.property(observations, (original) => {
        const text = encodeRecording(original, META);
        const { observations: found, ...meta } = wentWell(decodeRecording(text));
        expect(encodeRecording(found, meta)).toBe(text);
      }),
    );
  });

  test('of twelve seconds stays under 260 kB', () => {
    expect(encodeRecording(twelveSeconds(640, 480), META).length).toBeLessThan(260_000);
  });

  test('of schema 1 is read, its camera not measured', () => {
    const written = JSON.parse(encodeRecording(twelveSeconds(640, 480).slice(0, 3), META));
    for (const frame of written.frames) delete frame.c;
    const older = wentWell(decodeRecording(JSON.stringify({ ...written, schema: 1 })));
    expect(older.observations).toMatchObject(
      Array.from({ length: 3 }, (_, i) => ({ tMs: expect.closeTo((i * 1000) / 30, 2), camera: null, brightness: 118.4 })),
    );
    expect(decodeRecording(JSON.stringify(written))).toMatchObject({
      ok: false,
      error: { kind: 'recording-wrong', where: 'frames[0].c' },
    });
  });

  test('is not written from what could not be read back', () => {
    const [first, second] = twelveSeconds(640, 480) as [Observation, Observation];
    expect(() => encodeRecording([second, first], META)).toThrow('frames[1].t');
    expect(() => encodeRecording([{ ...first, landmarks: [] }], META)).toThrow('frames[0].p[0]');
    expect(() => encodeRecording([{ ...first, brightness: Number.NaN }], META)).toThrow('frames[0].b');
  });
});

describe('a recording of an older version', () => {
  const old = (schema: number): string =>
    readFileSync(new URL(`./recordings-of-old/schema-${schema}.json`, import.meta.url), 'utf8');

  test('schema 1 is read without the camera, schema 2 with it', () => {
    const first = wentWell(decodeRecording(old(1)));
    const second = wentWell(decodeRecording(old(2)));
    expect(first.observations.map(({ camera }) => camera)).toEqual([null, null]);
    expect(second.observations.every(({ camera }) => camera !== null)).toBe(true);
    expect(second.observations.map((o) => ({ ...o, camera: null }))).toEqual(first.observations);
    expect(first).toMatchObject({ exercise: 'nerve-glide', side: 'left', model: 'full' });
    expect(first.observations[0]?.landmarks).toHaveLength(LANDMARK_COUNT);
  });

  test('schema 3 is read without the reasons, and is written with room for them', () => {
    const recording = wentWell(decodeRecording(old(3)));
    const { observations: frames, ...meta } = recording;
    expect(meta).toMatchObject({ exercise: 'toe-lift', side: 'left', model: 'stickers' });
    expect(frames.map(({ stickers }) => stickers)).toMatchObject([
      { points: { tip: { x: 511.144, y: 164.944, errorPx: 0.15, bridged: false } }, implausible: false },
      { points: { tip: { x: 511.15, bridged: true } }, implausible: false },
      { points: { arch: null }, implausible: true },
    ]);
    expect(frames.every(({ stickers }) => stickers && !('unseen' in stickers))).toBe(true);
    const now = encodeRecording(frames, meta);
    expect(JSON.parse(now).schema).toBe(4);
    expect(wentWell(decodeRecording(now))).toEqual(recording);
  });

  test('with the reasons of a newer one is refused', () => {
    const value = JSON.parse(old(3));
    value.frames[0].s.push({});
    expect(decodeRecording(JSON.stringify(value))).toMatchObject({ ok: false, error: { kind: 'recording-wrong' } });
  });
});

describe('a text that is no recording', () => {
  const good = (): { format: string; schema: number; frames: { t: number; p: number[][] }[] } & Record<string, unknown> =>
    JSON.parse(encodeRecording(twelveSeconds(640, 480).slice(0, 3), META));
  const errorOf = (value: unknown) => {
    const decoded = decodeRecording(typeof value === 'string' ? value : JSON.stringify(value));
    return decoded.ok ? null : decoded.error;
  };

  test('says what it is instead', () => {
    expect(errorOf('')).toEqual({ kind: 'recording-not-json' });
    expect(errorOf('{"format":"evenside-recording"')).toEqual({ kind: 'recording-not-json' });
    expect(errorOf('null')).toEqual({ kind: 'recording-other-format' });
    expect(errorOf([])).toEqual({ kind: 'recording-other-format' });
    expect(errorOf({ ...good(), format: 'other' })).toEqual({ kind: 'recording-other-format' });
    expect(errorOf({ ...good(), schema: 5 })).toEqual({ kind: 'recording-newer', schema: 5, known: 4 });
    const limit = RECORDING_LIMITS.characters;
    expect(errorOf(' '.repeat(limit + 1))).toEqual({ kind: 'recording-too-large', characters: limit + 1, limit });
  });

  test('names the first thing wrong', () => {
    const wrong = (change: (value: ReturnType<typeof good>) => void) => {
      const value = good();
      change(value);
      return errorOf(value);
    };
    const at = (where: string, what = /./) => ({ kind: 'recording-wrong', where, what: expect.stringMatching(what) });
    expect(wrong((x) => delete x.side)).toEqual(at('side', /undefined/));
    expect(wrong((x) => Object.assign(x, { exercise: 'skiing' }))).toEqual(at('exercise', /skiing/));
    expect(wrong((x) => Object.assign(x, { extra: 1 }))).toEqual(at('extra'));
    expect(wrong((x) => x.frames[1]?.p[0]?.splice(7, 1, 0.5))).toEqual(at('frames[1].p[0][7]', /integer/));
    expect(wrong((x) => x.frames[2]?.p[3]?.pop())).toEqual(at('frames[2].p[3]', /33/));
    expect(wrong((x) => Object.assign(x.frames[2] ?? {}, { t: 33.333 }))).toEqual(at('frames[2].t', /after/));
    expect(wrong((x) => Object.assign(x.frames[0] ?? {}, { t: '0' }))).toEqual(at('frames[0].t', /number/));
  });
});
