// How long a page that plays back a day of the demo takes to open, to draw a frame at its top speed, and to jump to a moment.
import { statSync } from 'node:fs';
import { inBrowser, opened } from '../common/browser.js';
import { COMMAND, DEMO, scratch } from '../common/files.js';
import { heading, remark, row } from '../common/table.js';
import { median, program } from '../common/timing.js';

const SECONDS = 16;
const JUMPS = 50;

/** Notes how long each frame takes to draw, and when. Runs in the page before its own program. */
function note() {
  const frames = [];
  globalThis.frames_noted = frames;
  const ask = globalThis.requestAnimationFrame.bind(globalThis);
  globalThis.requestAnimationFrame = (act) =>
    ask((at) => {
      const start = performance.now();
      act(at);
      frames.push({ at, took: performance.now() - start });
    });
}

export async function playback() {
  heading('Playback of a day of the demo');
  const page = scratch('playback.html', '');
  await program(process.execPath, [COMMAND, 'watch', DEMO, '--policy', 'stop and fix', '--out', page]);
  row('page', statSync(page).size / 1e6, 'MB', { most: 1.5 });
  await inBrowser((browser) => play(browser, page));
}

async function play(browser, page) {
  const view = await opened(browser, page, note);
  row('opened', await view.evaluate(() => performance.now()), 'ms');
  await view.selectOption('#speed', '3600');
  await view.fill('#part', '812');
  await view.click('#follow button');
  await view.click('#play');
  await view.waitForTimeout(1000 * SECONDS);
  const frames = await view.evaluate(() => globalThis.frames_noted);
  const took = frames.map((frame) => frame.took);
  const between = frames.slice(1).map(({ at }, i) => at - frames[i].at);
  row('playback: longest draw', Math.max(...took), 'ms', { most: 100 });
  row('playback: median draw', median(took), 'ms', { most: 16 });
  row('playback: frames', 1000 / median(between), 'frames/s', {
    note: `longest gap ${Math.max(...between).toFixed(0)} ms`,
  });
  const jumps = await view.evaluate((number) => {
    const slider = document.getElementById('time');
    return Array.from({ length: number }, (_, i) => {
      const start = performance.now();
      slider.value = String((7919 * i) % Number(slider.max));
      slider.dispatchEvent(new Event('input'));
      return performance.now() - start;
    });
  }, JUMPS);
  row('jump to a moment, longest', Math.max(...jumps), 'ms', { most: 100 });
  remark(`${frames.length} frames in ${SECONDS} s, an hour of the line a second, in headless Chromium`);
}
