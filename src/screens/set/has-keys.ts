/** Whether keys are at hand: a machine whose pointer can hover has a keyboard, a phone has not. jsdom, and with it a test of a screen, has no media. */
export const hasKeys = (): boolean => typeof matchMedia !== 'function' || matchMedia('(hover: hover)').matches;
