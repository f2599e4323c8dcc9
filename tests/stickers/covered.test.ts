/** Stickers that a finger covers, on skin with marks: where they are said to be against where they were drawn. */
import { expect, test } from 'vitest';
import { findStickers } from '../../src/stickers/find-stickers.ts';
import { startStickers, stepStickers } from '../../src/stickers/follow.ts';
import { distance } from '../../src/stickers/rgba-picture.ts';
import { TOE_STICKERS } from '../../src/stickers/sticker-name.ts';
import { ms } from '../../src/units.ts';
import { coveredSpots, drawCovered } from './covered-foot.ts';
import { liftAt } from './moving-foot.ts';

const FRAME_MS = 1000 / 30;
const [FROM, TO] = [6, 16];

test.each(TOE_STICKERS)(
  '%s covered by a finger for a third of a second is carried by the skin around it, and said to be covered',
  (name) => {
    const frame = (i: number) => {
      const still = { liftDeg: liftAt((i + 8) * FRAME_MS, 25, 1500), shift: { x: 4 * Math.sin((i + 8) / 9), y: 0 }, seed: i + 1 };
      const at = coveredSpots(still)[name];
      const away = 50 * Math.min(1, Math.max(0, FROM - i, i - TO) / 4);
      const cover = { from: { x: at.x, y: at.y + away }, to: { x: at.x + 10, y: at.y + away + 90 }, radiusPx: 9 };
      return { ...still, covers: [cover] };
    };
    const found = findStickers(drawCovered(frame(0)));
    if (!found.ok) throw new Error(`the test requires stickers, got ${found.error.kind}`);
    let state = startStickers(found.value, ms(0));
    let covered = 0;
    for (let i = 1; i < TO + 6; i++) {
      const step = stepStickers(state, drawCovered(frame(i)), ms(i * FRAME_MS));
      state = step.state;
      const seen = step.stickers[name];
      if (!seen) throw new Error(`the test requires a place in frame ${i}`);
      expect(distance(seen.at, coveredSpots(frame(i))[name])).toBeLessThan(1.5);
      if (seen.how === 'bridged') {
        covered++;
        expect(step.unseen[name]).toBe('covered');
      }
    }
    expect(covered).toBeGreaterThanOrEqual(TO - FROM);
    expect(state.tracks.every((t) => t.guessErrorPx === 0)).toBe(true);
  },
);
