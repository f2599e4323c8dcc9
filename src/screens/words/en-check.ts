import type { CheckWords } from './check-words.ts';

/** Checks of strength, in English. */
export const enCheck: CheckWords = {
  title: 'Check your strength',
  lead: 'One leg after the other. Hold on to something firm. You can leave out any question.',
  due: 'It is time to check your strength again.',
  open: 'Check it',
  names: {
    'big-toe': 'Big toe',
    'heel-walk': 'Walking on the heels',
    'heel-stand': 'Standing on the heels',
    'foot-slap': 'Does the foot slap when you walk?',
    'forefoot-sinks': 'Does the front of the foot sink when you walk?',
  },
  how: {
    'big-toe': 'Lift your big toe and push it down with a finger. Compare with the other side.',
    'heel-walk':
      'Walk about ten steps on your heels, a hand on the wall. Count the steps until the front of the foot comes down.',
    'heel-stand': 'Stand on your heels, both hands on a support. Count the seconds until the front of the foot comes down.',
    'foot-slap': 'Walk a few steps on a hard floor and listen.',
    'forefoot-sinks': 'Walk a few steps and look at your feet.',
  },
  bigToe: {
    'cannot-lift': 'I cannot lift it',
    'easily-pushed-down': 'It lifts, but is easily pushed down',
    'as-strong': 'As strong as the other side',
  },
  toeToday: (own, other) =>
    other === null
      ? `Today the camera measured a lift of ${own} degrees.`
      : `Today it lifted ${own} degrees, the other side ${other}.`,
  toeHint: {
    'cannot-lift': (answer) => `It hardly moved. Is it “${answer}”? You decide.`,
    'easily-pushed-down': (answer) => `That is clearly less. Is it “${answer}”? Your finger tells, and you decide.`,
  },
  steps: 'steps',
  seconds: 'seconds',
  secondsOf: (n) => (n === 20 ? '20 s or more' : `${n} s`),
  yes: 'Yes',
  no: 'No',
  keep: 'Keep this',
  worseTitle: 'This is weaker than last time',
  worse: (check, leg) => `${check}, ${leg}`,
  worseTodo: 'Stop the exercises. Call your therapist or doctor before you go on.',
  kept: 'Kept. Nothing is weaker than last time.',
  toToday: 'Back to today',
};
