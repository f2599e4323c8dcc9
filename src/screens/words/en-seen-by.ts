import type { SeenByWords } from './seen-by-words.ts';

/** The two ways of measuring, in English. */
export const enSeenBy: SeenByWords = {
  way: { pose: 'camera alone', stickers: 'three stickers' },
  asked: {
    pose: 'Your therapist asks for the camera alone.',
    stickers: 'Your therapist asks for the stickers.',
  },
  told: 'Measured through three stickers on the foot.',
  footTapMethod: 'Foot taps: ankle dorsiflexion by three markers on the skin.',
  column: 'Measured by',
  twoWays:
    'One of these sets was measured through stickers, the other by the camera alone. The two ways need not give the same angle, so no difference between them is sure.',
  healthyToes: 'Healthy big toes differ too; by how much is not known here.',
  mixed: {
    pose: 'Some of these sets were measured through stickers. Only those by the camera alone, the latest way, are compared.',
    stickers: 'Some of these sets were measured by the camera alone. Only those through stickers, the latest way, are compared.',
  },
};
