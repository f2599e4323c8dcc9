import { Inflate, inflateSync } from 'fflate';

type Bytes = Uint8Array<ArrayBuffer>;

/** Packed bytes that are inflated at a time: they can grow about a thousandfold before their sum is looked at. */
const STEP_BYTES = 16_384;

function* stepsOf(packed: Bytes): Iterable<Bytes> {
  for (let at = 0; at < packed.length; at += STEP_BYTES) yield packed.subarray(at, at + STEP_BYTES);
}

/** Gathers as many bytes as are expected, and no more. */
function gathering(bytes: number) {
  const whole = new Uint8Array(bytes);
  let filled = 0;
  return {
    add(chunk: Uint8Array): boolean {
      if (filled + chunk.length > bytes) return false;
      whole.set(chunk, filled);
      filled += chunk.length;
      return true;
    },
    whole: (): Bytes | null => (filled === bytes ? whole : null),
  };
}

/** The browser's own, five times as fast as the library; null: it has none for zip's streams. */
function ownStream(): DecompressionStream | null {
  try {
    return new DecompressionStream('deflate-raw');
  } catch {
    return null;
  }
}

async function byStream({ writable, readable }: DecompressionStream, packed: Bytes, bytes: number): Promise<Bytes | null> {
  const [writer, reader] = [writable.getWriter(), readable.getReader()];
  const write = async () => {
    for (const step of stepsOf(packed)) await writer.write(step);
    await writer.close();
  };
  const written = write();
  // Whoever reads is told of the same fault.
  written.catch(() => undefined);
  const gathered = gathering(bytes);
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      if (gathered.add(next.value)) continue;
      await reader.cancel();
      return null;
    }
    await written;
  } catch {
    // No deflate stream.
    return null;
  }
  return gathered.whole();
}

function byLibrary(packed: Bytes, bytes: number): Bytes | null {
  const gathered = gathering(bytes);
  const inflate = new Inflate((chunk) => {
    if (!gathered.add(chunk)) throw new RangeError('more bytes than were said');
  });
  try {
    let at = 0;
    for (const step of stepsOf(packed)) {
      at += step.length;
      inflate.push(step, at === packed.length);
    }
  } catch {
    // The library throws for what is no deflate stream.
    return null;
  }
  return gathered.whole();
}

/** A deflate stream unpacked, never to more than `bytes`; null when it is none, or has not as many. */
export async function inflated(packed: Bytes, bytes: number): Promise<Bytes | null> {
  const stream = ownStream();
  return stream ? byStream(stream, packed, bytes) : byLibrary(packed, bytes);
}

/** The same at once, of what `inflated` has unpacked before: it is not looked at any more how much it grows to. */
export const inflatedAgain = (packed: Bytes, bytes: number): Bytes => inflateSync(packed, { out: new Uint8Array(bytes) });
