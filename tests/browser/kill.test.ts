/** The browser's processes are killed at any moment, while sets are counted, entries saved and records taken in: nothing that was shown may be missing. */
import { appendFile, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium } from '../../scripts/chromium.ts';
import { type MortalChromium, mortalChromium } from './kill/mortal-chromium.ts';
import { lost, type Told } from './kill/trial.ts';
import { trialSite } from './kill/trial-site.ts';

/** On demand many more: EVENSIDE_KILLS=200. */
const KILLS = Number(process.env.EVENSIDE_KILLS ?? 20);
/** A fresh profile after so many, since all that is there is read each time. */
const KILLS_A_PROFILE = 10;
/** Kills come within this time of the beginning. Chosen: a set, some records and saves. */
const LATEST_MS = 500;
/** A kill with the opening before it, on a slow and busy machine. Chosen: five times what was seen. */
const SLOWEST_MS = 15_000;
const SEED = Number(process.env.EVENSIDE_SEED ?? 20261128);

const RECORDINGS = ['taps-right-weak', 'slr-left-kneebend', 'knee-right-straighten'];

/** mulberry32, as published by its author in the public domain. */
function chance(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

let site: Awaited<ReturnType<typeof trialSite>>;
let executable = '';
let recordings: readonly string[] = [];
beforeAll(async () => {
  const found = findChromium(() => {});
  if (!found.ok) throw new Error(found.error.words);
  executable = found.value;
  site = await trialSite();
  const folder = join(import.meta.dirname, '..', '..', 'recordings');
  recordings = await Promise.all(RECORDINGS.map((id) => readFile(join(folder, `${id}.json`), 'utf8')));
});
afterAll(() => site?.close());

/** Opens the page, checks what is there against all that was told before, works on, and ends it. @param after null: only checks */
async function live(browser: MortalChromium, told: Told[], dies: { atMs: number } | { atCount: number } | null): Promise<void> {
  try {
    await lived(browser, told, dies);
  } finally {
    await browser.kill();
  }
}

async function lived({ page, kill }: MortalChromium, told: Told[], dies: { atMs: number } | { atCount: number } | null) {
  let dead: () => void = () => undefined;
  const death = new Promise<void>((resolve) => {
    dead = resolve;
  });
  let counted = 0;
  const end = () => {
    over = true;
    dead();
    return kill();
  };
  let over = false;
  await page.exposeBinding('told', (_, what: Told) => {
    if (over) return;
    told.push(what);
    if (what.kind === 'counted') counted += 1;
    if (dies && 'atCount' in dies && what.kind === 'counted' && counted === dies.atCount) void end();
  });
  await page.goto(site.url);
  await page.waitForFunction(() => 'trial' in window);
  const kept = await page.evaluate(() => window.trial.kept());
  expect(lost(told, kept)).toEqual([]);
  if (!dies) return;
  page.evaluate((texts) => window.trial.begin(texts), recordings).catch(() => undefined);
  // A count that never comes is no reason to live on.
  const timer = setTimeout(() => void end(), 'atMs' in dies ? dies.atMs : 4 * LATEST_MS);
  await death;
  clearTimeout(timer);
}

test(
  `nothing that was shown is lost, and nothing half-written stays, when the browser is killed (${KILLS} times)`,
  async () => {
    const next = chance(SEED);
    const all: Told[] = [];
    for (let done = 0; done < KILLS; done += KILLS_A_PROFILE) {
      const profile = await mkdtemp(join(tmpdir(), 'evenside-kill-'));
      const told: Told[] = [];
      try {
        const lives = Math.min(KILLS_A_PROFILE, KILLS - done);
        for (let i = 0; i <= lives; i += 1) {
          // Half at any time, half at the very moment a repetition is shown.
          const dies = next() < 0.5 ? { atMs: next() * LATEST_MS } : { atCount: 1 + Math.floor(next() * 6) };
          await live(await mortalChromium(executable, profile), told, i < lives ? dies : null);
        }
      } finally {
        await rm(profile, { recursive: true, force: true, maxRetries: 3 });
      }
      all.push(...told);
    }
    const many = (kind: Told['kind']) => all.filter((each) => each.kind === kind).length;
    console.log(
      `${KILLS} kills, seed ${SEED}: ${many('counted')} repetitions shown, ${many('ended')} sets ended, ${many('saved')} saves, ${many('brought')} of ${many('bringing')} records brought; nothing lost`,
    );
    expect(many('counted')).toBeGreaterThan(KILLS);
  },
  SLOWEST_MS * (KILLS + 1),
);

/** Half a record at the end of the database's log, as it lies there when the browser is ended in the middle of a write; LevelDB's log format. @returns false: it has no such log */
async function tornWrite(profile: string): Promise<boolean> {
  const { host } = new URL(site.url);
  const folder = join(profile, 'Default', 'IndexedDB', `http_${host.replace(':', '_')}.indexeddb.leveldb`);
  const [log] = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.log'));
  if (log === undefined) return false;
  const [bytes, said] = [107, 3000];
  const record = Buffer.alloc(bytes, 7);
  record.writeUInt16LE(said, 4);
  record[6] = 1;
  await appendFile(join(folder, log), record);
  return true;
}

test('a write that the end of the browser tore apart costs nothing, the next time and the time after', {
  timeout: 4 * SLOWEST_MS,
}, async ({ skip }) => {
  const profile = await mkdtemp(join(tmpdir(), 'evenside-torn-'));
  const told: Told[] = [];
  const once = async (dies: { atCount: number } | null) => live(await mortalChromium(executable, profile), told, dies);
  try {
    await once({ atCount: 1 });
    if (!(await tornWrite(profile))) skip('this browser keeps its databases otherwise');
    await once({ atCount: 2 });
    await once({ atCount: 2 });
    await once(null);
    expect(told.filter(({ kind }) => kind === 'counted').length).toBeGreaterThanOrEqual(5);
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 3 });
  }
});
