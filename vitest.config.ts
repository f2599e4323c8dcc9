import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

/** The real model runs on a slow machine's processor. Chosen: ten times what the slowest clip takes there. */
const BROWSER_TIMEOUT_MS = 300_000;

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
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          // One Chromium at a time: several would slow each other down.
          fileParallelism: false,
          maxWorkers: 1,
          testTimeout: BROWSER_TIMEOUT_MS,
          hookTimeout: BROWSER_TIMEOUT_MS,
        },
      },
    ],
  },
});
