import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8 } from 'fflate';
import { expect, test } from 'vitest';
import { DEFINITION_LIMITS, definitionOfText } from '../../src/cli/definition-text.ts';
import { definitionWords, recordingWords } from '../../src/cli/error-words.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording } from '../../src/record/recording.ts';
import { RECORDING_LIMITS } from '../../src/record/recording-shape.ts';
import { ok } from '../../src/result.ts';
import { type Bytes, FUZZ_MS, FUZZ_RUNS, fuzzImport, IS_WHOLE } from '../record/fuzzed-import.ts';

const bytesOf = (text: string) => strToU8(text) as Bytes;
const textOf = (bytes: Bytes) => new TextDecoder().decode(bytes);

/** The first pictures of a recording, so that each file is small. */
function shortRecording(id: string): string {
  const whole = JSON.parse(readFileSync(join(import.meta.dirname, `../../recordings/${id}.json`), 'utf8'));
  return JSON.stringify({ ...whole, frames: whole.frames.slice(0, 12) });
}

test(
  'files that are almost landmark recordings are each refused with a sentence, or read and measured',
  async () => {
    const texts = [shortRecording('taps-left-quick'), shortRecording('toe-left-green')];
    const outcomes = await fuzzImport(
      {
        valid: texts.map(bytesOf),
        texts,
        remade: (_, text) => bytesOf(text),
        read: async (bytes) => decodeRecording(textOf(bytes)),
        taken: async (recording) => ok(measureRecording(recording)),
        sentences: (error) => [recordingWords(error as Parameters<typeof recordingWords>[0], 'steps.json')],
      },
      FUZZ_RUNS,
    );
    const ways = ['ok', 'recording-not-json', 'recording-other-format', 'recording-newer', 'recording-wrong'];
    expect(Object.keys(outcomes)).toEqual(expect.arrayContaining(IS_WHOLE ? ways : ['recording-not-json']));
  },
  FUZZ_MS,
);

test(
  'files that almost define an exercise are each refused with a sentence, or read',
  async () => {
    const text = JSON.stringify({
      name: 'Heel slides (invented)',
      angle: 'knee-flexion',
      direction: 'rises',
      posture: 'lying',
      side: 'either',
      noticeDeg: 4,
      leastDeg: 15,
      completeShare: 0.7,
      leastMs: 400,
    });
    const outcomes = await fuzzImport(
      {
        valid: [bytesOf(text)],
        texts: [text],
        remade: (_, changed) => bytesOf(changed),
        read: async (bytes) => definitionOfText(textOf(bytes)),
        sentences: (error) => [definitionWords(error as Parameters<typeof definitionWords>[0], 'slides.json')],
      },
      FUZZ_RUNS,
    );
    expect(Object.keys(outcomes)).toEqual(expect.arrayContaining(['definition', ...(IS_WHOLE ? ['ok'] : [])]));
  },
  FUZZ_MS,
);

test('what is too deep or too long is not even parsed', () => {
  const deep = (n: number) => `{"a":${'['.repeat(n)}${']'.repeat(n)}}`;
  expect(definitionOfText(deep(DEFINITION_LIMITS.levels))).toMatchObject({
    ok: false,
    error: { words: expect.stringContaining('far more') },
  });
  expect(definitionOfText(' '.repeat(DEFINITION_LIMITS.characters + 1))).toMatchObject({ ok: false });
  expect(decodeRecording(deep(RECORDING_LIMITS.levels))).toEqual({ ok: false, error: { kind: 'recording-other-format' } });
  expect(decodeRecording(deep(3_000_000))).toEqual({ ok: false, error: { kind: 'recording-other-format' } });
});
