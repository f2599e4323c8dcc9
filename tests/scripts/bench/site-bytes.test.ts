import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { siteBytes } from '../../../scripts/bench/site-bytes.ts';

const folders: string[] = [];
afterEach(() => Promise.all(folders.splice(0).map((folder) => rm(folder, { recursive: true }))));

async function site(files: Readonly<Record<string, string>>): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'evenside-site-'));
  folders.push(folder);
  for (const [path, content] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), content);
  }
  return folder;
}

const paths = (files: readonly { readonly path: string }[]) => files.map((file) => file.path).sort();

test('the first load is the page, what it links and what that imports, not what is imported later', async () => {
  const folder = await site({
    'index.html':
      '<link rel="stylesheet" href="./assets/a.css"><script type="module" crossorigin src="./assets/app.js"></script>',
    'assets/a.css': 'a{}',
    'assets/app.js': 'import{x}from"./shared.js";import"./side.js";const later=()=>import("./later.js");x(later);',
    'assets/shared.js': 'export{y}from"./deep.js";',
    'assets/side.js': 'import"./shared.js"',
    'assets/deep.js': '1',
    'assets/later.js': '2',
    'assets/app.js.map': '{}',
    'wasm/model.wasm': '3',
  });
  const { firstLoad, later } = await siteBytes(folder);
  const first = ['assets/a.css', 'assets/app.js', 'assets/deep.js', 'assets/shared.js', 'assets/side.js', 'index.html'];
  expect(paths(firstLoad)).toEqual(first);
  expect(paths(later)).toEqual(['assets/later.js', 'wasm/model.wasm']);
});

test('a page without a script is not taken for a small one', async () => {
  await expect(siteBytes(await site({ 'index.html': '<p>nothing</p>' }))).rejects.toThrow(/loads a script/);
});
