import type { CompareWords } from './compare-words.ts';

/** Differences, in Spanish. */
export const esCompare: CompareWords = {
  with: 'Comparar esta serie',
  otherLeg: (when) => `Con el otro lado, ${when}`,
  sameLeg: (when) => `Con el mismo lado, ${when}`,
  nothing: 'Haga una serie con el otro lado, u otra más adelante: entonces se podrán comparar aquí.',
  title: (exercises, leg) => (leg === null ? `${exercises}, los dos lados` : `${exercises}, ${leg}, antes y ahora`),
  more: (name, d) => `${name}: ${d}° más lejos.`,
  alike: 'Ninguna diferencia segura en hasta dónde llega.',
  verdict: {
    real: (limit) => `Es más que el error de medida, aquí ${limit}°.`,
    'within-error': (limit) => `Es menos que el error de medida, aquí ${limit}°: puede no haber ninguna, o una pequeña.`,
  },
  what: 'Qué',
  difference: 'Diferencia',
  range: 'Hasta dónde, normalmente',
  count: 'Contadas',
  hold: 'Mantenido',
  up: 'Tiempo arriba',
  noPercent: 'demasiado corto para decirlo',
  signLegs: 'Más: el primer lado hace más. Los ángulos se comparan en grados, nunca en por ciento.',
  signTimes: 'Más: ha aumentado. Los ángulos se comparan en grados, nunca en por ciento.',
  dots: 'Cada repetición contada de las dos series según hasta dónde llegó. La tabla tiene el valor central de cada una.',
  dotsCaption: 'Un punto por repetición, una raya en el valor central. Dentro de la franja gris ninguna diferencia es segura.',
  error:
    'El error de medida viene de cuerpos creados de forma digital; con personas es mayor, porque se sientan y se mueven distinto de un día a otro. Deje que lo valore su fisioterapeuta.',
  healthy: 'Las piernas sanas también son distintas: al levantar la pierna recta, en 5 grados de media.',
  cannot: {
    'too-few-repetitions': 'Para comparar, en cada serie tiene que haber al menos tres repeticiones.',
    'different-exercises': 'Son series de dos ejercicios distintos. Elija dos del mismo.',
    'different-sides': 'Son series de dos lados. Elija dos del mismo.',
    'same-side': 'Son series del mismo lado. Elija una de cada.',
    'own-exercise': 'Los ejercicios de un archivo no se comparan: no se sabe con qué exactitud se miden.',
  },
  within: {
    title: 'A lo largo de la serie',
    tempo: 'Ritmo',
    tempoValue: (perMinute) => `${perMinute} por minuto`,
    even: (percent) => `irregular en un ${percent} %`,
    hold: 'Mantenido arriba',
    holdValue: (seconds) => `${seconds} s`,
    holdHint: 'El valor central de todas las elevaciones contadas.',
    tiring: 'Último tercio frente al primero',
    tiringChange: (d) => `${d}°`,
    tiringHint: {
      real: (limit) => `Más que el error de medida (${limit}°).`,
      'within-error': (limit) => `Dentro del error de medida (${limit}°).`,
    },
    slower: {
      real: (change) => `Ritmo: ${change} por minuto, más de lo que varía de todos modos.`,
      'within-error': (change) => `Ritmo: ${change} por minuto, no más de lo que varía de todos modos.`,
    },
    tooFew: (needed) => `Necesita ${needed} elevaciones contadas.`,
    none: 'no se sabe',
  },
};
