import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SegmentTurn } from '../../src/flow/leg-motion.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { StickersSeen } from '../../src/measure/stickers-seen.ts';
import { LANDMARK_COUNT, type Landmark } from '../../src/pose/landmarks.ts';
import { decodeRecording, encodeRecording, type RecordingMeta } from '../../src/record/recording.ts';
import { RECORDING_LIMITS } from '../../src/record/recording-shape.ts';
import { asRecorded } from '../../src/record/sticker-frame.ts';
import type { UnseenReason } from '../../src/stickers/unseen-reason.ts';
import { deg, ms, px, ratio } from '../../src/units.ts';
import { wentWell } from './went-well.ts';

const META: RecordingMeta = {
  source: { file: 'foot-tap.mp4', width: 640, height: 480, durationMs: ms(12000) },
  model: 'full',
  exercise: 'foot-tap',
  side: 'left',
};

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const aLandmark: fc.Arbitrary<Landmark> = fc.record({
  x: number(-500, 2500).map(px),
  y: number(-500, 2500).map(px),
  z: number(-2000, 2000).map(px),
  visibility: number(0, 1).map(ratio),
});
const aTurn: fc.Arbitrary<SegmentTurn | null> = fc.option(
  fc.record({
    turnDeg: number(-400, 400).map(deg),
    seDeg: number(0, 40).map(deg),
    zncc: number(-1, 1).map(ratio),
    anchor: fc.nat(1000),
  }),
);
const anObservation = fc.record({
  stepMs: number(1, 100),
  landmarks: fc.option(fc.array(aLandmark, { minLength: LANDMARK_COUNT, maxLength: LANDMARK_COUNT })),
  motion: fc.option(fc.record({ foot: aTurn, shank: aTurn, thigh: aTurn })),
  camera: fc.option(
    fc.record({
      rotationDeg: number(-180, 180).map(deg),
      shiftX: number(-900, 900).map(px),
      shiftY: number(-900, 900).map(px),
      scale: number(0.5, 2).map(ratio),
      agreement: number(0, 1).map(ratio),
      points: fc.nat(40),
    }),
  ),
  brightness: fc.option(number(0, 255)),
});
/** Observations on an advancing clock. */
const observations: fc.Arbitrary<readonly Observation[]> = fc.array(anObservation, { maxLength: 6 }).map((steps) => {
  let now = 0;
  return steps.map(({ stepMs, ...rest }) => {
    now += stepMs;
    return { ...rest, tMs: ms(now) };
  });
});

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

