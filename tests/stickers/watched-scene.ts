import { findStickers } from '../../src/stickers/find-stickers.ts';
import { startStickers, stepStickers } from '../../src/stickers/follow.ts';
import { distance } from '../../src/stickers/rgba-picture.ts';
import { TOE_STICKERS } from '../../src/stickers/sticker-name.ts';
import { ms } from '../../src/units.ts';
import { FRAME_MS, SCENE_FRAMES, type Scene, scenePicture, sceneSpots } from './any-scene.ts';

/** A place further than this from the truth is something else's, px. Chosen: eight times the error of a centre. */
const ELSEWHERE_PX = 2.5;

/** How well the stickers of a scene were followed. */
export interface Watched {
  /** Frames that give an angle: all three measured, and their distances believed. */
  readonly measured: number;
  /** Of these: one of the stickers is taken for another. */
  readonly swapped: number;
  /** Of these: one of the stickers is somewhere else. */
  readonly elsewhere: number;
  /** Sum of the squares of all centres' errors in these frames, each way together, px^2; and how many there are. */
  readonly squares: number;
  readonly centres: number;
}

/** Follows a scene's stickers from its first picture on; null: they are not found in it. */
export function watchScene(scene: Scene): Watched | null {
  const found = findStickers(scenePicture(scene, 0));
  const first = sceneSpots(scene, 0);
  if (!found.ok || TOE_STICKERS.some((name) => distance(found.value[name].at, first[name]) > ELSEWHERE_PX)) return null;
  let state = startStickers(found.value, ms(0));
  let [measured, swapped, elsewhere, squares, centres] = [0, 0, 0, 0, 0];
  for (let i = 1; i < SCENE_FRAMES; i++) {
    const step = stepStickers(state, scenePicture(scene, i), ms(i * FRAME_MS));
    state = step.state;
    const truth = sceneSpots(scene, i);
    const seen = TOE_STICKERS.map((name) => ({ name, sticker: step.stickers[name] }));
    if (step.troubles.length > 0 || seen.some(({ sticker }) => sticker?.how !== 'seen')) continue;
    measured++;
    const off = seen.map(({ name, sticker }) => ({
      own: sticker ? distance(sticker.at, truth[name]) : 0,
      nearest: sticker ? Math.min(...TOE_STICKERS.map((other) => distance(sticker.at, truth[other]))) : 0,
    }));
    if (off.some(({ own, nearest }) => nearest < own)) swapped++;
    if (off.some(({ own }) => own > ELSEWHERE_PX)) elsewhere++;
    for (const { own } of off) squares += own ** 2;
    centres += off.length;
  }
  return { measured, swapped, elsewhere, squares, centres };
}
