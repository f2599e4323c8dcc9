import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runTool } from './run-tool.ts';

/** How many tests of one vitest run passed and failed; a file that breaks outside its tests counts as one failure. */
export interface Tally {
  readonly passed: number;
  readonly failed: number;
}

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly { readonly status: string }[] }[];
}

function tallyOf(report: Report): Tally {
  const broken = (file: Report['testResults'][number]) =>
    file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed');
  const brokenFiles = report.testResults.filter(broken).length;
  return { passed: report.numPassedTests, failed: report.numFailedTests + brokenFiles };
}

/** How projects of vitest.config.ts went. */
export interface VitestRun {
  readonly ok: boolean;
  readonly tally: Tally;
}

/** Runs projects of vitest.config.ts with their own output, and counts. @param project its name; may hold `*` */
export async function runVitest(root: string, project: string, files: readonly string[]): Promise<VitestRun> {
  const folder = mkdtempSync(join(tmpdir(), 'evenside-tests-'));
  const file = join(folder, 'report.json');
  const args = ['run', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${file}`, ...files];
  try {
    const { ok } = await runTool(root, 'vitest/vitest.mjs', args, 'shown');
    // Vitest writes no report when it doesn't come to running tests.
    const report = readReport(file);
    const tally = report ? tallyOf(report) : { passed: 0, failed: 0 };
    return { ok: ok && tally.failed === 0 && tally.passed > 0, tally };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function readReport(file: string): Report | null {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Report;
  } catch {
    return null;
  }
}
