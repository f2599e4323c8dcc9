import { describe, expect, test } from 'vitest';
import { CUE_WAITS_MS, createVoice } from '../../src/screens/set/voice.ts';

/** A voice whose every word takes as long as the test lets it. */
function slowVoice() {
  const said: string[] = [];
  const world = { nowMs: 0 };
  let done: (() => void) | null = null;
  const voice = createVoice(
    {
      say(text, onDone) {
        said.push(text);
        done = onDone;
      },
      hush: () => undefined,
    },
    () => world.nowMs,
  );
  const finish = () => {
    const end = done;
    done = null;
    end?.();
  };
  return { voice, said, world, finish };
}

describe('the one voice', () => {
  test('drops an old count for a new one', () => {
    const { voice, said, finish } = slowVoice();
    voice.say('1', 'count');
    voice.say('2', 'count');
    finish();
    expect(said).toEqual(['1', '2']);
  });

  test('says a correction after the count of the same cycle, and leaves out the cue that comes next', () => {
    const { voice, said, finish } = slowVoice();
    voice.say('2', 'count');
    voice.say('When you point the foot, lift the head.', 'wrong');
    voice.say('Point, head up', 'cue');
    finish();
    finish();
    voice.say('Head down, pull up', 'cue');
    expect(said).toEqual(['2', 'When you point the foot, lift the head.', 'Head down, pull up']);
  });

  test('leaves one cue out after a correction that was over before it', () => {
    const { voice, said, finish } = slowVoice();
    voice.say('When you point the foot, lift the head.', 'wrong');
    finish();
    voice.say('Point, head up', 'cue');
    voice.say('Head down, pull up', 'cue');
    expect(said).toEqual(['When you point the foot, lift the head.', 'Head down, pull up']);
  });

  test('cuts a cue short for a correction, but lets it end before a count', () => {
    const { voice, said, finish } = slowVoice();
    voice.say('Point, head up', 'cue');
    voice.say('3', 'count');
    expect(said).toEqual(['Point, head up']);
    finish();
    expect(said).toEqual(['Point, head up', '3']);
    finish();
    voice.say('Head down, pull up', 'cue');
    voice.say('I can’t see your head.', 'wrong');
    expect(said.at(-1)).toBe('I can’t see your head.');
  });

  test('lets a count wait for a correction, and a cue for a count unless it would be late', () => {
    const { voice, said, world, finish } = slowVoice();
    voice.say('I can’t see your head.', 'wrong');
    voice.say('4', 'count');
    finish();
    expect(said.at(-1)).toBe('4');
    voice.say('left out', 'cue');
    voice.say('Point, head up', 'cue');
    world.nowMs = CUE_WAITS_MS;
    finish();
    expect(said.at(-1)).toBe('Point, head up');
    finish();
    voice.say('5', 'count');
    voice.say('Head down, pull up', 'cue');
    world.nowMs += CUE_WAITS_MS + 1;
    finish();
    expect(said.at(-1)).toBe('5');
  });

  test('drops everything for the end, and says nothing over it', () => {
    const { voice, said, finish } = slowVoice();
    voice.say('3', 'count');
    voice.say('When you point the foot, lift the head.', 'wrong');
    voice.say('The set ends.', 'end');
    voice.say('4', 'count');
    voice.say('Point, head up', 'cue');
    finish();
    finish();
    expect(said).toEqual(['3', 'The set ends.']);
  });

  test('is silent once hushed, also about what waited', () => {
    const { voice, said, finish } = slowVoice();
    voice.say('3', 'count');
    voice.say('When you point the foot, lift the head.', 'wrong');
    voice.hush();
    finish();
    expect(said).toEqual(['3']);
  });
});
