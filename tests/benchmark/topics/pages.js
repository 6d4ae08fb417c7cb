// How large the page of a report and the pages for a class are, how soon the report is drawn, and how soon a class has its answer.
import { readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { inBrowser, opened } from '../common/browser.js';
import { COMMAND, DEMO, SCENARIOS, scratch } from '../common/files.js';
import { heading, remark, row } from '../common/table.js';
import { median, program, spread } from '../common/timing.js';

const TIMES = 5;
const SEEDS = 30;

const megabytes = (file) => statSync(file).size / 1e6;
const mendline = (...words) => program(process.execPath, [COMMAND, ...words]);

/** Notes when the first frame was painted that has all of the page in it, ms since it was asked for. Runs in the page. */
function notePainted() {
  addEventListener('load', () =>
    // The second frame is asked for once the first has been painted.
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        globalThis.painted_noted = performance.now();
      }),
    ),
  );
}

async function drawn(browser, file) {
  const view = await opened(browser, file, notePainted);
  const painted = await view.waitForFunction(() => globalThis.painted_noted);
  const took = await painted.jsonValue();
  await view.close();
  return took;
}

/** Presses the button and waits for its answer, ms. Runs in the page. */
function answered() {
  const button = document.getElementById('run');
  const begun = performance.now();
  button.click();
  return new Promise((resolve) => {
    const look = () => (button.disabled ? requestAnimationFrame(look) : resolve(performance.now() - begun));
    requestAnimationFrame(look);
  });
}

/** The time of all runs at the setting that an exercise opens with. */
async function exercise(browser, file) {
  const view = await opened(browser, file);
  for (const number of await view.locator('#predictions input[type=number]').all()) await number.fill('50');
  for (const choices of await view.locator('#predictions .choices').all())
    await choices.locator('input').first().check();
  await view.click('#predictions button');
  const took = await view.evaluate(answered);
  const told = await view.textContent('#status');
  if (!told.includes(`has run under ${SEEDS} seeds`)) throw new Error(`${file}: ${told}`);
  await view.close();
  return took;
}

async function report(browser) {
  heading('The report page of the demo');
  const folder = scratch('report');
  await mendline('compare', DEMO, '--out', folder);
  const page = join(folder, 'comparison.html');
  row('size', megabytes(page), 'MB', { most: 1.5 });
  const times = [];
  for (let i = 0; i < TIMES; i++) times.push(await drawn(browser, page));
  row('drawn whole', median(times) / 1000, 's', { most: 1, note: spread(times) });
  remark(`median of ${TIMES}, from asking for the page to its first frame with everything in it`);
}

async function classes(browser) {
  heading('The class pages');
  const folder = join(SCENARIOS, 'exercises');
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.yaml'))) {
    const name = basename(file, '.yaml');
    const page = scratch(`${name}.html`);
    await mendline('classroom', join(folder, file), '--out', page);
    row(`${name}: size`, megabytes(page), 'MB', { most: 1 });
    const times = [];
    for (let i = 0; i < TIMES; i++) times.push(await exercise(browser, page));
    row(`${name}: ${SEEDS} seeds answered`, median(times) / 1000, 's', { most: 3, note: spread(times) });
  }
  remark(`median of ${TIMES}, each in a page opened anew, at the setting that the exercise opens with`);
}

export async function pages() {
  await inBrowser(async (browser) => {
    await report(browser);
    await classes(browser);
  });
}
