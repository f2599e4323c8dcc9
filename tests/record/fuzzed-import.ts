import fc from 'fast-check';
import type { Result } from '../../src/result.ts';

export type Bytes = Uint8Array<ArrayBuffer>;

/** Some way in from outside, and what to put through it. */
export interface FuzzedImport<T> {
  /** Valid files to start from. */
  readonly valid: readonly Bytes[];
  /** JSON texts of which a valid file is made, and a file with one of them changed and all around it, such as checksums, put right again. */
  readonly texts: readonly string[];
  readonly remade: (index: number, text: string) => Bytes;
  readonly read: (bytes: Bytes) => Promise<Result<T, { readonly kind: string }>>;
  /** Takes in what was read well; left out where reading is all. */
  readonly taken?: (value: T) => Promise<Result<unknown, { readonly kind: string }>>;
  /** All that is stored. */
  readonly stored?: () => Promise<string>;
  /** What people are told, in every language. */
  readonly sentences: (error: { readonly kind: string }) => readonly string[];
}

/** How often something came out: `ok`, or a kind of failure. */
export type Outcomes = Readonly<Record<string, number>>;

const hostileNumber = fc.constantFrom(0, -1, 0.5, 1e308, -1e308, 2 ** 53, 2 ** 31, Number.MIN_VALUE, -0);
const hostileText = fc.oneof(
  fc.constantFrom('', '__proto__', 'constructor', 'toString', '\u0000', '\ud800', '../../etc', '2026-13-45', 'x'.repeat(10_000)),
  fc.constantFrom(
    '<img src=x onerror=alert(1)>',
    '</script><script>',
    '=HYPERLINK("x")',
    '@SUM(A1)',
    '\u202egnp.exe',
    '\u001b[31m',
  ),
  fc.constantFrom('NaN', '1e999', 'Ａ', '👩🏽‍⚕️', 'e\u0301', '\ufeff', '\u2028', '-0'),
  fc.string({ maxLength: 20 }),
);
const hostile: fc.Arbitrary<unknown> = fc.oneof(
  hostileNumber,
  hostileText,
  fc.constantFrom<unknown>(null, true, [], {}, [[]], [null]),
  fc.jsonValue({ maxDepth: 2 }),
);

type Change =
  | { readonly how: 'replace'; readonly value: unknown }
  | { readonly how: 'remove' | 'twice' | 'next' }
  | { readonly how: 'add'; readonly key: string; readonly value: unknown }
  | { readonly how: 'nest'; readonly deep: number; readonly brackets: string }
  /** What is no JSON, or no number that can be counted with. */
  | { readonly how: 'raw'; readonly token: string };

const anyChange: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ how: fc.constant('replace' as const), value: hostile }),
  fc.record({ how: fc.constantFrom('remove' as const, 'twice' as const, 'next' as const) }),
  fc.record({ how: fc.constant('add' as const), key: fc.oneof(hostileText, fc.constant('extra')), value: hostile }),
  fc.record({
    how: fc.constant('raw' as const),
    token: fc.constantFrom(
      'NaN',
      'Infinity',
      '1e999',
      '-1e999',
      '0x10',
      'undefined',
      "'x'",
      '1_0',
      '{"__proto__":{"a":1}}',
      '9'.repeat(400),
    ),
  }),
  fc.record({ how: fc.constant('nest' as const), deep: fc.constantFrom(3, 20, 3000), brackets: fc.constantFrom('[]', '{}') }),
);

const NEST = '"nested-here"';

/** Changes one place of a JSON value. @param way which part is taken at each level */
function changed(value: unknown, way: readonly number[], change: Change): unknown {
  if (typeof value !== 'object' || value === null || way.length === 0) {
    if (change.how === 'replace') return change.value;
    return change.how === 'nest' || change.how === 'raw' ? JSON.parse(NEST) : null;
  }
  const entries: [string, unknown][] = Object.entries(value);
  const at = entries.length === 0 ? 0 : (way[0] as number) % entries.length;
  const [key, inner] = entries[at] ?? ['', null];
  if (way.length > 1) entries[at] = [key, changed(inner, way.slice(1), change)];
  else if (change.how === 'replace') entries[at] = [key, change.value];
  else if (change.how === 'nest' || change.how === 'raw') entries[at] = [key, JSON.parse(NEST)];
  else if (change.how === 'add') entries.push([change.key, change.value]);
  else if (change.how === 'remove') entries.splice(at, 1);
  else if (change.how === 'twice') entries.push([key, inner]);
  else entries[at] = [key, entries[(at + 1) % entries.length]?.[1]];
  return Array.isArray(value) ? entries.map(([, part]) => part) : Object.fromEntries(entries);
}

function changedText(text: string, way: readonly number[], change: Change): string {
  const json = JSON.stringify(changed(JSON.parse(text), way, change));
  if (change.how === 'raw') return json.replace(NEST, () => change.token);
  if (change.how !== 'nest') return json;
  const [open, close] = change.brackets === '[]' ? ['[', ']'] : ['{"a":', '}'];
  return json.replace(NEST, () => `${open.repeat(change.deep)}0${close.repeat(change.deep)}`);
}

const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
const extreme = fc.constantFrom(0, 1, 0x7fff, 0xffff, 0x7fffffff, 0xfffffffe, 0xffffffff, 0x06054b50);

