import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const SCREENS = join(import.meta.dirname, '..', '..', '..', 'src', 'screens');

/** The paths of a file of routes, as it gives them to wouter. */
const pathsIn = (file: string): readonly string[] =>
  [...readFileSync(join(SCREENS, file), 'utf8').matchAll(/<Route path="([^"]+)"/g)].map(([, path = '']) => path);

/** Every path that the program knows, as `/set/:id`. */
export const everyRoute = (): readonly string[] => [...pathsIn('app.tsx'), ...pathsIn('person-screens.tsx')];

/** Whether an address is one of a route's; of a person's, also what stands behind it. */
export function isOf(route: string, address: string): boolean {
  const pattern = route.replaceAll(/\/:\w+/g, '/[^/]+').replace('/*?', '(/.*)?');
  return new RegExp(`^${pattern}${route === '/person/:id' ? '(/.*)?' : ''}$`).test(address);
}

/** Every part of the program that is loaded when it is first opened, by the name of its file: `review-screen`. */
export const everyLaterPart = (): readonly string[] =>
  [...readFileSync(join(SCREENS, 'later-screens.tsx'), 'utf8').matchAll(/import\('\.\/[\w-]+\/([\w-]+)\.tsx'\)/g)].map(
    ([, name = '']) => name,
  );
