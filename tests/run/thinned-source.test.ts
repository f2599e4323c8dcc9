import { expect, test } from 'vitest';
import { thinnedSource } from '../../src/run/thinned-source.ts';
import { fileSource, pictures } from './scripted-set.ts';

async function timesAt(aSecond: number) {
  const { all, frame } = pictures();
  const times: number[] = [];
  // 33 ms apart.
  for await (const { tMs, image } of thinnedSource(fileSource(frame, 31), aSecond).frames()) {
    times.push(tMs);
    image.close();
  }
  expect(all.map(({ closed }) => closed)).toEqual(Array(31).fill(1));
  return times;
}

test('of a source come so many pictures a second, each the first that is due', async () => {
  expect(await timesAt(5)).toEqual([0, 231, 429, 627, 825]);
  expect(await timesAt(8)).toEqual([0, 132, 264, 396, 528, 627, 759, 891]);
});

test('more than there are leaves all of them', async () => {
  expect((await timesAt(60)).length).toBe(31);
});
