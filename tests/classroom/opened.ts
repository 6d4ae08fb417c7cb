import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Scratch } from '../cli/command.ts';

/** A page that is open, with all that it said or asked for which it should not. */
export interface Opened {
  readonly page: Page;
  readonly complaints: readonly string[];
}

/** Makes the page of an exercise by the command, and opens it. */
export async function openExercise(
  browser: Browser,
  scratch: Scratch,
  { text, width = 1280, prepare }: { text: string; width?: number; prepare?: () => void },
): Promise<Opened> {
  const file = scratch.file('exercise.yaml', text);
  const { code, err } = await scratch.mendline(['classroom', file, '--out', 'page.html']);
  expect([code, err]).toEqual([0, '']);
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => complaints.push(`dialog: ${dialog.message()}`));
  page.on('request', (request) => {
    if (!/^(file|blob):/.test(request.url())) complaints.push(`request: ${request.url()}`);
  });
  if (prepare) await page.addInitScript(prepare);
  await page.goto(pathToFileURL(join(scratch.path, 'page.html')).href);
  return { page, complaints };
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

/** What a button offers to save. */
export async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

/** What axe-core finds against WCAG 2.2 A and AA, and its own good practice, as text. */
export async function barriers(page: Page): Promise<string[]> {
  // The page forbids programs but its own; the debugger's way in is not the page's.
  const session = await page.context().newCDPSession(page);
  await session.send('Page.setBypassCSP', { enabled: true });
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run: () => Promise<import('axe-core').AxeResults> } };
    return axe.run();
  });
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}
