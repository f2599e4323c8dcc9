import { deflateRawSync, inflateRawSync, crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { inflated, inflatedAgain } from '../../../src/record/file/inflated.ts';
import { deflated, packedBy } from '../../../src/record/file/packed-part.ts';
import { partPacker } from '../../../src/run/part-packer.ts';
import { WorkerLost } from '../../../src/run/worker-guard.ts';

const bytesOf = (bytes: Uint8Array) => new Uint8Array(bytes);
const zlibs = (bytes: Uint8Array) => bytesOf(deflateRawSync(bytes));

afterEach(() => {
  vi.unstubAllGlobals();
});

describe.each(['the browser’s own stream', 'the library, where there is none'])('unpacked by %s', (way) => {
  const prepare = () => {
    if (way.startsWith('the library')) vi.stubGlobal('DecompressionStream', undefined);
  };

  test('is what zlib packed', async () => {
    prepare();
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 100_000, size: 'max' }), async (bytes) => {
        expect(Buffer.compare((await inflated(zlibs(bytes), new Uint8Array(bytes.length))) ?? new Uint8Array(), bytes)).toBe(0);
      }),
      { numRuns: 10 },
    );
  });

  test('never becomes more than was said, and is refused when it becomes less', async () => {
    prepare();
    const bytes = new Uint8Array(40_000_000);
    const packed = zlibs(bytes);
    expect(packed.length).toBeLessThan(50_000);
    expect(await inflated(packed, new Uint8Array(1000))).toBeNull();
    expect(await inflated(packed, new Uint8Array(bytes.length - 1))).toBeNull();
    expect(await inflated(packed, new Uint8Array(bytes.length + 1))).toBeNull();
    expect((await inflated(packed, new Uint8Array(bytes.length)))?.length).toBe(bytes.length);
  });

  test('is refused when it is no deflate stream, or ends too early', async () => {
    prepare();
    const text = new TextEncoder().encode('some words of a record, over and over. '.repeat(3000));
    const packed = zlibs(text);
    expect(await inflated(packed.subarray(0, packed.length - 5), new Uint8Array(text.length))).toBeNull();
    expect(await inflated(new Uint8Array(50).fill(0xff), new Uint8Array(50))).toBeNull();
    expect(await inflated(new Uint8Array(0), new Uint8Array(5))).toBeNull();
  });
});

test('unpacked once more at once, it is the same', () => {
  const bytes = new TextEncoder().encode('[1,2,3]'.repeat(5000));
  expect(inflatedAgain(zlibs(bytes), new Uint8Array(bytes.length))).toEqual(bytesOf(bytes));
});

test('what is packed has the checksum and the stream that zip wants', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 5000 }), (bytes) => {
      const { size, crc, packed } = deflated(bytes);
      expect([size, crc]).toEqual([bytes.length, zlibCrc32(bytes)]);
      expect(bytesOf(inflateRawSync(packed))).toEqual(bytesOf(bytes));
    }),
  );
});

describe('parts packed beside the page', () => {
  const json = '[{"id":"x"}]';
  const hosted = (pack: () => Promise<never>) => {
    const end = vi.fn();
    const service = { here: async () => true as const, pack };
    return { end, packer: partPacker(async () => ({ service, where: 'worker', end }) as never) };
  };

  test('are the same as those packed here, where the worker is lost', async () => {
    const { packer, end } = hosted(() => Promise.reject(new WorkerLost('crashed', 'out of memory')));
    expect(await packer.pack(json)).toEqual(await packedBy(crypto)(json));
    packer.end();
    await vi.waitFor(() => expect(end).toHaveBeenCalledOnce());
  });

  test('tell of what else went wrong', async () => {
    const { packer } = hosted(() => Promise.reject(new Error('no such algorithm')));
    await expect(packer.pack(json)).rejects.toThrow('no such algorithm');
  });

  test('are packed on the page’s own thread where there are no workers', async () => {
    expect(await partPacker().pack(json)).toEqual(await packedBy(crypto)(json));
  });
});
