/** Whatever holds of the store holds with its lock on: the same tests, each page turning the lock on or unlocking it first. */
import { describe, vi } from 'vitest';
import { openedWithLock } from './opened-with-lock.ts';

vi.mock(import('../../../src/record/open-store.ts'), async (original) => {
  const real = await original();
  return { ...real, openSetStore: (platform, versions) => openedWithLock(real.openLockableStore, platform, versions) };
});

describe('with the lock on', async () => {
  await import('../set-store.test.ts');
  await import('../diary.test.ts');
  await import('../people.test.ts');
  await import('../store-failures.test.ts');
  await import('../migrations.test.ts');
  await import('../own-exercise.test.ts');
  await import('../export-file.test.ts');
  await import('../file/take-in.test.ts');
});
