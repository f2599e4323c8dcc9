import { describe, expect, test } from 'vitest';
import { HELP, readArguments } from '../../src/cli/arguments.ts';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';

const GOOD = ['clip.mp4', '--exercise', 'foot-tap', '--side', 'left'];

const RAISE = ['clip.mp4', '--exercise', 'leg-raise', '--side', 'left'];

const complaint = (args: readonly string[]): string => {
  const read = readArguments(args);
  if (read.ok) throw new Error(`expected a complaint about ${args.join(' ')}`);
  return read.error.words;
};

test('a clip, an exercise and a side are enough', () => {
  expect(readArguments(GOOD)).toEqual({
    ok: true,
    value: {
      clip: 'clip.mp4',
      exercise: 'foot-tap',
      exerciseFile: null,
      side: 'left',
      model: 'full',
      stickers: null,
      poseEvery: 1,
      json: null,
      landmarks: null,
      angles: null,
      kneeLimitDeg: null,
      onsetMs: null,
      elevationLimitDeg: null,
    },
  });
});

test('every option is read, wherever it stands', () => {
  const args = [
    '--side=right',
    '--model',
    'lite',
    '--json',
    'out.json',
    'a b.webm',
    '--landmarks',
    'lm.json',
    '--pose-every',
    '3',
    '--exercise',
    'leg-raise',
    '--knee-limit',
    '20.5',
    '--onset=7.25',
    '--angles=angles.CSV',
  ];
  expect(readArguments(args)).toEqual({
    ok: true,
    value: {
      clip: 'a b.webm',
      exercise: 'leg-raise',
      exerciseFile: null,
      side: 'right',
      model: 'lite',
      stickers: null,
      poseEvery: 3,
      json: 'out.json',
      landmarks: 'lm.json',
      angles: 'angles.CSV',
      kneeLimitDeg: 20.5,
      onsetMs: 7250,
      elevationLimitDeg: null,
    },
  });
});

test('a file may define the exercise', () => {
  const read = readArguments(['clip.mp4', '--exercise-file', 'own.json', '--side', 'left']);
  expect(read).toMatchObject({ ok: true, value: { exercise: null, exerciseFile: 'own.json' } });
});

test.each([
  { args: ['clip.mp4', '--exercise', 'foot-tap', '--side', 'left', '--json'], says: /^Say after --json what it is to be\./ },
  { args: ['clip.mp4', '--exercise', 'foot-tap', '--side', '--json', 'x'], says: /^Say after --side what it is to be\./ },
  { args: ['clip.mp4', '--exercise', 'leg-raise', '--knee-limit', '-5'], says: /^Say after --knee-limit what it is to be\./ },
  {
    args: ['clip.mp4', '--exercise', 'foot-tap', '--side', 'left', '--side', 'right'],
    says: /^--side is given twice: leave one out\./,
  },
  { args: ['clip.mp4', '--exercise', 'foot-tap'], says: /^Say which leg moves with --side left or --side right\. / },
])('$args: one sentence says what is wrong', ({ args, says }) => {
  const read = readArguments(args);
  expect(read).toMatchObject({ ok: false, error: { words: expect.stringMatching(says) } });
});

test('asked for help, everything else may be missing', () => {
  expect(readArguments(['--help'])).toEqual({ ok: true, value: null });
  expect(readArguments(['-h'])).toEqual({ ok: true, value: null });
});

test('the help names every exercise, option and exit code', () => {
  for (const word of [
    ...EXERCISE_IDS,
    '--exercise',
    '--exercise-file',
    '--side',
    '--model',
    '--json',
    '--landmarks',
    '--pose-every',
    '--knee-limit',
    '--onset',
    '0 measured',
    '2 bad',
    '3 nothing',
  ]) {
    expect(HELP).toContain(word);
  }
});

