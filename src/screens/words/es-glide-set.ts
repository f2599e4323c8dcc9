import type { GlideSetWords } from './glide-set-words.ts';

/** Nerve glides, in Spanish. */
export const esGlideSet: GlideSetWords = {
  cue: { point: 'Aleje la punta, cabeza arriba', pull: 'Cabeza abajo, pie hacia usted' },
  hold: 'Mantenga',
  drawing:
    'Dibujo: una persona está boca arriba, con una pierna recta en alto, sujeta por una correa. Cuando aleja la punta del pie, levanta la cabeza; cuando baja la cabeza, lleva el pie hacia sí.',
  pause: 'Pausar el dibujo',
  play: 'Mover el dibujo',
  marks: 'Sus deslizamientos hasta ahora',
  mark: { slide: 'Se desliza', tension: 'Al revés', unclear: 'No está claro', hidden: 'No se vio' },
  angles: (footDeg, headDeg) => `Pie ${footDeg}°, cabeza ${headDeg}°`,
  symptoms: 'Los síntomas aumentan',
  signal: (keys) =>
    `Si los síntomas aumentan durante la serie, levante una mano o pulse ${keys ? 'la barra espaciadora' : '«Los síntomas aumentan»'}: la serie termina enseguida.`,
  limit: (deg, day) => `La pierna no más alta de ${deg}°, donde empezaron los síntomas el ${day}.`,
  near: 'Túmbese de modo que la pierna levantada quede más cerca de la cámara, con buena luz.',
  noLimit: 'Levante la pierna solo hasta que los síntomas apenas empiecen y manténgala ahí.',
  few: 'No más de lo que dice su plan: demasiados pueden empeorar el dolor del nervio.',
  beatKeys: 'Muévase con el dibujo: cuenta por usted. La barra espaciadora también lo inicia y lo detiene.',
};
