import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..', '..');

const start = (...args: readonly string[]) =>
  spawnSync(process.execPath, [join(ROOT, 'node_modules/tsx/dist/cli.mjs'), join(ROOT, 'scripts/start.ts'), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
  });

test.each([['abc'], ['0'], ['65536'], ['-1'], ['4310.5']])('npm start refuses the port %s in one sentence', (port) => {
  const { status, stdout, stderr } = start(`--port=${port}`);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toBe(`The port must be a whole number from 1 to 65535, not "${port}". Use it as: npm start [-- --port N]\n`);
});

test('npm start refuses an option it does not know in one line', () => {
  const { status, stderr } = start('--prot', '4310');
  expect(status).toBe(2);
  expect(stderr).toBe("Unknown option '--prot'. Use it as: npm start [-- --port N]\n");
});
