import type { ExerciseId } from '../exercises/exercise.ts';
import type { GlideResult, SetResult } from '../measure/set-result.ts';
import { fail, ok, type Result } from '../result.ts';
import { type Deg, deg } from '../units.ts';

/** An elevation limit outside of this means something else than one, deg. Chosen. */
const LEAST_LIMIT = 15;
const MOST_LIMIT = 110;

/** What `--elevation-limit` says; null: nothing. `words` is one sentence. */
export function elevationLimit(
  text: string | undefined,
  exercise: ExerciseId | null,
): Result<Deg | null, { readonly kind: 'elevation-limit'; readonly words: string }> {
  if (text === undefined) return ok(null);
  const bad = (words: string) => fail({ kind: 'elevation-limit' as const, words });
  if (exercise !== 'nerve-glide')
    return bad(`--elevation-limit is for nerve-glide, not for ${exercise ?? 'an exercise of your own'}: leave it out.`);
  const limit = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  return limit >= LEAST_LIMIT && limit <= MOST_LIMIT
    ? ok(deg(limit))
    : bad(`Give --elevation-limit in degrees, from ${LEAST_LIMIT} to ${MOST_LIMIT}, not "${text}".`);
}

const rounded = (x: number | null, places = 2): number | null =>
  x === null ? null : Math.round(x * 10 ** places) / 10 ** places + 0;

/** `coordination` of the result file; null for the other exercises. */
export function coordinationJson({ glide }: SetResult) {
  if (!glide) return null;
  const { legHeld } = glide;
  return {
    pattern: glide.pattern,
    cycles: glide.cycles.length,
    slideShare: rounded(glide.slideShare, 3),
    footRangeDeg: rounded(glide.footRangeDeg),
    headRangeDeg: rounded(glide.headRangeDeg),
    headUncertaintyDeg: rounded(glide.headUncertaintyDeg),
    legHeld: legHeld && {
      medianDeg: rounded(legHeld.medianDeg),
      highestDeg: rounded(legHeld.highestDeg),
      uncertaintyDeg: rounded(legHeld.uncertaintyDeg),
      limitDeg: rounded(legHeld.limitDeg),
      limitFrom: legHeld.limitFrom,
    },
    stopped: glide.stopped,
    cycleList: glide.cycles.map((cycle) => ({
      startMs: rounded(cycle.startMs, 0),
      endMs: rounded(cycle.endMs, 0),
      pattern: cycle.pattern,
      reason: cycle.reason,
      phaseDeg: rounded(cycle.phaseDeg),
      certainty: rounded(cycle.certainty, 3),
      footRangeDeg: rounded(cycle.footRangeDeg),
      headRangeDeg: rounded(cycle.headRangeDeg),
    })),
  };
}

const PATTERN: Readonly<Record<GlideResult['pattern'], string>> = {
  slide: 'slides: the head lifts while the foot points',
  tension: 'tension, the wrong way round: the head lifts while the foot is pulled up',
  unclear: 'neither slide nor tension can be told',
};

/** What only a nerve glide has, in words. */
export function glideLines({ glide }: SetResult): readonly string[] {
  if (!glide) return [];
  const { cycles, legHeld } = glide;
  const of = (pattern: GlideResult['pattern']) => cycles.filter((cycle) => cycle.pattern === pattern).length;
  const why = [...new Set(cycles.flatMap(({ reason }) => reason ?? []))].join(', ');
  const counts = `${cycles.length} cycles: ${of('slide')} slides, ${of('tension')} tension, ${of('unclear')} unclear`;
  const head =
    glide.headRangeDeg === null
      ? ''
      : `, head lifted by ${glide.headRangeDeg.toFixed(0)} +/- ${glide.headUncertaintyDeg?.toFixed(0)} degrees`;
  return [
    PATTERN[glide.pattern],
    `${counts}${why === '' ? '' : ` (${why})`}${head}`,
    ...(legHeld
      ? [
          `leg held at ${legHeld.medianDeg.toFixed(0)} +/- ${legHeld.uncertaintyDeg.toFixed(0)} degrees, at most ${legHeld.highestDeg.toFixed(0)}; ${
            legHeld.limitFrom === 'marked' ? 'the limit is' : 'it began at'
          } ${legHeld.limitDeg.toFixed(0)}`,
        ]
      : []),
  ];
}
