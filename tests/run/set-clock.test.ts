import { expect, test } from 'vitest';
import { BREAK_MS, setClock } from '../../src/run/set-clock.ts';
import { ms } from '../../src/units.ts';
import { pictures } from './scripted-set.ts';

/** A clock over a wall clock that the test moves. */
function clockAt() {
  const { frame } = pictures();
  const wall = { ms: 1_000_000 };
  const clock = setClock(() => wall.ms);
  const luma = { width: 1, height: 1, data: new Uint8Array(1) };
  const read = (tMs: number, wallStepMs: number, between: readonly number[] = []) => {
    wall.ms += wallStepMs;
    const { frame: out, afterBreak } = clock.read({ ...frame(tMs), between: between.map((each) => ({ tMs: ms(each), luma })) });
    return { tMs: out.tMs, between: out.between?.map((each) => each.tMs), afterBreak };
  };
  return { read, reopened: clock.reopened };
}

test('pictures that come one after the other keep their times, and so do those between', () => {
  const { read } = clockAt();
  expect(read(0, 0)).toEqual({ tMs: 0, between: [], afterBreak: false });
  expect(read(33, 400)).toEqual({ tMs: 33, between: [], afterBreak: false });
  expect(read(133, 100, [66, 100])).toEqual({ tMs: 133, between: [66, 100], afterBreak: false });
  expect(read(1833, 1700)).toEqual({ tMs: 1833, between: [], afterBreak: false });
});

test('a leap of minutes between two pictures takes the time of a break, and what comes after goes on from there', () => {
  const { read } = clockAt();
  read(0, 0);
  expect(read(600_000, 600_000, [33])).toEqual({ tMs: BREAK_MS, between: [], afterBreak: true });
  expect(read(600_100, 100, [600_050])).toEqual({ tMs: BREAK_MS + 100, between: [BREAK_MS + 50], afterBreak: false });
});

test('a machine that has slept with the pictures’ own clock is found by the wall clock', () => {
  const { read } = clockAt();
  read(0, 0);
  expect(read(33, 3_600_000)).toEqual({ tMs: BREAK_MS, between: [], afterBreak: true });
  expect(read(66, 33)).toMatchObject({ tMs: BREAK_MS + 33, afterBreak: false });
});

test('a wall clock that is put back changes nothing', () => {
  const { read } = clockAt();
  read(0, 0);
  expect(read(33, -3_600_000)).toMatchObject({ tMs: 33, afterBreak: false });
  expect(read(66, 33)).toMatchObject({ tMs: 66, afterBreak: false });
});

test('a camera that was opened anew goes on after a break, whatever its own clock says', () => {
  const { read, reopened } = clockAt();
  read(0, 0);
  read(5000, 5000);
  const { tMs } = read(5033, 33);
  reopened();
  expect(read(0, 90_000)).toEqual({ tMs: tMs + BREAK_MS, between: [], afterBreak: true });
  expect(read(40, 40)).toMatchObject({ tMs: tMs + BREAK_MS + 40, afterBreak: false });
});
