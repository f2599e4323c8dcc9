import type { GlideSetWords } from './glide-set-words.ts';

/** Nerve glides, in English. */
export const enGlideSet: GlideSetWords = {
  cue: { point: 'Point, head up', pull: 'Head down, pull up' },
  hold: 'Hold',
  drawing:
    'Drawing: somebody lies on their back, one straight leg held up by a strap. When the foot points, the head lifts; when the head goes down, the foot pulls up.',
  pause: 'Pause the drawing',
  play: 'Move the drawing',
  marks: 'Your glides so far',
  mark: { slide: 'Slides', tension: 'Other way round', unclear: 'Not clear', hidden: 'Not seen' },
  angles: (footDeg, headDeg) => `Foot ${footDeg}°, head ${headDeg}°`,
  symptoms: 'Symptoms rise',
  signal: (keys) =>
    `If symptoms rise during the set, raise a hand or press ${keys ? 'the space bar' : '“Symptoms rise”'}: the set ends at once.`,
  limit: (deg, day) => `Leg not higher than ${deg}°, where symptoms began on ${day}.`,
  near: 'Lie so that the raised leg is the one nearest the camera, in good light.',
  noLimit: 'Raise the leg only until symptoms just start, and keep it there.',
  few: 'Not more than your plan says: too many can make nerve pain worse.',
  beatKeys: 'Move with the drawing: it counts for you. The space bar starts and pauses it too.',
};
