import type { Page } from 'playwright-core';

/**
 * What moves by itself though the person asked for less motion: animations and transitions that last, and scrolling that glides. What leads a pace is drawn by the
 * program, and has a test of its own.
 * @returns one line for each fault
 */
export async function motionFaults(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const found = await page.evaluate(() => {
    const lasts = (durations: string) => durations.split(',').some((duration) => Number.parseFloat(duration) > 0);
    const named = (each: Element) => `${each.tagName.toLowerCase()}.${each.getAttribute('class') ?? ''}`;
    const faults = document
      .getAnimations()
      .filter(({ effect }) => effect?.getComputedTiming().activeDuration !== 0)
      .map(({ effect }) => `runs: ${effect instanceof KeyframeEffect && effect.target ? named(effect.target) : 'an animation'}`);
    for (const each of document.querySelectorAll('*')) {
      for (const part of [undefined, '::before', '::after']) {
        const { transitionDuration, animationName, animationDuration, scrollBehavior } = getComputedStyle(each, part);
        const moves = lasts(transitionDuration) || (animationName !== 'none' && lasts(animationDuration));
        if (moves) faults.push(`moves: ${named(each)}${part ?? ''}`);
        if (part === undefined && scrollBehavior !== 'auto') faults.push(`scrolls smoothly: ${named(each)}`);
      }
    }
    return faults;
  });
  await page.emulateMedia({ reducedMotion: null });
  return found.map((fault) => `with less motion: ${fault}`);
}
