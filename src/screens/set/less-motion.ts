/** Whether the person asked their system for less motion. jsdom, and with it a test of a screen, has no media. */
export const wantsLessMotion = (): boolean =>
  typeof matchMedia === 'function' && matchMedia('(prefers-reduced-motion: reduce)').matches;
