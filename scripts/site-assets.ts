import { createReadStream, existsSync } from 'node:fs';
import { copyFile, mkdir, readdir } from 'node:fs/promises';
import { extname, join } from 'node:path';
import type { Plugin } from 'vite';

/** Files that the site serves as they are, under an address of their own. */
interface Mount {
  /** First part of the address. */
  readonly at: string;
  /** Folder they come from, relative to the project. */
  readonly folder: string;
  readonly file: RegExp;
  /** Files without which the site doesn't work. */
  readonly required: readonly string[];
}

const MOUNTS: readonly Mount[] = [
  {
    at: 'wasm',
    folder: 'node_modules/@mediapipe/tasks-vision/wasm',
    // The worker is a module; it needs this pair only.
    file: /^vision_wasm_module_internal\.(js|wasm)$/,
    required: ['vision_wasm_module_internal.js', 'vision_wasm_module_internal.wasm'],
  },
  {
    at: 'models',
    folder: 'models',
    file: /^pose_(lite|full|heavy)\.task$/,
    required: ['pose_lite.task', 'pose_full.task', 'pose_heavy.task'],
  },
  {
    at: 'icons',
    folder: 'src/screens/icons',
    file: /\.png$/,
    required: ['icon-192.png', 'icon-512.png', 'maskable-512.png', 'apple-180.png'],
  },
  { at: 'plain', folder: 'src/plain', file: /^too-old\.js$/, required: ['too-old.js'] },
  { at: 'recordings', folder: 'recordings', file: /\.(mp4|webm|json)$/, required: [] },
];

/** What whoever passes the built site on must pass on with it. */
const LEGAL: readonly string[] = ['LICENSE', 'NOTICE.md'];

const TYPES: Readonly<Record<string, string>> = {
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.mp4': 'video/mp4',
  '.task': 'application/octet-stream',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.webm': 'video/webm',
};

/** Type of a file of the site where the server's own table doesn't know it. */
export const typeOf = (path: string): string | undefined => TYPES[extname(path)];

/** The file behind an address such as `/models/pose_full.task`, or null when the address is none of ours. */
function behind(root: string, address: string): string | null {
  const [, at, name, ...rest] = address.split('/');
  const mount = MOUNTS.find((m) => m.at === at);
  if (!mount || !name || rest.length > 0 || !mount.file.test(name)) return null;
  const path = join(root, mount.folder, name);
  return existsSync(path) ? path : null;
}

async function filesOf(root: string, mount: Mount): Promise<readonly string[]> {
  const folder = join(root, mount.folder);
  const names = existsSync(folder) ? (await readdir(folder)).filter((name) => mount.file.test(name)) : [];
  const missing = mount.required.find((name) => !names.includes(name));
  if (missing)
    throw new Error(`${mount.folder}/${missing} is missing: run npm ci, then npm start, which assembles the pose models`);
  return names;
}

/** Serves the wasm of the pose model, the pose bundles and the recordings while developing, and copies them into the built site, with the licences. */
export function siteAssets(): Plugin {
  let root = process.cwd();
  return {
    name: 'evenside:site-assets',
    configResolved(config) {
      root = config.root;
    },
    configureServer(server) {
      // Before the server's own handling, which would take the wasm loader for source to transform.
      server.middlewares.use((request, response, next) => {
        const path = behind(root, new URL(request.url ?? '/', 'http://localhost').pathname);
        if (!path) return next();
        response.setHeader('Content-Type', typeOf(path) ?? 'application/octet-stream');
        createReadStream(path).on('error', next).pipe(response);
      });
    },
    async writeBundle({ dir }) {
      if (!dir) throw new Error('siteAssets requires an output folder, got none');
      for (const mount of MOUNTS) {
        const names = await filesOf(root, mount);
        await mkdir(join(dir, mount.at), { recursive: true });
        await Promise.all(names.map((name) => copyFile(join(root, mount.folder, name), join(dir, mount.at, name))));
      }
      await Promise.all(LEGAL.map((name) => copyFile(join(root, name), join(dir, name))));
    },
  };
}
