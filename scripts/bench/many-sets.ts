import { uniformFrom } from '../../src/flow/prng.ts';
import type { MeasuredRep } from '../../src/measure/set-result.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { deg, ms } from '../../src/units.ts';

const REPS = 10;
/** A repetition of four seconds, 15 pictures a second, as a slow machine gives them. */
const REP_MS = 4000;
const FRAME_MS = 1000 / 15;

/** Invented sets of ten foot taps each, every picture's angle with them, as noisy as measured ones; the same for each seed. */
export function* manySets(count: number, seed = 1): Iterable<StoredSet> {
  const random = uniformFrom(seed);
  const noise = (size: number) => (random() + random() - 1) * size;
  const start = Date.UTC(2026, 0, 1);
  for (let n = 0; n < count; n += 1) {
    const tMs = Array.from({ length: Math.floor((REPS * REP_MS) / FRAME_MS) }, (_, i) => ms(i * FRAME_MS + noise(4)));
    const angleDeg = tMs.map((t) => (random() < 0.01 ? null : deg(8 - 8 * Math.cos((2 * Math.PI * t) / REP_MS) + noise(0.6))));
    const reps = Array.from({ length: REPS }, (_, i): MeasuredRep => {
      const at = i * REP_MS;
      return {
        number: i + 1,
        startMs: ms(at + noise(30)),
        peakMs: ms(at + REP_MS / 2 + noise(30)),
        endMs: ms(at + REP_MS + noise(30)),
        startDeg: deg(noise(1)),
        peakDeg: deg(16 + noise(2)),
        rangeDeg: deg(16 + noise(2)),
        holdMs: ms(300 + noise(100)),
        complete: true,
        flags: [],
        uncertaintyDeg: deg(1.2 + noise(0.2)),
        source: 'fused',
        footDeg: null,
        footUncertaintyDeg: null,
        upMs: null,
        sankAfterMs: null,
      };
    });
    yield {
      id: `00000000-0000-4000-8300-${String(n).padStart(12, '0')}`,
      schema: 2,
      startedAt: new Date(start + n * 3_600_000).toISOString(),
      exercise: 'foot-tap',
      side: n % 2 ? 'left' : 'right',
      targetReps: REPS,
      person: 'me',
      source: 'camera',
      model: 'full',
      state: 'finished',
      reps,
      result: {
        exercise: 'foot-tap',
        side: n % 2 ? 'left' : 'right',
        size: { width: 640, height: 480 },
        frames: tMs.length,
        framesUsed: tMs.length,
        durationMs: ms(REPS * REP_MS),
        reps,
        count: REPS,
        partialCount: 0,
        summary: { medianPeakDeg: deg(16), medianRangeDeg: deg(16), uncertaintyDeg: deg(1.2) },
        kneeLimitDeg: null,
        onset: null,
        glide: null,
        quality: { cameraTurnDeg: deg(4), warnings: [] },
        curve: { tMs, angleDeg },
      },
      edits: [],
    };
  }
}
