import type { ViewAdvice } from '../../measure/live-view.ts';
import type { IconName } from '../parts/icon.tsx';

/** The sign beside each advice. */
export const ADVICE_SIGN: Record<ViewAdvice, IconName> = {
  nobody: 'person',
  'leg-hidden': 'hidden',
  'too-near': 'away',
  'too-far': 'nearer',
  'not-side-on': 'turn',
  'wrong-leg': 'turn',
  'too-dark': 'light',
  'not-sitting': 'person',
  'not-lying': 'person',
  'not-standing': 'person',
  'leg-not-held': 'person',
  'other-leg-up': 'turn',
  'leg-too-high': 'person',
  'stickers-missing': 'search',
  'stickers-small': 'nearer',
  'hold-still': 'still',
};
