import type { CompareWords } from './compare-words.ts';

/** Differences, in English. */
export const enCompare: CompareWords = {
  with: 'Compare this set',
  otherLeg: (when) => `With the other side, ${when}`,
  sameLeg: (when) => `With the same side, ${when}`,
  nothing: 'Do a set with the other side, or another one later: then both can be compared here.',
  title: (exercises, leg) => (leg === null ? `${exercises}, both sides` : `${exercises}, ${leg}, then and now`),
  more: (name, d) => `${name}: ${d}° further.`,
  alike: 'No sure difference in how far.',
  verdict: {
    real: (limit) => `That is more than the error of measurement, here ${limit}°.`,
    'within-error': (limit) => `It is smaller than the error of measurement, here ${limit}°: there may be none, or a small one.`,
  },
  what: 'What',
  difference: 'Difference',
  range: 'How far, usually',
  count: 'Counted',
  hold: 'Held',
  up: 'Stayed up',
  noPercent: 'too short to say',
  signLegs: 'Plus: the first side does more. Angles differ in degrees, never in percent.',
  signTimes: 'Plus: it has become more. Angles differ in degrees, never in percent.',
  dots: 'Every counted repetition of both sets by how far it went. The table holds the middle of each.',
  dotsCaption: 'One dot for each repetition, a bar for the middle. Within the grey band no difference is sure.',
  error:
    'The error of measurement comes from rendered bodies; with people it is larger, since they sit and move differently from day to day. Let your therapist judge.',
  healthy: 'Healthy legs differ too: in a straight leg raise by 5 degrees on average.',
  cannot: {
    'too-few-repetitions': 'Each set needs at least three counted repetitions to be compared.',
    'different-exercises': 'These are sets of two different exercises. Choose two of the same one.',
    'different-sides': 'These are sets of two sides. Choose two of the same side.',
    'same-side': 'These are sets of the same side. Choose one of each.',
    'own-exercise': 'Exercises from a file are not compared: how exactly they are measured is not known.',
  },
  within: {
    title: 'Through the set',
    tempo: 'Tempo',
    tempoValue: (perMinute) => `${perMinute} a minute`,
    even: (percent) => `uneven by ${percent}%`,
    hold: 'Held at the top',
    holdValue: (seconds) => `${seconds} s`,
    holdHint: 'The middle of all counted taps.',
    tiring: 'Last third against first',
    tiringChange: (d) => `${d}°`,
    tiringHint: {
      real: (limit) => `More than the error of measurement (${limit}°).`,
      'within-error': (limit) => `Within the error of measurement (${limit}°).`,
    },
    slower: {
      real: (change) => `Tempo: ${change} a minute, more than it varies anyway.`,
      'within-error': (change) => `Tempo: ${change} a minute, no more than it varies anyway.`,
    },
    tooFew: (needed) => `Needs ${needed} counted taps.`,
    none: 'not known',
  },
};
