import type { AwayWords } from './away-words.ts';

/** A set without pictures, and slow machines, in Spanish. */
export const esAway = {
  kept: 'Lo contado se conserva. La serie sigue sola en cuanto vuelva la imagen.',
  restarting: 'Se está iniciando de nuevo. Lo contado se conserva y la serie sigue sola.',
  goOn: 'Seguir ahora',
  backVoice: 'La imagen ha vuelto. Siga.',
  pause: 'Hubo una pausa. Lo que no se vio no se cuenta; siga.',
  screenDims: 'La pantalla puede apagarse sola. La serie sigue de todos modos.',
  fewPictures: 'Este equipo mira pocas imágenes por segundo: muévase con calma, o se pierden los movimientos rápidos.',
  onPage: 'Este navegador es antiguo: mira menos imágenes por segundo y los botones responden tarde.',
  littleMemory: 'Este equipo tiene poca memoria, por eso está elegido “Rápido” en “Más opciones”.',
} as const satisfies AwayWords;
