import type { LockScreenWords } from './lock-words.ts';

/** The screens of the passphrase lock, in Spanish. */
export const esLock: LockScreenWords = {
  title: 'Bloqueo con contraseña',
  lead: 'Con el bloqueo activado, lo guardado en este equipo queda cifrado. Solo su frase de contraseña lo abre.',
  passphrase: 'Frase de contraseña',
  again: 'La misma otra vez',
  old: 'Frase de contraseña actual',
  next: 'Frase de contraseña nueva',
  show: 'Mostrar',
  hide: 'Ocultar',
  hint: (least) =>
    `Al menos ${least} caracteres. Cuanto más larga, mejor: cuatro o cinco palabras que nadie adivinaría son fáciles de recordar y difíciles de averiguar.`,
  differs: 'Las dos no son iguales. Escriba ambas de nuevo.',
  working: (percent) => `En curso: ${percent} %. Deje esta página abierta.`,
  lost: 'Nadie puede abrir estos registros sin la frase de contraseña, ni siquiera nosotros. Puede borrar todo lo que Evenside guarda en este equipo y empezar de nuevo.',
  off: {
    title: 'Si la olvida',
    readableTitle: 'Lo que el bloqueo no oculta',
    readable:
      'Cuándo se hicieron las series y las anotaciones, para cuántas personas, cuántas hay y qué tamaño tienen. No protege contra programas dañinos en este equipo ni contra quien use la página mientras está desbloqueada. Los archivos que usted guardó siguen siendo legibles.',
    turnOn: 'Activar el bloqueo',
  },
  on: {
    title: 'El bloqueo está activado.',
    about: 'Se bloquea solo tras 15 minutos sin tocar la pantalla ni el teclado, pero no durante una serie.',
    part: 'No se terminó con todos los registros. No se ha perdido nada.',
    finish: 'Continuar',
    now: 'Bloquear ahora',
    change: 'Cambiar la frase de contraseña',
    changed: 'Desde ahora vale la frase de contraseña nueva.',
    turnOff: 'Desactivar el bloqueo',
    turnOffAbout: 'Todo lo guardado volverá a ser legible para quien pueda usar este equipo.',
  },
  unlock: {
    title: 'Evenside está bloqueado',
    lead: 'Escriba su frase de contraseña para abrir sus registros.',
    do: 'Desbloquear',
    forgot: 'La he olvidado',
    erase: 'Borrar todo',
    confirm: (word) => `Para borrar todo, escriba ${word}`,
    word: 'BORRAR',
    erased: 'Esto no se puede deshacer.',
  },
};
