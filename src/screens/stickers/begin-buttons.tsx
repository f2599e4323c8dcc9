import { Icon } from '../parts/icon.tsx';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import type { HandsFree } from './use-hands-free.ts';

interface BeginButtonsProps {
  /** All three are known and seen. */
  readonly enabled: boolean;
  /** Null: it is a film that is measured, not somebody whose hands are at the foot. */
  readonly handsFree: HandsFree | null;
  readonly onBegin: () => void;
}

/** Into the set at once, or by itself when all is right and the foot is still. */
export function BeginButtons({ enabled, handsFree, onBegin }: BeginButtonsProps) {
  const { start, film, handsFree: words } = useStickerWords();
  return (
    <div className="sticker-begin">
      <button type="button" className="button" data-look="main" disabled={!enabled} onClick={onBegin}>
        <Icon name="play" size={28} />
        {handsFree ? start : film.start}
      </button>
      {handsFree ? (
        <>
          <button type="button" className="button" aria-pressed={handsFree.armed} onClick={() => handsFree.arm(!handsFree.armed)}>
            <Icon name={handsFree.armed ? 'cross' : 'still'} />
            {handsFree.armed ? words.cancel : words.start}
          </button>
          <p className="soft small" role={handsFree.armed ? 'status' : undefined}>
            {!handsFree.armed ? words.about : handsFree.beginsInS === null ? words.waits : words.beginsIn(handsFree.beginsInS)}
          </p>
        </>
      ) : null}
    </div>
  );
}
