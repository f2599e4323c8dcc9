import type { ReactNode } from 'react';

/** The screens' signs, drawn on a grid of 24. A word always stands beside them. */
const DRAWN = {
  camera: (
    <>
      <rect x="2.5" y="6" width="13" height="12" rx="2.5" />
      <path d="m15.5 10.5 6-3v9l-6-3" />
    </>
  ),
  file: (
    <>
      <path d="M6 2.5h8l5 5v14H6z" />
      <path d="M14 2.5v5h5" />
      <path d="m10.5 11.5 4.5 3-4.5 3z" />
    </>
  ),
  play: (
    <>
      <circle cx="12" cy="12" r="9.5" />
      <path d="m10 8 6 4-6 4z" />
    </>
  ),
  back: <path d="M20 12H4.5m6.5-7-7 7 7 7" />,
  forward: <path d="m9 5 7 7-7 7" />,
  check: <path d="m4.5 12.5 5 5 10-11" />,
  cross: <path d="m6 6 12 12M18 6 6 18" />,
  plus: <path d="M12 4.5v15M4.5 12h15" />,
  minus: <path d="M4.5 12h15" />,
  warning: (
    <>
      <path d="M12 3 22 20.5H2z" />
      <path d="M12 9.5v5m0 2.6v.4" />
    </>
  ),
  lock: (
    <>
      <rect x="4.5" y="10.5" width="15" height="11" rx="2" />
      <path d="M8 10.5V7a4 4 0 0 1 8 0v3.5" />
    </>
  ),
  sound: (
    <>
      <path d="M3.5 9.5v5h4l5 4.5V5l-5 4.5z" />
      <path d="M16 9a4.5 4.5 0 0 1 0 6m2.5-9a9 9 0 0 1 0 12" />
    </>
  ),
  silent: (
    <>
      <path d="M3.5 9.5v5h4l5 4.5V5l-5 4.5z" />
      <path d="m16 9.5 5 5m0-5-5 5" />
    </>
  ),
  person: (
    <>
      <circle cx="12" cy="6" r="3.5" />
      <path d="M5 21.5c0-6 2.5-9 7-9s7 3 7 9" />
    </>
  ),
  hidden: (
    <>
      <path d="M2.5 12C5 7.5 8.3 5.5 12 5.5s7 2 9.5 6.5c-2.5 4.5-5.8 6.5-9.5 6.5s-7-2-9.5-6.5z" />
      <path d="M4 20 20 4" />
    </>
  ),
  away: <path d="M12 12 4 4m0 6V4h6m2 8 8 8m0-6v6h-6" />,
  nearer: <path d="m4 4 7 7m0-6v6H5m15 9-7-7m0 6v-6h6" />,
  turn: <path d="M4.5 12a7.5 7.5 0 0 1 13-5.1L20 9.5m0-6v6h-6m5.5 2.5a7.5 7.5 0 0 1-13 5.1L4 14.5m0 6v-6h6" />,
  light: (
    <>
      <path d="M9 17.5c0-2-3-3.5-3-7a6 6 0 0 1 12 0c0 3.5-3 5-3 7z" />
      <path d="M9.5 21.5h5" />
    </>
  ),
  still: <path d="M8.5 4.5v15m7-15v15" />,
  search: (
    <>
      <circle cx="10.5" cy="10.5" r="7" />
      <path d="m15.5 15.5 6 6" />
    </>
  ),
  wait: (
    <>
      <circle cx="12" cy="12" r="9.5" />
      <path d="M12 6.5V12l4 2.5" />
    </>
  ),
  stop: <rect x="5" y="5" width="14" height="14" rx="2" fill="currentColor" />,
} satisfies Record<string, ReactNode>;

export type IconName = keyof typeof DRAWN;

/** Signs that point along the line of text: from right to left they point the other way. */
const ALONG_TEXT: ReadonlySet<IconName> = new Set(['back', 'forward']);

/** @param size px */
export function Icon({ name, size = 24 }: { readonly name: IconName; readonly size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
      data-along-text={ALONG_TEXT.has(name) || undefined}
      aria-hidden="true"
    >
      {DRAWN[name]}
    </svg>
  );
}
