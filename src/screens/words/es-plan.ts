import type { NumberWords, PlanWords } from './plan-words.ts';

/** A number whose two buttons take one off and put one on. */
const number = (label: string): NumberWords => ({ label, fewer: `Menos: ${label}`, more: `Más: ${label}` });

/** The plan and its editor, in Spanish. */
export const esPlan: PlanWords = {
  title: 'Su plan',
  lead: 'Elija lo que le enseñó su fisioterapeuta. Las dosis son las habituales para empezar; su fisioterapeuta puede cambiar cada una.',
  exercises: '¿Qué hace usted?',
  side: '¿Qué pierna?',
  both: 'Las dos piernas',
  basis: 'Las dosis propuestas son práctica común, no probada en estudios.',
  save: 'Este es mi plan',
  unsaved: 'Aquí están los cambios que hizo antes. Aún no se han guardado.',
  dropUnsaved: 'Descartar estos cambios',
  none: 'Elija al menos un ejercicio.',
  setsADay: (n) => (n === 1 ? 'una serie al día' : `${n} series al día`),
  change: 'Cambiar la dosis',
  fields: {
    setsADay: number('Series al día'),
    repsASet: number('Veces en una serie'),
    holdS: number('Mantener, segundos'),
    tempoS: number('Segundos cada una'),
    restS: number('Descanso entre series, segundos'),
    daysAWeek: number('Días a la semana'),
    symptomLimit: number('Ninguna serie con síntomas por encima de'),
    fromDeg: number('Desde, grados'),
    toDeg: number('Hasta, grados'),
  },
  tempo: '¿A qué ritmo?',
  ownPace: 'A mi propio ritmo',
  paced: 'Con un compás',
  target: '¿Hasta dónde?',
  targets: { full: 'Hasta donde llegue sin dolor', symptoms: 'Hasta que empiecen los síntomas', range: 'Entre dos ángulos' },
  rule: 'Cuándo hacer más o menos',
  thresholds: {
    clearRise: number('Si los síntomas suben esto: un paso atrás'),
    settledWithin: number('A la mañana siguiente aún calmado: hasta este aumento'),
    goodDays: number('Días buenos antes de subir un paso'),
    goodDaysAfterFlare: number('Días buenos antes de subir un paso, tras un empeoramiento'),
    doneShare: number('Hecho a partir de esta parte, por ciento'),
    freshDays: number('Un día bueno cuenta durante estos días'),
  },
  checks: 'Comprobaciones de fuerza',
  checksEvery: number('Repetir pasados estos días'),
  limits: 'Nunca menos que, nunca más que',
  least: 'como mínimo',
  most: 'como máximo',
  badLimits: 'La dosis debe estar entre su mínimo y su máximo.',
  badRange: 'Los grados de llegada deben ser más que los de partida.',
};
