import type { FhirWords } from './fhir-words.ts';

/** The file for a clinic's system, in Spanish. */
export const esFhir: FhirWords = {
  title: 'Para el sistema de una clínica (FHIR)',
  lead: 'Un archivo que otros programas sanitarios pueden leer: el plan, las series y lo que se contó en las semanas elegidas arriba. Lo inventado para probar el programa no se incluye. No se envía nada.',
  whose: 'De quién dice que es',
  named: {
    code: { name: 'Solo un código', about: 'Sin nombre. Lo que se escribió, como las notas, no se incluye.' },
    name: { name: 'Un nombre', about: 'Con el nombre de abajo y con lo que se escribió.' },
  },
  name: 'Nombre, como lo conoce la clínica',
  save: (weeks) => `Guardar ${weeks} semanas en FHIR`,
  saved: (sets, entries) =>
    `El archivo contiene ${sets === 1 ? 'una serie' : `${sets} series`} y ${entries === 1 ? 'un dato' : `${entries} datos`} del diario.`,
  notWhole: (n) =>
    n === 1
      ? 'Un registro con texto escrito está en él sin ese texto.'
      : `${n} registros con texto escrito están en él sin ese texto.`,
};