/** A recording as long as a real one, with points that move as a body's do. */
function twelveSeconds(width: number, height: number): readonly Observation[] {
  return Array.from({ length: 360 }, (_, frame) => ({
    tMs: ms((frame * 1000) / 30),
    landmarks: Array.from({ length: LANDMARK_COUNT }, (_, i) => ({
      x: px(width * (0.2 + 0.018 * i) + 3 * Math.sin(frame / 9 + i)),
      y: px(height * (0.9 - 0.02 * i) + 3 * Math.cos(frame / 7 + i)),
      z: px(300 * Math.sin(i + frame / 30)),
      visibility: ratio(0.5 + 0.49 * Math.sin(i)),
    })),
    motion: {
      foot: { turnDeg: deg(15 * Math.sin(frame / 20)), seDeg: deg(0.31), zncc: ratio(0.961), anchor: 0 },
      shank: { turnDeg: deg(Math.sin(frame / 25)), seDeg: deg(0.22), zncc: ratio(0.983), anchor: 0 },
      thigh: null,
    },
    camera: { rotationDeg: deg(0.3), shiftX: px(4.2), shiftY: px(-1), scale: ratio(1), agreement: ratio(0.9), points: 34 },
    brightness: 118.4,
  }));
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

const aPoint = fc.option(
  fc.record({
    x: number(-700, 4000).map(px),
    y: number(-700, 4000).map(px),
    errorPx: number(0, 9).map(px),
    bridged: fc.boolean(),
  }),
);
const aReason = fc.constantFrom<UnseenReason>('glare', 'like-surround', 'covered', 'lost');
/** Reasons, or none at all. */
const unseen = fc
  .record({ tip: aReason, knuckle: aReason, 'toe-2': aReason }, { requiredKeys: [] })
  .map((why) => (Object.keys(why).length > 0 ? { unseen: why } : {}));
const points = fc.record(
  { tip: aPoint, knuckle: aPoint, arch: aPoint, 'toe-2': aPoint },
  { requiredKeys: ['tip', 'knuckle', 'arch'] },
);
const stickersSeen: fc.Arbitrary<StickersSeen> = fc
  .tuple(fc.record({ points, implausible: fc.boolean() }), unseen)
  .map(([seen, why]) => ({ ...seen, ...why }));
/** As a set by stickers gives them. */
const stickerObservations: fc.Arbitrary<readonly Observation[]> = fc
  .array(fc.record({ stepMs: number(1, 100), brightness: fc.option(number(0, 255)), stickers: fc.option(stickersSeen) }), {
    maxLength: 6,
  })
  .map((steps) => {
    let now = 0;
    return steps.map(({ stepMs, ...seen }) => {
      now += stepMs;
      return { ...seen, tMs: ms(now), landmarks: null, motion: null, camera: null };
    });
  });
const BY_STICKERS = { ...META, model: 'stickers', exercise: 'toe-lift' } as const;

describe('a recording by stickers', () => {
  test('gives back what was written, to a thousandth of a pixel, and is the same text again', () => {
    fc.assert(
      fc.property(stickerObservations, (original) => {
        const text = encodeRecording(original, BY_STICKERS);
        const { observations: found, ...meta } = wentWell(decodeRecording(text));
        expect(meta).toEqual(BY_STICKERS);
        expect(encodeRecording(found, meta)).toBe(text);
        for (const [i, { stickers = null }] of original.entries()) {
          const kept = found[i]?.stickers;
          expect(kept === null).toBe(stickers === null);
          expect(kept?.implausible).toBe(stickers?.implausible);
          expect(kept?.unseen).toEqual(stickers?.unseen);
          for (const [name, point] of Object.entries(stickers?.points ?? {})) {
            const again = kept?.points[name as 'tip'];
            if (!point) expect(again).toBeNull();
            else {
              expect(Math.abs((again?.x ?? Number.NaN) - point.x)).toBeLessThanOrEqual(0.000501);
              expect(Math.abs((again?.y ?? Number.NaN) - point.y)).toBeLessThanOrEqual(0.000501);
              expect(Math.abs((again?.errorPx ?? Number.NaN) - point.errorPx)).toBeLessThanOrEqual(0.000501);
              expect(again?.bridged).toBe(point.bridged);
            }
          }
        }
      }),
    );
  });

  test('keeps what is measured from it to the last digit once it is rounded', () => {
    fc.assert(
      fc.property(stickerObservations, (original) => {
        const live = original.map(asRecorded);
        expect(wentWell(decodeRecording(encodeRecording(live, BY_STICKERS))).observations).toEqual(live);
      }),
    );
  });

  test('is refused with a pose model, and a pose recording with stickers', () => {
    const text = encodeRecording([], BY_STICKERS);
    const wrong = (value: unknown) => {
      const read = decodeRecording(JSON.stringify(value));
      return read.ok ? null : read.error;
    };
    expect(wrong({ ...JSON.parse(text), model: 'full' })).toMatchObject({ kind: 'recording-wrong', where: 'model' });
    expect(wrong({ ...JSON.parse(encodeRecording([], META)), model: 'stickers' })).toMatchObject({ where: 'model' });
  });

  test('names a sticker that it does not know', () => {
    const value = JSON.parse(encodeRecording([], BY_STICKERS));
    value.frames = [{ t: 0, b: null, s: [{ thumb: null }, 0, {}] }];
    expect(decodeRecording(JSON.stringify(value))).toMatchObject({ ok: false, error: { where: 'frames[0].s[0].thumb' } });
    value.frames = [{ t: 0, b: null, s: [{ tip: null }, 0, { tip: 'tired' }] }];
    expect(decodeRecording(JSON.stringify(value))).toMatchObject({ ok: false, error: { where: 'frames[0].s[2].tip' } });
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

describe('the published schema', () => {
  const schema = JSON.parse(readFileSync(new URL('../../docs/recording.schema.json', import.meta.url), 'utf8'));
  const validate = new Ajv2020({ strict: true, allErrors: false }).compile(schema);

  test('accepts every recording', () => {
    expect(validate(JSON.parse(encodeRecording(twelveSeconds(1280, 720), META)))).toBe(true);
    fc.assert(
      fc.property(observations, (original) => {
        expect(validate(JSON.parse(encodeRecording(original, META)))).toBe(true);
      }),
    );
    fc.assert(
      fc.property(stickerObservations, (original) => {
        expect(validate(JSON.parse(encodeRecording(original, BY_STICKERS)))).toBe(true);
      }),
    );
  });

  test.each([
    ['another format', ['format'], 'other'],
    ['a newer schema', ['schema'], 5],
    ['the schema of a set by stickers', ['schema'], 4],
    ['no file name', ['source', 'file'], null],
    ['a picture without width', ['source', 'width'], 0],
    ['an unknown model', ['model'], 'huge'],
    ['an unknown exercise', ['exercise'], 'skiing'],
    ['an unknown side', ['side'], 'both'],
    ['something more', ['extra'], 1],
    ['a time that is text', ['frames', 1, 't'], '33'],
    ['half a tenth of a pixel', ['frames', 1, 'p', 0, 0], 0.5],
    ['too few points', ['frames', 1, 'p', 2], [1, 2, 3]],
    ['too few columns', ['frames', 1, 'p'], []],
    ['a visibility above 1', ['frames', 1, 'p', 3, 0], 101],
    ['a negative error', ['frames', 1, 'm', 0, 1], -1],
    ['two segments', ['frames', 1, 'm'], [null, null]],
    ['a correlation above 1', ['frames', 1, 'm', 0, 2], 1001],
    ['a picture brighter than white', ['frames', 1, 'b'], 2551],
    ['no frames', ['frames'], {}],
  ] as const)('refuses, as the reader does, %s', (_, path, value) => {
    const text = encodeRecording(twelveSeconds(640, 480).slice(0, 2), META);
    const changed = JSON.parse(text);
    let place = changed;
    for (const key of path.slice(0, -1)) place = place[key];
    place[path.at(-1) as string] = value;
    expect(validate(changed)).toBe(false);
    expect(decodeRecording(JSON.stringify(changed)).ok).toBe(false);
  });

  test.each([
    ['a pose model', ['model'], 'full'],
    ['an unknown sticker', ['frames', 0, 's', 0, 'thumb'], null],
    ['a reason that is none', ['frames', 0, 's', 2, 'tip'], 'tired'],
    ['a reason for an unknown sticker', ['frames', 0, 's', 2, 'thumb'], 'glare'],
    ['no reasons', ['frames', 0, 's'], [{ tip: null }, 0]],
  ] as const)('refuses, as the reader does, of a set by stickers %s', (_, path, value) => {
    const stickers: StickersSeen = { points: { tip: null }, implausible: false, unseen: { tip: 'glare' } };
    const seen = { tMs: ms(0), landmarks: null, motion: null, camera: null, brightness: 90, stickers };
    const changed = JSON.parse(encodeRecording([seen], BY_STICKERS));
    expect(validate(changed)).toBe(true);
    let place = changed;
    for (const key of path.slice(0, -1)) place = place[key];
    place[path.at(-1) as string] = value;
    expect(validate(changed)).toBe(false);
    expect(decodeRecording(JSON.stringify(changed)).ok).toBe(false);
  });
});