/** Where zip's own headers begin. */
function headersOf(bytes: Bytes): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i + 4 < bytes.length; i += 1) if (bytes[i] === 0x50 && bytes[i + 1] === 0x4b) found.push(i);
  return found;
}

const put = (bytes: Bytes, change: (copy: Bytes) => void): Bytes => {
  const copy = new Uint8Array(bytes);
  change(copy);
  return copy;
};

/** Files that are almost, or not at all, what is expected. */
function fuzzedFile<T>({ valid, texts, remade }: FuzzedImport<T>): fc.Arbitrary<Bytes> {
  const one = fc.constantFrom(...valid);
  const noise = fc.uint8Array({ maxLength: 300 }).map((bytes) => new Uint8Array(bytes));
  const joined = (...parts: readonly Uint8Array[]) => new Uint8Array(Buffer.concat(parts));
  return fc.oneof(
    { weight: 2, arbitrary: noise },
    { weight: 1, arbitrary: noise.map((bytes) => joined(Uint8Array.of(0x50, 0x4b, 3, 4), bytes)) },
    { weight: 2, arbitrary: fc.tuple(one, noise).map(([bytes, more]) => joined(bytes, more)) },
    { weight: 4, arbitrary: fc.tuple(one, share).map(([bytes, at]) => bytes.slice(0, Math.floor(at * bytes.length))) },
    {
      weight: 8,
      arbitrary: fc.tuple(one, fc.array(fc.tuple(share, fc.nat(7)), { minLength: 1, maxLength: 6 })).map(([bytes, flips]) =>
        put(bytes, (copy) => {
          for (const [at, bit] of flips)
            copy[Math.floor(at * copy.length)] = (copy[Math.floor(at * copy.length)] ?? 0) ^ (1 << bit);
        }),
      ),
    },
    {
      weight: 3,
      arbitrary: fc.tuple(one, share, share, share).map(([bytes, from, length, to]) => {
        const part = bytes.slice(Math.floor(from * bytes.length)).slice(0, Math.floor(length * 64));
        const at = Math.floor(to * bytes.length);
        return joined(bytes.slice(0, at), part, bytes.slice(at));
      }),
    },
    {
      weight: 6,
      arbitrary: fc.tuple(one, share, fc.nat(45), extreme, fc.boolean()).map(([bytes, which, field, value, isWide]) => {
        const headers = headersOf(bytes);
        const at = (headers[Math.floor(which * headers.length)] ?? 0) + field;
        if (at + 4 > bytes.length) return bytes.slice(0, at);
        return put(bytes, (copy) => {
          const view = new DataView(copy.buffer);
          if (isWide) view.setUint32(at, value, true);
          else view.setUint16(at, value & 0xffff, true);
        });
      }),
    },
    {
      weight: 14,
      arbitrary: fc
        .tuple(fc.nat(texts.length - 1), fc.array(fc.nat(40), { minLength: 0, maxLength: 7 }), anyChange)
        .map(([index, way, change]) => remade(index, changedText(texts[index] as string, way, change))),
    },
  );
}

/** Whether a text is a sentence: it ends, nothing else begins in it, and it stands on one line without characters that steer a terminal. */
const isOneSentence = (text: string): boolean =>
  /\p{L}.*[.]$/u.test(text) && !/[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u.test(text);

/**
 * How many files go through each way in. Some hundreds usually; `EVENSIDE_FUZZ=10000` puts as many through as it says.
 */
export const FUZZ_RUNS = Number(process.env.EVENSIDE_FUZZ ?? 300);
/** With so many every way to fail is gone. */
export const IS_WHOLE = FUZZ_RUNS >= 3000;
/** Some ways in take longer than a test usually may. */
export const FUZZ_MS = 60_000 + FUZZ_RUNS * 60;

/**
 * Puts files through a way in: whatever comes, nothing throws, each failure has a sentence in every language, and what is stored is as it was before.
 * @param runs how many files
 * @throws Error with the file that shows the fault
 */
export async function fuzzImport<T>(fuzzed: FuzzedImport<T>, runs: number): Promise<Outcomes> {
  const outcomes: Record<string, number> = {};
  const told = (error: { readonly kind: string }) => {
    const { kind } = error;
    outcomes[kind] = (outcomes[kind] ?? 0) + 1;
    const sentences = fuzzed.sentences(error);
    const wrong = sentences.find((text) => !isOneSentence(text));
    if (sentences.length === 0 || wrong !== undefined) throw new Error(`${kind} is not told in one sentence: ${wrong}`);
  };
  let before = (await fuzzed.stored?.()) ?? '';
  await fc.assert(
    fc.asyncProperty(fuzzedFile(fuzzed), async (bytes) => {
      const read = await fuzzed.read(bytes);
      const taken = read.ok ? await fuzzed.taken?.(read.value) : read;
      const after = (await fuzzed.stored?.()) ?? '';
      if (taken && !taken.ok) {
        told(taken.error);
        if (after !== before) throw new Error(`something was written although it failed: ${taken.error.kind}`);
      } else outcomes.ok = (outcomes.ok ?? 0) + 1;
      before = after;
    }),
    { numRuns: runs, endOnFailure: true },
  );
  return outcomes;
}
