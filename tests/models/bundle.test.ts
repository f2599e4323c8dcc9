import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { makeBundle, zipStored } from '../../models/bundle.mjs';
import { recipeOf } from '../../models/recipe.mjs';
import { metadataIn, normalisationIn } from './flatbuffer-view.ts';
import { smallModel } from './small-model.ts';
import { zipEntries } from './zip-view.ts';

const LITE = recipeOf('lite');
const DETECTOR = 'pose_solution_packed_assets.data';
const LANDMARKS = 'pose_landmark_lite.tflite';

test('entries are stored in the given order, their data at multiples of 16', () => {
  const given = [
    { name: 'b.tflite', data: Uint8Array.from([1, 2, 3]) },
    { name: 'a-longer-name.tflite', data: new Uint8Array(1000).fill(7) },
    { name: 'c', data: Uint8Array.from([4]) },
  ];
  const zip = zipStored(given);
  const entries = zipEntries(zip);
  expect(entries.map(({ name, data }) => ({ name, data }))).toEqual(given);
  expect(entries.map((entry) => entry.method)).toEqual([0, 0, 0]);
  expect(entries.filter((entry) => entry.dataAt % 16 !== 0)).toEqual([]);
  expect(unzipSync(zip)).toEqual(Object.fromEntries(given.map(({ name, data }) => [name, data])));
});

test('a bundle holds the detector and the landmark model, each with its own normalisation', () => {
  const parts = new Map([
    [DETECTOR, smallModel({ description: 'detector' })],
    [LANDMARKS, smallModel({ description: 'landmarks' })],
  ]);
  const bundle = makeBundle(LITE, parts);
  if (!bundle.ok) throw new Error(`expected a bundle, got: ${bundle.error.reason}`);
  const entries = zipEntries(bundle.value);
  expect(entries.map((entry) => [entry.name, normalisationIn(metadataIn(entry.data).data)])).toEqual([
    ['pose_detector.tflite', { mean: [127.5], std: [127.5] }],
    ['pose_landmarks_detector.tflite', { mean: [0], std: [255] }],
  ]);
});

test('a part that is no model is named in the failure', () => {
  const bundle = makeBundle(
    LITE,
    new Map([
      [DETECTOR, smallModel()],
      [LANDMARKS, new Uint8Array(64)],
    ]),
  );
  expect(bundle).toEqual({ ok: false, error: { kind: 'unsuited', file: LANDMARKS, reason: 'it lacks the identifier TFL3' } });
});

test('a recipe with a part nobody read is a bug', () => {
  expect(() => makeBundle(LITE, new Map([[DETECTOR, smallModel()]]))).toThrow(LANDMARKS);
});
