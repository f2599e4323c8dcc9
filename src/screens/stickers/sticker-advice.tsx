import { useStickerWords } from '../words/sticker-catalogues.ts';
import type { StickerJoint } from '../words/sticker-words.ts';

/** Which stickers, and where they go, in words. */
export function StickerAdvice({ joint }: { readonly joint: StickerJoint }) {
  const words = useStickerWords();
  return (
    <>
      <p>{words.camera[joint]}</p>
      <ul className="sticker-places">
        {words.places[joint].map((place) => (
          <li key={place}>{place}</li>
        ))}
      </ul>
      <p>{words.whatStickers}</p>
      {joint === 'toe' ? <p className="soft">{words.noStickers}</p> : null}
    </>
  );
}
