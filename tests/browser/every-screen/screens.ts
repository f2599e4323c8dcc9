import type { SeededDiary } from '../seeded-diary.ts';

/** A screen that its address alone opens. */
export interface Screen {
  /** Names the file of its tree too. */
  readonly name: string;
  /** From the # on. */
  readonly address: string;
  readonly heading: string | RegExp;
  /** Once this is there the screen is whole. Left out: with its heading. */
  readonly text?: string | RegExp;
}

/** Of somebody who has nothing yet. */
export const EMPTY_SCREENS: readonly Screen[] = [
  { name: 'start', address: '', heading: 'Your leg exercises, counted and measured' },
  { name: 'choose', address: '#/choose/camera', heading: 'What will you do?' },
  { name: 'choose-something-else', address: '#/choose/nothing', heading: 'Your leg exercises, counted and measured' },
  { name: 'urgent', address: '#/urgent', heading: 'Signs that need urgent care' },
  { name: 'today-empty', address: '#/today', heading: 'Today' },
  { name: 'plan-empty', address: '#/plan', heading: 'Your plan' },
  { name: 'give-empty', address: '#/plan/give', heading: 'Give this plan' },
  { name: 'take-empty', address: '#/take', heading: 'A plan for you' },
  { name: 'take-damaged', address: '#/take/AQ', heading: 'A plan for you' },
  { name: 'progress-empty', address: '#/progress', heading: 'How it is going' },
  { name: 'report-empty', address: '#/report', heading: 'Report for the therapist' },
  { name: 'review-empty', address: '#/review', heading: 'Review' },
  { name: 'desk', address: '#/desk', heading: 'Measure an angle' },
  { name: 'lock', address: '#/lock', heading: 'Passphrase lock' },
  { name: 'stored', address: '#/stored', heading: 'What is stored here' },
  { name: 'server', address: '#/server', heading: 'The clinic’s server' },
  { name: 'people-empty', address: '#/people', heading: 'People' },
  { name: 'new-person', address: '#/people/new', heading: 'A new person' },
  { name: 'person-unknown', address: '#/person/nobody', heading: 'People' },
  { name: 'questions-first', address: '#/questions', heading: 'Before you start' },
  { name: 'questions-free-first', address: '#/questions/free', heading: 'Before you start' },
  { name: 'count-free', address: '#/count/foot-tap/left', heading: 'Before you start' },
  { name: 'nowhere', address: '#/nowhere', heading: 'There is nothing at this address.' },
];

