/** Scripts of the site that are started by their address, as paths from its root: the service worker, the workers, and the loader of the pose model. */
const STARTED = /^(sw\.js|assets\/(pose|sticker|packing|bench)-worker-[\w-]+\.js|wasm\/vision_wasm_module_internal\.js)$/;

/**
 * Whether an address is a script that the site itself starts.
 * @param root address of the site's folder, ending with a slash
 */
export function isOwnScript(address: string, root: string): boolean {
  if (!URL.canParse(address, root)) return false;
  const { href } = new URL(address, root);
  return href.startsWith(root) && STARTED.test(href.slice(root.length));
}

/** The part of Trusted Types that is used here; browsers without it go on as before. */
interface TrustedTypes {
  readonly createPolicy: (
    name: string,
    rules: Readonly<Record<'createHTML' | 'createScript' | 'createScriptURL', (text: string) => string | null>>,
  ) => unknown;
}

// Built scripts stand in `assets`; named first, or the build takes it for a file.
const here = import.meta.url;

/**
 * What may become markup or a script in this page or worker, where the site's policy says `require-trusted-types-for`: nothing but the scripts above. A library
 * empties elements by setting their markup to nothing.
 */
(globalThis as { readonly trustedTypes?: TrustedTypes }).trustedTypes?.createPolicy('default', {
  createHTML: (text) => (text === '' ? '' : null),
  createScript: () => null,
  createScriptURL: (address) => (isOwnScript(address, new URL('../', here).href) ? address : null),
});
