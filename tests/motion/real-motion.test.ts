import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Agreement, agreementOf } from '../../scripts/accuracy/agreement.ts';
import { ankleDorsiflexion, kneeFlexion, legElevation } from '../../src/angles/joint-angle.ts';
import { kneeStraighten } from '../../src/exercises/knee-straighten.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import { findMovements } from '../../src/measure/movements.ts';
import type { FoundMovement } from '../../src/reps/segment-set.ts';
import { ms, wrapped } from '../../src/units.ts';
import { type Motion, readBvh } from './bvh.ts';
import { type KneeBend, kneeBends } from './knee-bends.ts';
import { peopleRecordings, WITHOUT_RECORDINGS } from './people-recordings.ts';
import { type Noise, type SideViewFrame, sideView } from './side-view.ts';

/** 120 Hz to the 30 of a camera. */
const EVERY = 4;
/** Of each joint in the picture, px; of the size of the pose model's own at 3 m. Chosen. */
const JITTER_PX = 2;
/** The tool asks for a camera within this of square, and frames turned further do not count. deg */
const TURN_DEG = 15;
/** Bends of at least this much must be found, whatever the others are. deg */
const CLEAR_DEG = 40;
/** A peak found this near to the true one is in time: three frames. ms */
const IN_TIME_MS = 100;
const SIDES = ['left', 'right'] as const;

