// Takes the pictures that the README shows, as a browser draws them: the demo's report, and a class page that is being
// worked. Needs Chromium (Debian: apt-get install chromium), by its path in CHROMIUM or at /usr/bin/chromium.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = join(import.meta.dirname, '..');

/** Writes a prediction down and runs two settings. */
async function work(page) {
  await page.fill('#prediction-1', '50');
  await page.check('#prediction-2-1');
  await page.click('#predictions button');
  for (const places of ['1', '4']) {
    await page.fill('#knob-1', places);
    await page.click('#run');
    await page.waitForSelector('#run:enabled');
  }
  await page.click('#reveal');
  await page.evaluate("document.getElementById('trying').scrollIntoView()");
}

const PICTURES = [
  { page: 'reports/tray-cell/comparison.html', file: 'reports/tray-cell/comparison.png' },
  { page: 'reports/classroom/buffer.html', file: 'reports/classroom/buffer.png', before: work },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-background-networking'],
});
for (const { page: address, file, before } of PICTURES) {
  const page = await browser.newPage({ viewport: { width: 1100, height: 900 } });
  await page.goto(pathToFileURL(join(root, address)).href);
  await before?.(page);
  await page.screenshot({ path: join(root, file) });
}
await browser.close();
