import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Scratch, shipped } from '../cli/command.ts';
import { openChromium } from '../common/chromium.ts';
import { cutOff, onPaper } from '../common/paper.ts';
import { openExercise, predict, run } from './opened.ts';

const BUFFER = readFileSync(shipped('exercises/buffer.yaml'), 'utf8');

let browser: Browser;
const scratch = new Scratch();
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(async () => {
  await browser?.close();
  scratch.remove();
});

const shows = (page: Page, what: string) => page.locator(what).isVisible();

it('prints as a sheet to be worked on by hand while nothing has run', async () => {
  const { page, complaints } = await openExercise(browser, scratch, { text: BUFFER });
  expect([await shows(page, '#tried-by-hand'), await shows(page, '#student-on-paper')]).toEqual([
    false,
    false,
  ]);
  expect(await onPaper(page)).toBeLessThanOrEqual(3);
  for (const wanted of [
    '#student-on-paper',
    '#prediction-1',
    '#prediction-2-1',
    '#tried-by-hand',
    '#notes-by-hand',
  ])
    expect(await shows(page, wanted), wanted).toBe(true);
  // What the knobs allow, and a column for each and for each measure.
  expect(await shows(page, '#knob-1-limits')).toBe(true);
  const heads = await page.locator('#tried-by-hand thead th').allTextContents();
  const [knobs, measures] = [await page.locator('#knobs .control').count(), 3];
  expect(heads.length).toBe(1 + knobs + 1 + measures);
  expect(await page.locator('#tried-by-hand tbody tr').first().locator('th, td').count()).toBe(heads.length);
  // Nothing to press, and no answer.
  for (const none of ['main button', '#answer', '#locked', '#status', 'details:not([open])'])
    for (const one of await page.locator(none).all()) expect(await one.isVisible(), none).toBe(false);
  expect(await cutOff(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

it('prints all that was done: the name, the settings, the whole of the notes, the answer once it is out', async () => {
  const { page, complaints } = await openExercise(browser, scratch, { text: BUFFER });
  await predict(page);
  await run(page);
  const notes = Array.from({ length: 30 }, (_, i) => `Line ${i + 1} of what was found.`).join('\n');
  await page.getByLabel('Your name').fill('A. Pupil');
  await page.getByLabel('What you found').fill(notes);
  await page.locator('#reveal').click();
  await onPaper(page);
  expect(await page.locator('#student-on-paper').textContent()).toBe('A. Pupil');
  expect(await page.locator('#notes-on-paper').textContent()).toBe(notes);
  expect([await shows(page, '#notes'), await shows(page, '#notes-by-hand')]).toEqual([false, false]);
  expect([await shows(page, '#tried-by-hand'), await shows(page, '#tried-table')]).toEqual([false, true]);
  expect(await shows(page, '#table-predictions')).toBe(true);
  expect(await cutOff(page)).toEqual([]);
  expect(complaints).toEqual([]);
});
