import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { build } from 'vite';

const ENTRY = join(import.meta.dirname, 'trial-page.ts');

async function script(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    build: {
      write: false,
      minify: false,
      target: 'esnext',
      rolldownOptions: { input: ENTRY, output: { codeSplitting: false, format: 'es' } },
      modulePreload: false,
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  const chunk = first && 'output' in first ? first.output[0] : null;
  if (!chunk) throw new Error('script requires a build with one chunk, got none');
  return chunk.code;
}

/** The page of `trial-page.ts`, served on loopback by an address that stays the same: the database belongs to it. */
export async function trialSite(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const code = await script();
  const server = createServer(({ url }, response) => {
    const isScript = url === '/trial.js';
    response.setHeader('Content-Type', isScript ? 'text/javascript' : 'text/html');
    response.end(
      isScript ? code : '<!doctype html><title>trial</title><body></body><script type="module" src="/trial.js"></script>',
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
