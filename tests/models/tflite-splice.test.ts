import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addMetadata } from '../../models/tflite-splice.mjs';
import { BUFFER, ENTRY, identifierOf, MODEL, metadataIn, rootOf } from './flatbuffer-view.ts';
import { smallModel } from './small-model.ts';

const METADATA = Uint8Array.from([9, 8, 7, 6, 5]);

const spliced = (model: Uint8Array, metadata = METADATA): Uint8Array => {
  const result = addMetadata(model, metadata);
  if (!result.ok) throw new Error(`expected a model that can be spliced, got: ${result.error.reason}`);
  return result.value;
};
const bufferContents = (model: Uint8Array) =>
  rootOf(model)
    .tables(MODEL.buffers)
    .map((b) => b.bytes(BUFFER.data)?.data);
const reasonFor = (model: Uint8Array) => {
  const result = addMetadata(model, METADATA);
  return result.ok ? undefined : result.error.reason;
};

test('the metadata is found through the new root', () => {
  expect([...metadataIn(spliced(smallModel())).data]).toEqual([...METADATA]);
  expect(identifierOf(spliced(smallModel()))).toBe('TFL3');
});

test('the old file stays as it was, at a multiple of 16', () => {
  const model = smallModel();
  const made = spliced(model);
  expect((made.length - model.length) % 16).toBe(0);
  expect(made.subarray(made.length - model.length)).toEqual(model);
});

test('what the old root led to is reached through the new one', () => {
  const model = smallModel({ buffers: [[], [1, 2, 3], [4]], entryNames: ['one', 'two'], description: 'three buffers' });
  const root = rootOf(spliced(model));
  expect(root.u32(MODEL.version)).toBe(3);
  expect(root.string(MODEL.description)).toBe('three buffers');
  expect(bufferContents(spliced(model))).toEqual([...bufferContents(model), METADATA]);
  expect(root.tables(MODEL.metadata).map((entry) => [entry.string(ENTRY.name), entry.u32(ENTRY.buffer)])).toEqual([
    ['one', 1],
    ['two', 1],
    ['TFLITE_METADATA', 3],
  ]);
});

test('a field that the old root lacks stays absent', () => {
  const root = rootOf(spliced(smallModel()));
  expect(root.has(MODEL.operatorCodes)).toBe(false);
  expect(root.has(MODEL.subgraphs)).toBe(false);
});

test('metadata and all buffer contents lie at multiples of 16, for any number of buffers and entries', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.integer({ min: 0, max: 255 }), { maxLength: 40 }), { minLength: 1, maxLength: 9 }),
      fc.array(fc.string({ unit: 'grapheme-ascii', maxLength: 20 }), { maxLength: 5 }),
      fc.uint8Array({ minLength: 1, maxLength: 60 }),
      (buffers, entryNames, metadata) => {
        const model = smallModel({ buffers, entryNames });
        const made = spliced(model, metadata);
        expect(bufferContents(made)).toEqual([...bufferContents(model), metadata]);
        const places = rootOf(made)
          .tables(MODEL.buffers)
          .flatMap((b) => b.bytes(BUFFER.data)?.at ?? []);
        expect(places.filter((at) => at % 16 !== 0)).toEqual([]);
      },
    ),
  );
});

test('a file without the identifier is refused', () => {
  const model = smallModel();
  model[4] = 'X'.charCodeAt(0);
  expect(reasonFor(model)).toBe('it lacks the identifier TFL3');
  expect(reasonFor(new Uint8Array())).toBe('it lacks the identifier TFL3');
});

test('an offset that leads out of the file is refused', () => {
  const model = smallModel();
  new DataView(model.buffer).setUint32(0, model.length, true);
  expect(reasonFor(model)).toBe(`offset ${model.length} leads out of the file of ${model.length} bytes`);
});

test('a list that claims more buffers than the file can hold is refused', () => {
  const model = smallModel();
  const root = rootOf(model);
  const list = root.bytes(MODEL.buffers);
  if (list === undefined) throw new Error('the small model must have buffers');
  new DataView(model.buffer).setUint32(list.at - 4, 0xffffffff, true);
  expect(reasonFor(model)).toMatch(/leads out of the file/);
});

test('a model that has such metadata already is refused', () => {
  expect(reasonFor(spliced(smallModel()))).toBe('it has a TFLITE_METADATA entry already');
});

test('a model that a splice could break is refused', () => {
  expect(reasonFor(smallModel({ external: true }))).toBe('it keeps buffers outside the flatbuffer');
  expect(reasonFor(smallModel({ unknownField: true }))).toBe('its root table has an unknown field, number 8');
  expect(reasonFor(smallModel({ buffers: [] }))).toBe('it has no buffers');
});

test('a damaged model is spliced or refused, and never throws', () => {
  const model = smallModel();
  fc.assert(
    fc.property(fc.nat(model.length), fc.nat(model.length - 1), fc.nat(255), (length, at, byte) => {
      const damaged = model.slice(0, length);
      if (at < damaged.length) damaged[at] = byte;
      const result = addMetadata(damaged, METADATA);
      if (result.ok) expect(result.value.subarray(result.value.length - damaged.length)).toEqual(damaged);
      else expect(result.error.kind).toBe('unsuited');
    }),
    { numRuns: 2000 },
  );
});
