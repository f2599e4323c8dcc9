import { encodeQR } from 'qr';
import './qr-code.css';

/** Modules of white on each side, without which readers do not find the code: ISO/IEC 18004. */
const QUIET = 4;
/** CSS px of a module where there is room. Chosen: read off a laptop's screen at an arm's length. */
const MODULE_PX = 5;
/**
 * Characters up to which a code corrects more (15 %), and up to which it corrects less (7 %), both with at most 105 modules a side, version 22. More would be too
 * fine for a phone. Chosen.
 */
const MOST_CHARACTERS = { medium: 700, low: 1000 } as const;

/** Whether a text fits a code that phones read. */
export const fitsQrCode = (text: string): boolean => text.length <= MOST_CHARACTERS.low;

/** The dark modules of a row as one run after another. */
const runsOf = (row: readonly boolean[], y: number): string =>
  row
    .map((dark, x) => {
      if (!dark || row[x - 1]) return '';
      const end = row.indexOf(false, x);
      const length = (end < 0 ? row.length : end) - x;
      return `M${x} ${y}h${length}v1h-${length}z`;
    })
    .join('');

/** A text as a QR code, always dark on white. @param text one that `fitsQrCode` */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const ecc = text.length <= MOST_CHARACTERS.medium ? 'medium' : 'low';
  const rows = encodeQR(text, 'raw', { ecc, border: QUIET });
  const size = rows.length;
  return (
    <svg
      className="qr-code"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${size} ${size}`}
      width={size * MODULE_PX}
      height={size * MODULE_PX}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#ffffff" />
      <path d={rows.map(runsOf).join('')} fill="#000000" />
    </svg>
  );
}
