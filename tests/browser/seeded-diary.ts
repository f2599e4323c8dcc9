import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { GlideResult, SetResult } from '../../src/measure/set-result.ts';
import { DATABASE_NAME } from '../../src/record/database.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { newId } from '../../src/record/new-id.ts';
import { type PersonId, SELF } from '../../src/record/person.ts';
import { encodePlanCode } from '../../src/record/plan-transfer.ts';
import { decodeRecording } from '../../src/record/recording.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { deg, ms } from '../../src/units.ts';
import { aGlide, aLegHeld } from '../record/glide-builders.ts';
import { rep, result } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { ALL_NO, daysAgo } from '../screens/diary-builder.ts';

const RECORDINGS = join(import.meta.dirname, '..', '..', 'recordings');

/** Rows of the app's database, by table. */
type Rows = Readonly<Record<string, readonly unknown[]>>;

export interface SeededDiary {
  readonly rows: Rows;
  /** The plan's code, as a link has it. */
  readonly planCode: string;
  /** The line of foot taps, left. */
  readonly itemId: string;
  /** The line of nerve glides. */
  readonly glideItemId: string;
  /** A set counted by hand yesterday. */
  readonly handSetId: string;
  /** Measured foot taps, left and right. */
  readonly leftId: string;
  readonly rightId: string;
  /** Measured nerve glides, left: most slides, then earlier ones the other way round. */
  readonly glideId: string;
  readonly wrongGlideId: string;
  /** Measured big toe lifts, both sides, and their line. */
  readonly toeLeftId: string;
  readonly toeRightId: string;
  readonly toeItemId: string;
  /** Measured leg raises, left, some with a bent knee. */
  readonly raiseId: string;
}

function measured(file: string): SetResult {
  const recording = decodeRecording(readFileSync(join(RECORDINGS, file), 'utf8'));
  if (!recording.ok) throw new Error(`measured requires a readable recording, got ${file}`);
  return measureRecording(recording.value);
}

const examplePlan = (): Prescription => ({
  ...entryNow('example'),
  ...daysAgo(5),
  origin: 'example',
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [
    startingDose('foot-tap', newId(), ['left', 'right']),
    startingDose('leg-raise', newId(), ['left']),
    startingDose('nerve-glide', newId(), ['left']),
    startingDose('heel-stand', newId(), ['left', 'right']),
    startingDose('toe-lift', newId(), ['left', 'right']),
  ],
  selfChecks: { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 },
});

/** A set of glides whose foot points once in each cycle. */
function glideResult(cycles: string, change: Partial<GlideResult>): SetResult {
  const glide = aGlide(cycles, change);
  const reps = glide.cycles.map((_, i) =>
    rep(i + 1, { rangeDeg: deg(30 + (i % 3)), startDeg: deg(2), peakDeg: deg(-29 - (i % 3)) }),
  );
  const lastMs = glide.cycles.at(-1)?.endMs ?? 0;
  const tMs = Array.from({ length: Math.ceil((lastMs + 1000) / 50) }, (_, i) => ms(50 * i));
  const angleDeg = tMs.map((t) => {
    const cycle = glide.cycles.find(({ startMs, endMs }) => t >= startMs && t <= endMs);
    const share = cycle ? (t - cycle.startMs) / (cycle.endMs - cycle.startMs) : 0;
    return deg(2 - 15.5 * (1 - Math.cos(2 * Math.PI * share)));
  });
  return {
    ...result(reps),
    exercise: 'nerve-glide',
    glide,
    quality: { cameraTurnDeg: deg(3), warnings: [] },
    curve: { tMs, angleDeg },
  };
}

const setRow = (id: string, result: SetResult, days: number, model = 'full') => ({
  id,
  schema: 2,
  startedAt: daysAgo(days).at,
  exercise: result.exercise,
  side: result.side,
  targetReps: 10,
  source: 'camera',
  model,
  state: 'finished',
});

