import { expect, test } from 'vitest';
import type { ClipWithTruth } from '../../../scripts/accuracy/clip-with-truth.ts';
import { stickerOutcome } from '../../../scripts/accuracy/sticker-outcome.ts';
import type { Recording } from '../../../src/record/recording.ts';
import { ms, px } from '../../../src/units.ts';
import { clip, trueRep } from './truth-builder.ts';

const TIP_PX = 60;
const REPS = [trueRep(2000, 3000, 20), trueRep(4000, 5000, 24)];

/** A toe to the right whose tip is drawn where the clip's angle has it. */
function toeClip(): ClipWithTruth {
  const built = clip('toe-lift', REPS);
  const frames = built.truth.frames.map(({ tMs, ankleDeg }) => {
    const turn = (ankleDeg * Math.PI) / 180;
    const tip: [number, number] = [400 + TIP_PX * Math.cos(turn), 200 - TIP_PX * Math.sin(turn)];
    const stickersPx: Record<string, [number, number]> = { tip, knuckle: [400, 200], arch: [280, 200] };
    return { tMs, ankleDeg: 0, legElevationDeg: 0, kneeFlexionDeg: 0, toeInPictureDeg: ankleDeg, stickersPx };
  });
  return { id: 'toe', path: 'toe.mp4', exercise: 'toe-lift', side: 'left', truth: { ...built.truth, measures: 'toe', frames } };
}

/** What would be seen of it, all of it this far to the right. */
function recordingOf({ truth }: ClipWithTruth, offPx: number): Recording {
  const observations = truth.frames.map(({ tMs, stickersPx }) => {
    const points = Object.entries(stickersPx ?? {}).map(([name, [x, y]]) => [
      name,
      { x: px(x + offPx), y: px(y), errorPx: px(0.15), bridged: false },
    ]);
    const stickers = { points: Object.fromEntries(points), implausible: false };
    return { tMs: ms(tMs), landmarks: null, motion: null, camera: null, brightness: 120, stickers };
  });
  const source = { file: 'toe.mp4', width: 640, height: 480, durationMs: ms(truth.durationMs) };
  return { source, model: 'stickers', exercise: 'toe-lift', side: 'left', observations };
}

test('places seen beside where they were drawn show in the places alone, since the angle is the same', () => {
  const toe = toeClip();
  const { result, matched, centreErrorsPx, angleErrorsDeg } = stickerOutcome(toe, recordingOf(toe, 2));
  expect(result?.count).toBe(REPS.length);
  expect(matched).toHaveLength(REPS.length);
  expect(centreErrorsPx).toHaveLength(3 * toe.truth.frames.length);
  for (const off of centreErrorsPx) expect(off).toBeCloseTo(2, 6);
  for (const { rangeErrorDeg } of matched) expect(Math.abs(rangeErrorDeg)).toBeLessThan(0.5);
  expect(Math.max(...angleErrorsDeg)).toBeLessThan(1);
});

test('a clip in which nothing was found has no errors and no count', () => {
  expect(stickerOutcome(toeClip(), null)).toMatchObject({ result: null, matched: [], centreErrorsPx: [], angleErrorsDeg: [] });
});
