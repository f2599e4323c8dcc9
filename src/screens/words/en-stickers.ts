import type { StickerWords } from './sticker-words.ts';

/** Setting up a set by stickers, in English. */
export const enStickers: StickerWords = {
  title: 'Three stickers on your foot',
  lead: {
    toe: 'Sit with your foot flat and relaxed, its inner side towards the camera.',
    ankle: 'Sit with your foot flat and relaxed, one side of it towards the camera.',
  },
  names: { tip: 'tip', knuckle: 'knuckle', arch: 'arch', shin: 'shin', ankle: 'ankle', forefoot: 'forefoot' },
  placesTitle: 'Where they go',
  places: {
    toe: [
      'Tip: on the side of the big toe, beside the nail.',
      'Knuckle: on the bump where the big toe joins the foot.',
      'Arch: in the middle of the inner side of the foot.',
    ],
    ankle: [
      'Forefoot: on the side of the foot, just behind the toes.',
      'Ankle: on the ankle bone.',
      'Shin: on the side of the lower leg, a hand above the ankle.',
    ],
  },
  drawing: {
    toe: 'The inner side of the foot with stickers on the tip of the big toe, its knuckle and the arch. The camera is low in front of it.',
    ankle:
      'The foot and the lower leg from the side, with stickers on shin, ankle and forefoot. The camera is low in front of them.',
  },
  distance: { toe: 'about 30 cm', ankle: 'about 50 cm' },
  camera: {
    toe: 'Camera low and close: about 30 cm from the inner side of the foot, at the height of the toe. The foot fills the picture.',
    ankle: 'Camera low and close: about 50 cm from the side of the foot. Foot and half of the lower leg fill the picture.',
  },
  cameraShort: {
    toe: 'Camera low and close to the inner side of the foot.',
    ankle: 'Camera low and close to the side of the foot and the lower leg.',
  },
  whatStickers:
    'Round, matt stickers, 8 to 12 mm wide, in any bright colour unlike your skin, the floor and your sock. All three may be alike.',
  noStickers: 'No stickers? Tap three points on the bare skin instead. That is less exact.',
  picture: 'The picture of your foot, with what was found drawn on it',
  tapPicture: (name) => `Picture of your foot. Arrow keys move the cross, Enter sets it: ${name}`,
  searching: 'Looking for three stickers …',
  found: 'Are these the three? Then start.',
  tapNext: (name, n) => `${n} of 3: tap the sticker on the ${name}.`,
  skinNext: (name, n) => `${n} of 3: tap a spot on the skin: the ${name}.`,
  tapped: 'All three are set. Are they right? Then start.',
  tapKeys: 'By keyboard: Tab to the picture, arrow keys move the cross, Enter sets it.',
  checks: {
    seen: { good: 'Three seen', bad: 'Not all three seen', unknown: 'Three seen?' },
    large: { good: 'Large enough', bad: 'Too small: camera nearer', unknown: 'Large enough?' },
    light: { good: 'Light enough', bad: 'Too dark: turn on a light', unknown: 'Light enough?' },
    glare: { good: 'No glint', bad: 'A sticker glints: turn the lamp away', unknown: 'No glint?' },
    still: { good: 'Foot still', bad: 'The foot moves', unknown: 'Foot still?' },
  },
  refusals: {
    'like-surround':
      'The sticker does not stand out: skin, sock or floor have much the same colour. Take another colour, or lay a plain towel under the foot.',
    'too-small': 'The sticker is too small in the picture. Move the camera nearer, or take a larger sticker.',
    glare: 'A sticker glints. Turn the lamp or the camera a little, or take matt stickers.',
    'not-round': 'That is not a round spot. Use a round sticker, or turn its flat side to the camera.',
    'room-same-colour':
      'Other things in the picture have the same colour. Take them away, lay a plain towel under the foot, or tap the stickers yourself.',
    'too-few': 'I do not see three stickers yet. Show the inner side of the foot, with all three in the picture.',
    'flat-skin': 'The skin looks too even there. Tap on an edge, a crease or a mole, or use stickers.',
    outside: 'That is too near the edge of the picture. Move the camera so that the whole foot is in it.',
  },
  film: {
    title: 'The three stickers in the film',
    lead: 'This is where measuring begins. Are these the three stickers? If not, tap them, or go to a later picture.',
    found: 'Are these the three? Then measure.',
    picture: (at, of) => `Picture at ${at} of ${of}`,
    earlier: '1 s earlier',
    later: '1 s later',
    start: 'Measure the video',
    other: 'Choose another video',
  },
  voice: {
    signs: {
      searching: 'Looking for three stickers.',
      'too-few': 'I do not see three stickers yet.',
      'too-small': 'Move the camera closer.',
      glare: 'A sticker glints. Turn the lamp away.',
      'like-surround': 'A sticker looks like what lies around it. Lay a plain towel under the foot.',
      'room-same-colour': 'Other things have the same colour. Take them away.',
      'not-round': 'A sticker is turned away. Turn its flat side to the camera.',
      'flat-skin': 'I can’t follow the skin there.',
      outside: 'The foot is at the edge. Move the camera.',
      gone: 'I can’t see all three stickers.',
      covered: 'A sticker is covered.',
      dark: 'Too dark. Turn on a light.',
      moves: 'Hold the foot still.',
      good: 'Three seen. Hold still.',
    },
    begins: 'Hold still. The set begins.',
  },
  handsFree: {
    start: 'Start by itself when my foot is still',
    about: 'Then your hands stay free: a voice tells what is still wrong, and when it begins.',
    waits: 'Begins when all is right and the foot is still.',
    beginsIn: (seconds) => `Begins in ${seconds} …`,
    cancel: 'Not by itself',
  },
  start: 'Start the set',
  tapMyself: 'Tap the stickers myself',
  findAgain: 'Find the stickers by itself',
  onSkin: 'Tap points on the skin',
  tapAgain: 'Tap again from the start',
  by: 'How is it measured?',
  side: 'Which foot?',
  sideHint: 'The foot you move, seen close by. Its side with the stickers faces the camera.',
  ways: {
    pose: { name: 'Camera alone', about: 'Nothing on the skin, about 2 metres away.' },
    stickers: { name: 'Three stickers', about: 'More exact, camera close to the foot.' },
  },
};
