import type { KeptWords } from './kept-words.ts';

/** Where sets are kept, in Spanish. */
export const esKept: KeptWords = {
  visitOnly: 'Esta ventana del navegador no guarda nada: todo se pierde al cerrarla.',
  visitSave: 'Guardar antes como archivo',
  storeNow: 'Guardarla ahora',
  saveFile: 'Guardarla como archivo',
  fileName: 'evenside-serie',
};
