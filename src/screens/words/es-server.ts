import type { ServerWords } from './server-words.ts';

const records = (n: number): string => (n === 1 ? 'un registro' : `${n} registros`);

/** The clinic's server, in Spanish. */
export const esServer: ServerWords = {
  title: 'El servidor de la clínica',
  open: { name: 'El servidor de la clínica', about: 'Enviarle registros y recoger lo nuevo que tenga' },
  none: 'Esta página no conoce ningún servidor. Quien la ofrece puede indicar uno.',
  leaves: {
    title: 'Qué sale de este equipo',
    self: 'Solo cuando pulsa «Enviar ahora»: su plan, sus series con los ángulos, los cambios a mano y lo que contó de los síntomas, con sus notas. Puede verlo quien tenga permiso de lectura en el servidor.',
    person:
      'Solo cuando pulsa «Enviar ahora»: el plan de esta persona, sus series con los ángulos, los cambios a mano y lo que contó de los síntomas. Sus propias notas sobre la persona se quedan aquí.',
    stays: 'Los vídeos y las imágenes nunca se envían, ni tampoco lo inventado para probar el programa.',
  },
  address: 'Servidor',
  openServer:
    'Esto es para un servidor abierto de pruebas: no pide identificarse y cualquiera que llegue a él puede leer lo enviado. Use allí personas inventadas.',
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
