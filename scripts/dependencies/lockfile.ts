/** One package of a lockfile (npm, version 3), as far as it is looked at. */
export interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  /** The address it came from, when the lockfile keeps it. */
  readonly resolved?: string;
  /** Hash over what is installed. */
  readonly integrity?: string;
  /** Needed for building and testing only: nothing of it reaches the built site. */
  readonly dev?: boolean;
  readonly link?: boolean;
  /** It lies inside the package that brings it, whose hash covers it. */
  readonly inBundle?: boolean;
}

export interface Lockfile {
  readonly lockfileVersion: number;
  /** By their folder; the project itself is ''. */
  readonly packages: Readonly<Record<string, LockedPackage>>;
}

/** What is wrong with a package; one sentence each in `words`. */
export interface DependencyFault {
  readonly kind: 'no-hash' | 'not-from-registry' | 'licence';
  readonly words: string;
}

/**
 * Licences under which the built site may be passed on as it is (see NOTICE.md). MPL-2.0 is a copyleft for each file: fine unmodified, and its parts are named there.
 */
const SITE_LICENCES: readonly string[] = [
  'MIT',
  'MIT-0',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'Unlicense',
  'MPL-2.0',
  // @visx/vendor: its own files MIT, the d3 parts ISC.
  'MIT and ISC',
];
/** What builds and tests the site is not passed on with it; these, too, let anybody use it. */
const TOOL_LICENCES: readonly string[] = [...SITE_LICENCES, 'BlueOak-1.0.0', 'CC0-1.0', 'CC-BY-4.0', 'Python-2.0'];

/** Tools that name no licence of a list but bring a text of their own, read: what they ask for touches those who pass them on, which we do not. */
const READ: readonly string[] = [
  // BSD terms, with the wish to be cited in research.
  'fhirpath',
  // BSD-like terms of the same makers, beside those of the unit table.
  '@lhncbc/ucum-lhc',
];

const REGISTRY = 'https://registry.npmjs.org/';

/** Whether one of the licences between which an SPDX expression gives the choice is allowed. */
export const licenceAllowed = (expression: string, allowed: readonly string[]): boolean =>
  allowed.includes(expression) ||
  expression
    .replace(/^\((.*)\)$/, '$1')
    .split(' OR ')
    .some((licence) => allowed.includes(licence.trim()));

/** What in a lockfile is not as it should be, package by package. */
export function lockfileFaults({ packages }: Lockfile): readonly DependencyFault[] {
  return Object.entries(packages).flatMap(
    ([folder, { license, resolved, integrity, dev, link, inBundle, version }]): DependencyFault[] => {
      if (folder === '' || link) return [];
      const called = folder.replace(/^.*node_modules\//, '');
      const name = `${called} ${version ?? ''}`.trim();
      const faults: DependencyFault[] = [];
      if (!integrity && !inBundle) {
        faults.push({ kind: 'no-hash', words: `${name} has no hash in package-lock.json: install it anew from the registry.` });
      }
      if (resolved !== undefined && !resolved.startsWith(REGISTRY)) {
        faults.push({
          kind: 'not-from-registry',
          words: `${name} does not come from the npm registry: take its registry version.`,
        });
      }
      if (!licenceAllowed(license ?? '', dev ? TOOL_LICENCES : SITE_LICENCES) && !(dev && READ.includes(called))) {
        const words = `${name} is under "${license ?? 'no licence'}", which is not on the list in scripts/dependencies/lockfile.ts: read it, then add it there or take another package.`;
        faults.push({ kind: 'licence', words });
      }
      return faults;
    },
  );
}
