import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { SITE_HEADERS } from '../../scripts/headers.ts';
import { headersFile } from '../../scripts/headers-file.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';

let root: string;
let site: Site;

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'evenside-site-'));
  await mkdir(join(root, 'dist', 'models'), { recursive: true });
  await writeFile(join(root, 'package.json'), '{ "name": "outside" }');
  await writeFile(join(root, 'dist', 'index.html'), '<!doctype html><title>Site</title>');
  await writeFile(join(root, 'dist', 'sw.js'), 'x');
  await writeFile(join(root, 'dist', 'manifest.webmanifest'), '{}');
  await writeFile(join(root, 'dist', 'models', 'pose_lite.task'), 'abcdefgh');
  await writeFile(join(root, 'dist', 'loader.wasm'), 'x');
  await writeFile(join(root, 'dist', 'module.mjs'), 'x');
  const served = await serveSite(root, 0);
  if (!served.ok) throw new Error(JSON.stringify(served.error));
  site = served.value;
});
afterAll(async () => {
  await site.close();
  await rm(root, { recursive: true });
});

const get = (path: string, headers: Record<string, string> = {}) => fetch(new URL(path, site.url), { headers });

test.each(['', 'models/pose_lite.task', 'nowhere'])(
  'the answer for "%s" lets the page connect to its own origin only',
  async (path) => {
    const { headers } = await get(path);
    expect(headers.get('content-security-policy')).toMatch(/(^|; )connect-src 'self';/);
    expect(headers.get('content-security-policy')).not.toContain('unsafe-inline');
    expect(headers.get('permissions-policy')).toMatch(/camera=\(self\).*microphone=\(\)/);
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('access-control-allow-origin')).toBeNull();
    expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    const rules = headers.get('content-security-policy')?.split('; ') ?? [];
    for (const part of ['object', 'frame']) expect(rules).toContain(`${part}-src 'none'`);
    for (const rule of ['base-uri', 'form-action', 'frame-ancestors']) expect(rules).toContain(`${rule} 'none'`);
    for (const part of ['default', 'worker', 'manifest', 'font']) expect(rules).toContain(`${part}-src 'self'`);
    expect(rules).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(rules.join(' ')).not.toMatch(/https?:|wss?:|\*/);
    expect(headers.get('permissions-policy')).toMatch(/display-capture=\(self\)/);
  },
);

test.each(['', 'index.html', 'sw.js', 'manifest.webmanifest'])(
  'the browser asks each time whether "%s" has changed',
  async (path) => {
    expect((await get(path)).headers.get('cache-control')).toBe('no-cache');
  },
);

test('the file of headers for other hosts says the same as the answers', async () => {
  const lines = headersFile().split('\n');
  const { headers } = await get('');
  for (const name of Object.keys(SITE_HEADERS)) expect(lines).toContain(`  ${name}: ${headers.get(name)}`);
  expect(lines[0]).toBe('/*');
  expect(headersFile()).toContain('/sw.js\n  Cache-Control: no-cache\n');
});

test.each([
  ['', 'text/html'],
  ['models/pose_lite.task', 'application/octet-stream'],
  ['loader.wasm', 'application/wasm'],
  ['module.mjs', 'text/javascript'],
])('"%s" is served as %s', async (path, type) => {
  expect((await get(path)).headers.get('content-type')).toContain(type);
});

test('a part of a file can be asked for', async () => {
  const answer = await get('models/pose_lite.task', { range: 'bytes=2-4' });
  expect(answer.status).toBe(206);
  expect(await answer.text()).toBe('cde');
});

test('an address that is no file is not found, and nothing outside the site is served', async () => {
  expect((await get('nowhere')).status).toBe(404);
  const outside = await get('%2e%2e/package.json');
  expect(outside.status).toBe(404);
  expect(await outside.text()).not.toContain('outside');
});

test('the site is served on this machine only', () => {
  expect(new URL(site.url).hostname).toBe('127.0.0.1');
});

test('a taken port is told, not replaced', async () => {
  const second = await serveSite(root, site.port);
  expect(second).toEqual({ ok: false, error: { kind: 'port-taken', port: site.port } });
});
