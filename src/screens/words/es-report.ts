import type { ReportWords } from './report-words.ts';

/** The report, in Spanish. */
export const esReport: ReportWords = {
  title: 'Informe para el fisioterapeuta',
  open: 'Informe para imprimir o llevar',
  lead: 'Imprímalo o guarde sus números en archivos. No se envía nada a ninguna parte.',
  print: 'Imprimir o guardar como PDF',
  setsFile: 'Series en CSV',
  repsFile: 'Repeticiones en CSV',
  calendarFile: 'Series hechas para un calendario',
  everythingFile: 'Todo en JSON',
  filesHint:
    'Los archivos contienen todas las series y todo lo que contó, sean cuales sean las semanas elegidas. Déselos solo a alguien de confianza.',
  damaged: (n) =>
    n === 1
      ? 'Un dato guardado no se puede leer y no está en el archivo.'
      : `${n} datos guardados no se pueden leer y no están en el archivo.`,
  none: 'Todavía no hay ningún plan, así que no hay nada de que informar. Aun así, los archivos contienen lo que está guardado.',
  period: (from, to) => `Del ${from} al ${to}`,
  madeOn: (date) => `Hecho el ${date}`,
  name: 'Nombre:',
  invented:
    'Ejemplo inventado: el plan o algunos de los datos se inventaron para probar el programa. No es el historial de ninguna persona.',
  exercise: 'Ejercicio',
  sides: { left: 'izq.', right: 'der.' },
  prescribed: {
    title: 'Lo prescrito',
    by: {
      therapist: (date) => `Plan del ${date}, de un fisioterapeuta.`,
      patient: (date) => `Plan del ${date}, hecho por la propia persona con las dosis ofrecidas.`,
    },
    byName: (name) => `Nombre indicado: ${name}.`,
    changed: (n) => (n === 1 ? 'El plan cambió una vez en estas semanas.' : `El plan cambió ${n} veces en estas semanas.`),
    dose: 'Dosis actual, cada pierna',
    target: 'Hasta dónde',
    range: (from, to) => `de ${from}° a ${to}°`,
    daysAWeek: (n) => (n === 1 ? 'un día por semana' : `${n} días por semana`),
    limit: (most) => `límite de síntomas ${most} de 10`,
    atFirst: (dose) => `Al principio: ${dose}`,
  },
  done: {
    title: 'Lo hecho frente a lo previsto',
    sets: (done, due) => (due === 1 ? `${done} de una serie` : `${done} de ${due} series`),
    days: (n) => (n === 1 ? 'en un día' : `en ${n} días`),
    reps: (n) => (n === 1 ? 'una repetición' : `${n} repeticiones`),
  },
  measured: {
    title: 'Lo medido',
    none: 'La cámara no midió nada en estas semanas.',
    method: 'Método: cámara 2D, proyección sagital.',
    toeMethod: 'Dedo gordo: extensión del primer dedo desde el reposo, con tres marcas en la piel.',
    key: 'Punto: mediana de las repeticiones completas del día. Barra: error de medida del 95 %. Franja: objetivo. Línea discontinua: el otro lado, última medida.',
    errors:
      'El límite que una diferencia debe superar para ser más que el error: cambio mínimo detectable (95 %) y dispersión de las repeticiones. Estos errores proceden de cuerpos generados por ordenador, no de personas, y probablemente son demasiado pequeños.',
    daily: (days, error) => `Por día, grados, cada uno ± ${error}: ${days}.`,
    dailyLast: (days, error, n) => `Los últimos ${n} días medidos, grados, cada uno ± ${error}: ${days}.`,
    target: {
      below: (range) => `Lo último, por debajo del objetivo (${range}).`,
      within: (range) => `Lo último, dentro del objetivo (${range}).`,
      above: (range) => `Lo último, por encima del objetivo (${range}).`,
    },
    change: {
      real: (d, limit) => `Del primer día al último: ${d}°, más que el error (límite ${limit}°).`,
      'within-error': (d, limit) => `Del primer día al último: ${d}°, no más que el error (límite ${limit}°).`,
    },
    otherLeg: {
      real: (d, limit) => `Frente al otro lado: ${d}°, más que el error (límite ${limit}°).`,
      'within-error': (d, limit) => `Frente al otro lado: ${d}°, no más que el error (límite ${limit}°).`,
    },
    changeTooFew: 'Muy pocas repeticiones para ver un cambio.',
    otherTooFew: 'Muy pocas repeticiones para comparar los lados.',
    onlyDay: 'Medido un solo día: no se puede ver ningún cambio.',
    noOther: 'El otro lado no se midió.',
  },
  symptoms: {
    title: 'Síntomas y seguimiento',
    none: 'No se contó nada de síntomas en estas semanas.',
    day: 'Día',
    week: 'Semana del',
    strength: 'Intensidad',
    furthest: 'Lo más abajo',
    nextDay: 'Al día siguiente',
    fromTo: (least, most) => (least === most ? `${most}` : `${least} a ${most}`),
    afterwards: {
      'no-flare': 'sin reacción',
      settled: 'aumento, calmado',
      'not-settled': 'aumento, sin calmar',
    },
    weaker: 'menos fuerza que antes',
  },
  checks: {
    title: 'Fuerza, comprobada a solas',
    none: 'No se hizo ninguna comprobación en estas semanas.',
    check: 'Comprobación',
    fromTo: (first, last) => `${first}, después ${last}`,
    worse: 'peor que la vez anterior',
    steps: (n) => (n === 1 ? 'un paso' : `${n} pasos`),
  },
  safety: {
    title: 'Señales de alarma y altas',
    asked: (rounds) => (rounds === 1 ? 'Se preguntó una vez en estas semanas.' : `Se preguntó ${rounds} veces en estas semanas.`),
    noYes: 'A ninguna se respondió que sí.',
    unanswered: (n) => (n === 1 ? 'Una pregunta quedó sin responder.' : `${n} preguntas quedaron sin responder.`),
    yesTo: 'Sí a:',
    weakness: {
      'new-weakness': 'Debilidad nombrada de nuevo.',
      'told-worse': 'Contó que hay menos fuerza.',
      'self-check-worse': 'Una comprobación de la fuerza salió peor.',
    },
    cleared: 'Dijo que le vio un profesional sanitario y que puede seguir.',
    stopped: 'Ahora está detenido: el programa no empieza ninguna serie hasta que esto se aclare.',
  },
  steps: {
    title: 'Cambios de la dosis',
    proposed: 'Lo propuesto ahora',
    taken: 'Lo aceptado en estas semanas',
    noneTaken: 'Ninguno.',
    kinds: { up: 'subir', hold: 'mantener la dosis', back: 'bajar', contact: 'consultar al fisioterapeuta', stop: 'parar' },
    by: { rule: 'por la regla', patient: 'por deseo propio' },
    goodDays: 'Tras días buenos.',
    chosen: 'Por elección.',
  },
  standing:
    'Este informe apoya la exploración clínica y no la sustituye. No da ningún diagnóstico. Los números proceden de la cámara y de las respuestas de la propia persona, sin que nadie los haya comprobado.',
};
