import type { CheckWords } from './check-words.ts';

/** Checks of strength, in Spanish. */
export const esCheck: CheckWords = {
  title: 'Compruebe su fuerza',
  lead: 'Una pierna después de la otra. Sujétese a algo firme. Puede dejar cualquier cosa sin responder.',
  due: 'Ya toca comprobar otra vez su fuerza.',
  open: 'Comprobarla',
  names: {
    'big-toe': 'Dedo gordo del pie',
    'heel-walk': 'Caminar sobre los talones',
    'heel-stand': 'De pie sobre los talones',
    'foot-slap': '¿El pie golpea el suelo al caminar?',
    'forefoot-sinks': '¿Se le cae la punta del pie al caminar?',
  },
  how: {
    'big-toe': 'Levante el dedo gordo y empújelo hacia abajo con un dedo de la mano. Compárelo con el otro lado.',
    'heel-walk':
      'Camine unos diez pasos sobre los talones, con una mano en la pared. Cuente los pasos hasta que baje la punta del pie.',
    'heel-stand':
      'Póngase de pie sobre los talones, con las dos manos en un apoyo. Cuente los segundos hasta que baje la punta del pie.',
    'foot-slap': 'Camine unos pasos sobre un suelo duro y escuche.',
    'forefoot-sinks': 'Camine unos pasos y mírese los pies.',
  },
  bigToe: {
    'cannot-lift': 'No puedo levantarlo',
    'easily-pushed-down': 'Se levanta, pero baja con un leve empujón',
    'as-strong': 'Tan fuerte como el otro lado',
  },
  toeToday: (own, other) =>
    other === null
      ? `Hoy la cámara midió una elevación de ${own} grados.`
      : `Hoy se levantó ${own} grados, el otro lado ${other}.`,
  toeHint: {
    'cannot-lift': (answer) => `Apenas se movió. ¿Es «${answer}»? Usted decide.`,
    'easily-pushed-down': (answer) => `Es claramente menos. ¿Es «${answer}»? Lo dice su dedo, y usted decide.`,
  },
  steps: 'pasos',
  seconds: 'segundos',
  secondsOf: (n) => (n === 20 ? '20 s o más' : `${n} s`),
  yes: 'Sí',
  no: 'No',
  keep: 'Guardar',
  worseTitle: 'Hay menos fuerza que la última vez',
  worse: (check, leg) => `${check}, ${leg}`,
  worseTodo: 'Deje los ejercicios. Llame a su fisioterapeuta o a su médico antes de seguir.',
  kept: 'Guardado. Nada está más débil que la última vez.',
  toToday: 'Volver a hoy',
};
