import { enAway } from './en-away.ts';
import { enCheck } from './en-check.ts';
import { enCompare } from './en-compare.ts';
import { enDay } from './en-day.ts';
import { enDesk } from './en-desk.ts';
import { enFeel } from './en-feel.ts';
import { enHandOver } from './en-hand-over.ts';
import { enKept } from './en-kept.ts';
import { enPeople } from './en-people.ts';
import { enPlan } from './en-plan.ts';
import { plural } from './en-plural.ts';
import { enPrescribe } from './en-prescribe.ts';
import { enProblems } from './en-problems.ts';
import { enProgress } from './en-progress.ts';
import { enRecount } from './en-recount.ts';
import { enReport } from './en-report.ts';
import { enResult } from './en-result.ts';
import { enReview } from './en-review.ts';
import { enSet } from './en-set.ts';
import type { Words } from './words.ts';

export const en = {
  locale: 'en',
  app: {
    name: 'Evenside',
    staysHere: 'Nothing leaves this machine: no video, no numbers, no names.',
    back: 'Back',
    loading: 'Loading',
    notFound: 'There is nothing at this address.',
    language: 'Language',
  },
  start: {
    therapist: 'For therapists',
    today: 'Today',
    todayAbout: 'Your plan: what is due, what is done, when the next set may come.',
    title: 'Your leg exercises, counted and measured',
    lead: 'Sit or lie in front of the camera, hands free. Evenside counts each movement and measures how far it went.',
    ways: 'How do you want to begin?',
    sources: {
      camera: { name: 'Use the camera', about: 'Do a set now and be counted aloud.' },
      file: { name: 'Open a video file', about: 'Measure a film of a set.' },
      example: { name: 'See it on a recorded example', about: 'No camera needed. Takes about a minute.' },
    },
    sets: 'Your sets',
    countOf: (count, target) => (target === null ? `${count}` : `${count} of ${target}`),
    noSets: 'Your sets will be listed here. They stay on this machine.',
    damaged: (n) =>
      plural.select(n) === 'one' ? 'One more set is stored, but can’t be read.' : `${n} more sets are stored, but can’t be read.`,
    showAll: (n) => `Show all ${n}`,
    interrupted: 'Interrupted',
    running: 'Not finished',
    cautionTitle: 'Before you begin',
    caution: [
      'Stop when your leg hurts more, or when pain, tingling or numbness moves further down.',
      'Evenside does not replace your therapist. Keep to what you were told to do.',
    ],
    redFlagsLink: 'Signs that need urgent care',
  },
  safety: {
    title: 'Signs that need urgent care',
    lead: 'Do not exercise. Go to an emergency department or call your local emergency service now if one of these is new or getting worse:',
    signs: [
      'Numbness or an odd feeling between the legs: around the genitals or the back passage, where you would touch a saddle.',
      'It is hard to start passing urine, you cannot feel it flow, or you leak urine.',
      'You do not feel that your bowel is full, or you lose control of it.',
      'Loss of feeling or of function during sex.',
      'Both legs hurt or tingle, or both legs get weak or numb.',
    ],
    todo: 'Every hour counts: go today, also at night. Say “possible cauda equina syndrome”.',
    alsoTitle: 'See a doctor the same day',
    also: [
      'One foot or leg gets weaker, or your foot drops more than before.',
      'Fever, feeling ill, or weight lost without trying.',
      'Severe new pain after a fall, or if you have or ever had cancer.',
    ],
    limits: 'This list does not cover everything. If you are worried, ask.',
  },
  exercises: {
    'foot-tap': {
      name: 'Foot tap',
      plural: 'Foot taps',
      about: 'Sitting, heel down: lift the front of your foot, lower it.',
      angle: 'ankle',
    },
    'leg-raise': {
      name: 'Straight leg raise',
      plural: 'Straight leg raises',
      about: 'Lying on your back: lift your straight leg, lower it.',
      angle: 'leg lift',
    },
    'nerve-glide': {
      name: 'Nerve glide',
      plural: 'Nerve glides',
      about: 'Lying, leg held up by a strap: point the foot while the head lifts, pull it up while the head rests.',
      angle: 'ankle',
    },
    'heel-stand': {
      name: 'Heel stand',
      plural: 'Heel stands',
      about: 'Standing, hands on a support: weight on your heels, lift the front of your feet and stay up.',
      angle: 'front of the foot',
    },
    'knee-straighten': {
      name: 'Knee straightening',
      plural: 'Knee lifts, sitting',
      about: 'Sitting: straighten your knee, lower your foot again.',
      angle: 'knee',
    },
    'toe-lift': {
      name: 'Big toe lift',
      plural: 'Big toe lifts',
      about: 'Sitting: lift your big toe, lower it.',
      angle: 'big toe',
    },
  },
  sides: { left: { leg: 'Left leg', legLower: 'left leg' }, right: { leg: 'Right leg', legLower: 'right leg' } },
  feet: { left: { leg: 'Left foot', legLower: 'left foot' }, right: { leg: 'Right foot', legLower: 'right foot' } },
  choose: {
    title: 'What will you do?',
    exercise: 'Exercise',
    side: 'Which leg?',
    sideHint: 'The leg you move. It must be the one nearest the camera.',
    reps: 'How many?',
    fewer: 'One fewer',
    moreReps: 'One more',
    camera: {
      upright:
        'Camera at your side, about 2 metres away, at the height of a chair seat. You fit in the picture from head to toes.',
      lying: 'Camera at your side, about 2 metres away, at the height of a chair seat. You fit in the picture from head to toes.',
      standing:
        'Camera at your side, about 3 metres away, at the height of a chair seat. You fit in the picture from head to toes.',
    },
    cameraDrawing: {
      upright: 'Seen from above: you sit on a chair, the camera stands at your side, about 2 metres away.',
      lying: 'Seen from above: you lie on your back on a mat, the camera stands at your side, about 2 metres away.',
      standing: 'Seen from above: you stand with your hands on a support, the camera stands at your side, about 3 metres away.',
    },
    distance: { upright: 'about 2 m', lying: 'about 2 m', standing: 'about 3 m' },
    more: 'More choices',
    kneeLimit: 'Knee may bend by, degrees',
    kneeLimitLess: 'Less bend',
    kneeLimitMore: 'More bend',
    model: 'How exact',
    models: {
      lite: { name: 'Quick', about: 'For a slow computer or phone.' },
      full: { name: 'Normal', about: 'Right for most.' },
      heavy: { name: 'Most exact', about: 'For a fast computer.' },
    },
    head: 'Where is your head in the picture?',
    heads: { find: 'Find it by itself', left: 'On the left', right: 'On the right' },
    cameraDevice: 'Camera',
    anyCamera: 'The usual one',
    unnamedCamera: (n) => `Camera ${n}`,
    filmed:
      'The film shows you from the side, about 2 metres away, from head to toes. The moving leg is the one nearest the camera.',
    file: 'Video file',
    otherFile: 'Choose another',
    noFile: 'Choose the video you want to measure.',
    pickFile: 'Choose a video file',
    begin: { camera: 'Start the camera', file: 'Measure the video', example: 'Start the example' },
  },
  set: enSet,
  problems: enProblems,
  result: enResult,
  compare: enCompare,
  day: enDay,
  plan: enPlan,
  prescribe: enPrescribe,
  feel: enFeel,
  progress: enProgress,
  report: enReport,
  review: enReview,
  check: enCheck,
  handOver: enHandOver,
  desk: enDesk,
  lock: {
    open: 'Passphrase lock',
    openAbout: 'Seal all that is stored here, so that others at this machine can’t read it',
  },
  kept: enKept,
  recount: enRecount,
  people: enPeople,
  away: enAway,
  unsupported: {
    title: 'Evenside can’t work at this address',
    todo: 'From here the browser lets no page use the camera or keep anything.',
    features: {
      'secure-context':
        'This address is not a secure one. Open Evenside over https (https:// at its beginning), or at 127.0.0.1 on this machine.',
    },
  },
} as const satisfies Words;
