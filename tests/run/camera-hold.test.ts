import { expect, test } from 'vitest';
import { cameraHold } from '../../src/run/camera-hold.ts';
import { fakeBrowser } from '../record/fake-browser.ts';

const settled = () => new Promise((resolve) => setTimeout(resolve));

test('a camera that a set of another page watches is refused until that set is over; another camera is not', async () => {
  const browser = fakeBrowser();
  const [one, two] = [cameraHold(browser.page().locks), cameraHold(browser.page().locks)];
  const letGo = await one.hold(null);
  expect(letGo).not.toBeNull();
  expect(await two.hold(null)).toBeNull();
  expect(await two.hold('the other')).not.toBeNull();
  letGo?.();
  await settled();
  expect(await two.hold(null)).not.toBeNull();
});

test('a page’s own next set may begin before its last one is over, and the camera is free after both', async () => {
  const browser = fakeBrowser();
  const [one, two] = [cameraHold(browser.page().locks), cameraHold(browser.page().locks)];
  const [first, second] = [await one.hold(null), await one.hold(null)];
  first?.();
  first?.();
  await settled();
  expect(await two.hold(null)).toBeNull();
  second?.();
  await settled();
  expect(await two.hold(null)).not.toBeNull();
});

test('a page that crashed holds no camera', async () => {
  const browser = fakeBrowser();
  const crashing = browser.page();
  expect(await cameraHold(crashing.locks).hold(null)).not.toBeNull();
  crashing.crash();
  expect(await cameraHold(browser.page().locks).hold(null)).not.toBeNull();
});

test('without Web Locks, or where they are refused, no camera is', async () => {
  expect(await cameraHold(null).hold(null)).not.toBeNull();
  const refused = () => Promise.reject(new DOMException('The operation is insecure.', 'SecurityError'));
  expect(await cameraHold({ request: refused } as Pick<LockManager, 'request'>).hold(null)).not.toBeNull();
});
