import { type RefObject, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { PictureSize } from '../../capture/frame.ts';
import type { Spot } from '../../stickers/rgba-picture.ts';
import { px } from '../../units.ts';
import { drawStickers, type MarkedPoint } from '../set/draw-stickers.ts';
import '../set/picture.css';
import { legColoursOf } from '../set/overlay.ts';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { SetUp } from './set-up-state.ts';
import './sticker-picture.css';

/** By how much an arrow key moves the cross, shares of the picture's width. Chosen; with Shift a quarter of it. */
const STEP = 0.012;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Where a pointer is in a picture that fits whole into its box, px of the picture; null: beside it. */
function spotIn(box: DOMRect, { width, height }: PictureSize, clientX: number, clientY: number): Spot | null {
  const scale = Math.min(box.width / width, box.height / height);
  const x = (clientX - box.left - (box.width - width * scale) / 2) / scale;
  const y = (clientY - box.top - (box.height - height * scale) / 2) / scale;
  return x < 0 || y < 0 || x > width || y > height ? null : { x, y };
}

interface TapLayerProps {
  readonly setUp: SetUp;
  readonly size: PictureSize;
  readonly cross: Spot | null;
  readonly onCross: (cross: Spot) => void;
}

/** Lies over the picture and takes taps; by keyboard, arrow keys move a cross. */
function TapLayer({ setUp, size, cross, onCross }: TapLayerProps) {
  const words = useStickerWords();
  const next = useStore(setUp.state, (s) => setUp.names.find((n) => !s.tapped[n]));
  const middle: Spot = { x: size.width / 2, y: size.height / 2 };
  const move = (event: React.KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (!arrow) return;
    event.preventDefault();
    const step = size.width * STEP * (event.shiftKey ? 0.25 : 1);
    const from = cross ?? middle;
    const within = (value: number, most: number) => Math.max(0, Math.min(most, value));
    onCross({ x: within(from.x + arrow[0] * step, size.width), y: within(from.y + arrow[1] * step, size.height) });
  };
  const click = (event: React.MouseEvent<HTMLElement>) => {
    // A click without a pointer comes from Enter or the space bar.
    const at =
      event.detail === 0
        ? (cross ?? middle)
        : spotIn(event.currentTarget.getBoundingClientRect(), size, event.clientX, event.clientY);
    if (at) void setUp.tap(at);
  };
  return (
    <button
      type="button"
      className="sticker-tap"
      aria-label={words.tapPicture((next && words.names[next]) ?? '')}
      onFocus={() => {
        if (!cross) onCross(middle);
      }}
      onKeyDown={move}
      onClick={click}
    />
  );
}

interface StickerPictureProps {
  readonly setUp: SetUp;
  /** Painted frame by frame by whoever opened the camera. */
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  /** Not of a film: a camera is on. */
  readonly live: boolean;
}

/** The picture with the stickers circled and named. */
export function StickerPicture({ setUp, canvas, live }: StickerPictureProps) {
  const { set } = useWords();
  const words = useStickerWords();
  const size = useStore(setUp.state, (s) => s.size);
  const taking = useStore(setUp.state, (s) => s.mode !== 'find' && !s.start);
  const over = useStore(setUp.state, (s) => s.problem !== null);
  const overlay = useRef<HTMLCanvasElement>(null);
  const [cross, setCross] = useState<Spot | null>(null);
  useEffect(() => {
    const layer = overlay.current;
    if (!layer || !size) return;
    const colours = legColoursOf(layer);
    const paint = () => {
      const { tapped, start } = setUp.state.getState();
      const { stickers } = setUp.seen.getState();
      const points = setUp.names.map((name): MarkedPoint | null => {
        const at = start ? stickers?.points[name] : tapped[name];
        const bridged = (start && stickers?.points[name]?.bridged) ?? false;
        return at ? { x: px(at.x), y: px(at.y), bridged, ...named(words.names[name]) } : null;
      });
      const shown = cross && taking ? { x: px(cross.x), y: px(cross.y) } : null;
      drawStickers(layer, size, points, { angle: null, cross: shown }, colours);
    };
    paint();
    const ends = [setUp.seen.subscribe(paint), setUp.state.subscribe(paint)];
    return () => {
      for (const end of ends) end();
    };
  }, [setUp, size, cross, taking, words]);
  const { width, height } = size ?? { width: 640, height: 480 };
  return (
    <div className="picture sticker-picture" style={{ aspectRatio: `${width} / ${height}` }}>
      <canvas ref={canvas} role="img" aria-label={words.picture} width={width} height={height} />
      <canvas ref={overlay} />
      {taking && size ? <TapLayer setUp={setUp} size={size} cross={cross} onCross={setCross} /> : null}
      {live && size && !over ? (
        <p className="picture-camera-on">
          <span aria-hidden="true" />
          {set.cameraOn}
        </p>
      ) : null}
    </div>
  );
}

const named = (name: string | undefined) => (name === undefined ? {} : { name });