/** Box and Muller 1958, from a seed. */
function normalFrom(seed: number): Noise {
  const uniform = uniformFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

interface Watched {
  readonly frames: readonly SideViewFrame[];
  readonly bends: readonly KneeBend[];
  readonly found: readonly FoundMovement[];
}

function watched(motion: Motion, side: (typeof SIDES)[number], seed: number): Watched {
  const frames = sideView(motion, side, JITTER_PX, normalFrom(seed));
  const series = frames.map(({ lines, facing }, i) => ({
    tMs: ms(i * motion.frameMs),
    measured: { deg: kneeFlexion(lines, facing), variance: JITTER_PX ** 2 },
  }));
  const rule = { ...kneeStraighten.rule, direction: 'rises' as const };
  return {
    frames,
    bends: kneeBends(frames.map((f) => f.inSpace.kneeDeg)).map((b) => ({ ...b, tMs: b.index * motion.frameMs })),
    found: findMovements(series, { ...kneeStraighten, rule }, 0).found,
  };
}

/** Angles in the picture minus those in space, over the frames in which the camera stood square enough. */
function agreements(frames: readonly SideViewFrame[]): Readonly<Record<'knee' | 'elevation' | 'ankle', Agreement>> {
  const square = frames.filter((f) => f.turnDeg <= TURN_DEG);
  const over = (error: (f: SideViewFrame) => number): Agreement => {
    const agreement = agreementOf(square.map((f) => wrapped(error(f))));
    if (!agreement) throw new Error('agreements requires a frame seen square, got none');
    return agreement;
  };
  return {
    knee: over((f) => kneeFlexion(f.lines, f.facing) - f.inSpace.kneeDeg),
    elevation: over((f) => legElevation(f.lines, f.facing) - f.inSpace.elevationDeg),
    ankle: over((f) => ankleDorsiflexion(f.lines, f.facing) - f.inSpace.ankleDeg),
  };
}

const folder = peopleRecordings();
if (!folder) console.warn(WITHOUT_RECORDINGS);

const WHAT = 'a real person jumping, climbing and sitting, seen by a virtual camera from the side';
describe.skipIf(!folder)(folder ? WHAT : WITHOUT_RECORDINGS, () => {
  const motions = folder
    ? ['01_01', '01_03'].map((trial) => ({ trial, motion: readBvh(readFileSync(join(folder, `${trial}.bvh`), 'latin1'), EVERY) }))
    : [];
  const all = motions.flatMap(({ trial, motion }, i) =>
    SIDES.map((side, j) => ({ trial, side, ...watched(motion, side, 2 * i + j + 1) })),
  );
  const exact = motions.flatMap(({ motion }) => SIDES.map((side) => sideView(motion, side, 0, () => 0))).flat();
  const clear = all.flatMap((w) => w.bends.filter((b) => b.promDeg >= CLEAR_DEG).map((bend) => ({ bend, found: w.found })));
  const holding = ({ bend, found }: (typeof clear)[number]) => found.filter((m) => m.startMs <= bend.tMs && bend.tMs <= m.endMs);

  test('knee and leg in the picture are those in space but for a degree, the ankle but for three', () => {
    const { knee, elevation, ankle } = agreements(exact);
    expect(knee.n).toBeGreaterThan(3000);
    expect(knee.meanAbsolute).toBeLessThan(0.6);
    expect(elevation.meanAbsolute).toBeLessThan(0.4);
    expect(ankle.meanAbsolute).toBeLessThan(3);
  });

  test('with the jitter of landmarks the errors grow by what geometry says', () => {
    const { knee, elevation, ankle } = agreements(all.flatMap((w) => w.frames));
    expect(knee.meanAbsolute).toBeLessThan(1.7);
    expect(Math.abs(knee.bias)).toBeLessThan(0.5);
    expect(elevation.meanAbsolute).toBeLessThan(0.8);
    expect(ankle.meanAbsolute).toBeLessThan(4.2);
  });

  test('every clear bend of a knee is one movement, and its peak is in time', () => {
    expect(clear.length).toBeGreaterThan(40);
    for (const one of clear) expect(holding(one), `bend at ${one.bend.tMs} ms`).toHaveLength(1);
    const inTime = clear.filter((one) => holding(one).some((m) => Math.abs(m.peakMs - one.bend.tMs) <= IN_TIME_MS));
    expect(inTime.length / clear.length).toBeGreaterThan(0.95);
  });

  test('no movement is made up: each is a bend of the knee in space', () => {
    for (const { trial, side, found, bends } of all) {
      expect(found.length).toBeGreaterThan(10);
      for (const m of found)
        expect(
          bends.some((b) => m.startMs <= b.tMs && b.tMs <= m.endMs),
          `${trial}, ${side}, movement at ${m.peakMs} ms`,
        ).toBe(true);
    }
  });

  test.runIf(process.env.EVENSIDE_FIGURES)('its figures, for docs/agreement.md', () => {
    const row = (name: string, a: Agreement) =>
      `| ${name} | ${a.n} | ${a.meanAbsolute.toFixed(1)} | ${a.bias.toFixed(1)} | ${a.worst.toFixed(1)} | ${a.limits?.map((l) => l.toFixed(1)).join(' to ')} |`;
    const rows = [
      ['exact points', exact],
      ['points with jitter', all.flatMap((w) => w.frames)],
    ] as const;
    const tables = rows.flatMap(([what, frames]) =>
      Object.entries(agreements(frames)).map(([angle, a]) => row(`${angle}, ${what}`, a)),
    );
    const bends = all.flatMap((w) =>
      w.bends.filter((b) => b.promDeg >= 20 && b.promDeg < CLEAR_DEG).map((bend) => ({ bend, found: w.found })),
    );
    const small = bends.filter((one) => holding(one).some((m) => Math.abs(m.peakMs - one.bend.tMs) <= IN_TIME_MS)).length;
    const clearIn = clear.filter((one) => holding(one).some((m) => Math.abs(m.peakMs - one.bend.tMs) <= IN_TIME_MS)).length;
    const peaks = agreementOf(clear.flatMap((one) => holding(one).map((m) => m.peakDeg - one.bend.peakDeg)));
    if (!peaks) throw new Error('no bends');
    console.log(
      [
        ...tables,
        row('peak of a bend', peaks),
        `bends of ${CLEAR_DEG}: ${clearIn} of ${clear.length}; of 20 to ${CLEAR_DEG}: ${small} of ${bends.length}`,
      ].join('\n'),
    );
    expect(tables).toHaveLength(6);
  });
});
