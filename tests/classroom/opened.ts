import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Scratch } from '../cli/command.ts';
import { type Opened, openFile } from '../common/opened.ts';

/** Makes the page of an exercise by the command, and opens it. */
export async function openExercise(
  browser: Browser,
  scratch: Scratch,
  { text, width, prepare, warned }: { text: string; width?: number; prepare?: () => void; warned?: string },
): Promise<Opened> {
  const file = scratch.file('exercise.yaml', text);
  const { code, err } = await scratch.mendline(['classroom', file, '--out', 'page.html']);
  expect([code, err]).toEqual([0, warned ? expect.stringContaining(warned) : '']);
  return openFile(browser, join(scratch.path, 'page.html'), { width, prepare });
}

/** Writes something down for every prediction, as a number or by the first choice. */
export async function predict(page: Page): Promise<void> {
  for (const number of await page.locator('#predictions input[type=number]').all()) await number.fill('50');
  for (const choices of await page.locator('#predictions .choices').all())
    await choices.locator('input').first().check();
  await page.getByRole('button', { name: 'Write it down' }).click();
}

/** Runs the line as the knobs stand, until all seeds are done or it failed, and gives what the page says. */
export async function run(page: Page): Promise<string> {
  await page.locator('#run').click();
  return settled(page);
}

export async function settled(page: Page): Promise<string> {
  await page.locator('#run:enabled').waitFor();
  return (await page.locator('#status').textContent()) ?? '';
}

/** What a button offers to save, and under which name. */
export async function savedAs(page: Page, button: string): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

/** What a button offers to save. */
export const saved = async (page: Page, button: string): Promise<string> =>
  (await savedAs(page, button)).text;
