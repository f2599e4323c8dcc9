import { fail, ok, type Result } from '../result.ts';
import { arrange, type ToeOrder } from './arrange.ts';
import { chromaContrast } from './belonging.ts';
import { type Chroma, type ChromaPatch, chromaDistance, chromaOf } from './chroma.ts';
import { WHOLE_STEP } from './learn-colour.ts';
import type { StickerRefusal } from './refusal.ts';
import { distance, type RgbaPicture } from './rgba-picture.ts';
import { MAX_SHARE, sameColour, shareOf } from './same-colour.ts';
import { seedsIn } from './seeds.ts';
import { MIN_CONTRAST, type Sticker, stickerAt } from './sticker-at.ts';

/** The stickers on one foot are of a size. Chosen: one seen square on and one 55 degrees aslant. */
const MAX_SIZE_RATIO = 1.8;
/** Neighbours lie this many diameters apart. Chosen: stickers of 6 to 20 mm, 25 to 130 mm apart. */
const MIN_APART = 1.3;
const MAX_APART = 22;
/** Another three this good leave it open which are meant. Chosen. */
const RIVAL_SHARE = 0.75;
/** Three of one colour belong together more than three of any colours. Chosen. */
const ONE_COLOUR_BONUS = 2;
/** Candidates that are compared, the most vivid first. Chosen: bounds the number of triples. */
const MOST_CANDIDATES = 14;
const NEEDED = 3;
/** A sticker whose colour was named shows it within this, in units of chroma: lamps, shade and dark pictures change it. Chosen; vivid colours lie 0.8 and more apart. */
const COLOUR_REACH = 0.5;

interface Triple {
  readonly members: readonly [Sticker, Sticker, Sticker];
  readonly order: ToeOrder<Sticker>;
  readonly oneColour: boolean;
  readonly score: number;
}

/**
 * Proposes the three stickers of a foot without being told their colour: round dots, distinct from what lies around them, that lie as on a foot.
 * Three of one colour, or of three colours. Takes some 50 ms for 640 x 480, hence not for every frame.
 * @param toes which way the toes point in the picture, where that is known
 * @param colour what colour they are, where that is known: nothing else is looked at
 */
export function findStickers(
  picture: RgbaPicture,
  toes: 'left' | 'right' | null = null,
  colour: Chroma | null = null,
): Result<ToeOrder<Sticker>, StickerRefusal> {
  const whole = chromaOf(picture, WHOLE_STEP);
  const isMeant = (dot: Sticker): boolean => colour === null || chromaDistance(dot.pair.sticker, colour) <= COLOUR_REACH;
  const dots = dotsIn(picture, whole, isMeant);
  const triples = triplesOf(dots, toes);
  const best = triples[0];
  if (!best) return fail(refusalOf(picture, whole, dots));
  const rival = triples.find((t) => t !== best && t.score >= RIVAL_SHARE * best.score);
  if (rival) {
    const like = best.order.knuckle.pair.sticker;
    const count = dots.filter((d) => sameColour(d.pair.sticker, like)).length;
    return fail({ kind: 'room-same-colour', count: Math.max(count, NEEDED + 1) });
  }
  for (const { pair, diameterPx } of best.members) {
    const share = shareOf(whole, pair);
    if (share - areaShare(picture, diameterPx) > MAX_SHARE) {
      return fail({ kind: 'like-surround', contrast: chromaContrast(pair), neededContrast: MIN_CONTRAST, share });
    }
  }
  return ok(best.order);
}

/** The share of a picture that three dots of a diameter cover. */
const areaShare = ({ width, height }: RgbaPicture, diameterPx: number): number =>
  (3 * Math.PI * (diameterPx / 2) ** 2) / (width * height);

/** All dots, each once, the most vivid first. */
function dotsIn(picture: RgbaPicture, whole: ChromaPatch, isMeant: (dot: Sticker) => boolean): readonly Sticker[] {
  const dots: Sticker[] = [];
  for (const seed of seedsIn(whole)) {
    const found = stickerAt(picture, seed);
    if (!found.ok) continue;
    const dot = found.value;
    if (!isMeant(dot)) continue;
    // The rim of a dot may look like a dot of its own.
    if (dots.every((d) => distance(d.at, dot.at) > (d.diameterPx + dot.diameterPx) / 2 + 2)) dots.push(dot);
  }
  return [...dots].sort((p, q) => chromaContrast(q.pair) - chromaContrast(p.pair)).slice(0, MOST_CANDIDATES);
}

function triplesOf(dots: readonly Sticker[], toes: 'left' | 'right' | null): readonly Triple[] {
  const found: Triple[] = [];
  dots.forEach((a, i) => {
    dots.slice(i + 1).forEach((b, j) => {
      for (const c of dots.slice(i + j + 2)) {
        const triple = tripleOf([a, b, c], toes);
        if (triple) found.push(triple);
      }
    });
  });
  return found.sort((p, q) => q.score - p.score);
}

function tripleOf(members: readonly [Sticker, Sticker, Sticker], toes: 'left' | 'right' | null): Triple | null {
  const sizes = members.map((m) => m.diameterPx);
  const sizeRatio = Math.max(...sizes) / Math.min(...sizes);
  if (sizeRatio > MAX_SIZE_RATIO) return null;
  const arranged = arrange(members, toes);
  if (!arranged.ok) return null;
  const { tip, knuckle, arch } = arranged.value;
  const size = (sizes[0] as number) / 3 + (sizes[1] as number) / 3 + (sizes[2] as number) / 3;
  const near = distance(tip.at, knuckle.at) / size;
  const far = distance(knuckle.at, arch.at) / size;
  if (Math.min(near, far) < MIN_APART || Math.max(near, far) > MAX_APART) return null;
  const [p, q, r] = members.map((m) => m.pair.sticker) as [
    Sticker['pair']['sticker'],
    Sticker['pair']['sticker'],
    Sticker['pair']['sticker'],
  ];
  const oneColour = sameColour(p, q) && sameColour(q, r) && sameColour(p, r);
  const contrast = Math.min(...members.map((m) => chromaContrast(m.pair)));
  const round = Math.min(...members.map((m) => m.roundness));
  const score = ((oneColour ? ONE_COLOUR_BONUS : 1) * contrast * round) / sizeRatio;
  return { members, order: arranged.value, oneColour, score };
}

/** Why there are no three: the colour of what was found is all over the picture, or there are not enough. */
function refusalOf(picture: RgbaPicture, whole: ChromaPatch, dots: readonly Sticker[]): StickerRefusal {
  for (const { pair, diameterPx } of dots) {
    const share = shareOf(whole, pair);
    if (share - areaShare(picture, diameterPx) > MAX_SHARE) {
      return { kind: 'like-surround', contrast: chromaContrast(pair), neededContrast: MIN_CONTRAST, share };
    }
  }
  return { kind: 'too-few', count: dots.length, needed: NEEDED };
}
