import type { Observation } from '../measure/observation.ts';
import type { StickersSeen } from '../measure/stickers-seen.ts';
import { ms, px } from '../units.ts';
import type { AnyStickerFrameJson, StickerFrameJson } from './recording-shape.ts';
import { PER, units } from './recording-units.ts';

type StickersJson = NonNullable<AnyStickerFrameJson['s']>;

const stickersJson = ({ points, implausible, unseen = {} }: StickersSeen): StickerFrameJson['s'] => [
  Object.fromEntries(
    Object.entries(points).map(([name, p]) => [
      name,
      p && [units(p.x, PER.stickerPx), units(p.y, PER.stickerPx), units(p.errorPx, PER.stickerPx), p.bridged ? 1 : 0],
    ]),
  ),
  implausible ? 1 : 0,
  { ...unseen },
];

/** A frame of a set by stickers as a recording keeps it. */
export const stickerFrameJson = ({ tMs, brightness, stickers = null }: Observation): StickerFrameJson => ({
  t: units(tMs, PER.ms) / PER.ms,
  b: brightness === null ? null : units(brightness, PER.brightness),
  s: stickers && stickersJson(stickers),
});

const stickersOf = ([points, implausible, unseen = {}]: StickersJson): StickersSeen => ({
  points: Object.fromEntries(
    Object.entries(points).map(([name, p]) => [
      name,
      p && { x: px(p[0] / PER.stickerPx), y: px(p[1] / PER.stickerPx), errorPx: px(p[2] / PER.stickerPx), bridged: p[3] === 1 },
    ]),
  ),
  implausible: implausible === 1,
  ...(Object.keys(unseen).length > 0 ? { unseen: unseen as NonNullable<StickersSeen['unseen']> } : {}),
});

/** The frame of a set by stickers that a recording keeps, of any schema. */
export const stickerObservation = ({ t, b, s }: AnyStickerFrameJson): Observation => ({
  tMs: ms(t),
  landmarks: null,
  motion: null,
  camera: null,
  brightness: b === null ? null : b / PER.brightness,
  stickers: s && stickersOf(s),
});

/**
 * What a set by stickers sees, rounded as a recording keeps it: a set measured from that is the same to the last digit when its recording is replayed. A
 * thousandth of a pixel is far below what a centre is out by.
 */
export const asRecorded = (seen: Observation): Observation => stickerObservation(stickerFrameJson(seen));
