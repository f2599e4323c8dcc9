import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';

const site = siteForTests();

test('no text becomes markup or code in the page, and no script is started but those of the site', async () => {
  const { page } = await site.open();
  await page.getByRole('heading', { level: 1 }).waitFor();
  const tried = await page.evaluate(() => {
    const within = (act: () => unknown): string => {
      try {
        act();
        return 'done';
      } catch (cause) {
        return cause instanceof Error ? cause.name : 'refused';
      }
    };
    const element = document.createElement('div');
    const script = document.createElement('script');
    const app = document.querySelector<HTMLScriptElement>('script[src*="assets/app"]');
    return {
      markup: within(() => {
        element.innerHTML = '<b>no</b>';
      }),
      nothing: within(() => {
        element.innerHTML = '';
      }),
      scriptText: within(() => {
        script.text = 'document.title = "no"';
      }),
      scriptAddress: within(() => {
        script.src = app?.src ?? '';
      }),
      worker: within(() => new Worker(app?.src ?? '')),
      policy: within(() =>
        (
          window as unknown as { trustedTypes: { createPolicy: (name: string, rules: object) => unknown } }
        ).trustedTypes.createPolicy('another', { createHTML: (text: string) => text }),
      ),
    };
  });
  expect(tried).toEqual({
    markup: 'TypeError',
    nothing: 'done',
    scriptText: 'TypeError',
    scriptAddress: 'TypeError',
    worker: 'TypeError',
    policy: 'TypeError',
  });
});
