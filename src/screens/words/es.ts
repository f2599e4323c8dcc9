import { esAway } from './es-away.ts';
import { esCheck } from './es-check.ts';
import { esCompare } from './es-compare.ts';
import { esDay } from './es-day.ts';
import { esDesk } from './es-desk.ts';
import { esFeel } from './es-feel.ts';
import { esHandOver } from './es-hand-over.ts';
import { esKept } from './es-kept.ts';
import { esPeople } from './es-people.ts';
import { esPlan } from './es-plan.ts';
import { plural } from './es-plural.ts';
import { esPrescribe } from './es-prescribe.ts';
import { esProblems } from './es-problems.ts';
import { esProgress } from './es-progress.ts';
import { esRecount } from './es-recount.ts';
import { esReport } from './es-report.ts';
import { esResult } from './es-result.ts';
import { esReview } from './es-review.ts';
import { esSet } from './es-set.ts';
import type { Words } from './words.ts';

/** Everything the screens say, in Spanish. */
export const es: Words = {
  locale: 'es',
  app: {
    name: 'Evenside',
    staysHere: 'Nada sale de este equipo: ni vídeo, ni números, ni nombres.',
    back: 'Atrás',
    loading: 'Cargando',
    notFound: 'No hay nada en esta dirección.',
    language: 'Idioma',
  },
  start: {
    therapist: 'Para terapeutas',
    today: 'Hoy',
    todayAbout: 'Su plan: qué toca, qué está hecho, cuándo puede venir la siguiente serie.',
    title: 'Sus ejercicios de pierna, contados y medidos',
    lead: 'Siéntese o acuéstese delante de la cámara, con las manos libres. Evenside cuenta cada movimiento y mide hasta dónde llegó.',
    ways: '¿Cómo quiere empezar?',
    sources: {
      camera: { name: 'Usar la cámara', about: 'Hacer una serie ahora, contada en voz alta.' },
      file: { name: 'Abrir un archivo de vídeo', about: 'Medir la grabación de una serie.' },
      example: { name: 'Verlo en un ejemplo grabado', about: 'Sin cámara. Dura más o menos un minuto.' },
    },
    sets: 'Sus series',
    countOf: (count, target) => (target === null ? `${count}` : `${count} de ${target}`),
    noSets: 'Aquí aparecerán sus series. Se quedan en este equipo.',
    damaged: (n) =>
      plural.select(n) === 'one'
        ? 'Hay una serie más guardada, pero no se puede leer.'
        : `Hay ${n} series más guardadas, pero no se pueden leer.`,
    showAll: (n) => `Mostrar las ${n}`,
    interrupted: 'Interrumpida',
    running: 'Sin terminar',
    cautionTitle: 'Antes de empezar',
    caution: [
      'Pare si la pierna duele más, o si el dolor, el hormigueo o el adormecimiento baja más.',
      'Evenside no sustituye a su fisioterapeuta. Haga lo que le indicaron.',
    ],
    redFlagsLink: 'Señales que necesitan atención urgente',
  },
  safety: {
    title: 'Señales que necesitan atención urgente',
    lead: 'No haga ejercicios. Vaya ahora mismo a urgencias o llame ahora mismo al servicio local de emergencias si algo de esto es nuevo o está empeorando:',
    signs: [
      'Adormecimiento o una sensación rara entre las piernas: alrededor de los genitales o del ano, donde tocaría una silla de montar.',
      'Le cuesta empezar a orinar, no nota que sale la orina o se le escapa.',
      'No nota que tiene el intestino lleno o pierde el control del intestino.',
      'Pérdida de sensibilidad o de función en las relaciones sexuales.',
      'Las dos piernas duelen u hormiguean, o las dos piernas pierden fuerza o sensibilidad.',
    ],
    todo: 'Cada hora cuenta: vaya hoy, también de noche. Diga «posible síndrome de la cauda equina (cola de caballo)».',
    alsoTitle: 'Vea a un médico el mismo día',
    also: [
      'Un pie o una pierna pierde fuerza, o el pie se cae más que antes.',
      'Fiebre, malestar o pérdida de peso sin querer.',
      'Un dolor fuerte y nuevo después de una caída, o si tiene o ha tenido cáncer.',
    ],
    limits: 'Esta lista no lo cubre todo. Si algo le preocupa, pregunte.',
  },
  exercises: {
    'foot-tap': {
      name: 'Elevación de la punta del pie',
      plural: 'Elevaciones de la punta del pie',
      about: 'En una silla, con el talón en el suelo: levante la punta del pie y bájela.',
      angle: 'tobillo',
    },
    'leg-raise': {
      name: 'Elevación de la pierna recta',
      plural: 'Elevaciones de la pierna recta',
      about: 'Boca arriba: levante la pierna recta y bájela.',
      angle: 'elevación de la pierna',
    },
    'nerve-glide': {
      name: 'Deslizamiento del nervio',
      plural: 'Deslizamientos del nervio',
      about:
        'Boca arriba, con una correa que sujeta la pierna en alto: aleje la punta del pie mientras levanta la cabeza, y acérquela hacia usted mientras apoya la cabeza.',
      angle: 'tobillo',
    },
    'heel-stand': {
      name: 'De pie sobre los talones',
      plural: 'De pie sobre los talones',
      about: 'De pie, con las manos en un apoyo: peso en los talones, levante la punta de los pies y quédese así.',
      angle: 'punta del pie',
    },
    'knee-straighten': {
      name: 'Extensión de la rodilla',
      plural: 'Extensiones de la rodilla, en una silla',
      about: 'En una silla: estire la rodilla y vuelva a bajar el pie.',
      angle: 'rodilla',
    },
    'toe-lift': {
      name: 'Levantar el dedo gordo',
      plural: 'Elevaciones del dedo gordo',
      about: 'En una silla: levante el dedo gordo del pie y bájelo.',
      angle: 'dedo gordo',
    },
  },
  sides: {
    left: { leg: 'Pierna izquierda', legLower: 'pierna izquierda' },
    right: { leg: 'Pierna derecha', legLower: 'pierna derecha' },
  },
  feet: {
    left: { leg: 'Pie izquierdo', legLower: 'pie izquierdo' },
    right: { leg: 'Pie derecho', legLower: 'pie derecho' },
  },
  choose: {
    title: '¿Qué va a hacer?',
    exercise: 'Ejercicio',
    side: '¿Qué pierna?',
    sideHint: 'La pierna que mueve. Debe ser la más cercana a la cámara.',
    reps: '¿Cuántas?',
    fewer: 'Una menos',
    moreReps: 'Una más',
    camera: {
      upright:
        'La cámara a su lado, a unos 2 metros, a la altura del asiento de una silla. Usted cabe en la imagen de la cabeza a los pies.',
      lying:
        'La cámara a su lado, a unos 2 metros, a la altura del asiento de una silla. Usted cabe en la imagen de la cabeza a los pies.',
      standing:
        'La cámara a su lado, a unos 3 metros, a la altura del asiento de una silla. Usted cabe en la imagen de la cabeza a los pies.',
    },
    cameraDrawing: {
      upright: 'Visto desde arriba: usted está en una silla y la cámara está a su lado, a unos 2 metros.',
      lying: 'Visto desde arriba: usted está boca arriba en una colchoneta y la cámara está a su lado, a unos 2 metros.',
      standing: 'Visto desde arriba: usted está de pie con las manos en un apoyo y la cámara está a su lado, a unos 3 metros.',
    },
    distance: { upright: 'unos 2 m', lying: 'unos 2 m', standing: 'unos 3 m' },
    more: 'Más opciones',
    kneeLimit: 'La rodilla puede doblarse, grados',
    kneeLimitLess: 'Menos doblada',
    kneeLimitMore: 'Más doblada',
    model: 'Con qué exactitud',
    models: {
      lite: { name: 'Rápido', about: 'Para un equipo o teléfono lento.' },
      full: { name: 'Normal', about: 'Bien para casi todos.' },
      heavy: { name: 'Lo más exacto', about: 'Para un equipo rápido.' },
    },
    head: '¿Dónde está su cabeza en la imagen?',
    heads: { find: 'Que la encuentre solo', left: 'A la izquierda', right: 'A la derecha' },
    cameraDevice: 'Cámara',
    anyCamera: 'La de siempre',
    unnamedCamera: (n) => `Cámara ${n}`,
    filmed:
      'El vídeo le muestra de lado, a unos 2 metros, de la cabeza a los pies. La pierna que se mueve es la más cercana a la cámara.',
    file: 'Archivo de vídeo',
    otherFile: 'Elegir otro',
    noFile: 'Elija el vídeo que quiere medir.',
    pickFile: 'Elegir un archivo de vídeo',
    begin: { camera: 'Encender la cámara', file: 'Medir el vídeo', example: 'Empezar el ejemplo' },
  },
  set: esSet,
  problems: esProblems,
  result: esResult,
  compare: esCompare,
  day: esDay,
  plan: esPlan,
  prescribe: esPrescribe,
  feel: esFeel,
  progress: esProgress,
  report: esReport,
  review: esReview,
  check: esCheck,
  handOver: esHandOver,
  desk: esDesk,
  lock: {
    open: 'Bloqueo con contraseña',
    openAbout: 'Cifrar todo lo guardado aquí, para que otras personas en este equipo no puedan leerlo',
  },
  kept: esKept,
  recount: esRecount,
  people: esPeople,
  away: esAway,
  unsupported: {
    title: 'Evenside no puede funcionar en esta dirección',
    todo: 'Desde aquí el navegador no deja que una página use la cámara ni guarde nada.',
    features: {
      'secure-context':
        'Esta dirección no es segura. Abra Evenside por https (https:// al principio), o en 127.0.0.1 en este equipo.',
    },
  },
};
