import type { StickerWords } from './sticker-words.ts';

/** Setting up a set by stickers, in Spanish. */
export const esStickers: StickerWords = {
  title: 'Tres pegatinas en el pie',
  lead: {
    toe: 'Siéntese con el pie apoyado y relajado, con la cara interna hacia la cámara.',
    ankle: 'Siéntese con el pie apoyado y relajado, de lado hacia la cámara.',
  },
  names: { tip: 'punta', knuckle: 'nudillo', arch: 'arco', shin: 'espinilla', ankle: 'tobillo', forefoot: 'antepié' },
  placesTitle: 'Dónde van',
  places: {
    toe: [
      'Punta: en el lado del dedo gordo, junto a la uña.',
      'Nudillo: en el bulto donde el dedo gordo se une al pie.',
      'Arco: en el centro de la cara interna del pie.',
    ],
    ankle: [
      'Antepié: en el lado del pie, justo detrás de los dedos.',
      'Tobillo: en el hueso del tobillo.',
      'Espinilla: en el lado de la pierna, un palmo por encima del tobillo.',
    ],
  },
  drawing: {
    toe: 'La cara interna del pie con pegatinas en la punta del dedo gordo, en su nudillo y en el arco. La cámara está baja, delante.',
    ankle: 'El pie y la pierna de lado, con pegatinas en espinilla, tobillo y antepié. La cámara está baja, delante.',
  },
  distance: { toe: 'unos 30 cm', ankle: 'unos 50 cm' },
  camera: {
    toe: 'La cámara baja y cerca: a unos 30 cm de la cara interna del pie, a la altura del dedo. El pie llena la imagen.',
    ankle: 'La cámara baja y cerca: a unos 50 cm del lado del pie. El pie y media pierna llenan la imagen.',
  },
  cameraShort: {
    toe: 'La cámara baja y cerca de la cara interna del pie.',
    ankle: 'La cámara baja y cerca del lado del pie y de la pierna.',
  },
  whatStickers:
    'Pegatinas redondas y mates, de 8 a 12 mm, de cualquier color vivo distinto de la piel, el suelo y el calcetín. Las tres pueden ser iguales.',
  noStickers: '¿Sin pegatinas? Toque tres puntos en la piel. Es menos exacto.',
  picture: 'La imagen de su pie, con lo encontrado dibujado encima',
  tapPicture: (name) => `Imagen de su pie. Las flechas mueven la cruz, Intro la fija: ${name}`,
  searching: 'Buscando tres pegatinas …',
  found: 'Estas son las tres. ¿Correcto? Entonces empiece.',
  tapNext: (name, n) => `${n} de 3: toque la pegatina: ${name}.`,
  skinNext: (name, n) => `${n} de 3: toque un punto de la piel: ${name}.`,
  tapped: 'Las tres están fijadas. ¿Correcto? Entonces empiece.',
  tapKeys: 'Con el teclado: vaya con Tab a la imagen, las flechas mueven la cruz, Intro la fija.',
  checks: {
    seen: { good: 'Se ven las tres', bad: 'No se ven las tres', unknown: '¿Se ven las tres?' },
    large: { good: 'Tamaño suficiente', bad: 'Muy pequeño: acerque la cámara', unknown: '¿Tamaño suficiente?' },
    light: { good: 'Luz suficiente', bad: 'Muy oscuro: encienda una luz', unknown: '¿Luz suficiente?' },
    glare: { good: 'Sin brillos', bad: 'Una pegatina brilla: aparte la lámpara', unknown: '¿Sin brillos?' },
    still: { good: 'Pie quieto', bad: 'El pie se mueve', unknown: '¿Pie quieto?' },
  },
  refusals: {
    'like-surround':
      'La pegatina no destaca: la piel, el calcetín o el suelo tienen casi el mismo color. Use otro color, o ponga una toalla lisa bajo el pie.',
    'too-small': 'La pegatina se ve demasiado pequeña. Acerque la cámara, o use una pegatina más grande.',
    glare: 'Una pegatina brilla. Gire un poco la lámpara o la cámara, o use pegatinas mates.',
    'not-round': 'Eso no es una mancha redonda. Use una pegatina redonda, o póngala de frente a la cámara.',
    'room-same-colour':
      'Otras cosas en la imagen tienen el mismo color. Quítelas, ponga una toalla lisa bajo el pie, o toque usted las pegatinas.',
    'too-few': 'Aún no veo tres pegatinas. Muestre la cara interna del pie, con las tres en la imagen.',
    'flat-skin': 'Ahí la piel es demasiado lisa. Toque un borde, un pliegue o un lunar, o use pegatinas.',
    outside: 'Está demasiado cerca del borde de la imagen. Mueva la cámara para que se vea todo el pie.',
  },
  film: {
    title: 'Las tres pegatinas en el vídeo',
    lead: 'Aquí empieza la medición. ¿Son estas las tres pegatinas? Si no, tóquelas o pase a una imagen posterior.',
    picture: (at, of) => `Imagen en ${at} de ${of}`,
    earlier: 'Un segundo antes',
    later: 'Un segundo después',
    start: 'Medir el vídeo',
    other: 'Elegir otro vídeo',
  },
  voice: {
    signs: {
      searching: 'Busco tres pegatinas.',
      'too-few': 'Aún no veo tres pegatinas.',
      'too-small': 'Acerque la cámara.',
      glare: 'Una pegatina brilla. Aparte la lámpara.',
      'like-surround': 'Una pegatina se parece a lo que la rodea. Ponga una toalla lisa bajo el pie.',
      'room-same-colour': 'Otras cosas tienen el mismo color. Quítelas.',
      'not-round': 'Una pegatina está de lado. Póngala de frente a la cámara.',
      'flat-skin': 'Ahí no puedo seguir la piel.',
      outside: 'El pie está en el borde. Mueva la cámara.',
      gone: 'No veo las tres pegatinas.',
      covered: 'Una pegatina está tapada.',
      dark: 'Está oscuro. Encienda una luz.',
      moves: 'No mueva el pie.',
      good: 'Veo las tres. No se mueva.',
    },
    begins: 'No se mueva. Empieza la serie.',
  },
  handsFree: {
    start: 'Empezar sola cuando el pie esté quieto',
    about: 'Así le quedan las manos libres: una voz dice qué falta y cuándo empieza.',
    waits: 'Empieza cuando todo esté bien y el pie quieto.',
    beginsIn: (seconds) => `Empieza en ${seconds} …`,
    cancel: 'No empezar sola',
  },
  start: 'Empezar la serie',
  tapMyself: 'Tocar yo las pegatinas',
  findAgain: 'Buscar las pegatinas automáticamente',
  onSkin: 'Tocar puntos en la piel',
  tapAgain: 'Tocar otra vez desde el principio',
  by: 'Medido con',
  side: '¿Qué pie?',
  sideHint: 'El pie que mueve, visto de cerca. El lado con las pegatinas mira a la cámara.',
  ways: {
    pose: { name: 'Solo la cámara', about: 'Nada en la piel, a unos 2 metros.' },
    stickers: { name: 'Tres pegatinas', about: 'Más exacto, con la cámara cerca del pie.' },
  },
};
