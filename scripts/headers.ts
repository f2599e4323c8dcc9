import { createHash } from 'node:crypto';

/** The style rules that react-aria adds to the page by itself; each is allowed by its hash, so that no other inline style is. */
const LIBRARY_STYLES = [
  // interactions/usePress
  '@layer {\n  [data-react-aria-pressable] {\n    touch-action: pan-x pan-y pinch-zoom;\n  }\n}',
  // overlays/usePreventScroll, on phones
  '@layer {\n  * {\n    overscroll-behavior: contain;\n  }\n}',
];

const styleHashes = LIBRARY_STYLES.map((style) => `'sha256-${createHash('sha256').update(style).digest('base64')}'`);

const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  // The pose model is WebAssembly; nothing else may turn text into code.
  "script-src 'self' 'wasm-unsafe-eval'",
  // No text becomes markup or a script, and nothing is started but the site's own workers: `src/run/own-scripts.ts` is the only policy.
  "require-trusted-types-for 'script'",
  'trusted-types default',
  // The pose model's worker, and the service worker that keeps the site for the time without a network.
  "worker-src 'self'",
  "manifest-src 'self'",
  // The second lock on "nothing leaves the machine".
  "connect-src 'self'",
  "img-src 'self' blob: data:",
  "media-src 'self' blob:",
  `style-src 'self' ${styleHashes.join(' ')}`,
  "font-src 'self'",
  "frame-src 'none'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'none'",
];

/** What only a header can say; a browser would complain about it in a meta tag. */
const HEADER_ONLY = 'frame-ancestors';

/**
 * The policy as a meta tag carries it: the second lock where somebody serves the site without the headers. It holds for the page, not for the worker, which
 * takes its policy from the header of its own answer.
 */
export const META_POLICY = CONTENT_SECURITY_POLICY.filter((rule) => !rule.startsWith(HEADER_ONLY)).join('; ');

/** What the page may use: the camera, a shared window, a screen that stays on during a set, and the whole screen. */
const ALLOWED = ['camera', 'display-capture', 'screen-wake-lock', 'fullscreen', 'autoplay'];
const REFUSED = [
  'accelerometer',
  'browsing-topics',
  'clipboard-read',
  'encrypted-media',
  'geolocation',
  'gyroscope',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'picture-in-picture',
  'publickey-credentials-get',
  'serial',
  'usb',
  'xr-spatial-tracking',
];

const PERMISSIONS_POLICY = [...ALLOWED.map((name) => `${name}=(self)`), ...REFUSED.map((name) => `${name}=()`)];

/** The rule of the policy that says whom the page may ask, for a site that knows a FHIR server: itself and exactly these origins. */
const SELF_ONLY = "connect-src 'self'";
export const withOrigins = (policy: string, origins: readonly string[]): string =>
  policy.replace(SELF_ONLY, [SELF_ONLY, ...origins].join(' '));

/** Headers of every answer of the site, wherever it is served from. */
export const SITE_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY.join('; '),
  'Permissions-Policy': PERMISSIONS_POLICY.join(', '),
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  // No page elsewhere gets a handle on this one's window, or any of its files.
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** What keeps its address while its content changes: the browser asks each time, or it would never hear of a new version. */
export const CHANGING: readonly string[] = ['/', '/index.html', '/manifest.webmanifest', '/sw.js'];
/** Its files carry a hash of their content in their names. */
export const UNCHANGING_FOLDER = '/assets/';

/** How long the answer for a path may be kept; undefined: as the server sees fit. */
export function cacheControlOf(path: string): string | undefined {
  if (CHANGING.includes(path)) return 'no-cache';
  return path.startsWith(UNCHANGING_FOLDER) ? 'public, max-age=31536000, immutable' : undefined;
}
