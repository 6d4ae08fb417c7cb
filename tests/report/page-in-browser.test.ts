import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { comparisonPage } from '../../src/report/page.ts';
import { openChromium } from '../common/chromium.ts';
import { sampleLooked } from './looked-sample.ts';
import { samplePage } from './sample.ts';

const LONG = 'a name of two hundred characters '.repeat(7).slice(0, 200);
const NASTY = '<script>document.title = "caught"</script>';

let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
}, 300_000);
afterAll(() => browser.close());

const SOURCE = {
  ...samplePage(`${NASTY} ${LONG}`),
  looked: sampleLooked(),
  causes: {
    scrapped: [
      { station: LONG, cause: 'loose', rows: [{ policy: 'rework', parts: 3, perThousand: 0.4 }] },
    ] as const,
    misfits: [
      {
        ...{ station: 'assembly', hole: 'bore', shaft: 'lid.pin' },
        rows: [{ policy: NASTY, tight: 0, loose: 0.4 }],
      },
    ],
  },
  costs: [{ policy: LONG, costs: [1, 2, 3, 0, 0] }],
};

/** The page as a reader has it, and what it complained of or asked for. */
async function opened(width: number): Promise<{ page: Page; complaints: string[] }> {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => complaints.push(request.url()));
  await page.setContent(comparisonPage(SOURCE));
  return { page, complaints };
}

it.each([1280, 390])('has no barrier that axe-core finds, at %d px', { timeout: 120_000 }, async (width) => {
  const { page, complaints } = await opened(width);
  // What is folded is looked at, too.
  for (const fold of await page.locator('details').all())
    await fold.evaluate((it) => it.setAttribute('open', ''));
  expect(complaints).toEqual([]);
  expect(await page.title()).toContain('<script>');
  const wide = await page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  );
  expect(wide).toBeLessThanOrEqual(0);
  await page.evaluate(axe.source);
  const { violations } = (await page.evaluate('axe.run()')) as axe.AxeResults;
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual(
    [],
  );
  await page.close();
});

/** Text that stands out over the edge of its picture, where it is cut. */
const CUT_TEXT = `[...document.querySelectorAll('svg')].flatMap((svg) => {
  const edge = svg.getBoundingClientRect();
  return [...svg.querySelectorAll('text')].filter((text) => {
    const { left, right } = text.getBoundingClientRect();
    return left < edge.left - 0.5 || right > edge.right + 0.5;
  }).map((text) => text.textContent);
})`;

/** How far the captions of wide tables are from the left edge once the table has been moved to its right end. */
const CAPTIONS = `[...document.querySelectorAll('.scroll')].filter((box) => box.scrollWidth > box.clientWidth).map((box) => {
  box.scrollLeft = box.scrollWidth;
  const [{ left, right }, edge] = [box.querySelector('caption div'), box].map((it) => it.getBoundingClientRect());
  return Math.abs(left - edge.left) < 1 && right < edge.right + 1 ? [] : [box.getAttribute('aria-labelledby'), left - edge.left, right - edge.right];
})`;

it('cuts no number of a picture, and keeps the caption of a wide table in sight', {
  timeout: 120_000,
}, async () => {
  const { page } = await opened(390);
  for (const fold of await page.locator('details').all())
    await fold.evaluate((it) => it.setAttribute('open', ''));
  expect(await page.evaluate(CUT_TEXT)).toEqual([]);
  const captions = (await page.evaluate(CAPTIONS)) as unknown[][];
  expect(captions.length).toBeGreaterThan(0);
  expect(captions.flat()).toEqual([]);
  await page.close();
});

it('is read by keyboard: past the head, into folds, and along tables', { timeout: 120_000 }, async () => {
  const { page } = await opened(390);
  const focused = (of: string) => page.evaluate(`document.activeElement.${of}`);
  await page.keyboard.press('Tab');
  expect(await focused('textContent')).toBe('Skip to the verdict');
  await page.keyboard.press('Enter');
  expect(await page.evaluate('location.hash')).toBe('#verdict');
  await page.locator('#levels summary').focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('#levels details').getAttribute('open')).not.toBeNull();
  await page.keyboard.press('Tab');
  expect(await focused('className')).toBe('scroll');
  await page.locator('[aria-labelledby="table-throughput_per_h"]').focus();
  await page.keyboard.press('ArrowRight');
  await page.waitForFunction('document.activeElement.scrollLeft > 0');
  await page.close();
});

/** What an A4 sheet holds within the margins of the page's style, px of CSS. */
const SHEET = { width: ((210 - 2 * 15) / 25.4) * 96, height: ((297 - 2 * 14) / 25.4) * 96 };

it('prints the verdict and the table of everything on the first sheet, and no table beyond its edge', {
  timeout: 120_000,
}, async () => {
  const page = await browser.newPage({ viewport: { width: Math.floor(SHEET.width), height: 900 } });
  await page.emulateMedia({ media: 'print' });
  await page.goto(pathToFileURL(join(import.meta.dirname, '../../reports/tray-cell/comparison.html')).href);
  const bottom = await page.evaluate("document.getElementById('glance').getBoundingClientRect().bottom");
  expect(bottom).toBeLessThan(SHEET.height);
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(SHEET.width);
  await page.close();
});
