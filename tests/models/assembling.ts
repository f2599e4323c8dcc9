import { execFile } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export const ROOT = resolve(import.meta.dirname, '../..');
export const PARTS = join(ROOT, 'node_modules/@mediapipe/pose');
export const MANIFEST = join(ROOT, 'models/manifest.json');
export const LITE_PART = 'pose_landmark_lite.tflite';

/** ms; a process reads and hashes up to 40 MB, which on a busy machine takes longer than vitest's five seconds. */
export const SLOW = { testTimeout: 60_000, hookTimeout: 60_000 } as const;

/** Runs the script as a process of its own, in the repository. */
export const assemble = (args: readonly string[], env: Record<string, string> = {}) =>
  new Promise<{ readonly code: number | string; readonly stdout: string; readonly stderr: string }>((done) => {
    const script = join(ROOT, 'models/assemble.mjs');
    execFile(process.execPath, [script, ...args], { cwd: ROOT, env: { ...process.env, ...env } }, (error, stdout, stderr) => {
      done({ code: error === null ? 0 : (error.code ?? 'killed'), stdout, stderr });
    });
  });

export interface Scratch {
  readonly path: (name: string) => string;
  readonly folder: (name: string) => Promise<string>;
  /** A parts folder whose files are the installed ones, but for `file`, which is the test's own copy. */
  readonly partsWithOwn: (name: string, file: string) => Promise<{ readonly parts: string; readonly own: string }>;
  readonly remove: () => Promise<void>;
}

export const makeScratch = async (): Promise<Scratch> => {
  const root = await mkdtemp(join(tmpdir(), 'evenside-models-'));
  const path = (name: string) => join(root, name);
  const folder = async (name: string) => {
    await mkdir(path(name));
    return path(name);
  };
  const partsWithOwn = async (name: string, file: string) => {
    const parts = await folder(name);
    for (const part of await readdir(PARTS)) {
      if (part !== file) await symlink(join(PARTS, part), join(parts, part));
    }
    await copyFile(join(PARTS, file), join(parts, file));
    return { parts, own: join(parts, file) };
  };
  return { path, folder, partsWithOwn, remove: () => rm(root, { recursive: true, force: true }) };
};

export const flipByte = async (path: string, at: number): Promise<void> => {
  const data = await readFile(path);
  data[at] = (data[at] ?? 0) ^ 1;
  await writeFile(path, data);
};

interface Listed {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** The committed manifest, as far as the tests read it. */
export const manifest = async (): Promise<{
  readonly bundles: readonly (Listed & { readonly parts: readonly (Listed & { readonly entry: string })[] })[];
}> => JSON.parse(await readFile(MANIFEST, 'utf8'));
