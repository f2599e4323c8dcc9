import type { AwayWords } from './away-words.ts';

/** A set without pictures, and slow machines, in Spanish. */
export const esAway = {
  kept: 'Lo contado se conserva. La serie sigue sola en cuanto vuelva la imagen.',
  restarting: 'Se está iniciando de nuevo. Lo contado se conserva y la serie sigue sola.',
  banner: 'Sin imagen: la serie espera.',
  goOn: 'Seguir ahora',
  backVoice: 'La imagen ha vuelto. Siga.',
  pause: 'Hubo una pausa. Lo que no se vio no se cuenta; siga.',
  screenDims: 'La pantalla puede apagarse sola. La serie sigue de todos modos.',
  fewPictures: 'Este equipo mira pocas imágenes por segundo: muévase con calma, o se pierden los movimientos rápidos.',
  notStored: {
    full: 'No hay sitio para guardar esta serie. Siga y guárdela como archivo al final.',
    failed: 'Esta serie no se puede guardar ahora. Siga y guárdela como archivo al final.',
  },
  limits: {
    'no-webgl2':
      'Este navegador no puede buscar la pierna entera (falta WebGL 2 o está apagado). Con pegatinas se miden la punta del pie y el dedo gordo; y siempre se puede contar a mano.',
    'no-webcodecs': 'Este navegador es antiguo: los vídeos se miden despacio y la cámara da menos imágenes por segundo.',
    'on-page':
      'Este navegador es antiguo: no puede buscar la pierna entera. Con pegatinas se miden la punta del pie y el dedo gordo; y siempre se puede contar a mano.',
    'little-memory': 'Este equipo tiene poca memoria, por eso está elegido «Rápido» en «Más opciones», si no elige otra cosa.',
  },
} as const satisfies AwayWords;
