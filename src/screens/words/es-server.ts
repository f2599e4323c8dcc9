import type { ServerWords } from './server-words.ts';

const records = (n: number): string => (n === 1 ? 'un registro' : `${n} registros`);

/** The clinic's server, in Spanish. */
export const esServer: ServerWords = {
  title: 'El servidor de la clínica',
  open: { name: 'El servidor de la clínica', about: 'Enviarle registros y recoger lo nuevo que tenga' },
  none: 'Esta página no conoce ningún servidor. Quien la ofrece puede indicar uno.',
  leaves: {
    title: 'Qué sale de este equipo',
    self: 'Solo cuando pulsa «Enviar ahora», o por sí solo si lo elige aquí: su plan, sus series con los ángulos, los cambios a mano y lo que contó de los síntomas, con sus notas. Puede verlo quien tenga permiso de lectura en el servidor.',
    person:
      'Solo cuando pulsa «Enviar ahora»: el plan de esta persona, sus series con los ángulos, los cambios a mano y lo que contó de los síntomas. Sus propias notas sobre la persona se quedan aquí.',
    stays: 'Los vídeos y las imágenes nunca se envían, ni tampoco lo inventado para probar el programa.',
  },
  address: 'Servidor',
  openServer:
    'Esto es para un servidor abierto de pruebas: no pide identificarse y cualquiera que llegue a él puede leer lo enviado. Use allí personas inventadas.',
  signIn: {
    about:
      'Inicia sesión en la página de la propia clínica y vuelve aquí. Evenside nunca ve su contraseña; lo que puede hacer con los registros está escrito en esa página.',
    keep: 'Mantener la sesión en este equipo',
    keepAbout:
      'Solo en un equipo suyo: quien pueda usar este navegador podrá llegar a sus registros en la clínica, salvo que esté puesto el bloqueo con contraseña. Sin esto inicia sesión de nuevo cada vez que se abre esta página.',
    go: 'Iniciar sesión',
    state: 'Sesión',
    in: 'Abierta',
    out: 'Cerrada',
    end: 'Cerrar la sesión',
    ended: 'La sesión está cerrada, aquí y en la clínica.',
    endedHere: 'La sesión está cerrada aquí. No se pudo avisar a la clínica; lo que dio caduca por sí solo.',
    faults: {
      unreachable: 'No se puede llegar al inicio de sesión: compruebe la conexión e inténtelo de nuevo.',
      'not-offered':
        'Este servidor no ofrece el inicio de sesión que Evenside conoce (SMART App Launch 2): dígaselo a quien ofrece esta página.',
      'other-origin':
        'El inicio de sesión de la clínica está en una dirección a la que esta página no puede preguntar: dígaselo a quien ofrece esta página.',
      denied: 'No se le dejó entrar, o dijo que no allí: inicie sesión de nuevo si quiere seguir.',
      'not-asked': 'Ese inicio de sesión no empezó aquí, o hace demasiado tiempo: inicie sesión de nuevo.',
      'too-late': 'Ese inicio de sesión ya se usó o es demasiado antiguo: inicie sesión de nuevo.',
      'no-patient':
        'La clínica no dijo de quién son estos registros: inicie sesión de nuevo y elija allí a una persona si se le pregunta.',
      'somebody-else':
        'Inició sesión como otra persona que la de estos registros, así que se cerró de nuevo: desconecte antes si es correcto.',
      refused: 'El inicio de sesión de la clínica rechaza esta página: dígaselo a quien la ofrece.',
    },
  },
  automatic: {
    send: 'Enviar por sí solo cuando haya algo nuevo y red',
    sendAbout: 'Después de una serie, de lo que cuente, y al abrir esta página; nunca durante una serie.',
    takeIn: 'Recoger por sí solo al abrir la lista de personas',
    takeInAbout: 'Con eso no se envía nada. Lo que usted escribe solo sale con «Enviar ahora».',
    working: 'Enviando por sí solo…',
    trouble: 'El envío por sí solo no funcionó',
    troubleForNow: 'El envío por sí solo no funcionó; se intentará más tarde',
    signedOut: (waiting) =>
      `${waiting === 1 ? 'Un registro espera' : `${waiting} registros esperan`} para la clínica: allí no hay sesión abierta.`,
    look: 'Al servidor de la clínica',
  },
  intake: {
    lead: 'Primero quien le necesita. Se guarda en este equipo; quien está conectado con el servidor de la clínica tiene registros también allí.',
    working: 'Preguntando al servidor de la clínica qué hay de nuevo…',
    new: (fresh, grown) => `Del servidor de la clínica: ${records(fresh)} de nuevo, ${grown} cambiados a mano.`,
    failed: 'No se pudo recoger todo del servidor de la clínica.',
    look: 'Ver por qué',
  },
  id: 'Identificador de paciente en el servidor',
  idHint: 'Tal como lo dio la clínica: letras, cifras, guiones y puntos.',
  idWrong: 'Un identificador tiene de 1 a 64 letras, cifras, guiones o puntos: cópielo tal como lo dio la clínica.',
  connect: 'Conectar',
  working: 'Un momento…',
  patient: 'Conectado como',
  waiting: 'Pendiente de enviar',
  records,
  lastSent: 'Último envío',
  lastTaken: 'Última recogida',
  never: 'Nunca',
  send: 'Enviar ahora',
  takeIn: 'Recoger ahora',
  sent: (n) => (n === 0 ? 'No había nada pendiente: el servidor lo tiene todo.' : `Enviado: ${records(n)}.`),
  unwanted: (n, detail) =>
    `El servidor no acepta ${records(n)}; se quedan aquí y se intentará la próxima vez.${detail ? ` Dice: ${detail}` : ''}`,
  taken: (fresh, grown) =>
    fresh + grown === 0 ? 'No hay nada nuevo en el servidor.' : `Nuevo aquí: ${records(fresh)}. Cambiado a mano: ${grown}.`,
  conflicts: (n) => `${n === 1 ? 'Un registro difiere' : `${n} registros difieren`} de lo que hay aquí; se conservó lo de aquí.`,
  unread: (n) => `${n === 1 ? 'Un documento' : `${n} documentos`} del servidor no se pueden leer y se dejaron fuera.`,
  disconnect: 'Desconectar',
  disconnectAbout: 'No se borra ningún registro, ni aquí ni allí.',
  fault: 'No funcionó',
  elsewhere: 'Algunos de estos registros ya están aquí con otra persona, así que no se recogió nada: compruebe el identificador.',
  faults: {
    unreachable: 'No se puede llegar al servidor: compruebe la conexión e inténtelo de nuevo; no se pierde nada.',
    'not-allowed': 'El servidor no deja entrar a esta página: pida acceso a la clínica.',
    'signed-out': 'No hay sesión abierta en la clínica, o ya no: inicie sesión de nuevo; no se pierde nada.',
    busy: 'El servidor tiene demasiado trabajo: inténtelo en unos minutos; no se pierde nada.',
    'at-once': 'Otra persona escribía en el mismo momento: inténtelo de nuevo.',
    condition: 'El servidor lo rechaza porque algo está allí dos veces: dígaselo a la clínica.',
    failed: 'El servidor tiene un fallo propio: inténtelo más tarde; no se pierde nada.',
    'too-large': 'Un registro es mayor de lo que admite el servidor: dígaselo a la clínica.',
    'not-there': 'El servidor no conoce a nadie con este identificador: compruébelo con la clínica.',
    refused: 'El servidor rechaza lo que se le pidió: dígaselo a la clínica.',
    'not-fhir': 'Lo que responde en esta dirección no habla FHIR R4: dígaselo a quien ofrece esta página.',
  },
};
