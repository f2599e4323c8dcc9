/** A package that knows a remote host brings its address along: every address in the built site is known, or this fails. */
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { ensureSite } from '../../scripts/build-site.ts';
import { type AllowedAddress, strangeAddresses } from './site-addresses.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const DIST = join(ROOT, 'dist');
const LOOKED_AT = /\.(js|mjs|wasm|html|css|svg|webmanifest)$/;

const ALLOWED: readonly AllowedAddress[] = [
  { begins: 'http://www.w3.org/2000/svg', why: 'name of a vocabulary' },
  { begins: 'http://www.w3.org/1998/Math/MathML', why: 'name of a vocabulary' },
  { begins: 'http://www.w3.org/1999/xhtml', why: 'name of a vocabulary' },
  { begins: 'http://www.w3.org/1999/xlink', why: 'name of a vocabulary' },
  { begins: 'http://www.w3.org/XML/1998/namespace', why: 'name of a vocabulary' },
  { begins: 'http://terminology.hl7.org/CodeSystem/', why: 'FHIR: name of a code system' },
  { begins: 'http://unitsofmeasure.org', why: 'FHIR: name of the units UCUM' },
  { begins: 'https://evenside.invalid/fhir', why: 'FHIR: names of our own codes, at no address' },
  { begins: 'https://react.dev/errors/', why: 'React: stands in the text of its errors' },
  { begins: 'http://bit.ly/2kdckMn', why: 'Dexie: stands in the text of an error' },
  { begins: 'https://tinyurl.com/y2uuvskb', why: 'Dexie: stands in the text of an error' },
  { begins: 'https://bit.ly/wb-precache', why: 'Workbox: stands in the text of a warning' },
  ...[
    'http://en.wikipedia.org/wiki/UTF-8#Description',
    'http://kripken.github.io/emscripten-site/docs/',
    'http://pubs.opengroup.org/onlinepubs/',
    'http://server.com:4324:12',
    'http://unicode.org/faq/',
    'http://www.w3.org/TR/2013/WD-cssom-view-20131217/',
    'https://bugzil.la/1328882',
    'https://developer.mozilla.org/en-US/docs/Web/JavaScript/',
    'https://github.com/emscripten-core/emscripten/',
    'https://github.com/github/fetch/pull/92',
    'https://github.com/google/closure-compiler/',
    'https://github.com/libsdl-org/SDL/pull/6304',
    'https://github.com/nodejs/help/issues/2136',
    'https://tools.ietf.org/html/rfc3629',
    'https://webkit.org/b/222758',
    'https://www.ietf.org/rfc/rfc2279.txt',
    'https://www.khronos.org/registry/webgl/',
  ].map((begins) => ({ begins, why: 'Emscripten: comments in the loader of the pose model' })),
  { begins: 'http://go/lsc_proto3_utf8', why: 'protobuf: text of a message' },
  { begins: 'http://goto/weakfields', why: 'protobuf: text of a message' },
  { begins: 'https://github.com/opencv/opencv/issues/16739', why: 'OpenCV: text of a message' },
  { begins: 'https://www.tensorflow.org/lite/guide/', why: 'TensorFlow Lite: text of a message' },
];

let files: ReadonlyMap<string, string>;
beforeAll(async () => {
  const built = await ensureSite(ROOT, () => undefined);
  if (!built.ok) throw new Error(built.error.words);
  const entries = await readdir(DIST, { recursive: true, withFileTypes: true });
  const paths = entries
    .filter((entry) => entry.isFile() && LOOKED_AT.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
  // Every byte a character, so that nothing in the WebAssembly is skipped.
  const read = async (path: string) => [relative(DIST, path).split(sep).join('/'), await readFile(path, 'latin1')] as const;
  files = new Map(await Promise.all(paths.map(read)));
});

test('the whole site is looked at: scripts, the service worker, the pose model’s loader and its WebAssembly', () => {
  expect([...files.keys()]).toEqual(
    expect.arrayContaining([
      'index.html',
      'sw.js',
      'wasm/vision_wasm_module_internal.js',
      'wasm/vision_wasm_module_internal.wasm',
    ]),
  );
  expect(files.size).toBeGreaterThan(100);
});

test('no address of another host stands in the built site but those that are known and why', () => {
  expect(strangeAddresses(files, ALLOWED)).toEqual([]);
});

test('every allowed address is still there', () => {
  const all = [...files.values()].join('\n');
  expect(ALLOWED.filter(({ begins }) => !all.includes(begins))).toEqual([]);
});

test.each([
  ['assets/app.js', 'fetch("https://metrics.invalid/v1/log",{method:"POST"})'],
  ['assets/worker.js', 'new WebSocket(`wss://live.invalid:8443/socket`)'],
  ['wasm/model.wasm', '\0asm\u0001\0http://192.0.2.7/upload\0'],
  ['assets/near.js', 'x="https://react.dev.evil.invalid/errors/"'],
])('an address that a package brought along to %s is found', (name, content) => {
  const seeded = new Map([...files, [name, content]]);
  const found = strangeAddresses(seeded, ALLOWED);
  expect(found).toHaveLength(1);
  expect(found[0]).toMatch(new RegExp(`^${name}: (https?|wss)://`));
});
