import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { fail, ok, type Result } from '../src/result.ts';

/** Why there is no browser; `words` say what is wrong and what to do. */
export type ChromiumError =
  | { readonly kind: 'not-there'; readonly words: string }
  | { readonly kind: 'not-installed'; readonly words: string }
  | { readonly kind: 'install-failed'; readonly words: string };

/** Names the browser to use, as the path of its executable. */
const VARIABLE = 'EVENSIDE_CHROMIUM';
const APT = '/usr/bin/apt-get';

const LINUX = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/opt/google/chrome/chrome',
  '/snap/bin/chromium',
];
const MAC = ['Google Chrome', 'Chromium', 'Microsoft Edge'].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);

function windows(): readonly string[] {
  const { ProgramFiles, LOCALAPPDATA } = process.env;
  const folders = [ProgramFiles, process.env['ProgramFiles(x86)'], LOCALAPPDATA].filter((folder) => folder !== undefined);
  const programs = [
    'Google/Chrome/Application/chrome.exe',
    'Chromium/Application/chrome.exe',
    'Microsoft/Edge/Application/msedge.exe',
  ];
  return folders.flatMap((folder) => programs.map((program) => join(folder, program)));
}

function usualPlaces(): readonly string[] {
  if (process.platform === 'win32') return windows();
  return process.platform === 'darwin' ? MAC : LINUX;
}

const isRoot = (): boolean => process.getuid?.() === 0;

function installFromDebian(log: (line: string) => void): Result<string, ChromiumError> {
  log('No Chrome or Chromium here: installing the chromium package ...');
  for (const args of [['update'], ['install', '-y', '--no-install-recommends', 'chromium', 'fonts-liberation']]) {
    const { status, stderr } = spawnSync(APT, args, {
      encoding: 'utf8',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    if (status === 0) continue;
    const reason = stderr.trim().split('\n').at(-1) ?? '';
    const words = `The chromium package can't be installed (apt-get ${args[0]}: ${reason}): install Chrome or Chromium by hand, or name one in ${VARIABLE}.`;
    return fail({ kind: 'install-failed', words });
  }
  const installed = LINUX.find((path) => existsSync(path));
  if (installed) return ok(installed);
  return fail({
    kind: 'install-failed',
    words: `The chromium package brought no browser to any usual place: install Chrome or Chromium by hand, or name one in ${VARIABLE}.`,
  });
}

/**
 * The path of a Chrome or Chromium: the one the environment names, one in a usual place, or, as root on a Debian-like system, one
 * installed now from the distribution's own packages. Nothing is fetched from anywhere else.
 */
export function findChromium(log: (line: string) => void): Result<string, ChromiumError> {
  const named = process.env[VARIABLE];
  if (named) {
    if (existsSync(named)) return ok(named);
    return fail({ kind: 'not-there', words: `${VARIABLE} names ${named}, but there is no such file: correct or unset it.` });
  }
  const usual = usualPlaces().find((path) => existsSync(path));
  if (usual) return ok(usual);
  if (isRoot() && existsSync(APT)) return installFromDebian(log);
  return fail({
    kind: 'not-installed',
    words: `No Chrome or Chromium was found: install one (Debian: apt-get install chromium), or name its executable in ${VARIABLE}.`,
  });
}

/**
 * On top of playwright's own quieting: the browser knows no other host than this machine, so that neither it nor a page reaches one.
 * WebGL 2, which the pose model needs even when it computes on the CPU, comes from the software renderer where there is no graphics
 * card. Naming that renderer for the whole browser (--use-angle=swiftshader) makes a frame of the model take half as long again.
 */
const QUIET = [
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
  '--disable-quic',
  '--disable-domain-reliability',
  '--no-pings',
  '--enable-unsafe-swiftshader',
];

/** Starts a headless browser. The sandbox stays on, except for root, with whom Chromium refuses it. */
export function launchChromium(executable: string, args: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: executable, chromiumSandbox: !isRoot(), args: [...QUIET, ...args] });
}