/** Of somebody with an example plan, sets and symptoms. */
export const diaryScreens = (of: SeededDiary): readonly Screen[] => [
  { name: 'start-with-sets', address: '', heading: /^Your leg exercises/, text: /^Foot taps, left/ },
  { name: 'today', address: '#/today', heading: 'Today', text: 'Foot taps, left leg' },
  { name: 'questions', address: `#/questions/${of.itemId}/left`, heading: 'Before you start', text: 'Yes' },
  { name: 'before-set', address: `#/feel/before/${of.itemId}/left`, heading: 'How is it now?', text: 'As a list' },
  { name: 'ask', address: `#/today/ask/${of.itemId}/left`, heading: /./ },
  {
    name: 'go',
    address: `#/today/go/${of.itemId}/left`,
    heading: 'Foot taps, left leg',
    text: 'Count without the camera',
  },
  {
    name: 'go-glides',
    address: `#/today/go/${of.glideItemId}/left`,
    heading: 'Nerve glides, left leg',
    text: 'Pause the drawing',
  },
  { name: 'go-big-toe', address: `#/today/go/${of.toeItemId}/left`, heading: 'Big toe lifts, left foot', text: 'about 30 cm' },
  { name: 'by-hand', address: `#/by-hand/${of.itemId}/left`, heading: 'Foot taps, left leg', text: 'One more' },
  { name: 'count-free-again', address: '#/count/foot-tap/left', heading: 'Foot taps, left leg', text: 'One more' },
  { name: 'after-set', address: `#/feel/after/${of.handSetId}`, heading: 'How is it after the set?', text: 'As a list' },
  { name: 'check-in', address: '#/check-in', heading: /^How was it after/, text: 'As a list' },
  { name: 'self-check', address: '#/self-check', heading: 'Check your strength', text: 'Left leg' },
  { name: 'plan', address: '#/plan', heading: 'Your plan', text: 'Foot taps' },
  { name: 'give', address: '#/plan/give', heading: 'Give this plan', text: 'As a QR code' },
  { name: 'take', address: `#/take/${of.planCode}`, heading: 'A plan for you', text: 'You have this plan already.' },
  { name: 'progress', address: '#/progress', heading: 'How it is going', text: 'Big toe lifts, left foot' },
  { name: 'report', address: '#/report', heading: 'Report for the therapist', text: 'Prescribed' },
  { name: 'send', address: '#/send', heading: 'Send my record', text: 'This file is health data.' },
  { name: 'bring', address: '#/bring', heading: 'Move to another machine', text: 'Choose the file' },
  { name: 'review', address: '#/review', heading: 'Review', text: 'Every set' },
  { name: 'result', address: `#/set/${of.rightId}`, heading: 'Foot taps, right leg' },
  { name: 'result-raises', address: `#/set/${of.raiseId}`, heading: 'Straight leg raises, left leg' },
  { name: 'result-glides', address: `#/set/${of.glideId}`, heading: 'Nerve glides, left leg', text: /went the right way/ },
  {
    name: 'result-glides-wrong',
    address: `#/set/${of.wrongGlideId}`,
    heading: 'Nerve glides, left leg',
    text: /^The other way round/,
  },
  {
    name: 'compare-glides',
    address: `#/compare/${of.glideId}/${of.wrongGlideId}`,
    heading: /then and now$/,
    text: 'Foot and head together',
  },
  { name: 'result-big-toe', address: `#/set/${of.toeLeftId}`, heading: 'Big toe lifts, left foot' },
  {
    name: 'compare-big-toes',
    address: `#/compare/${of.toeRightId}/${of.toeLeftId}`,
    heading: /both sides$/,
    text: /^Left foot: 1\d/,
  },
  { name: 'compare', address: `#/compare/${of.leftId}/${of.rightId}`, heading: /both sides$/, text: 'What' },
];

/** In a therapist's list. */
export const peopleScreens = (person: string): readonly Screen[] => [
  { name: 'people', address: '#/people', heading: 'People', text: '8 people, 5 need you' },
  { name: 'person', address: `#/person/${person}`, heading: 'Invented 5', text: 'Review' },
  { name: 'people-bring', address: '#/people/bring', heading: 'Take in a record', text: 'Choose the file' },
  {
    name: 'person-report',
    address: `#/person/${person}/report`,
    heading: 'Report for the therapist',
    text: 'Record of Invented 5',
  },
];

/** The same with Spanish words: what is spoken of most, and what is longest. */
export const spanishScreens = ({ itemId, glideId, wrongGlideId }: SeededDiary): readonly Screen[] => [
  { name: 'start', address: '', heading: /^Sus ejercicios/ },
  { name: 'today', address: '#/today', heading: 'Hoy' },
  { name: 'questions', address: `#/questions/${itemId}/left`, heading: 'Antes de empezar' },
  { name: 'go', address: `#/today/go/${itemId}/left`, heading: /pierna izquierda$/ },
  { name: 'plan', address: '#/plan', heading: 'Su plan' },
  { name: 'give', address: '#/plan/give', heading: 'Entregar este plan' },
  { name: 'take', address: '#/take', heading: 'Un plan para usted' },
  { name: 'progress', address: '#/progress', heading: 'Cómo va' },
  { name: 'report', address: '#/report', heading: 'Informe para el fisioterapeuta' },
  { name: 'send', address: '#/send', heading: 'Enviar mi registro' },
  { name: 'bring', address: '#/bring', heading: 'Pasar a otro equipo' },
  { name: 'people-bring', address: '#/people/bring', heading: 'Incorporar un registro' },
  { name: 'review', address: '#/review', heading: 'Revisión' },
  { name: 'lock', address: '#/lock', heading: 'Bloqueo con contraseña' },
  { name: 'stored', address: '#/stored', heading: 'Qué se guarda aquí' },
  { name: 'result-glides', address: `#/set/${glideId}`, heading: 'Deslizamientos del nervio, pierna izquierda' },
  { name: 'compare-glides', address: `#/compare/${glideId}/${wrongGlideId}`, heading: /antes y ahora$/ },
];
