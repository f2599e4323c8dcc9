import type { AwayWords } from './away-words.ts';

/** A set without pictures, and slow machines, in English. */
export const enAway = {
  kept: 'What was counted is kept. The set goes on by itself as soon as the picture is back.',
  restarting: 'It is being started again. What was counted is kept, and the set goes on by itself.',
  banner: 'No picture: the set waits.',
  goOn: 'Go on now',
  backVoice: 'The picture is back. Go on.',
  pause: 'There was a break. What was not seen is not counted; go on.',
  screenDims: 'The screen may go dark by itself. The set goes on all the same.',
  fewPictures: 'This machine looks at few pictures a second: move calmly, or quick movements are missed.',
  notStored: {
    full: 'No room to store this set. Go on, and save it as a file at the end.',
    failed: 'This set can’t be stored now. Go on, and save it as a file at the end.',
  },
  limits: {
    'no-webgl2':
      'This browser can’t look for the whole leg (WebGL 2 is missing or switched off). Foot taps and toe lifts by stickers work, and counting by hand.',
    'no-webcodecs': 'This browser is an old one: films are measured slowly, and the camera gives fewer pictures a second.',
    'on-page':
      'This browser is an old one: it can’t look for the whole leg. Foot taps and toe lifts by stickers work, and counting by hand; buttons answer late during a set.',
    'little-memory': 'This machine has little memory. So “Quick” is chosen for you. You can change it under “More choices”.',
  },
} as const satisfies AwayWords;
