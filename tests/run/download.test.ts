import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DownloadNeeds, download } from '../../src/run/download.ts';

const FILE = Uint8Array.from({ length: 500 }, (_, i) => (i * 37) % 251);
const URL_OF = new URL('http://here.test/models/pose_full.task');

interface ServerOptions {
  /** After how many bytes each answer is cut; the last one is not, once they are used up. */
  readonly cuts?: readonly number[];
  readonly ranges?: boolean;
  readonly file?: Uint8Array<ArrayBuffer>;
  readonly etag?: string;
}

/** A server that cuts its answers off, and notes what was asked of it. */
function server({ cuts = [], ranges = true, file = FILE, etag = '"v1"' }: ServerOptions = {}) {
  const asked: (string | null)[] = [];
  const waits: number[] = [];
  const left = [...cuts];
  const needs: DownloadNeeds = {
    sleep: async (ms) => void waits.push(ms),
    fetch: async (_, init) => {
      const headers = new Headers(init.headers);
      const range = headers.get('range');
      asked.push(range);
      const from = ranges && range && headers.get('if-range') === etag ? Number(/(\d+)-/.exec(range)?.[1]) : 0;
      if (from >= file.length) return new Response(null, { status: 416 });
      const cut = left.shift();
      const body = new ReadableStream<Uint8Array>({
        start(controller) {
          controller.enqueue(file.slice(from, cut === undefined ? undefined : from + cut));
          if (cut === undefined) controller.close();
        },
        pull: (controller) => controller.error(new TypeError('network error')),
      });
      const partial = from > 0 ? { 'Content-Range': `bytes ${from}-${file.length - 1}/${file.length}` } : {};
      return new Response(body, { status: from > 0 ? 206 : 200, headers: { etag, ...partial } });
    },
  };
  return { needs, asked, waits };
}

const run = (needs: DownloadNeeds, onProgress: (share: number) => void = () => undefined) =>
  download({ url: URL_OF, bytes: FILE.length, onProgress }, needs);

describe('a download', () => {
  test('goes on after a cut from the byte where it broke off', async () => {
    const { needs, asked } = server({ cuts: [100, 150] });
    const shares: number[] = [];
    const came = await run(needs, (share) => shares.push(share));
    expect(came).toEqual({ ok: true, value: FILE });
    expect(asked).toEqual([null, 'bytes=100-', 'bytes=250-']);
    expect(shares).toEqual([0.2, 0.5, 1]);
  });

  test('begins anew where the server gives no parts', async () => {
    const { needs } = server({ cuts: [100, 150], ranges: false });
    expect(await run(needs)).toEqual({ ok: true, value: FILE });
  });

  test('begins anew when the file on the server has changed meanwhile', async () => {
    const old = server({ cuts: [100], etag: '"v0"' });
    const fresh = server();
    let first = true;
    const fetch: DownloadNeeds['fetch'] = (url, init) => {
      const now = first ? old : fresh;
      first = false;
      return now.needs.fetch(url, init);
    };
    expect(await run({ ...fresh.needs, fetch })).toEqual({ ok: true, value: FILE });
    expect(fresh.asked).toEqual(['bytes=100-']);
  });

  test('comes whole however often it is cut, as long as something new comes', () =>
    fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 1, max: 120 }), { maxLength: 12 }), fc.boolean(), async (cuts, ranges) => {
        const came = await run(server({ cuts: ranges ? cuts : cuts.slice(0, 3), ranges }).needs);
        expect(came).toEqual({ ok: true, value: FILE });
      }),
    ));

  test('is given up when nothing comes, after waits that grow', async () => {
    const { needs, waits } = server();
    const tried = await run({ ...needs, fetch: () => Promise.reject(new TypeError('Failed to fetch')) });
    expect(tried).toEqual({ ok: false, error: { kind: 'broken-off' } });
    expect(waits).toEqual([1000, 2000, 4000]);
  });

  test('waits for a server that is overloaded, and does not for one that has no such file', async () => {
    const { needs, waits } = server();
    const answers = [503, 429];
    const came = await run({
      ...needs,
      fetch: async (url, init) => {
        const status = answers.shift();
        return status ? new Response('busy', { status }) : needs.fetch(url, init);
      },
    });
    expect(came.ok).toBe(true);
    expect(waits).toHaveLength(2);
    const missing = await run({ ...needs, fetch: async () => new Response('no', { status: 404 }) });
    expect(missing).toEqual({ ok: false, error: { kind: 'missing' } });
    expect(waits).toHaveLength(2);
  });

  test.each([
    ['shorter', FILE.slice(0, 300)],
    ['empty', FILE.slice(0, 0)],
  ])('of a file that is %s than it should be ends', async (_, file) => {
    expect(await run(server({ file }).needs)).toEqual({ ok: false, error: { kind: 'broken-off' } });
  });

  test('of a file that is longer than it should be takes no more than its length', async () => {
    const came = await run(server({ file: Uint8Array.from([...FILE, 1, 2, 3]) }).needs);
    expect(came).toEqual({ ok: true, value: FILE });
  });
});
