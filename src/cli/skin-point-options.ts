import { fail, ok, type Result } from '../result.ts';
import type { ToeOrder } from '../stickers/arrange.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import { TOE_STICKERS } from '../stickers/sticker-name.ts';

/** `words` is one sentence. */
type SkinPointError = { readonly kind: 'skin-point'; readonly words: string };

const WANTED = `--point ${TOE_STICKERS.join('=x,y --point ')}=x,y`;
const wrong = (words: string) => fail({ kind: 'skin-point' as const, words });

/**
 * Points on bare skin, as said on the command line: `NAME=x,y` in px of the upright first picture, each name once.
 * @returns null: none were given
 */
export function skinPointOptions(texts: readonly string[] | undefined): Result<ToeOrder<Spot> | null, SkinPointError> {
  if (texts === undefined) return ok(null);
  const spots = new Map<string, Spot>();
  for (const text of texts) {
    const [, name, x, y] = /^([a-z]+)=(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(text) ?? [];
    if (name === undefined || !TOE_STICKERS.some((known) => known === name)) {
      return wrong(`Give a point as NAME=x,y, its name ${TOE_STICKERS.join(', ')}, not "${text}".`);
    }
    if (spots.has(name)) return wrong(`--point ${name} is given twice: leave one out.`);
    spots.set(name, { x: Number(x), y: Number(y) });
  }
  const [tip, knuckle, arch] = TOE_STICKERS.map((name) => spots.get(name));
  if (!tip || !knuckle || !arch) return wrong(`Give all three points: ${WANTED}.`);
  return ok({ tip, knuckle, arch });
}