test.each([
  { what: 'nothing at all', args: [], says: 'Name the video file' },
  { what: 'no clip', args: GOOD.slice(1), says: 'Name the video file' },
  { what: 'two clips', args: [...GOOD, 'other.mp4'], says: '"other.mp4"' },
  { what: 'no exercise', args: ['clip.mp4', '--side', 'left'], says: '--exercise: foot-tap' },
  { what: 'an unknown exercise', args: ['clip.mp4', '--exercise', 'squat', '--side', 'left'], says: '"squat"' },
  { what: 'no side', args: GOOD.slice(0, 3), says: '--side left or --side right' },
  { what: 'an unknown side', args: ['clip.mp4', '--exercise', 'foot-tap', '--side', 'both'], says: '"both"' },
  { what: 'an unknown model', args: [...GOOD, '--model', 'huge'], says: '"huge"' },
  { what: 'an unknown option', args: [...GOOD, '--fast'], says: '--fast' },
  { what: 'an option without its value', args: [...GOOD, '--json'], says: '--json' },
  {
    what: 'an option that swallows the next one',
    args: ['clip.mp4', '--exercise', '--side', 'left'],
    says: 'Say after --exercise what',
  },
  { what: 'a pose for no picture', args: [...GOOD, '--pose-every', '0'], says: 'from 1 to 9, not "0"' },
  { what: 'a pose for half a picture', args: [...GOOD, '--pose-every', '2.5'], says: '"2.5"' },
  { what: 'more between than there is live', args: [...GOOD, '--pose-every', '10'], says: 'from 1 to 9' },
  { what: 'sparse poses of a recording', args: ['a.json', ...GOOD.slice(1), '--pose-every', '3'], says: 'a.json is a recording' },
  { what: 'a knee limit for a foot tap', args: [...GOOD, '--knee-limit', '10'], says: '--knee-limit is for leg-raise' },
  { what: 'an onset for a foot tap', args: [...GOOD, '--onset', '10'], says: '--onset is for leg-raise' },
  { what: 'a knee limit that is no number', args: [...RAISE, '--knee-limit', 'much'], says: '"much"' },
  { what: 'a knee limit within the noise', args: [...RAISE, '--knee-limit', '2'], says: 'from 5 to 90, not "2"' },
  { what: 'a knee limit beyond all bending', args: [...RAISE, '--knee-limit', '200'], says: '"200"' },
  { what: 'an onset before the clip', args: [...RAISE, '--onset=-3'], says: '--onset in seconds' },
  { what: 'an empty onset', args: [...RAISE, '--onset='], says: '--onset in seconds' },
  {
    what: 'a leg limit for a foot tap',
    args: [...GOOD, '--elevation-limit', '50'],
    says: '--elevation-limit is for nerve-glide',
  },
  {
    what: 'a leg limit near the floor',
    args: ['clip.mp4', '--exercise', 'nerve-glide', '--side', 'left', '--elevation-limit', '5'],
    says: 'from 15 to 110, not "5"',
  },
  { what: 'two exercises', args: [...GOOD, '--exercise-file', 'own.json'], says: 'not both' },
  { what: 'an empty exercise file', args: ['clip.mp4', '--side', 'left', '--exercise-file='], says: 'Name the file after' },
  { what: 'an empty file name', args: [...GOOD, '--json', ''], says: 'Name the file after --json' },
])('$what: one line that says so and where to read more', ({ args, says }) => {
  const words = complaint(args);
  expect(words).toContain(says);
  expect(words).not.toContain('\n');
  expect(words.endsWith('. See npm run measure -- --help.')).toBe(true);
  // One sentence before the pointer to the help.
  expect(words.replace(' See npm run measure -- --help.', '').match(/[.!?](?= |$)/g)).toHaveLength(1);
});

describe('how a clip is seen', () => {
  const seen = (...args: readonly string[]) => {
    const read = readArguments(['clip.mp4', '--side', 'left', ...args]);
    return read.ok ? read.value?.stickers : read.error.words;
  };

  test('a toe by stickers, found by themselves or by their colour; everything else by the pose model unless it is said', () => {
    expect(seen('--exercise', 'toe-lift')).toEqual({ colour: null });
    expect(seen('--exercise', 'toe-lift', '--sticker-colour', '#16D84c')).toEqual({ colour: '#16D84c' });
    expect(seen('--exercise', 'foot-tap')).toBeNull();
    expect(seen('--exercise', 'foot-tap', '--by', 'pose')).toBeNull();
    expect(seen('--exercise', 'foot-tap', '--by', 'stickers')).toEqual({ colour: null });
  });

  const points = ['--point', 'tip=511.3,164.8', '--point', 'arch=389,169', '--point', 'knuckle=472.7,168.5'];
  test('a toe by three points on bare skin, in any order', () => {
    expect(seen('--exercise', 'toe-lift', ...points)).toEqual({
      colour: null,
      skin: { tip: { x: 511.3, y: 164.8 }, knuckle: { x: 472.7, y: 168.5 }, arch: { x: 389, y: 169 } },
    });
  });

  test.each([
    [['--exercise', 'toe-lift', '--by', 'pose'], '--by pose is not for toe-lift, which is seen by stickers: leave it out.'],
    [['--exercise', 'leg-raise', '--by', 'stickers'], '--by stickers is not for leg-raise, which is seen by pose: leave it out.'],
    [['--exercise', 'foot-tap', '--by', 'tape'], 'Give --by pose or --by stickers, not "tape".'],
    [['--exercise', 'toe-lift', '--sticker-colour', 'green'], 'not "green"'],
    [['--exercise', 'toe-lift', '--sticker-colour', '#16d84'], 'not "#16d84"'],
    [['--exercise', 'foot-tap', '--sticker-colour', '#16d84c'], '--sticker-colour is for what is seen by stickers'],
    [['--exercise', 'foot-tap', '--by', 'stickers', ...points], '--point is for toe-lift, not for foot-tap: leave it out.'],
    [['--exercise', 'toe-lift', ...points, '--sticker-colour', '#16d84c'], 'Give --point or --sticker-colour, not both'],
    [['--exercise', 'toe-lift', ...points.slice(2)], 'Give all three points'],
    [['--exercise', 'toe-lift', ...points, '--point', 'tip=1,2'], '--point tip is given twice'],
    [['--exercise', 'toe-lift', '--point', 'heel=1,2'], 'not "heel=1,2"'],
    [['--exercise', 'toe-lift', '--point', 'tip=1'], 'not "tip=1"'],
  ])('%j is complained about', (args, words) => {
    expect(seen(...args)).toContain(words);
  });
});