/** Some days of somebody with an example plan: three measured sets, one counted by hand, symptoms, and today's questions answered no. */
export function seededDiary(): SeededDiary {
  const plan = examplePlan();
  const glideItemId = plan.items[2]?.id ?? '';
  const itemId = plan.items[0]?.id ?? '';
  const toeItemId = plan.items[4]?.id ?? '';
  const [toeLeftId, toeRightId] = [newId(), newId()];
  const toeLeft = measured('toe-left-green.json');
  const toeRight = measured('toe-right-weak.json');
  const [handSetId, leftId, rightId, raiseId, glideId, wrongGlideId] = [newId(), newId(), newId(), newId(), newId(), newId()];
  const left = measured('taps-left-quick.json');
  const right = measured('taps-right-weak.json');
  const raise = measured('slr-left-kneebend.json');
  const glides = glideResult('SSSTSh', {});
  const wrong = glideResult('TTTbTF', { legHeld: aLegHeld({ highestDeg: deg(56) }), stopped: 'symptoms' });
  const link = { kind: 'set-link', prescriptionId: plan.id, itemId } as const;
  const felt = {
    intensity: 3,
    kinds: ['tingling'],
    places: [{ region: 'calf-outer', side: 'left' }],
  } as const;
  const diary: readonly DiaryEntry[] = [
    plan,
    { ...daysAgo(3), ...link, setId: leftId },
    { ...daysAgo(2), ...link, setId: rightId },
    { ...daysAgo(1), kind: 'symptoms', moment: 'before-set', setId: null, itemId, ...felt },
    { ...daysAgo(1), id: handSetId, kind: 'hand-set', exercise: 'foot-tap', side: 'left', itemId, reps: 12, counted: 'by-hand' },
    ...(
      [
        [glideId, 1, 4, 3],
        [wrongGlideId, 2, 3, 5],
      ] as const
    ).flatMap(([setId, days, before, after]): readonly DiaryEntry[] => [
      {
        ...daysAgo(days + 1 / 1440),
        day: daysAgo(days).day,
        kind: 'symptoms',
        moment: 'before-set',
        setId: null,
        itemId: glideItemId,
        ...felt,
        intensity: before,
      },
      { ...daysAgo(days), ...link, itemId: glideItemId, setId },
      {
        ...daysAgo(days - 2 / 1440),
        day: daysAgo(days).day,
        kind: 'symptoms',
        moment: 'after-set',
        setId,
        itemId: glideItemId,
        ...felt,
        intensity: after,
      },
    ]),
    { ...entryNow(), kind: 'red-flags', answers: ALL_NO },
  ];
  const rows = {
    diary,
    sets: [
      setRow(leftId, left, 3),
      setRow(rightId, right, 2),
      setRow(raiseId, raise, 4),
      setRow(glideId, glides, 1),
      // Each at a minute of its own: two of one moment have no order.
      setRow(wrongGlideId, wrong, 2 + 1 / 1440),
      setRow(toeLeftId, toeLeft, 4 + 2 / 1440, 'stickers'),
      setRow(toeRightId, toeRight, 4 + 1 / 1440, 'stickers'),
    ],
    results: [
      { setId: leftId, result: left },
      { setId: rightId, result: right },
      { setId: raiseId, result: raise },
      { setId: glideId, result: glides },
      { setId: wrongGlideId, result: wrong },
      { setId: toeLeftId, result: toeLeft },
      { setId: toeRightId, result: toeRight },
    ],
  };
  const planCode = wentWell(encodePlanCode(plan, { named: true }));
  return {
    toeLeftId,
    toeRightId,
    toeItemId,
    rows,
    planCode,
    itemId,
    handSetId,
    leftId,
    rightId,
    raiseId,
    glideId,
    wrongGlideId,
    glideItemId,
  };
}

/** A plan with a warning sign told today: the day is stopped. */
export const stoppedDiary = (): Rows => ({
  diary: [examplePlan(), { ...entryNow(), kind: 'red-flags', answers: { ...ALL_NO, 'saddle-numbness': 'yes' } }],
});

/** The rows as they are those of one person. */
const rowsOf = (rows: Rows, person: PersonId): Rows =>
  Object.fromEntries(
    Object.entries(rows).map(([table, all]) => [
      table,
      table === 'diary' || table === 'sets' ? all.map((row) => ({ ...(row as object), person })) : all,
    ]),
  );

/** Writes rows of one person past the app into its database, which the open page has made, and loads the page anew. */
export async function seed(page: Page, rows: Rows, person: PersonId = SELF): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(
    async ({ name, tables }) => {
      const db = await new Promise<IDBDatabase>((done, failed) => {
        const opening = indexedDB.open(name);
        opening.onsuccess = () => done(opening.result);
        opening.onerror = () => failed(opening.error);
      });
      const writing = db.transaction(Object.keys(tables), 'readwrite');
      for (const [table, all] of Object.entries(tables)) for (const row of all) writing.objectStore(table).put(row);
      await new Promise<void>((done, failed) => {
        writing.oncomplete = () => done();
        writing.onabort = () => failed(writing.error);
      });
      db.close();
    },
    { name: DATABASE_NAME, tables: rowsOf(rows, person) },
  );
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
}
