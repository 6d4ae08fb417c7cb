// Takes the picture that the README shows: the demo's report as a browser draws it. Needs Chromium
// (Debian: apt-get install chromium), by its path in CHROMIUM or at /usr/bin/chromium.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const [width = '1100', height = '900', file = 'reports/tray-cell/comparison.png'] = process.argv.slice(2);
const root = join(import.meta.dirname, '..');
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-background-networking'],
});
const page = await browser.newPage({ viewport: { width: Number(width), height: Number(height) } });
await page.goto(pathToFileURL(join(root, 'reports/tray-cell/comparison.html')).href);
await page.screenshot({ path: join(root, file), fullPage: process.argv.includes('--whole') });
await browser.close();
