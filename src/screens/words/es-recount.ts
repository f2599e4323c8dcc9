import { plural } from './es-plural.ts';
import type { RecountWords } from './recount-words.ts';

const one = (n: number): boolean => plural.select(n) === 'one';

/** Why the count changed after the set, in Spanish. */
export const esRecount: RecountWords = {
  title: (shown, now) => `${shown} contadas mientras se movía, ${now} al final`,
  small: (n) =>
    one(n)
      ? `${n} llegó a menos de la mitad, más o menos, de lo habitual. Va aparte, por pequeña.`
      : `${n} llegaron a menos de la mitad, más o menos, de lo habitual. Van aparte, por pequeñas.`,
  gap: (n) => `En ${n} la pierna se perdió un momento, así que no ${one(n) ? 'cuenta' : 'cuentan'}.`,
  unfinished: (n) => `${n} no ${one(n) ? 'había' : 'habían'} acabado al terminar la serie.`,
  unsure: (n) => `${n} no ${one(n) ? 'quedó clara' : 'quedaron claras'} al medir la serie entera.`,
  more: (n) =>
    `${n} se ${one(n) ? 'encontró' : 'encontraron'} solo al medir la serie entera, y ahora ${one(n) ? 'cuenta' : 'cuentan'}.`,
};
