import type { NumberWords } from './plan-words.ts';
import type { PrescribeWords } from './prescribe-words.ts';

const days = (n: number) => (n === 1 ? 'un día bueno' : `${n} días buenos seguidos`);
const points = (n: number) => `${n} ${n === 1 ? 'punto' : 'puntos'}`;
const sets = (n: number) => `${n} ${n === 1 ? 'serie' : 'series'}`;
const times = (n: number) => `${n} ${n === 1 ? 'vez' : 'veces'}`;
const step = (what: string): NumberWords => ({
  label: `Un paso, ${what}`,
  fewer: `Paso menor, ${what}`,
  more: `Paso mayor, ${what}`,
});

/** Prescribing, in Spanish. */
export const esPrescribe: PrescribeWords = {
  lead: 'Elija ejercicios. Cada uno empieza con su dosis habitual; todo se puede cambiar.',
  legs: {
    hint: 'Para todos los ejercicios que elija. En cada uno se puede cambiar.',
    title: 'Piernas',
    same: 'Igual para las dos',
    apart: 'Distinto para cada una',
    keeps: (leg) => `«Igual para las dos» conserva lo que tiene la ${leg}.`,
    copyTo: (leg) => `Copiar a la ${leg}`,
    beyond: (n) =>
      n === 1
        ? 'Otra línea de este plan no se muestra aquí. Queda como está.'
        : `Otras ${n} líneas de este plan no se muestran aquí. Quedan como están.`,
  },
  cautions: {
    title: (n) => `Precauciones (${n})`,
    stays: 'Se queda: quien hace ejercicio a solas debe saber cuándo parar.',
  },
  standing: { usual: 'Dosis habitual para empezar', moved: 'Dosis habitual, con pasos desde entonces' },
  usualShort: 'dosis habitual para empezar',
  ofAll: 'En todos los ejercicios:',
  decided: { therapist: 'Fijada por el fisioterapeuta', patient: 'Distinta de la dosis habitual' },
  more: 'Días, descanso, ritmo',
  rule: {
    after: (n) => `Tras ${days(n)}:`,
    next: 'Cuando se alcance:',
    up: {
      setsADay: (by, most) => `${sets(by)} más al día, como máximo ${sets(most)} al día.`,
      repsASet: (by, most) => `${times(by)} más en cada serie, como máximo ${times(most)}.`,
      holdS: (by, most) => `mantener ${by} s más, como máximo ${most} s.`,
    },
    never: 'La regla nunca sube esta dosis.',
    back: (rise, leastSets, leastReps) =>
      `Síntomas ${points(rise)} o más por encima: un paso atrás, como mínimo ${sets(leastSets)} de ${leastReps}.`,
    settled: (n) => `Calmado: a la mañana siguiente, como mucho ${points(n)} más que antes de las series.`,
    afterFlare: (n) => `Tras un empeoramiento, subir un paso requiere ${days(n)}.`,
    done: (percent) => `Un día está hecho a partir del ${percent} % de sus repeticiones.`,
    fresh: (n) => `Un día bueno cuenta durante ${n} ${n === 1 ? 'día' : 'días'}.`,
    by: { setsADay: step('series'), repsASet: step('veces'), holdS: step('segundos de mantener') },
    first: 'Hacer esto primero',
  },
  decides: {
    title: '¿Quién decide este plan?',
    patient: 'Yo, para mí',
    therapist: 'Un fisioterapeuta',
    save: 'Guardar este plan',
    saveAndGive: 'Guardar y entregarlo',
  },
};
