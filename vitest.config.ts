import { availableParallelism } from 'node:os';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

/** The real model runs on a slow machine's processor. Chosen: ten times what the slowest clip takes there. */
const BROWSER_TIMEOUT_MS = 300_000;

/** No test asserts a time: a busy machine must not fail one. Chosen: ten times what the slowest takes alone. */
const UNIT_TIMEOUT_MS = 60_000;

/** Clips watched at once, and files run side by side. Each clip keeps one core busy, and holds a pose model in memory. Chosen: all cores of a small machine. */
const AT_ONCE = Math.min(4, availableParallelism());

const IN_BROWSER = {
  environment: 'node',
  maxConcurrency: AT_ONCE,
  testTimeout: BROWSER_TIMEOUT_MS,
  hookTimeout: BROWSER_TIMEOUT_MS,
} as const;

const inBrowser = (name: string) => `tests/browser/${name}.test.ts`;

/** Screens, and clips from files, which are watched picture by picture at whatever speed. */
const SIDE_BY_SIDE = [
  'clips',
  'every-screen',
  'keyboard',
  'less-motion',
  'lock',
  'offline',
  'people',
  'plain-server',
  'plan-sheet',
  'record-file',
  'report',
  'review',
  'server',
  'server-screens',
  'sign-in',
  'storage-trouble',
  'stored',
  'trusted-types',
  'watched-requests',
].map(inBrowser);

/** What leaves half of a small machine idle: sets without the pose model, films watched as fast as they play. Any other file has the machine to itself: sets in front of a camera. */
const IN_PAIRS = ['desk-still', 'kill', 'kill-large-record', 'old-browsers', 'toe', 'toe-day'].map(inBrowser);

export default defineConfig({
  plugins: [react()],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          environment: 'node',
          setupFiles: ['tests/patience.ts'],
          // By itself a core would be left idle.
          maxWorkers: availableParallelism(),
          // A thread starts sooner than a process; each file still has one of its own.
          pool: 'threads',
          testTimeout: UNIT_TIMEOUT_MS,
          hookTimeout: UNIT_TIMEOUT_MS,
        },
      },
      {
        extends: true,
        test: {
          ...IN_BROWSER,
          name: 'browser-side-by-side',
          include: SIDE_BY_SIDE,
          maxWorkers: AT_ONCE,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          ...IN_BROWSER,
          name: 'browser-in-pairs',
          include: IN_PAIRS,
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
      {
        extends: true,
        test: {
          ...IN_BROWSER,
          name: 'browser-alone',
          include: ['tests/browser/**/*.test.ts'],
          exclude: [...SIDE_BY_SIDE, ...IN_PAIRS],
          // Sets in front of a camera would slow each other down.
          maxWorkers: 1,
          sequence: { groupOrder: 3 },
        },
      },
      {
        extends: true,
        test: {
          ...IN_BROWSER,
          name: 'every-clip',
          include: ['tests/browser/clips.test.ts'],
          env: { EVERY_CLIP: 'yes' },
        },
      },
    ],
  },
});
