import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { Scratch, shipped } from '../cli/command.ts';
import { openChromium } from '../common/chromium.ts';
import { openExercise, predict, run } from './opened.ts';

const BUFFER = readFileSync(shipped('exercises/buffer.yaml'), 'utf8').replace('theory:', 'seeds: 5\ntheory:');

let browser: Browser;
let scratch: Scratch;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser?.close());
beforeEach(() => {
  scratch = new Scratch();
});
afterEach(() => scratch.remove());

const focused = (page: Page) => page.evaluate('document.activeElement.id');
const settings = (page: Page) => page.locator('#tried-table tbody tr').count();

/** Counts from now on how often what is read out changes, but for what follows every run. */
const countTold = (page: Page) =>
  page.evaluate(`
    window.told = 0;
    new MutationObserver((changes) => { window.told += changes.length; }).observe(
      document.getElementById('pair'), { childList: true, characterData: true, subtree: true });
  `);

it('tells what changed and nothing else, in a sentence, and shuts nothing that was opened', async () => {
  const { page, complaints } = await openExercise(browser, scratch, { text: BUFFER });
  await predict(page);
  await run(page);
  await page.locator('#knob-1').fill('9');
  await run(page);
  expect(await page.locator('[aria-live] table, [role=status] table').count()).toBe(0);
  expect(await page.locator('#difference-said').textContent()).toMatch(
    /^Setting 2 against setting 1: throughput more, work in progress more, lead time more\.$/,
  );
  expect(await page.locator('#difference tbody tr').count()).toBe(3);
  await page.getByText('The chart as a table').click();
  const open = () =>
    page.locator('#result details').evaluate((one) => (one as unknown as { open: boolean }).open);
  await countTold(page);
  await page.getByLabel('Your name').fill('A. Pupil');
  await page.locator('#reveal').click();
  expect(await open()).toBe(true);
  // The chart has a new line in it, and so was drawn anew.
  expect(await page.locator('#result .expected').count()).toBe(1);
  await page.locator('#one').selectOption({ index: 1 });
  expect(await page.evaluate('window.told')).toBe(0);
  await page.locator('#other').selectOption({ index: 1 });
  expect(await page.locator('#difference-said').textContent()).toBe('Choose two settings.');
  expect(complaints).toEqual([]);
});

it('leaves the focus where one goes on', async () => {
  const long = BUFFER.replace('length: 80 h', 'length: 20000 h').replace('seeds: 5', 'seeds: 200');
  const { page, complaints } = await openExercise(browser, scratch, { text: long });
  await predict(page);
  await page.locator('#run').click();
  await page.locator('#stop').focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('#status').textContent()).toMatch(/^Stopped before there were two runs/);
  await page.waitForTimeout(100);
  expect([await focused(page), await settings(page)]).toEqual(['run', 0]);
  await page.keyboard.press('Enter');
  await page.locator('#result figure').waitFor();
  await page.locator('#stop').focus();
  await page.keyboard.press('Enter');
  await page.waitForTimeout(100);
  expect([await focused(page), await settings(page)]).toEqual(['run', 1]);
  // Escape keeps all, whatever was answered the time before.
  await page.locator('#reset').click();
  await page.getByRole('button', { name: 'Clear them' }).click();
  await predict(page);
  await page.locator('#run').click();
  await page.locator('#result figure').waitFor();
  await page.locator('#stop').click();
  await page.locator('#reset').click();
  await page.keyboard.press('Escape');
  await page.waitForTimeout(100);
  expect([await settings(page), await page.locator('#sure').isVisible()]).toEqual([1, false]);
  expect(complaints).toEqual([]);
});

it('names a policy so that a shell takes it as it is', async () => {
  const odd = 'a "b" $HOME `date` \\ c';
  const text = BUFFER.replace('carry on: []', `${JSON.stringify(odd)}: []`);
  const { page } = await openExercise(browser, scratch, { text });
  await predict(page);
  const download = page.waitForEvent('download');
  await page.locator('#save-line').click();
  const file = (await download).suggestedFilename();
  const command = (await page.locator('#line-command').textContent())!;
  const { stdout } = spawnSync('sh', ['-c', `mendline() { printf '%s\\n' "$@"; }; ${command}`]);
  expect(stdout.toString()).toBe(`run\n${file}\n--policy\n${odd}\n`);
});

it('says what to do where the page may run nothing beside it, and calls that no setting tried', async () => {
  const { page: made } = await openExercise(browser, scratch, { text: BUFFER });
  await made.close();
  const html = readFileSync(join(scratch.path, 'page.html'));
  const server = createServer((_, response) => {
    response.setHeader('content-type', 'text/html');
    response.setHeader('content-security-policy', "worker-src 'none'");
    response.end(html);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    await predict(page);
    const said = await run(page);
    expect(said).toMatch(/^No result: this browser does not let the page run the engine beside it; open/);
    await page.waitForTimeout(100);
    expect([await settings(page), await focused(page)]).toEqual([0, 'run']);
    await page.reload();
    expect([await settings(page), await page.locator('#prediction-1').inputValue()]).toEqual([0, '50']);
    expect(await page.locator('#run').isEnabled()).toBe(true);
  } finally {
    server.close();
  }
});
