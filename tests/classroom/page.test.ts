import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { Scratch, shipped } from '../cli/command.ts';
import { openChromium } from '../common/chromium.ts';
import { barriers } from '../common/opened.ts';
import { SHIPPED } from '../exercise/shipped.ts';
import { openExercise, predict, run, saved, savedAs, settled } from './opened.ts';

const exercise = (name: string) => readFileSync(shipped(`exercises/${name}`), 'utf8');
const BUFFER = exercise('buffer.yaml');

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

it('can be worked by the keyboard alone, from the question to the answer', async () => {
  const { page, complaints } = await openExercise(browser, scratch, { text: BUFFER });
  const press = (key: string) => page.keyboard.press(key);
  const focused = () => page.evaluate('document.activeElement.id || document.activeElement.textContent');
  /** Goes on by Tab until it is reached. */
  const reach = async (id: string) => {
    for (let i = 0; i < 30 && (await focused()) !== id; i++) await press('Tab');
    expect(await focused()).toBe(id);
  };
  await press('Tab');
  expect(await focused()).toBe('Skip to your prediction');
  await press('Enter');
  await reach('prediction-1');
  await page.keyboard.type('50');
  await reach('prediction-2-1');
  await press('ArrowDown');
  await press('Tab');
  await press('Enter');
  expect(await focused()).toBe('knob-1');
  await press('Control+A');
  await page.keyboard.type('3');
  await press('Enter');
  expect(await settled(page)).toMatch(/^Setting 1 has run under 30 seeds: throughput [\d.]+ good \/h/);
  await reach('reveal');
  await press('Enter');
  expect(await focused()).toBe('revealed');
  // (B + 2)/(B + 3) of 60 an hour with B = 3 places: G. C. Hunt (1956).
  expect(await page.locator('#expected tbody tr').first().textContent()).toMatch(
    /throughput, good \/h\s*50\.0/,
  );
  expect(await page.locator('#predicted').textContent()).toContain('45.0 good /h');
  expect(complaints).toEqual([]);
});

/** What the command line gives of the line that the page saved. */
interface Printed {
  readonly measures: readonly {
    readonly name: string;
    readonly rows: readonly [{ readonly mean: number; readonly lower: number; readonly upper: number }];
  }[];
  /** Means, of which the one stock there is has a row. */
  readonly stocks: readonly Readonly<Record<string, number>>[];
}

const OF_STOCK: Readonly<Record<string, string>> = {
  'frame filled at once': 'fill_rate',
  'frame on hand': 'mean_on_hand_pieces',
  'frame waited for': 'mean_waiting_pieces',
};

function expectPrinted({ measures, stocks }: Printed, name: string, mean: number): void {
  const key = OF_STOCK[name];
  if (key === undefined)
    return expect(mean, name).toBe(measures.find((one) => one.name === name)!.rows[0].mean);
  // The runs' values of a stock are summed up in another way there.
  expect(Math.abs(mean / stocks[0]![key]! - 1), name).toBeLessThan(1e-14);
}

it.each(SHIPPED.map(([name]) => name))('%s runs to the numbers of the command line', async (name) => {
  const { page, complaints } = await openExercise(browser, scratch, { text: exercise(name) });
  expect((await page.content()).length).toBeLessThan(1_000_000);
  await predict(page);
  const knob = page.locator('#knob-1');
  if ((await knob.getAttribute('type')) === 'number') await knob.press('ArrowUp');
  else await knob.selectOption({ index: 2 });
  await run(page);
  const box = await page
    .locator('#tried-table .scroll')
    .evaluate((box) => [box.scrollWidth, box.clientWidth]);
  expect(box[0], 'the table of settings is cut off').toBe(box[1]);
  const line = scratch.file('line.yaml', await saved(page, 'Save the line as the knobs stand'));
  const [, policy] = /--policy "?(.*?)"?$/.exec((await page.locator('#line-command').textContent())!)!;
  const answers = JSON.parse(await saved(page, 'Save the answers'));
  const command = ['run', line, '--policy', policy!, '--workers', '1'];
  const printed = JSON.parse((await scratch.mendline([...command, '--json'])).out) as Printed;
  const found = answers.settings[0].measures as {
    name: string;
    mean: number;
    lower: number;
    upper: number;
  }[];
  expect(found.length).toBeGreaterThan(1);
  for (const { name, mean } of found) expectPrinted(printed, name, mean);
  // Shown is what the command line shows, digit for digit; once is enough, since it is by the same words.
  if (name !== 'buffer.yaml') return expect(complaints).toEqual([]);
  const { out } = await scratch.mendline(command);
  const shown = out.split('\n').map((row) =>
    row
      .trim()
      .split(/\s{2,}/)
      .join(' | '),
  );
  const rows = await page
    .locator('#table-measures')
    .locator('xpath=ancestor::table')
    .locator('tbody tr')
    .all();
  const cells = await Promise.all(rows.map((row) => row.locator('th, td').allTextContents()));
  const measures = cells.filter(([measure]) => !measure!.startsWith('frame '));
  expect(measures.length).toBeGreaterThan(0);
  for (const row of measures) expect(shown).toContain(row.join(' | '));
  expect(complaints).toEqual([]);
});

