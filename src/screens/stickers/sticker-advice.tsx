import { useStickerWords } from '../words/sticker-catalogues.ts';
import type { StickerJoint } from '../words/sticker-words.ts';

interface StickerAdviceProps {
  readonly joint: StickerJoint;
  /** The drawing stands beside it, and the places are told on the next screen. */
  readonly short?: boolean;
}

/** Which stickers, and where they go, in words. */
export function StickerAdvice({ joint, short = false }: StickerAdviceProps) {
  const words = useStickerWords();
  if (short)
    return (
      <>
        <p>{words.whatStickers}</p>
        <p className="soft small">{words.cameraShort[joint]}</p>
      </>
    );
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
