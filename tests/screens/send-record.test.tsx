// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { readRecord } from '../../src/record/file/read-record.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import { ok, type Result } from '../../src/result.ts';
import { recordServices } from '../../src/screens/adapter/records.ts';
import type { RecordServices, WrittenRecord } from '../../src/screens/record/record-services.ts';
import type { Problem } from '../../src/screens/services.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { recordOf } from '../record/file/written-record.ts';
import { header, idOf, momentOf, rep, result } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
});

/** The records of a store with so many sets, as the screens ask for them. */
async function recordsWith(sets: number): Promise<RecordServices> {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  const reps = [rep(1)];
  const record = await recordOf(
    Array.from({ length: sets }, (_, n) => ({
      ...header({ id: idOf(n + 1), startedAt: momentOf(n) }),
      state: 'finished' as const,
      reps,
      result: result(reps),
      edits: [],
    })),
    [],
  );
  wentWell(await (await store.records()).taken({ kind: 'here', person: SELF }, record));
  return recordServices(Promise.resolve(ok(store)), SELF);
}

const NOBODY = { name: null, affectedSide: null } as const;

describe('writing a record', () => {
  test('tells how much of a large one is done, more each time and never all of it before the file is there', async () => {
    const records = await recordsWith(350);
    const shares: number[] = [];
    const written = wentWell(await records.write(NOBODY, null, (share) => shares.push(share)));
    expect(shares).toEqual([100 / 450, 200 / 450, 300 / 450, 350 / 450]);
    const back = wentWell(await readRecord(new Uint8Array(await written.file.arrayBuffer()), null, crypto));
    expect([written.sets, back.setIds.length]).toEqual([350, 350]);
  });

  test('tells nothing of one that is over at once', async () => {
    const records = await recordsWith(100);
    const shares: number[] = [];
    expect(wentWell(await records.write(NOBODY, null, (share) => shares.push(share))).sets).toBe(100);
    expect(shares).toEqual([]);
  });
});

describe('the screen that saves a record', () => {
  /** The screen over records whose writing the test drives. */
  async function saving() {
    const driven = {
      tell: (_share: number): void => undefined,
      finish: (_written: Result<WrittenRecord, Problem>): void => undefined,
    };
    const write: RecordServices['write'] = (_who, _passphrase, onProgress = () => undefined) => {
      driven.tell = onProgress;
      return new Promise((resolve) => {
        driven.finish = resolve;
      });
    };
    shownAt('#/send', fakeServices([], { records: async () => ({ write }) as RecordServices }).services);
    fireEvent.click(await screen.findByRole('radio', { name: /^Whoever has the file/ }));
    await press('Save the file');
    await screen.findByRole('button', { name: 'Working …' });
    return driven;
  }

  test('shows how far it has come, and nothing of it once the file is there', async () => {
    vi.stubGlobal('URL', Object.assign(URL, { createObjectURL: () => 'blob:a-record', revokeObjectURL: () => undefined }));
    const driven = await saving();
    expect(screen.queryByRole('progressbar')).toBeNull();
    driven.tell(0.25);
    const bar = await screen.findByRole<HTMLProgressElement>('progressbar', { name: 'Working …' });
    expect([bar.value, bar.max]).toEqual([0.25, 1]);
    driven.tell(0.75);
    await waitFor(() => expect(bar.value).toBe(0.75));
    driven.finish(ok({ file: new Blob(['a record']), sets: 350, entries: 0, damaged: 0 }));
    await screen.findByText('In it: 350 measured sets, 0 entries.');
    expect(screen.queryByRole('progressbar')).toBeNull();
  });

  test('can be pressed again after writing broke off', async () => {
    const records = { write: () => Promise.reject(new Error('the packer is gone')) } as unknown as RecordServices;
    shownAt('#/send', fakeServices([], { records: async () => records }).services);
    fireEvent.click(await screen.findByRole('radio', { name: /^Whoever has the file/ }));
    await press('Save the file');
    await screen.findByRole('alert');
    await waitFor(() => expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Save the file' }).disabled).toBe(false));
  });
});
