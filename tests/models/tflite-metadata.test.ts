import { expect, test } from 'vitest';
import { imageInputMetadata } from '../../models/tflite-metadata.mjs';
import { identifierOf, META, normalisationIn, rootOf, SUBGRAPH, TENSOR, UNION } from './flatbuffer-view.ts';

const metadata = imageInputMetadata({ modelName: 'pose', mean: 127.5, std: 63.75 });

test('the metadata says how the input is normalised', () => {
  expect(normalisationIn(metadata)).toEqual({ mean: [127.5], std: [63.75] });
});

test('a mean of zero is written out, not left to a default', () => {
  expect(normalisationIn(imageInputMetadata({ modelName: 'pose', mean: 0, std: 255 }))).toEqual({ mean: [0], std: [255] });
});

test('the metadata carries its identifier and calls the input an RGB image', () => {
  const content = rootOf(metadata).tables(META.subgraphs)[0]?.tables(SUBGRAPH.inputs)[0]?.table(TENSOR.content);
  expect(identifierOf(metadata)).toBe('M001');
  expect(content?.u8(UNION.type)).toBe(2);
  expect(content?.table(UNION.value).u8(0)).toBe(1);
});
