import fc from 'fast-check';
import type { Observation } from '../../src/measure/observation.ts';
import type { StickersSeen } from '../../src/measure/stickers-seen.ts';
import type { UnseenReason } from '../../src/stickers/unseen-reason.ts';
import { ms, px } from '../../src/units.ts';
import { META, number } from './any-recording.ts';

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
export const stickerObservations: fc.Arbitrary<readonly Observation[]> = fc
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
export const BY_STICKERS = { ...META, model: 'stickers', exercise: 'toe-lift' } as const;
