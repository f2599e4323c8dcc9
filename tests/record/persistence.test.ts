import { expect, test } from 'vitest';
import { askToKeepStorage } from '../../src/record/persistence.ts';

const storage = (already: boolean, answer: boolean) => {
  let asked = 0;
  const persist = async () => {
    asked += 1;
    return answer;
  };
  return { persisted: async () => already, persist, asked: () => asked };
};

test('a browser that has promised already is not asked again', async () => {
  const kept = storage(true, false);
  expect(await askToKeepStorage(kept)).toBe('kept');
  expect(kept.asked()).toBe(0);
});

test('the answer is passed on; where nobody can be asked it is not known', async () => {
  expect(await askToKeepStorage(storage(false, true))).toBe('kept');
  expect(await askToKeepStorage(storage(false, false))).toBe('not-kept');
  expect(await askToKeepStorage({ ...storage(false, false), persist: () => Promise.reject(new TypeError('not here')) })).toBe(
    'unknown',
  );
  expect(await askToKeepStorage(undefined)).toBe('unknown');
});
