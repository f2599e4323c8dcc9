import { mean } from 'simple-statistics';
import { quantile } from '../../src/signal/median.ts';
import { plain } from './numbers.ts';
import type { StickerFindings } from './sticker-clips.ts';
import type { StickerOutcome } from './sticker-outcome.ts';
import { table } from './table.ts';
import { PARTIAL_DEG } from './true-partials.ts';

const NONE = '-';
/** What is asked of stickers: range, mean absolute error, deg; and of points on skin. */
const TARGET_DEG = 0.5;
const POINTS_TARGET_DEG = 1.5;

const HEADS = [
  'true count',
  'count',
  'true partial',
  'partial',
  'range: mean abs. error',
  'worst',
  'interval, -+',
  'intervals hold',
  'place, px: mean abs. error, 95 %',
  'angle, every frame: mean abs. error, 95 %',
  'frames with an angle',
];

const meanAnd95 = (values: readonly number[], places: number): string =>
  values.length === 0 ? NONE : `${plain(mean([...values]), places)}, ${plain(quantile(values, 0.95) ?? 0, places)}`;
const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

function cells(outcomes: readonly StickerOutcome[]): readonly string[] {
  const matched = outcomes.flatMap((o) => o.matched);
  const errors = matched.map((m) => Math.abs(m.rangeErrorDeg));
  const [seen, all] = (['framesUsed', 'frames'] as const).map((of) => total(outcomes.map((o) => o.result?.[of] ?? 0)));
  return [
    String(total(outcomes.map((o) => o.clip.truth.reps.length))),
    String(total(outcomes.map((o) => o.result?.count ?? 0))),
    String(total(outcomes.map((o) => o.truePartialCount))),
    String(total(outcomes.map((o) => o.result?.partialCount ?? 0))),
    errors.length > 0 ? plain(mean(errors), 2) : NONE,
    errors.length > 0 ? plain(Math.max(...errors), 2) : NONE,
    errors.length > 0 ? plain(mean(matched.map((m) => m.uncertaintyDeg)), 1) : NONE,
    `${matched.filter((m) => m.held).length} of ${matched.length}`,
    meanAnd95(
      outcomes.flatMap((o) => o.centreErrorsPx),
      2,
    ),
    meanAnd95(
      outcomes.flatMap((o) => o.angleErrorsDeg),
      2,
    ),
    all ? `${plain((100 * (seen ?? 0)) / all, 1)} %` : NONE,
  ];
}

const isExact = ({ clip, result, truePartialCount }: StickerOutcome): boolean =>
  result?.count === clip.truth.reps.length && result.partialCount === truePartialCount;

function verdict(outcomes: readonly StickerOutcome[], targetDeg: number): string {
  const exact = outcomes.filter(isExact).length;
  const errors = outcomes.flatMap((o) => o.matched.map((m) => Math.abs(m.rangeErrorDeg)));
  const off = errors.length > 0 ? mean(errors) : Number.POSITIVE_INFINITY;
  const within = outcomes.filter(
    (o) => o.matched.length > 0 && mean(o.matched.map((m) => Math.abs(m.rangeErrorDeg))) <= targetDeg,
  ).length;
  const met = exact === outcomes.length && off <= targetDeg ? 'met' : 'not met';
  return `counted exactly ${exact} of ${outcomes.length}, range within ${plain(off, 2)} degrees in the mean (target: all, ${targetDeg}): ${met}; each clip by itself: ${within} of ${outcomes.length}.`;
}

/** The report's part on what is seen by stickers, or by points on skin. */
export function stickerPart({ plain: asFilmed, harder, points }: StickerFindings, ownClips: ReadonlySet<string>): string {
  const byClip = (outcomes: readonly StickerOutcome[]) =>
    table(
      ['clip', ...HEADS],
      outcomes.map((o) => [
        `${o.clip.id}${ownClips.has(o.clip.id) ? '' : ' *'}${o.clip.truth.bare ? ' (no stickers)' : ''}`,
        ...cells([o]),
      ]),
    );
  const ownAsFilmed = asFilmed.filter((o) => ownClips.has(o.clip.id));
  const variants = [['as filmed', ownAsFilmed] as const, ...harder];
  return `## Sets by stickers

Without the pose model. The truth is the angle between the places where the stickers were drawn in the picture, from rest. Places are of stickers that were seen
themselves; the angle is the smoothed one of the curve. Stickers were found without being told their colour.

As filmed: ${verdict(asFilmed, TARGET_DEG)}

${byClip(asFilmed)}

The project's own clips made harder, one thing at a time; each row holds all of them:

${table(
  ['', 'clips counted exactly', ...HEADS],
  variants.map(([name, outcomes]) => [name, `${outcomes.filter(isExact).length} of ${outcomes.length}`, ...cells(outcomes)]),
)}

${failing([['as filmed', asFilmed], ...harder])}**Points on bare skin.** The three points are named in the first picture, where the stickers' centres truly are, and followed by the picture's own motion; colour is
not looked at. Where there are stickers they are the marks that are followed; the clips without have freckles around each point.

Points: ${verdict(points, POINTS_TARGET_DEG)}

${byClip(points)}

${asFilmed.some((o) => !ownClips.has(o.clip.id)) ? OTHERS : ''}A rendered sticker stays where it is; real skin moves under one. A partial movement is a true one from ${PARTIAL_DEG} degrees on.
`;
}

/** What is said of clips that are not the project's own. */
const OTHERS = `The clips marked * are not part of the project. They are rendered as the others: other bodies, skins, colours of stickers, distances, light, cameras a little turned or
rolled, busy walls, a hand that passes before the foot. close-* are foot taps seen from 0.8 m with stickers on shin, ankle and forefoot.
`;

/** The clips that were not counted exactly, one line each; empty without any. */
function failing(watched: StickerFindings['harder']): string {
  const lines = watched.flatMap(([name, outcomes]) =>
    outcomes
      .filter((o) => !isExact(o))
      .map(
        ({ clip, result, truePartialCount }) =>
          `- ${clip.id}, ${name}: counted ${result?.count ?? 'nothing found'} and ${result?.partialCount ?? 0} partial, truly ${clip.truth.reps.length} and ${truePartialCount}.`,
      ),
  );
  return lines.length > 0 ? `Not counted exactly:\n\n${lines.join('\n')}\n\n` : '';
}
