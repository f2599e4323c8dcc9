/** `npm test`: the checks of the project in order, stopping at the first that fails. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Result } from '../src/result.ts';
import { ensureBundles, ensureSite } from './build-site.ts';
import { findChromium } from './chromium.ts';
import { askAdvisories } from './dependencies/advisories.ts';
import { type Lockfile, lockfileFaults } from './dependencies/lockfile.ts';
import { endTools, runTool } from './run-tool.ts';
import { siteFiles, siteHash } from './site-hash.ts';
import { runVitest, type Tally } from './vitest-run.ts';

const ROOT = join(import.meta.dirname, '..');
const BAD_ARGUMENTS = 2;
/** Fewer modules than this means that dependency-cruiser understood nothing, not that nothing is wrong. Chosen: far below the real count. */
const LEAST_MODULES = 20;

/** How a step ended, in one line. */
interface Outcome {
  readonly ok: boolean;
  readonly line: string;
  /** What the tool said of it, to be shown before the line. */
  readonly said?: string;
}

interface Step {
  readonly name: string;
  readonly heading: string;
  readonly run: (files: readonly string[]) => Promise<Outcome>;
  /** It only reads the sources: it is started at once, beside the others that do, and told in its turn. */
  readonly atOnce?: true;
  /** Runs only when it is asked for by name. */
  readonly onDemand?: true;
}

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

function simple(name: string, heading: string, script: string, args: readonly string[], good: string): Step {
  return {
    name,
    heading,
    atOnce: true,
    run: async () => {
      const { ok, said } = await runTool(ROOT, script, args);
      return ok ? { ok, line: good } : { ok, line: 'see above', said };
    },
  };
}

async function cruise(): Promise<Outcome> {
  const { ok, said } = await runTool(ROOT, 'dependency-cruiser/bin/dependency-cruise.mjs', [
    'src',
    'scripts',
    'models',
    'vite.config.ts',
  ]);
  if (!ok) return { ok, line: 'a module imports what it may not, see above', said };
  const modules = Number(/\((\d+) modules/.exec(said)?.[1] ?? 0);
  if (modules >= LEAST_MODULES) return { ok: true, line: `${modules} modules import only what they may` };
  return { ok: false, line: `only ${modules} modules were looked at, at least ${LEAST_MODULES} are there` };
}

/** Hashes, origin and licences of all packages, and what the registry knows against them, as far as it can be asked. */
async function audit(): Promise<Outcome> {
  const lockfile = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as Lockfile;
  const faults = lockfileFaults(lockfile).map(({ words }) => words);
  const advisories = await askAdvisories(ROOT);
  const known = advisories.kind === 'answered' ? advisories.stops : [];
  const told = advisories.kind === 'answered' ? advisories.told : [];
  const said = [...faults, ...known, ...told].map((line) => `${line}\n`).join('');
  if (faults.length + known.length > 0) return { ok: false, line: 'see above', said };
  const packages = `${Object.keys(lockfile.packages).length - 1} packages with hash and a licence of the list`;
  return advisories.kind === 'answered'
    ? { ok: true, line: `${packages}, no serious vulnerability known`, said }
    : { ok: true, line: `${packages}; vulnerabilities NOT looked up: ${advisories.why}`, said };
}

const worded = (result: Result<unknown, { readonly kind: string; readonly words: string }>, good: string): Outcome =>
  result.ok ? { ok: true, line: good } : { ok: false, line: result.error.words };

async function site(): Promise<Outcome> {
  const built = await ensureSite(ROOT, say);
  if (!built.ok) return worded(built, '');
  return { ok: true, line: `built from these sources, SHA-256 ${siteHash(await siteFiles(join(ROOT, 'dist')))}` };
}

const tallies: Tally[] = [];

async function vitest(project: string, files: readonly string[]): Promise<Outcome> {
  const { ok, tally } = await runVitest(ROOT, project, files);
  tallies.push(tally);
  if (ok) return { ok, line: `${tally.passed} passed` };
  return { ok, line: tally.failed + tally.passed > 0 ? `${tally.failed} failed` : 'no test ran' };
}

async function inChromium(project: string, files: readonly string[]): Promise<Outcome> {
  const chromium = findChromium(say);
  return chromium.ok ? vitest(project, files) : worded(chromium, '');
}

const STEPS: readonly Step[] = [
  simple('types', 'Types', 'typescript/bin/tsc', ['--noEmit', '-p', '.'], 'no type error'),
  simple('lint', 'Lint and format', '@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.'], 'nothing to change'),
  { name: 'imports', heading: 'Import rules', run: cruise, atOnce: true },
  simple('unused', 'Unused code', 'knip/bin/knip.js', [], 'nothing unused'),
  { name: 'audit', heading: 'Packages', run: audit, atOnce: true },
  {
    name: 'models',
    heading: 'Pose models',
    run: async () => worded(await ensureBundles(ROOT, say), 'all bundles are as the manifest says'),
  },
  { name: 'site', heading: 'Site', run: site },
  { name: 'unit', heading: 'Unit and property tests', run: (files) => vitest('unit', files) },
  { name: 'browser', heading: 'Browser tests', run: (files) => inChromium('browser-*', files) },
  { name: 'every-clip', heading: 'Every clip', run: (files) => inChromium('every-clip', files), onDemand: true },
];

/** What a step needs from the ones before it when it is asked for alone. */
const NEEDS: Readonly<Record<string, readonly string[]>> = {
  browser: ['models', 'site'],
  'every-clip': ['models', 'site'],
};

const USAGE = `npm test [-- --only ${STEPS.map((step) => step.name).join('|')}[,...]] [-- FILE ...]`;

function chosenSteps(): { readonly steps: readonly Step[]; readonly files: readonly string[] } {
  let parsed: { values: { only?: string | undefined }; positionals: string[] };
  try {
    parsed = parseArgs({ options: { only: { type: 'string' } }, allowPositionals: true });
  } catch (cause) {
    return badArguments(cause instanceof Error ? (cause.message.split('. ')[0] ?? '') : String(cause));
  }
  const { values, positionals: files } = parsed;
  if (values.only === undefined) return { steps: STEPS.filter((step) => !step.onDemand), files };
  const names = values.only.split(',');
  const unknown = names.find((name) => !STEPS.some((step) => step.name === name));
  if (unknown !== undefined) return badArguments(`There is no step "${unknown}"`);
  const wanted = new Set(names.flatMap((name) => [...(NEEDS[name] ?? []), name]));
  return { steps: STEPS.filter((step) => wanted.has(step.name)), files };
}

function badArguments(reason: string): never {
  process.stderr.write(`${reason}. Use it as: ${USAGE}\n`);
  process.exit(BAD_ARGUMENTS);
}

const { steps, files } = chosenSteps();
let failedStep: string | null = null;
const started = new Map(steps.filter((step) => step.atOnce).map((step) => [step, step.run(files)]));
for (const step of steps) {
  say(`\n== ${step.heading}`);
  const { ok, line, said } = await (started.get(step) ?? step.run(files));
  if (said) process.stdout.write(said);
  say(`${ok ? 'ok' : 'FAILED'}: ${line}`);
  if (ok) continue;
  failedStep = step.heading;
  break;
}
endTools();
const sum = (pick: (tally: Tally) => number): number => tallies.reduce((total, tally) => total + pick(tally), 0);
// A failed check that is no test, a type error say, counts as one failure, so that the last line never reads as success.
const failedTests = sum((tally) => tally.failed);
say(`\n${sum((tally) => tally.passed)} passed, ${failedStep && failedTests === 0 ? 1 : failedTests} failed`);
process.exit(failedStep ? 1 : 0);
