import type { RgbaPicture } from '../../src/stickers/rgba-picture.ts';

interface Picture {
  readonly displayWidth: number;
  readonly displayHeight: number;
  readonly shown: RgbaPicture;
  closed: number;
  close(): void;
}

/** A canvas that gives back the picture drawn on it last, which has the canvas's own size: in place of `OffscreenCanvas`, which Node lacks. */
export class CanvasStandIn {
  width: number;
  height: number;
  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
  }
  getContext() {
    let drawn: Picture | null = null;
    return {
      setTransform: () => undefined,
      rotate: () => undefined,
      drawImage: (image: Picture) => {
        drawn = image;
      },
      getImageData: () => {
        const shown = drawn?.shown;
        if (!shown || shown.width !== this.width || shown.height !== this.height) throw new Error('another size was drawn');
        return { data: shown.data };
      },
    };
  }
}

/** A drawn picture as a frame of a camera. @param scale how many px of the frame one drawn pixel stands for */
export function drawnFrame(shown: RgbaPicture, scale = 1): Picture & VideoFrame {
  const picture: Picture = {
    displayWidth: shown.width * scale,
    displayHeight: shown.height * scale,
    shown,
    closed: 0,
    close() {
      this.closed += 1;
    },
  };
  return picture as Picture & VideoFrame;
}
