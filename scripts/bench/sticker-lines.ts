import { spreadOf, spreadWords } from './spread.ts';
import { stickerCost } from './sticker-cost.ts';

/** The bench's part on stickers, measured now. */
export function stickerLines(): readonly string[] {
  const { onePass, ...parts } = stickerCost();
  const names: Readonly<Record<keyof typeof parts, string>> = {
    follow: 'three stickers followed',
    regain: 'two followed, the third looked for everywhere',
    search: 'the whole search, for set-up',
    skin: 'three points on skin followed',
  };
  const lines = (Object.keys(names) as (keyof typeof parts)[]).map((name) => {
    const ratio = spreadOf(parts[name].map((took, i) => took / (onePass[i] as number)));
    const target = name === 'search' ? '' : ' (target under 8)';
    return `${names[name]}: ${spreadWords(ratio, 2)} times that; ${spreadWords(spreadOf(parts[name]), 2, ' ms')}${target}`;
  });
  return [
    '\n== Stickers: a 640x480 frame against one plain pass over its pixels (this Node, a drawn foot, in turns)',
    `one pass: ${spreadWords(spreadOf(onePass), 2, ' ms')}`,
    ...lines,
  ];
}
