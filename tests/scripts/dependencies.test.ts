import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { advisoriesIn } from '../../scripts/dependencies/advisories.ts';
import { type Lockfile, licenceAllowed, lockfileFaults } from '../../scripts/dependencies/lockfile.ts';

const locked = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')) as Lockfile;
const PACKAGE = { version: '1.0.0', license: 'MIT', integrity: 'sha512-AAAA' };
const kindsOf = (change: object) =>
  lockfileFaults({ lockfileVersion: 3, packages: { '': {}, 'node_modules/thing': { ...PACKAGE, ...change } } }).map(
    ({ kind }) => kind,
  );

describe('the lockfile', () => {
  test('of this project names hundreds of packages and has no fault', () => {
    expect(Object.keys(locked.packages).length).toBeGreaterThan(300);
    expect(lockfileFaults(locked)).toEqual([]);
  });

  test.each([
    ['a package without a hash', { integrity: undefined }, ['no-hash']],
    ['one from an address of its own', { resolved: 'git+ssh://git@example.invalid/thing.git' }, ['not-from-registry']],
    ['one from the registry', { resolved: 'https://registry.npmjs.org/thing/-/thing-1.0.0.tgz' }, []],
    ['one without a licence', { license: undefined }, ['licence']],
    ['a strong copyleft', { license: 'GPL-3.0-only' }, ['licence']],
    ['a choice of licences of which one will do', { license: '(GPL-3.0-only OR MIT)' }, []],
    ['a tool under a licence for tools', { license: 'BlueOak-1.0.0', dev: true }, []],
    ['one inside a package that has a hash', { integrity: undefined, inBundle: true }, []],
    ['the same in the site', { license: 'BlueOak-1.0.0' }, ['licence']],
  ])('%s', (_, change, kinds) => {
    expect(kindsOf(change)).toEqual(kinds);
  });

  test('two licences that both hold are no choice between them', () => {
    expect(licenceAllowed('MIT AND GPL-3.0-only', ['MIT'])).toBe(false);
  });
});

describe('known vulnerabilities', () => {
  const answer = (severity: string) =>
    JSON.stringify({
      auditReportVersion: 2,
      vulnerabilities: { thing: { name: 'thing', severity, range: '<2', isDirect: false } },
    });

  test('a high one stops, a lower one is told', () => {
    expect(advisoriesIn(answer('high'))).toEqual({
      kind: 'answered',
      stops: ['thing <2: high, through another package'],
      told: [],
    });
    expect(advisoriesIn(answer('moderate'))).toMatchObject({ stops: [], told: [expect.stringContaining('moderate')] });
    expect(advisoriesIn('{"vulnerabilities":{}}')).toEqual({ kind: 'answered', stops: [], told: [] });
  });

  test.each([
    ['', 'npm audit printed no answer'],
    ['{"message":"405 Method Not Allowed","error":{}}', 'the registry refused the question'],
    ['{"vulnerabilities":{"thing":{"severity":"grave"}}}', 'npm audit printed something else'],
  ])('%s is no answer, and is not taken for a good one', (printed, why) => {
    expect(advisoriesIn(printed)).toEqual({ kind: 'not-asked', why });
  });
});
