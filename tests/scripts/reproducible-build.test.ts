/** The same sources give the same site, byte for byte, so that anybody can check what is served: see docs/hosting.md. */
import { execFile, execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureSite } from '../../scripts/build-site.ts';
import { siteFiles, siteHash } from '../../scripts/site-hash.ts';

const ROOT = join(import.meta.dirname, '..', '..');
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evenside-built-again-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test('built again, in another time zone and language, for another user and into another folder, not one byte differs', async () => {
  const built = await ensureSite(ROOT, () => undefined);
  expect(built.ok).toBe(true);
  // Source maps tell where sources lie, seen from the site: as deep as the first one.
  const out = join(ROOT, `dist-again-${process.pid}.local`);
  const vite = join(ROOT, 'node_modules', 'vite', 'bin', 'vite.js');
  const elsewhere = {
    TZ: 'Pacific/Kiritimati',
    LANG: 'tr_TR.UTF-8',
    LC_ALL: 'tr_TR.UTF-8',
    HOME: folder,
    NODE_ENV: 'production',
  };
  const env = { ...process.env, ...elsewhere, VITEST: undefined };
  await promisify(execFile)(process.execPath, [vite, 'build', '--outDir', out, '--logLevel', 'error'], { cwd: ROOT, env });
  const again = await siteFiles(out).finally(() => rm(out, { recursive: true, force: true }));
  expect(again.size).toBeGreaterThan(100);
  expect([...again]).toEqual([...(await siteFiles(join(ROOT, 'dist')))]);
});

test('the hash of the whole is what sha256sum makes of the lines that sha256sum writes', async () => {
  const site = join(folder, 'small');
  await mkdir(join(site, 'assets'), { recursive: true });
  await Promise.all([
    writeFile(join(site, 'index.html'), '<p>one</p>'),
    writeFile(join(site, 'assets', 'a.js'), 'two'),
    writeFile(join(site, '.built-from'), 'left out'),
  ]);
  const command = "find . -type f -not -name '.*' -printf '%P\\n' | LC_ALL=C sort | xargs sha256sum | sha256sum";
  const expected = execFileSync('sh', ['-c', command], { cwd: site, encoding: 'utf8' });
  expect(siteHash(await siteFiles(site))).toBe(expected.slice(0, 64));
});
