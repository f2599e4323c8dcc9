import { type GlideCoordination, glideCoordination } from '../../src/reps/glide-coordination.ts';
import { plain } from './numbers.ts';
import { KINDS, type SimulatedGlide, simulatedGlide } from './simulated-glide.ts';
import { table } from './table.ts';

/** How many sets are simulated, and from which seed on. */
const SETS = 1200;
const FIRST_SEED = 9_000_001;
/** As many sets from so many other seeds, so far apart that no set comes twice: how much the figures owe to one seed. */
const OTHER_SEEDS = 9;
const SEEDS_APART = 10_000;

const FOUND = ['slide', 'tension', 'unclear'] as const;

/** Whether the hole, if any, leaves at least half of the cycles untouched. */
const mostlySeen = ({ cycles, hole }: SimulatedGlide): boolean =>
  cycles.filter((c) => hole === null || c.endMs <= hole.fromMs || c.startMs >= hole.toMs).length >= cycles.length / 2;

interface Simulated {
  readonly set: SimulatedGlide;
  readonly found: GlideCoordination;
}

const simulated = (firstSeed: number): readonly Simulated[] =>
  Array.from({ length: SETS }, (_, i) => {
    const set = simulatedGlide(firstSeed + i);
    return { set, found: glideCoordination(set.samples) };
  });

const isClear = ({ set }: Simulated): boolean => set.kind === 'slide' || set.kind === 'tension';
const isUnclear = ({ found }: Simulated): boolean => found.pattern === 'unclear';
/** Called the other one of the two. */
const isWrong = ({ set, found }: Simulated): boolean =>
  isClear({ set, found }) && found.pattern !== 'unclear' && found.pattern !== set.kind;
const percent = (part: number, whole: number): string => plain((100 * part) / whole, 1);

/** Unclear where the truth is clear, and called the wrong one, over sets from other seeds. */
function otherSeeds(): string {
  const unclear: number[] = [];
  let wrong = 0;
  for (let i = 1; i <= OTHER_SEEDS; i++) {
    const sets = simulated(FIRST_SEED + i * SEEDS_APART);
    const clear = sets.filter(isClear);
    unclear.push((100 * clear.filter(isUnclear).length) / clear.length);
    wrong += sets.filter(isWrong).length;
  }
  const [least, most] = [Math.min(...unclear), Math.max(...unclear)].map((share) => plain(share, 1));
  return `${OTHER_SEEDS} other seeds, as many sets each: unclear ${least} to ${most} %, slide and tension taken for each other in ${wrong} of ${OTHER_SEEDS * SETS} sets`;
}

/** Simulated sets: what they truly were against what was found. */
export function glideSimulations(): string {
  const sets = simulated(FIRST_SEED);
  const rows = KINDS.map((kind) => {
    const own = sets.filter(({ set }) => set.kind === kind);
    return [kind, ...FOUND.map((pattern) => String(own.filter(({ found }) => found.pattern === pattern).length))];
  });
  const clear = sets.filter(isClear);
  const share = (list: typeof sets) => {
    const unclear = list.filter(isUnclear).length;
    return `${unclear} of ${list.length} (${percent(unclear, list.length)} %)`;
  };
  const exact = sets.filter(({ set, found }) => found.cycles.length === set.cycles.length).length;
  return `${table(['truth', ...FOUND], rows)}

${SETS} sets with a drifting tempo, the head up to 60 degrees of a cycle early or late (\`between\`: 84 to 96), lost frames, noise of up to 3 degrees; in a quarter of the
slides and tensions the foot is hidden for one to two cycles, in \`hidden\` throughout. Unclear where the truth is clear: ${share(clear)}; where the foot was seen in at least half
of the cycles: ${share(clear.filter(({ set }) => mostlySeen(set)))}. Cycles counted exactly in ${exact} of ${SETS}.
${otherSeeds()}.`;
}
