const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

/** The bytes with the end that SHA-1 asks for: a bit, zeros, and the length in bits. */
function padded(bytes: Uint8Array): DataView {
  const blocks = Math.ceil((bytes.length + 9) / 64);
  const whole = new Uint8Array(blocks * 64);
  whole.set(bytes);
  whole[bytes.length] = 0x80;
  const view = new DataView(whole.buffer);
  view.setUint32(whole.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(whole.length - 4, (bytes.length * 8) >>> 0);
  return view;
}

/** What the four times twenty rounds mix in. */
function mixed(round: number, b: number, c: number, d: number): number {
  if (round < 20) return ((b & c) | (~b & d)) + 0x5a827999;
  if (round < 40) return (b ^ c ^ d) + 0x6ed9eba1;
  if (round < 60) return ((b & c) | (b & d) | (c & d)) + 0x8f1bbcdc;
  return (b ^ c ^ d) + 0xca62c1d6;
}

/**
 * SHA-1 (FIPS 180-4), 20 bytes: the checksum that FHIR's `Attachment.hash` is. It finds what was damaged, and is no lock against who means harm. The browser's
 * own only works asynchronously and in secure contexts.
 */
export function sha1(bytes: Uint8Array): Uint8Array {
  const view = padded(bytes);
  const hash = Uint32Array.of(0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0);
  const words = new Uint32Array(80);
  for (let start = 0; start < view.byteLength; start += 64) {
    for (let i = 0; i < 80; i += 1) {
      const of = (back: number) => words[i - back] ?? 0;
      words[i] = i < 16 ? view.getUint32(start + 4 * i) : rotated(of(3) ^ of(8) ^ of(14) ^ of(16), 1);
    }
    let [a = 0, b = 0, c = 0, d = 0, e = 0] = hash;
    for (let i = 0; i < 80; i += 1) {
      const next = (rotated(a, 5) + mixed(i, b, c, d) + e + (words[i] ?? 0)) | 0;
      [a, b, c, d, e] = [next, a, rotated(b, 30), c, d];
    }
    [a, b, c, d, e].forEach((word, i) => {
      hash[i] = ((hash[i] ?? 0) + word) | 0;
    });
  }
  const out = new DataView(new ArrayBuffer(20));
  hash.forEach((word, i) => {
    out.setUint32(4 * i, word);
  });
  return new Uint8Array(out.buffer);
}
