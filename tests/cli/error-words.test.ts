import { expect, test } from 'vitest';
import { recordingWords, watchWords } from '../../src/cli/error-words.ts';
import type { WatchError } from '../../src/cli/page-protocol.ts';
import type { RecordingError } from '../../src/record/recording.ts';
import { ms } from '../../src/units.ts';

/** One error of each kind; a kind that is left out does not compile. */
type Each<E extends { readonly kind: string }> = { readonly [K in E['kind']]: Extract<E, { readonly kind: K }> };

const WATCH: Each<WatchError> = {
  'file-empty': { kind: 'file-empty' },
  'file-not-video': { kind: 'file-not-video' },
  'file-no-picture': { kind: 'file-no-picture' },
  'file-codec': { kind: 'file-codec', codec: 'hevc' },
  'file-damaged': { kind: 'file-damaged', readToMs: ms(2450) },
  'file-broken': { kind: 'file-broken', readToMs: ms(0) },
  'bundle-missing': { kind: 'bundle-missing', model: 'lite' },
  'bundle-broken-off': { kind: 'bundle-broken-off' },
  'bundle-wrong': { kind: 'bundle-wrong', model: 'lite' },
  'pose-wasm': { kind: 'pose-wasm', detail: 'no WebGL' },
  'pose-model': { kind: 'pose-model', detail: 'bad header' },
  'pose-failed': { kind: 'pose-failed', detail: 'out of memory' },
  'camera-lost': { kind: 'camera-lost', why: 'unplugged' },
  'no-stickers': { kind: 'no-stickers', why: 'room-same-colour' },
  'no-skin-point': { kind: 'no-skin-point', refused: { kind: 'flat-skin', name: 'tip' } },
};
const RECORDING: Each<RecordingError> = {
  'recording-too-large': { kind: 'recording-too-large', characters: 900, limit: 800 },
  'recording-not-json': { kind: 'recording-not-json' },
  'recording-other-format': { kind: 'recording-other-format' },
  'recording-newer': { kind: 'recording-newer', schema: 9, known: 1 },
  'recording-wrong': { kind: 'recording-wrong', where: 'frames.3', what: 'a time must be a number' },
};

const isOneSentence = (words: string): void => {
  expect(words).not.toContain('\n');
  expect(words.endsWith('.')).toBe(true);
  // A stop inside a name or a number is none.
  expect(words.match(/[.!?](?= |$)/g)).toHaveLength(1);
  expect(words).not.toMatch(/undefined|null|NaN|\[object/);
};

test.each(Object.values(WATCH))('$kind is one sentence', (error) => {
  isOneSentence(watchWords(error, 'clip.mp4'));
});

test.each(Object.values(RECORDING))('$kind is one sentence that names the file', (error) => {
  const words = recordingWords(error, 'set.json');
  isOneSentence(words);
  expect(words).toContain('set.json');
});

test('what is wrong with a file names the file and what to do', () => {
  for (const [kind, error] of Object.entries(WATCH)) {
    if (!kind.startsWith('file-')) continue;
    const words = watchWords(error, 'clip.mp4');
    expect(words).toContain('clip.mp4');
    expect(words).toMatch(/: (choose|give|save|copy) /);
  }
});

test('a damaged file says up to which second it could be read', () => {
  expect(watchWords(WATCH['file-damaged'], 'clip.mp4')).toContain('2.5 s');
});

test('the codec and the detail that someone could look up are told', () => {
  expect(watchWords(WATCH['file-codec'], 'clip.mp4')).toContain('hevc');
  expect(watchWords(WATCH['pose-failed'], 'clip.mp4')).toContain('out of memory');
  expect(recordingWords(RECORDING['recording-wrong'], 'set.json')).toContain('frames.3');
});
