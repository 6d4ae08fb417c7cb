import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { Scratch, shipped } from '../cli/command.ts';
import { openChromium } from '../common/chromium.ts';
import { SHIPPED } from '../exercise/shipped.ts';
import { predict, run, saved } from './opened.ts';

const BUFFER = readFileSync(shipped('exercises/buffer.yaml'), 'utf8').replace('theory:', 'seeds: 3\ntheory:');
const [, exercise] = SHIPPED.find(([name]) => name === 'buffer.yaml')!;
const raw = exercise.raw as { readonly run: object };

let browser: Browser;
let scratch: Scratch;
let visitor: BrowserContext;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  scratch = new Scratch();
  visitor = await browser.newContext();
});
afterEach(async () => {
  await visitor.close();
  scratch.remove();
});

const made = async (text: string): Promise<string> => {
  const file = scratch.file('exercise.yaml', text);
  const { code, err } = await scratch.mendline(['classroom', file, '--out', 'page.html']);
  expect([code, err]).toEqual([0, '']);
  return pathToFileURL(join(scratch.path, 'page.html')).href;
};
const settings = (page: Page) => page.locator('#tried-table tbody tr').count();

it('lays no runs of another line, or of another version, beside those of this one', async () => {
  const text = BUFFER.replace(/^scenario:[\s\S]*?(?=^knobs:)/m, 'scenario: line.yaml\n');
  const line = (warmUp: string) => stringify({ ...raw, run: { ...raw.run, 'warm-up': warmUp } });
  scratch.file('line.yaml', line('8 h'));
  const address = await made(text);
  const page = await visitor.newPage();
  await page.goto(address);
  await predict(page);
  await run(page);
  const before = JSON.parse(await saved(page, 'Save the answers'));
  expect(before.scenario_sha256).toMatch(/^[0-9a-f]{64}$/);
  scratch.file('line.yaml', line('9 h'));
  await made(text);
  await page.goto('about:blank');
  await page.goto(address);
  expect([await settings(page), await page.locator('#run').isDisabled()]).toEqual([0, true]);
  await predict(page);
  const after = JSON.parse(await saved(page, 'Save the answers'));
  expect(after.exercise_sha256).toBe(before.exercise_sha256);
  expect(after.scenario_sha256).not.toBe(before.scenario_sha256);
  const html = readFileSync(join(scratch.path, 'page.html'), 'utf8');
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
  const newer = html.replaceAll(`"version":"${version}"`, '"version":"9.9.9"');
  expect(newer).not.toBe(html);
  scratch.file('page.html', newer);
  await page.reload();
  expect(await page.locator('#run').isDisabled()).toBe(true);
  // What was kept of the first line is there again with it.
  scratch.file('line.yaml', line('8 h'));
  await made(text);
  await page.reload();
  expect(await settings(page)).toBe(1);
});

it('drops a setting that no longer holds, and keeps the others', async () => {
  const page = await visitor.newPage();
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  await page.goto(await made(BUFFER));
  await predict(page);
  await run(page);
  await page.evaluate(() => {
    const { localStorage } = globalThis as unknown as { localStorage: Record<string, string> };
    const [key] = Object.keys(localStorage);
    const attempt = JSON.parse(localStorage[key!]!);
    const [sound] = attempt.tried;
    const at = (places: unknown) => ({ ...sound, setting: { ...sound.setting, 'places between': places } });
    const { failure: _, ...unfinished } = sound;
    attempt.tried = [at('x'), at(2.5), at(21), unfinished, sound];
    localStorage[key!] = JSON.stringify(attempt);
  });
  await page.reload();
  expect([await settings(page), await page.locator('#prediction-1').inputValue()]).toEqual([1, '50']);
  expect(await page.locator('#run').isEnabled()).toBe(true);
  expect(errors).toEqual([]);
});

it('is worked on in two windows of a browser without either undoing the other', async () => {
  const address = await made(BUFFER);
  const [one, other] = [await visitor.newPage(), await visitor.newPage()];
  await one.goto(address);
  await other.goto(address);
  await other.locator('#prediction-1').fill('44');
  await one.getByLabel('Your name').fill('A. Pupil');
  await expect.poll(() => other.getByLabel('Your name').inputValue()).toBe('A. Pupil');
  // What is being written there is not written down yet.
  expect(await other.locator('#prediction-1').inputValue()).toBe('44');
  await predict(one);
  await expect.poll(() => other.locator('#run').isEnabled()).toBe(true);
  expect(await other.locator('#prediction-1').inputValue()).toBe('50');
  await other.locator('#knob-1').fill('5');
  await run(one);
  await expect.poll(() => settings(other)).toBe(1);
  expect(await other.locator('#knob-1').inputValue()).toBe('5');
  await run(other);
  await expect.poll(() => settings(one)).toBe(2);
  await other.getByLabel('What you found').fill('It grows.');
  await one.reload();
  expect(await settings(one)).toBe(2);
  expect(await one.getByLabel('What you found').inputValue()).toBe('It grows.');
  expect(await one.getByLabel('Your name').inputValue()).toBe('A. Pupil');
  await one.locator('#reset').click();
  await one.getByRole('button', { name: 'Clear them' }).click();
  await expect.poll(() => other.locator('#run').isDisabled()).toBe(true);
  expect([await settings(other), await other.getByLabel('Your name').inputValue()]).toEqual([0, '']);
});
