import { useState } from 'react';
import type { Crop } from '../../capture/crop.ts';
import type { SharedWindow } from '../../capture/shared-window.ts';
import { StreamPicture } from '../parts/stream-picture.tsx';
import { useWords } from '../words/words-context.tsx';
import './crop-picker.css';

const EDGES = ['left', 'right', 'top', 'bottom'] as const;

interface CropPickerProps {
  readonly shared: SharedWindow;
  /** Null: the whole picture. */
  readonly crop: Crop | null;
  readonly onCrop: (crop: Crop | null) => void;
}

/** The box between two corners, in px of the picture. */
function boxOf(a: { readonly x: number; readonly y: number }, b: { readonly x: number; readonly y: number }): Crop {
  const [left, top] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return { left, top, width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y) };
}

/** The shared window, and the box in it that is measured: drawn with the pointer, or by its four edges. */
export function CropPicker({ shared: { stream, size }, crop, onCrop }: CropPickerProps) {
  const { desk } = useWords();
  const [from, setFrom] = useState<{ readonly x: number; readonly y: number } | null>(null);
  const box = crop ?? { left: 0, top: 0, ...size };
  const percent = (value: number, of: number) => `${(100 * value) / of}%`;
  const pointIn = (event: React.PointerEvent<HTMLElement>) => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    const inside = (at: number, from: number, length: number, px: number) =>
      Math.max(0, Math.min(px, ((at - from) / length) * px));
    return { x: inside(event.clientX, left, width, size.width), y: inside(event.clientY, top, height, size.height) };
  };
  const edgeOf: Readonly<Record<(typeof EDGES)[number], number>> = {
    left: box.left,
    right: box.left + box.width,
    top: box.top,
    bottom: box.top + box.height,
  };
  const moveEdge = (edge: (typeof EDGES)[number], to: number) => {
    const { left, right, top, bottom }: typeof edgeOf = { ...edgeOf, [edge]: to };
    onCrop(boxOf({ x: left, y: top }, { x: right, y: bottom }));
  };
  return (
    <fieldset className="crop">
      <legend>{desk.crop}</legend>
      <p className="soft">{desk.cropHint}</p>
      <div
        className="crop-picture"
        style={{ aspectRatio: `${size.width} / ${size.height}` }}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setFrom(pointIn(event));
        }}
        onPointerMove={(event) => from && onCrop(boxOf(from, pointIn(event)))}
        onPointerUp={() => setFrom(null)}
      >
        <StreamPicture stream={stream} />
        <span
          className="crop-box"
          style={{
            insetInlineStart: percent(box.left, size.width),
            insetBlockStart: percent(box.top, size.height),
            inlineSize: percent(box.width, size.width),
            blockSize: percent(box.height, size.height),
          }}
        />
      </div>
      <div className="crop-edges">
        {EDGES.map((edge) => (
          <label key={edge}>
            {desk.edges[edge]}
            <input
              type="range"
              min={0}
              max={edge === 'left' || edge === 'right' ? size.width : size.height}
              step={1}
              value={Math.round(edgeOf[edge])}
              onChange={(event) => moveEdge(edge, Number(event.currentTarget.value))}
            />
          </label>
        ))}
      </div>
    </fieldset>
  );
}
