import { expect, test } from 'vitest';
import type { Picture } from '../../src/capture/frame.ts';
import { sparselyPosed } from '../../src/run/sparsely-posed.ts';
import { fileSource, pictures } from './scripted-set.ts';

const read = async (_: Picture, turn: number) => ({ width: 1, height: 1, data: Uint8Array.of(turn) });

test('every third picture of a file comes whole, with what is left of those before it; all others are closed', async () => {
  const { all, frame } = pictures();
  const seen: (readonly number[])[] = [];
  const source = fileSource(frame, 9);
  for await (const { tMs, image, between = [] } of sparselyPosed(source, 3, read).frames()) {
    image.close();
    seen.push([...between.map((b) => b.tMs), tMs]);
  }
  expect(seen).toEqual([[0], [33, 66, 99], [132, 165, 198]]);
  expect(all.map(({ closed }) => closed)).toEqual(Array(9).fill(1));
});

test('each picture whole is the source as it is', async () => {
  const { frame } = pictures();
  for await (const { between } of sparselyPosed(fileSource(frame, 4), 1, read).frames()) expect(between).toEqual([]);
});

test('stopped in the middle or broken by a picture, nothing stays open', async () => {
  const { all, frame } = pictures();
  const frames = sparselyPosed(fileSource(frame, 9), 3, read).frames();
  (await frames.next()).value?.image.close();
  (await frames.next()).value?.image.close();
  await frames.return();
  expect(all.every(({ closed }) => closed === 1)).toBe(true);
  const unreadable = sparselyPosed(fileSource(frame, 9), 3, () => Promise.reject(new Error('closed'))).frames();
  (await unreadable.next()).value?.image.close();
  await expect(unreadable.next()).rejects.toThrow('closed');
  expect(all.every(({ closed }) => closed === 1)).toBe(true);
});
