import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { resultJson } from '../../src/cli/result-json.ts';
import { resultTable } from '../../src/cli/result-table.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording } from '../../src/record/recording.ts';

const ROOT = join(import.meta.dirname, '../..');
const textOf = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
/** The first fenced block after a text. */
const blockAfter = (document: string, text: string): string =>
  /```(?:json)?\n([\s\S]*?)```/.exec(document.slice(document.indexOf(text)))?.[1] ?? '';

function recorded() {
  const recording = decodeRecording(textOf('recordings/taps-right-weak.json'));
  if (!recording.ok) throw new Error(recording.error.kind);
  return { result: measureRecording(recording.value), durationMs: recording.value.source.durationMs };
}

test('README shows the table that the clip gives', () => {
  const shown = blockAfter(textOf('README.md'), 'watches the clip').trimEnd().split('\n');
  const table = resultTable(recorded().result).trimEnd().split('\n');
  const left = shown.findIndex((line) => line.trim() === '...');
  expect(shown.slice(0, left)).toEqual(table.slice(0, left));
  expect(shown.at(-1)).toBe(table.at(-1));
});

test('docs/result-format.md shows the JSON that the clip gives, its first repetition of ten', () => {
  const { result, durationMs } = recorded();
  const whole = JSON.parse(resultJson(result, 'taps-right-weak.mp4', durationMs));
  expect(JSON.parse(blockAfter(textOf('docs/result-format.md'), '# The result of'))).toEqual({
    ...whole,
    reps: whole.reps.slice(0, 1),
  });
});
