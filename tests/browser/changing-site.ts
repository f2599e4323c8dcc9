import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import type { Site } from '../../scripts/serve-site.ts';
import { typeOf } from '../../scripts/site-assets.ts';

const DIST = join(import.meta.dirname, '..', '..', 'dist');
const FOLDER = '/clinic/evenside/';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
};

/** The built site under a sub-path of a server that sends none of its headers; it can change, cut answers off and go away. */
export interface ChangingSite extends Site {
  /** What was asked for, with the range if one was, from the site's root. */
  readonly asked: readonly string[];
  /** Other content from now on. */
  readonly replace: (path: string, content: Uint8Array | string) => void;
  /** As it was built. */
  readonly restore: () => void;
  /** Ends the next answer for a path after so many bytes, by closing its connection. */
  readonly cutNext: (path: string, bytes: number) => void;
  /** The file as it was built. */
  readonly built: (path: string) => Promise<Buffer>;
}

export async function serveChangingSite(): Promise<ChangingSite> {
  const asked: string[] = [];
  const replaced = new Map<string, Uint8Array>();
  const cuts = new Map<string, number>();
  const built = (path: string) => readFile(join(DIST, path));
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const path = pathname === FOLDER ? 'index.html' : pathname.slice(FOLDER.length);
    const { range } = request.headers;
    asked.push(range ? `${path} ${range}` : path);
    const file = pathname.startsWith(FOLDER) ? (replaced.get(path) ?? (await built(path).catch(() => null))) : null;
    if (!file) return response.writeHead(404).end();
    const from = Number(/^bytes=(\d+)-/.exec(range ?? '')?.[1] ?? 0);
    const part = from > 0 ? { 'Content-Range': `bytes ${from}-${file.length - 1}/${file.length}` } : {};
    response.writeHead(from > 0 ? 206 : 200, {
      'Content-Type': typeOf(path) ?? TYPES[extname(path)] ?? 'application/octet-stream',
      'Content-Length': file.length - from,
      'Last-Modified': new Date(0).toUTCString(),
      ...part,
    });
    const cut = cuts.get(path);
    cuts.delete(path);
    if (cut === undefined) return response.end(file.subarray(from));
    response.write(file.subarray(from, from + cut), () => setTimeout(() => request.socket.destroy(), 200));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${FOLDER}`,
    port,
    asked,
    replace: (path, content) => void replaced.set(path, Buffer.from(content)),
    restore: () => replaced.clear(),
    cutNext: (path, bytes) => void cuts.set(path, bytes),
    built,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
