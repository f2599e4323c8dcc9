/**
 * Reads the header `Retry-After` (RFC 9110, 10.2.3): seconds, or a date.
 * @returns ms from now, never negative; null when there is none or it can't be read
 */
export function retryAfterMs(header: string | null, nowMs: number): number | null {
  if (header === null) return null;
  const text = header.trim();
  if (/^\d+$/.test(text)) return Number(text) * 1000;
  const at = Date.parse(text);
  return Number.isNaN(at) ? null : Math.max(0, at - nowMs);
}
