import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Recordings of a real person's motion: trials 01_01 and 01_03 of the Carnegie Mellon University motion capture database (mocap.cs.cmu.edu, 120 Hz), as BVH
 * by B. Hahne. Licence, from the file beside them: "free for use in research and commercial projects worldwide". They come with Debian's
 * package assimp-testmodels and are no part of the project. "The data used in this project was obtained from mocap.cs.cmu.edu. The database was created
 * with funding from NSF EIA-0196217."
 */
const PACKAGE = 'assimp-testmodels';
const FOLDER = 'usr/share/assimp/models/BVH';
const INSTALLED = `/${FOLDER}`;
const CACHE = fileURLToPath(new URL('../../node_modules/.cache/evenside/people', import.meta.url));
const FETCH_TIMEOUT_MS = 30_000;

/** What to do when there are none, and what is not checked then. */
export const WITHOUT_RECORDINGS = `Angles of a real person's motion are not checked: install Debian's package ${PACKAGE} (or make "apt-get download ${PACKAGE}" work here) and run again.`;

/** The folder with the recordings: where Debian installs it, else from the package, fetched once; null where neither is to be had. */
export function peopleRecordings(): string | null {
  const cached = join(CACHE, FOLDER);
  const there = [INSTALLED, cached].find(
    (folder) => existsSync(join(folder, '01_01.bvh')) && existsSync(join(folder, '01_03.bvh')),
  );
  if (there) return there;
  mkdirSync(join(CACHE, '..'), { recursive: true });
  const aside = mkdtempSync(`${CACHE}-`);
  try {
    const run = (command: string, args: readonly string[]) =>
      execFileSync(command, args, { cwd: aside, stdio: 'ignore', timeout: FETCH_TIMEOUT_MS });
    run('apt-get', ['download', PACKAGE]);
    const file = readdirSync(aside).find((name) => name.endsWith('.deb'));
    if (!file) return null;
    run('dpkg-deb', ['--extract', file, 'all']);
    mkdirSync(join(cached, '..'), { recursive: true });
    rmSync(cached, { recursive: true, force: true });
    renameSync(join(aside, 'all', FOLDER), cached);
    return cached;
  } catch {
    // No Debian, no network, no list of packages: the caller says that it did not check.
    return null;
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
