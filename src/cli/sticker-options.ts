import { exerciseOf } from '../exercises/catalogue.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import { fail, ok, type Result } from '../result.ts';
import type { ToeOrder } from '../stickers/arrange.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import { skinPointOptions } from './skin-point-options.ts';

interface Texts {
  readonly by: string | undefined;
  readonly colour: string | undefined;
  /** `NAME=x,y` */
  readonly points: readonly string[] | undefined;
}

/** By stickers of a colour (`#rrggbb`; null: any), or by points on bare skin, px of the upright first picture. */
export interface StickerWay {
  readonly colour: string | null;
  readonly skin?: ToeOrder<Spot>;
}

/** `words` is one sentence. */
type StickerOptionError = { readonly kind: 'sticker-option'; readonly words: string };

const wrong = (words: string) => fail({ kind: 'sticker-option' as const, words });

/**
 * How a clip is to be seen, as said on the command line.
 * @param exercise null: one's own, which is seen by the pose model
 * @returns null: by the pose model
 */
export function stickerOptions(
  { by, colour, points }: Texts,
  exercise: ExerciseId | null,
): Result<StickerWay | null, StickerOptionError> {
  const ways = exercise === null ? (['pose'] as const) : exerciseOf(exercise).seenBy;
  const name = exercise ?? 'an exercise of your own';
  if (by !== undefined && by !== 'pose' && by !== 'stickers') return wrong(`Give --by pose or --by stickers, not "${by}".`);
  const way = by ?? ways[0];
  if (!ways.includes(way)) return wrong(`--by ${way} is not for ${name}, which is seen by ${ways.join(' or ')}: leave it out.`);
  if (colour !== undefined && way !== 'stickers') {
    return wrong(`--sticker-colour is for what is seen by stickers, not for ${name} by the pose model: leave it out.`);
  }
  if (colour !== undefined && !/^#[0-9a-f]{6}$/i.test(colour)) {
    return wrong(`Give --sticker-colour as six hexadecimal digits such as '#16d84c', in quotes, not "${colour}".`);
  }
  const skin = skinPointOptions(points);
  if (!skin.ok) return wrong(skin.error.words);
  if (skin.value !== null) {
    if (exercise !== 'toe-lift') return wrong(`--point is for toe-lift, not for ${name}: leave it out.`);
    if (colour !== undefined) return wrong('Give --point or --sticker-colour, not both: points are followed on bare skin.');
    return ok({ colour: null, skin: skin.value });
  }
  return ok(way === 'stickers' ? { colour: colour ?? null } : null);
}
