/** The browser's caches, as far as the bundles use them. */
export function fakeCaches() {
  const kept = new Map<string, Uint8Array<ArrayBuffer>>();
  const found = async (key: string) => {
    const bytes = kept.get(key);
    return bytes && new Response(bytes.slice());
  };
  const withoutSearch = (url: string) => url.split('?')[0];
  const cache = {
    put: async (key: string, answer: Response) => void kept.set(key, new Uint8Array(await answer.arrayBuffer())),
    keys: async (key: string) => [...kept.keys()].filter((url) => withoutSearch(url) === key).map((url) => ({ url })),
    delete: async (key: string) => kept.delete(key),
  };
  return { kept, caches: { match: found, open: async () => cache } };
}
