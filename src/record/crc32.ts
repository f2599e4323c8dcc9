/** The polynomial of IEEE 802.3, its bits reversed. */
const POLYNOMIAL = 0xedb88320;

/** CRC-32 as in zip and PNG (IEEE 802.3), an unsigned 32-bit number. Every fault within 32 neighbouring bits is seen; of others, all but one in 4 billion. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ POLYNOMIAL : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
