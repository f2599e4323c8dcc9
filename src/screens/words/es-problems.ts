import type { Words } from './words.ts';

/** What went wrong and what to do, in Spanish. */
export const esProblems: Words['problems'] = {
  'camera-denied': (by) => ({
    title: by === 'system' ? 'Este equipo no deja la cámara al navegador.' : 'El navegador no tiene permiso para usar la cámara.',
    todo:
      by === 'system'
        ? 'Permita que el navegador use la cámara en los ajustes de privacidad del equipo y pruebe otra vez.'
        : 'Dé permiso: pulse la cámara o el candado junto a la dirección, arriba, elija «permitir» y pruebe otra vez.',
  }),
  'camera-none': () => ({
    title: 'No se encontró ninguna cámara.',
    todo: 'Conecte una o enciéndala y pruebe otra vez. También sirve un archivo de vídeo.',
  }),
  'camera-in-use': () => ({
    title: 'Otro programa está usando la cámara.',
    todo: 'Cierre las videollamadas y otros programas de cámara y pruebe otra vez.',
  }),
  'camera-other-tab': () => ({
    title: 'En otra pestaña hay una serie en marcha con esta cámara.',
    todo: 'Termínela allí o cierre esa pestaña y pruebe otra vez.',
  }),
  'camera-gone': () => ({ title: 'Esta cámara ya no está.', todo: 'Conéctela o elija otra.' }),
  'camera-unreadable': () => ({
    title: 'La cámara no da imagen.',
    todo: 'Desconéctela y vuelva a conectarla, o reinicie el equipo, y pruebe otra vez.',
  }),
  'camera-constraints': () => ({ title: 'Esta cámara no puede dar la imagen que hace falta.', todo: 'Elija otra cámara.' }),
  'camera-silent': () => ({
    title: 'La cámara está encendida, pero no llega ninguna imagen.',
    todo: 'Abra su tapa, revise su interruptor y pruebe otra vez.',
  }),
  'camera-lost': () => ({
    title: 'La imagen de la cámara se paró o cambió de forma.',
    todo: 'Revise el cable, deje el teléfono como está y pruebe otra vez.',
  }),
  'camera-insecure': () => ({
    title: 'El navegador no da la cámara a esta dirección.',
    todo: 'Abra Evenside en su dirección en este equipo (127.0.0.1) o por https.',
  }),
  'camera-unsupported': () => ({
    title: 'Este navegador no puede usar una cámara.',
    todo: 'Abra Evenside en un Chrome, Edge o Chromium actual.',
  }),
  'file-empty': () => ({ title: 'Este archivo está vacío.', todo: 'Elija otro o cópielo otra vez desde su origen.' }),
  'file-not-video': () => ({ title: 'Este archivo no es un vídeo.', todo: 'Elija un archivo MP4, MOV, WebM o MKV.' }),
  'file-no-picture': () => ({ title: 'Este archivo no tiene imagen, solo sonido.', todo: 'Elija una grabación de la serie.' }),
  'file-codec': (codec) => ({
    title: codec
      ? `Este navegador no puede mostrar vídeos de este tipo (${codec}).`
      : 'Este navegador no puede mostrar vídeos de este tipo.',
    todo: 'Guárdelo como MP4 (H.264) o grabe otra vez con el teléfono en «máxima compatibilidad».',
  }),
  'file-damaged': () => ({ title: 'Este vídeo está dañado.', todo: 'Cópielo otra vez desde su origen o elija otro.' }),
  'file-broken': () => ({ title: 'Este vídeo se corta a la mitad.', todo: 'Cópielo otra vez desde su origen.' }),
  'photo-unreadable': () => ({
    title: 'Este archivo no es una foto que el navegador pueda mostrar.',
    todo: 'Elija un archivo JPEG, PNG o WebP.',
  }),
  'bundle-missing': () => ({
    title: 'El modelo que ve la pierna no está aquí.',
    todo: 'Inicie otra vez Evenside en este equipo y vuelva a cargar esta página.',
  }),
  'bundle-broken-off': () => ({
    title: 'No se pudo cargar el modelo que ve la pierna.',
    todo: 'Compruebe que Evenside sigue en marcha y pruebe otra vez.',
  }),
  'bundle-wrong': () => ({
    title: 'El modelo que ve la pierna no es el correcto y por eso no se usa.',
    todo: 'Vuelva a cargar esta página. Si sigue igual, la copia de Evenside en el servidor está dañada: avise a quien la mantiene.',
  }),
  'pose-wasm': () => ({
    title: 'No se pudo iniciar la parte que ve la pierna.',
    todo: 'Vuelva a cargar esta página o use un Chrome, Edge o Chromium actual.',
  }),
  'pose-model': () => ({
    title: 'El modelo que ve la pierna no puede funcionar aquí.',
    todo: 'Elija «Rápido» en «Más opciones» o use un Chrome, Edge o Chromium actual.',
  }),
  'pose-failed': () => ({
    title: 'La parte que ve la pierna se paró.',
    todo: 'Pruebe otra vez. Si se para de nuevo, elija «Rápido» en «Más opciones».',
  }),
  'nothing-measured': () => ({
    title: 'No se contó ningún movimiento.',
    todo: 'Siéntese o acuéstese de modo que la cámara vea toda su pierna de lado y pruebe otra vez.',
  }),
  'example-missing': () => ({
    title: 'El vídeo de ejemplo no está aquí.',
    todo: 'Use la cámara o un archivo de vídeo en su lugar.',
  }),
  'not-stored': () => ({
    title: 'La serie se midió, pero no se pudo guardar: solo esta página la tiene.',
    todo: 'Libere espacio en este equipo y guárdela, o guárdela como archivo.',
  }),
  'store-full': () => ({
    title: 'No queda espacio para guardar nada.',
    todo: 'Libere espacio en este equipo y pruebe otra vez. Hasta entonces deje abierta esta página.',
  }),
  'store-blocked': () => ({
    title: 'Otra pestaña tiene ocupadas las series guardadas.',
    todo: 'Cierre las otras pestañas de Evenside y pruebe otra vez.',
  }),
  'store-unavailable': () => ({
    title: 'Esta ventana del navegador no deja a Evenside guardar series.',
    todo: 'Salga de la navegación privada o permita que esta página guarde datos.',
  }),
  'store-newer': () => ({
    title: 'Una versión más nueva de Evenside escribió las series guardadas.',
    todo: 'Vuelva a cargar esta página.',
  }),
  'store-locked': () => ({
    title: 'Las series guardadas están bloqueadas.',
    todo: 'Vuelva a cargar esta página y desbloquéelas con su frase de contraseña.',
  }),
  'lock-wrong': () => ({
    title: 'Esta no es la frase de contraseña.',
    todo: 'Escríbala de nuevo; cuentan las mayúsculas y los espacios.',
  }),
  'lock-short': () => ({
    title: 'Esta frase de contraseña es demasiado corta.',
    todo: 'Use al menos 8 caracteres, mejor varias palabras.',
  }),
  'lock-other-tabs': () => ({
    title: 'Evenside está abierto en otras pestañas.',
    todo: 'Cierre primero las demás pestañas de Evenside e inténtelo de nuevo.',
  }),
  'lock-set-running': () => ({
    title: 'Todavía hay una serie en marcha o sin guardar.',
    todo: 'Termínela primero e inténtelo de nuevo.',
  }),
  'lock-changed': () => ({ title: 'El bloqueo se cambió en otra pestaña.', todo: 'Vuelva a cargar esta página.' }),
  'lock-damaged': () => ({
    title: 'Lo que abre la frase de contraseña está dañado, así que los registros no se pueden desbloquear.',
    todo: 'Vuelva a cargar esta página; si no sirve, solo queda borrar todo y empezar de nuevo.',
  }),
  'store-stalled': () => ({ title: 'El almacén no responde.', todo: 'Vuelva a cargar esta página.' }),
  'store-failed': () => ({ title: 'No se pudo llegar a las series guardadas.', todo: 'Vuelva a cargar esta página.' }),
  'store-refused': () => ({ title: 'Esto no se pudo guardar.', todo: 'Vuelva a cargar esta página y pruebe una vez más.' }),
  'set-missing': () => ({ title: 'Esta serie no está guardada aquí.', todo: 'Vuelva atrás y elija una de la lista.' }),
  'set-damaged': () => ({
    title: 'Esta serie está guardada, pero no se puede leer.',
    todo: 'Las demás no están afectadas. Vuelva atrás y elija otra.',
  }),
  'set-running': () => ({ title: 'Esta serie sigue en marcha en otra pestaña.', todo: 'Termínela allí primero.' }),
  'rep-missing': () => ({ title: 'Esta repetición no está en la serie.', todo: 'Vuelva a cargar esta página.' }),
  'window-unsupported': () => ({
    title: 'Este navegador no puede compartir una ventana con esta página.',
    todo: 'Abra Evenside en un Chrome, Edge o Chromium actual en un ordenador.',
  }),
  'window-denied': () => ({
    title: 'No se eligió ninguna ventana.',
    todo: 'Pulse otra vez el botón y elija la ventana de la llamada.',
  }),
  'window-unreadable': () => ({ title: 'Esta ventana no se puede compartir.', todo: 'Elija otra ventana o toda la pantalla.' }),
  'changed-elsewhere': () => ({
    title: 'Esto se cambió entretanto en otra pestaña, por eso no se guardó.',
    todo: 'Anote lo que cambió, cargue esta página otra vez y cámbielo allí.',
  }),
  'person-missing': () => ({
    title: 'Esta persona no está en este equipo.',
    todo: 'Mire en la lista de personas; puede que se haya eliminado aquí o en otra pestaña.',
  }),
  'window-lost': () => ({
    title: 'La ventana ya no se comparte, o cambió de tamaño.',
    todo: 'Elíjala otra vez. Lo que se marcó hasta entonces está guardado.',
  }),
  'window-silent': () => ({ title: 'No llega imagen de esta ventana.', todo: 'Póngala delante y pruebe otra vez.' }),
  unexpected: (detail) => ({
    title: detail ? `Algo salió mal: ${detail}` : 'Algo salió mal.',
    todo: 'Pruebe otra vez. Lo que se contó está guardado.',
  }),
};
