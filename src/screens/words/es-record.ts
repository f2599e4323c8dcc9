import { counted } from './es-plural.ts';
import type { RecordWords } from './record-words.ts';

/** Sending a record and taking one in, in Spanish. */
export const esRecord: RecordWords = {
  send: {
    open: { self: 'Enviar mi registro', person: 'Entregar este registro' },
    title: { self: 'Enviar mi registro', person: 'Entregar este registro' },
    lead: {
      self: 'Todas sus series y todo lo que ha contado, en un solo archivo para su fisioterapeuta o para otro equipo suyo.',
      person: 'Todas las series y todo lo anotado de esta persona, en un solo archivo. Las notas de usted no van en él.',
    },
    name: 'Nombre o código en el archivo (puede quedar vacío)',
    nameHint: 'Sin él, el archivo solo dice con un número al azar de quién es.',
    seal: 'Quién puede abrir el archivo',
    sealed: {
      name: 'Solo quien sepa la frase de contraseña',
      about: 'El archivo va cifrado. Dé la frase por otra vía, no con el archivo.',
    },
    plain: { name: 'Quien tenga el archivo', about: 'Nada va cifrado.' },
    forgotten:
      'Nadie puede abrir el archivo sin su frase de contraseña, ni siquiera nosotros. Si se olvida, guarde y envíe un archivo nuevo.',
    short: (least) => `La frase de contraseña necesita al menos ${least} caracteres.`,
    health: {
      title: 'Este archivo contiene datos de salud.',
      todo: 'Evenside solo lo guarda. Por qué vía lo envía, y a quién, lo decide usted.',
    },
    save: 'Guardar el archivo',
    working: 'En curso …',
    saved: (file) => `Guardado como ${file}, donde su navegador deja las descargas.`,
    inIt: (sets, entries) =>
      `Contiene ${counted(sets, 'serie medida', 'series medidas')} y ${counted(entries, 'anotación', 'anotaciones')}.`,
    damaged: (n) =>
      `No se pueden leer ${counted(n, 'anotación guardada', 'anotaciones guardadas')}, así que no van en el archivo.`,
  },
  bring: {
    open: {
      anybody: { name: 'Incorporar un registro', about: 'Un archivo que alguien le envió.' },
      person: { name: 'Incorporar un registro', about: 'Un archivo que esta persona le envió.' },
      self: {
        name: 'Pasar a otro equipo',
        about: 'Incorpore su propio registro desde el archivo que guardó en el otro equipo.',
      },
    },
    title: { anybody: 'Incorporar un registro', person: 'Incorporar un registro', self: 'Pasar a otro equipo' },
    lead: {
      anybody: 'Abra el archivo que alguien le envió. Verá lo que contiene antes de que se guarde nada.',
      person: 'Abra el archivo que esta persona le envió. Verá lo que contiene antes de que se guarde nada.',
      self: 'Guarde su registro en el otro equipo y abra aquí su archivo. Verá lo que contiene antes de que se guarde nada.',
    },
    pick: 'Elegir el archivo',
    pickHint: 'o suéltelo aquí',
    checking: 'Comprobando el archivo …',
    sealedTitle: 'Este registro está cifrado.',
    sealedHint: 'Escriba la frase de contraseña que se eligió al guardarlo.',
    unseal: 'Abrirlo',
    found: 'Lo que contiene',
    whose: 'De quién',
    unnamed: 'El archivo no da ningún nombre',
    period: 'Desde, hasta',
    fromTo: (from, to) => `${from} a ${to}`,
    nothing: 'Ninguna serie ni anotación',
    holds: 'Contiene',
    counts: (sets, checkIns, entries) =>
      `${counted(sets, 'serie', 'series')}, ${counted(checkIns, 'respuesta del día siguiente', 'respuestas del día siguiente')}, ${counted(entries, 'otra anotación', 'otras anotaciones')}`,
    news: 'Nuevo aquí',
    fresh: (sets, entries) => `${counted(sets, 'serie', 'series')}, ${counted(entries, 'anotación', 'anotaciones')}`,
    grown: (n) => `${counted(n, 'serie', 'series')} de las que ahora se sabe más`,
    staysRemoved: (n) =>
      n === 1
        ? '1 serie del archivo se borró antes y sigue borrada.'
        : `${n} series del archivo se borraron antes y siguen borradas.`,
    removedThere: (n) =>
      n === 1
        ? '1 serie que estaba aquí la borró quien envió el archivo, y se borra también aquí.'
        : `${n} series que estaban aquí las borró quien envió el archivo, y se borran también aquí.`,
    noNews: 'Nada: todo está ya aquí',
    conflicts: (n) => `${counted(n, 'parte dice', 'partes dicen')} otra cosa aquí. Lo que hay aquí se queda.`,
    forWhom: 'Para quién',
    somebodyNew: { name: 'Una persona nueva', about: 'Se añade a su lista.' },
    somebodyHere: { name: 'Alguien de mi lista', about: 'Se une a lo que hay aquí.' },
    person: 'Persona',
    known: (name) => `Ya se incorporó un registro de esta persona, para ${name}.`,
    take: 'Incorporarlo',
    notNow: 'Ahora no',
    taking: 'Incorporándolo …',
    done: 'Está incorporado.',
    toPerson: 'Ir a esta persona',
    toReview: 'Ir a la revisión',
    toToday: 'Ir a hoy',
    another: 'Incorporar otro archivo',
    plan: { title: 'Este archivo es un plan, no un registro.', todo: 'Puede mirarlo y aceptarlo si es para usted.' },
    openPlan: 'Abrir el plan',
    faults: {
      'not-a-record': {
        title: 'Esto no es un registro de Evenside.',
        todo: 'Elija el archivo que se guardó en «Enviar mi registro»; su nombre empieza por evenside-record.',
      },
      'record-damaged': {
        title: 'Este registro se dañó por el camino: falta una parte o ha cambiado.',
        todo: 'Copie otra vez el archivo desde su origen o pida que se lo envíen de nuevo.',
      },
      'record-newer': {
        title: 'Este registro se hizo con un Evenside más nuevo.',
        todo: 'Vuelva a cargar esta página; si sigue así, actualice el Evenside que usa.',
      },
      'record-wrong': {
        title: 'Algo en este registro no es como debe ser en un registro.',
        todo: 'No se guardó nada de él. Pida que lo guarden y se lo envíen otra vez.',
      },
      'record-too-large': {
        title: 'Esto es demasiado grande para ser un registro.',
        todo: 'Elija el archivo que se guardó en «Enviar mi registro».',
      },
      'record-passphrase': {
        title: 'Esta frase de contraseña no abre el registro.',
        todo: 'Escríbala otra vez. Si sigue así, pídala de nuevo o pida que le envíen otro archivo.',
      },
      'file-unreadable': { title: 'No se pudo leer el archivo.', todo: 'Cópielo a este equipo y elíjalo otra vez.' },
    },
    elsewhere: (name, n) => ({
      title: `${counted(n, 'parte', 'partes')} de este registro ya ${n === 1 ? 'está' : 'están'} aquí con otra persona: ${name}.`,
      todo: 'No se guardó nada. Elija a esa persona o elimínela antes si fue un error.',
    }),
    elsewhereOwn: 'su propio registro en este equipo',
    where: (place) => `Para quien lo investigue: ${place}`,
  },
};
