// Takes the pictures that the README shows, as a browser draws them: the demo's report, a class page that is being
// worked, and a run played back. Needs Chromium (Debian: apt-get install chromium), by its path in CHROMIUM or at /usr/bin/chromium.
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

/** Follows a part while the line is disturbed and the policy acts. */
async function follow(page) {
  await page.fill('#part', '2150');
  await page.click('#follow button');
  await page.fill('#time', '13500');
  await page.setViewportSize({ width: 1100, height: 1350 });
  await page.evaluate('scrollTo(0, 0)');
}

const PICTURES = [
  { page: 'reports/tray-cell/comparison.html', file: 'reports/tray-cell/comparison.png' },
  { page: 'reports/classroom/buffer.html', file: 'reports/classroom/buffer.png', before: work },
  {
    page: 'reports/watch/tray-cell-stop-and-fix-seed-1.html',
    file: 'reports/watch/tray-cell.png',
    before: follow,
  },
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
