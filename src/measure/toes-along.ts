import type { Facing } from '../angles/joint-angle.ts';
import type { Movement } from '../reps/movement.ts';
import { median } from '../signal/median.ts';
import type { StickerName } from '../stickers/sticker-name.ts';
import type { Ms } from '../units.ts';
import { otherToeDeg } from './sticker-angle.ts';
import type { StickersSeen } from './stickers-seen.ts';

const OTHER_TOES = ['toe-2', 'toe-3', 'toe-4', 'toe-5'] as const satisfies readonly StickerName[];
/** Another toe lifts along when it rises by this share of the big toe's range, and by this much. Chosen: skin pulls it up by a little. */
const ALONG_SHARE = 0.35;
const ALONG_DEG = 3;
/** Rest is looked at for so long before a movement, the top within so much of the peak, ms. Chosen. */
const REST_MS = 300;
const TOP_MS = 80;

interface Seen {
  readonly tMs: Ms;
  readonly stickers: StickersSeen | null;
}

/** Whether a toe beside the big one, which carries a sticker, lifted along in a movement. */
export function toesAlong(samples: readonly Seen[], { startMs, peakMs, rangeDeg }: Movement, facing: Facing): boolean {
  const around = (toe: StickerName, fromMs: number, toMs: number) =>
    median(
      samples.flatMap(({ tMs, stickers }) =>
        stickers && tMs >= fromMs && tMs <= toMs ? (otherToeDeg(stickers, toe, facing) ?? []) : [],
      ),
    );
  return OTHER_TOES.some((toe) => {
    const rest = around(toe, startMs - REST_MS, startMs);
    const top = around(toe, peakMs - TOP_MS, peakMs + TOP_MS);
    return rest !== null && top !== null && top - rest >= Math.max(ALONG_DEG, ALONG_SHARE * rangeDeg);
  });
}
