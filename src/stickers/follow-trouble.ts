import type { Ms } from '../units.ts';
import { plausible, SEGMENTS, stretchOf, type UsualLengths } from './chains.ts';
import { jumpOf, type SteadyLengths } from './steady-lengths.ts';
import type { StickerName } from './sticker-name.ts';
import type { Track } from './track.ts';

/** What is wrong with a frame. */
export type FollowTrouble =
  | { readonly kind: 'lost'; readonly name: StickerName }
  /** Two stickers of one bone are `stretch` times as far apart as usual, or as a moment before. */
  | { readonly kind: 'implausible'; readonly between: readonly [StickerName, StickerName]; readonly stretch: number };

/** What is wrong with a frame whose segments are `now` as long. */
export function troublesOf(
  tracks: readonly Track[],
  usual: UsualLengths,
  steady: SteadyLengths,
  now: UsualLengths,
  tMs: Ms,
): readonly FollowTrouble[] {
  const stretches = stretchOf(usual, now);
  const wrong = SEGMENTS.flatMap((between, i): readonly FollowTrouble[] => {
    const stretch = stretches[i] ?? null;
    if (stretch !== null && !plausible(stretch)) return [{ kind: 'implausible', between, stretch }];
    const jump = jumpOf(steady[i] ?? null, now[i] ?? null, tMs);
    return jump === null ? [] : [{ kind: 'implausible', between, stretch: jump }];
  });
  return [...tracks.filter((t) => t.lost).map(({ name }): FollowTrouble => ({ kind: 'lost', name })), ...wrong];
}