it.each([1280, 390])('has no barrier that axe-core finds, and fits, %d px wide', async (width) => {
  const { page } = await openExercise(browser, scratch, { text: BUFFER, width });
  const fits = () => page.evaluate('document.documentElement.scrollWidth <= window.innerWidth');
  expect([await barriers(page), await fits()]).toEqual([[], true]);
  await predict(page);
  await run(page);
  await page.locator('#knob-1').press('ArrowUp');
  await run(page);
  await page.getByText('The chart as a table').click();
  await page.locator('#reveal').click();
  expect([await barriers(page), await fits()]).toEqual([[], true]);
  await page.locator('#reset').click();
  expect(await barriers(page)).toEqual([]);
});

it('says in words when a setting makes the line stand still, and goes on', async () => {
  const knotted = readFileSync(shipped('knotted.yaml'), 'utf8').replace(/^/gm, '  ');
  const text = `exercise: 1
title: "<script>alert(1)</script>"
teaches: "<img src=x onerror=alert(2)>"
source: invented
question: "</script><script>alert(3)</script>"
predict: [{ asks: "<b>How many?</b>", of: throughput }]
scenario:
${knotted}
knobs:
  "<i>places</i>": { at: stations/bench/buffer, least: 1, most: 10001, step: 10000, starts: 10001 }
watch: [throughput]
seeds: 3
discussion: "<script>alert(4)</script>"
`;
  const warned = 'warning: at <i>places</i> 1 the line cannot run';
  const { page, complaints } = await openExercise(browser, scratch, { text, warned });
  expect(await page.locator('h1').textContent()).toBe('<script>alert(1)</script>');
  await predict(page);
  await page.locator('#knob-1').fill('1');
  expect(await run(page)).toContain('waits for room in front of');
  expect(await page.locator('#reveal').isDisabled()).toBe(true);
  await page.locator('#knob-1').fill('10001');
  expect(await run(page)).toMatch(/^Setting 2 has run under 3 seeds/);
  await page.locator('#knob-1').fill('7');
  await page
    .locator('#knobs')
    .evaluate((form) => ((form as unknown as { noValidate: boolean }).noValidate = true));
  await page.locator('#run').click();
  expect(await page.locator('#status').textContent()).toContain('goes from 1 to 10001 in steps of 10000');
  await page.locator('#reveal').click();
  expect(await page.locator('#revealed').textContent()).toContain('<script>alert(4)</script>');
  expect(complaints).toEqual([]);
});

it('keeps the work from one visit to the next, and clears it when asked', async () => {
  const { page, complaints } = await openExercise(browser, scratch, { text: BUFFER });
  expect(await page.locator('#run').isDisabled()).toBe(true);
  await page.locator('#prediction-1').fill('-5');
  await page.locator('#prediction-2-1').check();
  await page.getByRole('button', { name: 'Write it down' }).click();
  expect(await page.locator('#prediction-1').isEnabled()).toBe(true);
  await predict(page);
  await run(page);
  await page.getByLabel('Your name').fill('A. Pupil');
  await page.reload();
  expect(await page.getByLabel('Your name').inputValue()).toBe('A. Pupil');
  expect(await page.locator('#prediction-1').inputValue()).toBe('50');
  expect(await page.locator('#prediction-1').isDisabled()).toBe(true);
  expect(await page.locator('#tried-table tbody tr').count()).toBe(1);
  expect(await run(page)).toBe('Setting 1 is this one, and has run: the same seeds give the same numbers.');
  expect(await page.locator('#tried-table tbody tr').count()).toBe(1);
  const answers = await savedAs(page, 'Save the answers');
  expect(answers.name).toBe('answers-exercise-a-pupil.json');
  const [{ shown }] = JSON.parse(answers.text).settings[0].measures;
  expect(await page.locator('#tried-table tbody tr').first().textContent()).toContain(
    `${shown.mean}${shown.interval}`,
  );
  const table = await savedAs(page, 'Save as a table');
  expect([table.name, table.text.split('\r\n').length]).toEqual(['answers-exercise-a-pupil.csv', 5]);
  await page.locator('#reset').click();
  await page.getByRole('button', { name: 'Clear them' }).click();
  await page.reload();
  expect(await page.locator('#run').isDisabled()).toBe(true);
  expect(await page.getByLabel('Your name').inputValue()).toBe('');
  expect(await page.locator('#tried-table tbody tr').count()).toBe(0);
  expect(complaints).toEqual([]);
});

it('works where the browser keeps nothing, and says so', async () => {
  const { page, complaints } = await openExercise(browser, scratch, {
    text: BUFFER,
    prepare: () =>
      Object.defineProperty(globalThis, 'localStorage', {
        get: () => {
          throw new Error('not here');
        },
      }),
  });
  await predict(page);
  expect(await page.locator('#kept').isVisible()).toBe(true);
  expect(await run(page)).toMatch(/^Setting 1 has run under 30 seeds/);
  expect(complaints).toEqual([]);
});

it('can be stopped, keeps the runs that are done, and compares settings run by run', async () => {
  const long = BUFFER.replace('length: 80 h', 'length: 1000 h').replace('theory:', 'seeds: 200\ntheory:');
  const { page, complaints } = await openExercise(browser, scratch, { text: long });
  await predict(page);
  for (const places of ['1', '5']) {
    await page.locator('#knob-1').fill(places);
    await page.locator('#run').click();
    await page.locator('#result figure').waitFor();
    await page.locator('#stop').click();
    expect(await page.locator('#status').textContent()).toMatch(/^Setting \d has run under \d+ seeds/);
  }
  const first = page.locator('#difference tbody tr').first();
  expect(await first.textContent()).toMatch(/throughput, good \/h\s*\+\d.*more/s);
  expect(complaints).toEqual([]);
});
