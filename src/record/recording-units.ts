/** How finely a recording keeps what it holds: units to one of what is measured. The format's own, see docs/recording-format.md. */
export const PER = {
  /** Of a pixel: far below what the model's points jitter. */
  px: 10,
  /** Of a pixel: far below what a sticker's centre is out by. */
  stickerPx: 1000,
  visibility: 100,
  deg: 100,
  zncc: 1000,
  brightness: 10,
  cameraDeg: 1000,
  cameraPx: 100,
  scale: 100_000,
  agreement: 100,
  /** Of a millisecond: the clock of a video file. */
  ms: 1000,
} as const;

/** `x` in whole units of which `per` make one; -0 is no other number than 0. */
export const units = (x: number, per: number): number => Math.round(x * per) + 0;
