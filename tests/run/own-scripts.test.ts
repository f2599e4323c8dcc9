import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

type Rules = Readonly<Record<'createHTML' | 'createScript' | 'createScriptURL', (text: string) => string | null>>;

const ROOT = 'https://clinic.example/evenside/';
const policies = new Map<string, Rules>();

const { isOwnScript } = await import('../../src/run/own-scripts.ts');

describe('a script that is started by its address', () => {
  test.each([
    'sw.js',
    'assets/pose-worker-CNnKn5Wi.js',
    'assets/sticker-worker-CPN7JFn_.js',
    'wasm/vision_wasm_module_internal.js',
    `${ROOT}sw.js`,
  ])('is let through where it is one of the site: %s', (address) => {
    expect(isOwnScript(address, ROOT)).toBe(true);
  });

  test('is let through where a part of the program starts it as its worker', () => {
    const src = join(import.meta.dirname, '..', '..', 'src');
    const started = readdirSync(src, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .flatMap((file) =>
        [...readFileSync(join(src, file), 'utf8').matchAll(/new Worker\(new URL\('\.\/([\w-]+)\.ts'/g)].map(([, name]) => name),
      );
    expect(started.length).toBeGreaterThanOrEqual(4);
    expect(started.filter((name) => !isOwnScript(`assets/${name}-CNnKn5Wi.js`, ROOT))).toEqual([]);
  });

  test.each([
    'https://elsewhere.example/sw.js',
    '//elsewhere.example/evenside/sw.js',
    '/sw.js',
    '../sw.js',
    'recordings/sw.js',
    'sw.js?next=1',
    'sw.js#x',
    'assets/app-w94Kevs5.js',
    'assets/../recordings/pose-worker-x.js',
    'assets/pose-worker-x.js/../../models/full.task',
    `data:text/javascript,postMessage(1)`,
    'blob:https://clinic.example/3f0c',
    'javascript:alert(1)',
    'http://clinic.example/evenside/sw.js',
    '',
  ])('is refused otherwise: %s', (address) => {
    expect(isOwnScript(address, ROOT)).toBe(false);
  });

  test('no other text is let through', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.domain().map((host) => `https://${host}/sw.js`),
          fc.string(),
        ),
        (text) => !isOwnScript(text, ROOT),
      ),
    );
  });
});

describe('the policy of the page', () => {
  beforeEach(async () => {
    policies.clear();
    vi.stubGlobal('trustedTypes', { createPolicy: (name: string, rules: Rules) => policies.set(name, rules) });
    vi.resetModules();
    await import('../../src/run/own-scripts.ts');
  });
  afterEach(() => vi.unstubAllGlobals());

  test('is the only one, and makes no markup and no code of text', () => {
    expect([...policies.keys()]).toEqual(['default']);
    const rules = policies.get('default');
    expect(rules?.createHTML('')).toBe('');
    expect(rules?.createHTML('<img src=x onerror=alert(1)>')).toBeNull();
    expect(rules?.createScript('alert(1)')).toBeNull();
    expect(rules?.createScriptURL('https://elsewhere.example/x.js')).toBeNull();
  });
});
