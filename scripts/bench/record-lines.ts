import type { Took } from './processor-time.ts';
import { RECORD_SETS, recordFileCost } from './record-file.ts';
import { recordImportCost } from './record-import.ts';

const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`;

/** The record file by itself. */
async function* fileLines(): AsyncIterable<string> {
  const cost = await recordFileCost();
  const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(0)} MB`;
  const times = (part: number, whole: number) => (part / whole).toFixed(1);
  const sizes = `${megabytes(cost.fileBytes)}, the same as plain JSON ${megabytes(cost.jsonBytes)}`;
  yield `\n== A record file of ${RECORD_SETS} sets with curves (this Node, without the database): ${sizes}`;
  yield `written ${seconds(cost.writeMs)}, ${times(cost.writeMs, cost.stringifyMs)} times JSON.stringify (target under 5 s)`;
  yield `checked ${seconds(cost.readMs)}, ${times(cost.readMs, cost.parseMs)} times JSON.parse;`;
  yield `  unpacked again for the database ${seconds(cost.againMs)} (target of both under 5 s)`;
  const held = (bytes: number) => times(bytes, cost.fileBytes);
  yield `most held at once: writing ${held(cost.writePeakBytes)}, reading ${held(cost.readPeakBytes)} times the file (target at most 5)`;
}

/** The same through the screens and the database. */
async function* importLines(root: string, executable: string): AsyncIterable<string> {
  yield `\n== The same through the database (Chromium, the screens themselves)`;
  for (const how of [
    { locked: false, sealed: false },
    { locked: false, sealed: true },
    { locked: true, sealed: false },
  ]) {
    const cost = await recordImportCost(root, executable, how);
    const { parsed, checked, looked, taken, saved } = cost;
    const part = ({ ms, cpuMs }: Took) =>
      `${seconds(ms)} (processor ${seconds(cpuMs)}, ${(cpuMs / parsed.cpuMs).toFixed(1)} times the parse)`;
    const together: Took = {
      ms: checked.ms + looked.ms + taken.ms,
      cpuMs: checked.cpuMs + looked.cpuMs + taken.cpuMs,
    };
    yield `${how.locked ? 'under the lock' : 'no lock'}, ${how.sealed ? 'sealed' : 'plain'} file; JSON.parse ${seconds(parsed.ms)}:`;
    yield `  checked ${part(checked)}, looked at ${part(looked)}, taken in ${part(taken)};`;
    yield `  together ${part(together)}; saved ${part(saved)} (target of both under 5 s)`;
    yield `  most held, with garbage: ${(cost.peakBytes / cost.fileBytes).toFixed(1)} times the file`;
  }
}

/** What records of many sets cost, as lines to read. @param root of the project, whose site is built */
export async function* recordLines(root: string, executable: string): AsyncIterable<string> {
  yield* fileLines();
  yield* importLines(root, executable);
}
