/** `npm run icons`: draws the app's icons from their SVG files in the sizes that systems ask for. The PNG files are committed. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { findChromium, launchChromium } from './chromium.ts';

const SCREENS = join(import.meta.dirname, '..', 'src', 'screens');
const ICONS = [
  { from: 'icon.svg', to: 'icon-192.png', px: 192 },
  { from: 'icon.svg', to: 'icon-512.png', px: 512 },
  { from: 'icons/maskable.svg', to: 'maskable-512.png', px: 512 },
  { from: 'icons/maskable.svg', to: 'apple-180.png', px: 180 },
] as const;

const chromium = findChromium((line) => process.stdout.write(`${line}\n`));
if (!chromium.ok) {
  process.stderr.write(`${chromium.error.words}\n`);
  process.exit(1);
}
const browser = await launchChromium(chromium.value);
try {
  const page = await browser.newPage();
  for (const { from, to, px } of ICONS) {
    const svg = (await readFile(join(SCREENS, from), 'utf8')).replace('<svg ', `<svg width="${px}" height="${px}" `);
    await page.setViewportSize({ width: px, height: px });
    await page.setContent(`<body style="margin:0">${svg}`);
    await writeFile(join(SCREENS, 'icons', to), await page.screenshot({ omitBackground: true }));
    process.stdout.write(`${to}\n`);
  }
} finally {
  await browser.close();
}
