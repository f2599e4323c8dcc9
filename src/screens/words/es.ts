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
import { plural, smallOnes, times } from './es-plural.ts';
import { esPrescribe } from './es-prescribe.ts';
import { esProblems } from './es-problems.ts';
import { esProgress } from './es-progress.ts';
import { esRecount } from './es-recount.ts';
import { esReport } from './es-report.ts';
import { esResult } from './es-result.ts';
import { esReview } from './es-review.ts';
import type { Words } from './words.ts';

/** How the one signal is given. */
const signalled = (camera: boolean, keys: boolean): string =>
  [...(camera ? ['levante una mano'] : []), keys ? 'pulse la barra espaciadora' : 'pulse el botón'].join(' o ');

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
      'Fiebre, malestar, o un dolor fuerte y nuevo después de una caída.',
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
      angle: 'dedo gordo, extensión',
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
  set: {
    title: 'Su serie',
    opening: 'Preparando …',
    loadingModel: 'Preparando …',
    looking: 'Buscando su pierna …',
    ready: 'Listo. Empiece cuando quiera.',
    readyVoice: 'Listo. Empiece cuando quiera.',
    signalVoice: {
      onset: (...ways) => `Cuando empiecen los síntomas, ${signalled(...ways)}.`,
      symptoms: (...ways) => `Si los síntomas aumentan, ${signalled(...ways)}. Entonces termina la serie.`,
      stop: (...ways) => `Para parar, ${signalled(...ways)}.`,
    },
    signalKeys: (camera) => (camera ? 'o levante una mano, o pulse la barra espaciadora' : 'o pulse la barra espaciadora'),
    escapeKey: 'o pulse Escape',
    handStopVoice: 'He visto su mano. La serie termina.',
    pastOnset: 'Un poco menos lejos.',
    beat: { out: 'Suba', hold: 'Mantenga', back: 'Baje' },
    beatWaits: 'Compás',
    holdFor: (seconds, of) => `Mantenga ${seconds} de ${of} s`,
    holdDone: 'Y vuelva',
    holdDoneVoice: 'Y vuelva.',
    counting: 'Contando',
    doseDone: (target) => `Ya están las ${target}. Puede descansar.`,
    lost: 'No veo su pierna. Su cuenta está guardada.',
    lostVoice: 'No veo su pierna.',
    foundVoice: 'Ya le veo otra vez.',
    stickers: {
      looking: 'Buscando las tres pegatinas …',
      kept: 'Su cuenta está guardada.',
      mixedUp: 'Otra cosa parece una pegatina. No cuento. Deje el pie a la vista.',
      foundVoice: 'Ya las veo otra vez.',
      picture: 'La imagen, con las pegatinas de su pie y el ángulo dibujados encima',
      left: 'La serie ha terminado, las pegatinas no se veían.',
      gap: 'pegatinas perdidas un momento',
      nothing: 'Mantenga las tres pegatinas en la imagen, primero con el pie quieto, y pruebe otra vez.',
      stopped: 'La parte que sigue las pegatinas se paró.',
      stoppedTodo: 'Pruebe otra vez. Si vuelve a pararse, cargue de nuevo esta página.',
    },
    unseen: {
      glare: 'La luz se refleja en una pegatina. Aparte la lámpara.',
      'like-surround': 'Junto a una pegatina hay algo de su color. Quítelo.',
      covered: 'Una pegatina está tapada. Deje que se vea.',
      lost: 'No veo las tres pegatinas.',
    },
    saving: 'Calculando su resultado …',
    finishing: {
      'target-reached': 'Listo. Puede descansar.',
      left: 'La serie terminó: salió de la imagen.',
      'above-limit':
        'La serie termina: la pierna subió por encima de su límite. Bájela y descanse. Si los síntomas no ceden, dígaselo a su fisioterapeuta.',
      symptoms:
        'La serie termina porque los síntomas aumentan. Baje la pierna y descanse. Si no ceden, dígaselo a su fisioterapeuta.',
    },
    endedVoice: (count) => `Listo. ${count} ${times(count)}.`,
    advice: {
      nobody: 'No veo a nadie. Entre en la imagen.',
      'leg-hidden': 'Su pierna está tapada. Quite lo que estorba.',
      'too-near': 'Demasiado cerca. Aléjese de la cámara.',
      'too-far': 'Demasiado lejos. Acérquese a la cámara.',
      'not-side-on': 'Gírese para que la cámara le vea de lado.',
      'wrong-leg': 'La otra pierna está más cerca. Dese la vuelta.',
      'too-dark': 'Demasiado oscuro. Encienda una luz.',
      'not-sitting': 'Siéntese en una silla con la espalda recta.',
      'not-standing': 'Póngase de pie, con las piernas rectas.',
      'not-lying': 'Acuéstese del todo, boca arriba.',
      'leg-not-held': 'Levante la pierna recta con la correa, solo hasta que empiecen los síntomas.',
      'leg-too-high': 'La pierna está demasiado alta. Bájela un poco.',
      'stickers-missing': 'No veo las tres pegatinas. Muestre la cara interna del pie.',
      'stickers-small': 'El pie se ve demasiado pequeño. Acerque la cámara.',
      'hold-still': 'Bien. Ahora no se mueva.',
    },
    count: 'Cuenta',
    ofTarget: (target) => `de ${target}`,
    small: (n) => smallOnes(n),
    smallVoice: 'pequeña',
    glideWrong: 'Cuando aleje la punta del pie, levante la cabeza.',
    glideTrouble: {
      'head-still': 'No veo que mueva la cabeza. Levántela al alejar la punta del pie.',
      'foot-still': 'No veo que mueva el pie. Aleje la punta al levantar la cabeza.',
      'head-hidden': 'No veo su cabeza. Despeje la vista hacia ella.',
      'foot-hidden': 'No veo su pie. Despeje la vista hacia él.',
    },
    onset: 'Aquí empiezan los síntomas',
    onsetMarked: 'Inicio de los síntomas anotado',
    onsetVoice: 'Anotado.',
    stop: 'Parar',
    example: 'Ejemplo grabado',
    cameraOn: 'La cámara está encendida',
    voiceOn: 'Con sonido',
    voiceOff: 'Sin sonido',
    picture: 'La imagen, con su pierna dibujada encima',
    progress: 'Medido hasta ahora',
    measured: (share) => `${Math.round(share * 100)} % medido`,
    tryAgain: 'Probar otra vez',
    seeKept: 'Ver lo que se contó',
    storeTrouble: 'La última repetición no se ha guardado aún. Evenside lo va a intentar otra vez.',
  },
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
    title: 'Este navegador no puede ejecutar Evenside',
    todo: 'Abra esta dirección en un Chrome, Edge o Chromium actual.',
    features: {
      'secure-context': 'Esta dirección no es segura. Abra Evenside en 127.0.0.1 en este equipo, o por https.',
    },
  },
};
