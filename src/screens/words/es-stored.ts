import type { StoredWords } from './stored-words.ts';

/** What is stored here, without a network, new versions, in Spanish. */
export const esStored: StoredWords = {
  open: 'Qué se guarda aquí',
  openAbout: 'Vea cuánto es, guárdelo todo en un archivo o bórrelo todo.',
  title: 'Qué se guarda aquí',
  lead: 'Todo está en este equipo, en este navegador, y en ningún otro sitio.',
  amounts: {
    title: 'Cuánto hay',
    kind: 'Qué',
    count: 'Cuántos',
    size: 'Tamaño',
    sets: 'Series medidas',
    diary: 'Anotaciones del diario: planes, síntomas, respuestas',
    people: 'Personas',
    model: (name) => `Modelo que ve la pierna: ${name}`,
    program: 'El propio programa',
    about: 'Ningún vídeo y ninguna imagen.',
    room: (used, given) => `El navegador cuenta ${used} para esta dirección y tiene sitio para ${given}.`,
    looking: 'Mirando …',
  },
  keep: {
    title: 'Si falta sitio en el disco',
    states: {
      kept: 'El navegador ha prometido conservarlo todo.',
      'not-kept': 'El navegador puede borrarlo todo cuando falte sitio en el disco.',
      unknown: 'Este navegador no dice qué hace cuando falta sitio en el disco.',
    },
    ask: 'Pedir al navegador que lo conserve',
    refused: 'El navegador no lo ha prometido. Muchos lo hacen cuando la aplicación está instalada o se usa a menudo.',
  },
  offline: {
    title: 'Sin red',
    states: {
      starting: 'Mirando si ya está todo.',
      without: 'Este navegador necesita la red cada vez.',
      waits: 'Su navegador está puesto para ahorrar datos, así que el modelo no se descarga solo.',
      failed: 'No ha llegado todo. Se prueba otra vez en la próxima visita.',
      'no-room':
        'No hay sitio para guardar Evenside para cuando no haya red: libere espacio en este equipo y vuelva a cargar la página.',
      ready: 'Listo para funcionar sin red',
    },
    fetching: (percent) => `Preparándose para funcionar sin red: ${percent} %`,
    fetch: 'Descargarlo ahora',
    again: 'Probar otra vez',
    install: 'En el menú del navegador puede instalar Evenside como una app.',
  },
  files: {
    title: 'Guardarlo todo',
    about: 'Sus series y todo su diario en un archivo. Se puede recuperar aquí o en otro equipo.',
    save: 'Guardarlo todo en un archivo',
    people: 'Los datos de otras personas se guardan en la página de cada una.',
    openPeople: 'Abrir la lista de personas',
  },
  erase: {
    title: 'Borrarlo todo',
    about: 'Esto borra de este equipo, para siempre:',
    what: [
      'todas las series medidas y todo el diario: planes, síntomas, respuestas',
      'todas las personas de la lista, con todo lo que se guarda de ellas',
      'lo que eligió: el ejercicio, el idioma, el bloqueo con contraseña',
      'el programa que se guarda aquí para cuando no hay red',
    ],
    begin: 'Borrarlo todo …',
    cancel: 'No borrar nada',
    done: 'Todo está borrado',
    doneAbout:
      'No queda nada de Evenside en este navegador. Puede cerrar esta página. Los archivos que guardó siguen donde los puso.',
    anew: 'Empezar de nuevo',
  },
  update: {
    ready: 'Hay una versión nueva.',
    take: 'Usarla ahora',
    otherTab: 'Otra pestaña de Evenside está en medio de algo. Termine allí o ciérrela y pruebe otra vez.',
  },
};
