import type { SeenByWords } from './seen-by-words.ts';

/** The two ways of measuring, in Spanish. */
export const esSeenBy: SeenByWords = {
  way: { pose: 'solo la cámara', stickers: 'tres pegatinas' },
  asked: {
    pose: 'Su terapeuta pide solo la cámara.',
    stickers: 'Su terapeuta pide las pegatinas.',
  },
  told: 'Medido con tres pegatinas en el pie.',
  footTapMethod: 'Elevaciones de la punta del pie: dorsiflexión del tobillo con tres marcas en la piel.',
  column: 'Medido con',
  twoWays:
    'Una de estas series se midió con pegatinas, la otra solo con la cámara. Las dos formas no tienen por qué dar el mismo ángulo, así que ninguna diferencia entre ellas es segura.',
  healthyToes: 'Los dedos gordos sanos también son distintos; aquí no se sabe cuánto.',
  mixed: {
    pose: 'Algunas de estas series se midieron con pegatinas. Solo se comparan las medidas con la cámara sola, la forma más reciente.',
    stickers:
      'Algunas de estas series se midieron solo con la cámara. Solo se comparan las medidas con pegatinas, la forma más reciente.',
  },
};
