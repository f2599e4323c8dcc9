import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeRecording, encodeRecording } from '../../src/record/recording.ts';
import { asRecorded } from '../../src/record/sticker-frame.ts';
import { META } from './any-recording.ts';
import { BY_STICKERS, stickerObservations } from './any-sticker-recording.ts';
import { wentWell } from './went-well.ts';

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
