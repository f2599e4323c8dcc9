import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StickersSeen } from '../../src/measure/stickers-seen.ts';
import { decodeRecording, encodeRecording } from '../../src/record/recording.ts';
import { ms } from '../../src/units.ts';
import { META, observations, twelveSeconds } from './any-recording.ts';
import { BY_STICKERS, stickerObservations } from './any-sticker-recording.ts';

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
