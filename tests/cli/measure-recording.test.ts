/** `npm run measure` on a landmark recording, as its own process; no browser is needed for that. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..', '..');
/** Starting the command takes seconds on a slow, shared machine. */
const COMMAND_MS = 60_000;
/** Foot taps of a left leg. */
const TAPS = join('recordings', 'taps-left-quick.json');
const out = mkdtempSync(join(tmpdir(), 'evenside-measure-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

const measure = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', join(ROOT, 'src/cli/main.ts'), ...args], { cwd: ROOT, encoding: 'utf8' });

test(
  'a recording is measured as what it was recorded as',
  () => {
    const json = join(out, 'taps.json');
    const { status, stdout, stderr } = measure(TAPS, '--exercise', 'foot-tap', '--side', 'left', '--json', json);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^foot-tap, left: \d+ complete/);
    expect(JSON.parse(readFileSync(json, 'utf8'))).toMatchObject({ exercise: 'foot-tap', side: 'left' });
  },
  COMMAND_MS,
);

test(
  'landmarks and angles go out as tables, one row a picture, when their names end in .csv',
  () => {
    const [landmarks, angles] = [join(out, 'landmarks.csv'), join(out, 'angles.csv')];
    const args = ['--exercise', 'foot-tap', '--side', 'left', '--landmarks', landmarks, '--angles', angles] as const;
    expect(measure(TAPS, ...args).status).toBe(0);
    const { frames } = JSON.parse(readFileSync(join(ROOT, TAPS), 'utf8')) as { frames: unknown[] };
    for (const table of [landmarks, angles]) {
      expect(readFileSync(table, 'utf8').split('\r\n')).toHaveLength(1 + frames.length);
    }
  },
  COMMAND_MS,
);

test.each([
  ['leg-raise', 'left', 'foot-tap with the left leg, not leg-raise: use --exercise foot-tap'],
  ['foot-tap', 'right', 'foot-tap with the left leg, not the right: use --side left'],
  [
    'knee-straighten',
    'right',
    'foot-tap with the left leg, not knee-straighten with the right: use --exercise foot-tap --side left',
  ],
])(
  'a recording of something else than %s %s is refused in one sentence, and nothing is written',
  (exercise, side, told) => {
    const [json, landmarks] = [join(out, `${exercise}-${side}.json`), join(out, `${exercise}-${side}.landmarks.json`)];
    const refused = measure(TAPS, '--exercise', exercise, '--side', side, '--json', json, '--landmarks', landmarks);
    expect(refused.status).toBe(2);
    expect(refused.stdout).toBe('');
    expect(refused.stderr).toBe(`${TAPS} is a recording of ${told}, or record the video again.\n`);
    expect([json, landmarks].filter((path) => existsSync(path))).toEqual([]);
  },
  COMMAND_MS,
);
