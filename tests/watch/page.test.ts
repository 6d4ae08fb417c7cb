import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { STATES } from '../../src/line/state.ts';
import { STATE_LOOKS } from '../../src/report/state-words.ts';
import { clockText } from '../../src/report/trace/clock-text.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { DISTURBED, quick, Scratch, shipped } from '../cli/command.ts';
import { openChromium } from '../common/chromium.ts';
import { barriers, openFile } from '../common/opened.ts';
import { cutOff, onPaper } from '../common/paper.ts';

let browser: Browser;
const scratch = new Scratch();
const DEMO = readFileSync(shipped('tray-cell.yaml'), 'utf8').replace('length: 15 h', 'length: 5 h');
const STOP = ['--policy', 'stop and fix'];

async function made(name: string, text: string, words: readonly string[] = []): Promise<string> {
  const file = scratch.file(`${name}.yaml`, text);
  const { code, err } = await scratch.mendline(['watch', file, ...words, '--out', `${name}.html`]);
  expect([code, err]).toEqual([0, '']);
  return join(scratch.path, `${name}.html`);
}

let demo: string;
beforeAll(async () => {
  browser = await openChromium();
  demo = await made('demo', DEMO, STOP);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  scratch.remove();
});

/** Moves the time as the slider does. */
const goTo = (page: Page, seconds: number) =>
  page.locator('#time').evaluate((slider, to) => {
    (slider as unknown as { value: string }).value = String(to);
    slider.dispatchEvent(new Event('input'));
  }, seconds);
const cells = async (page: Page, table: string) => {
  const rows = await page.locator(`#${table}`).locator('xpath=ancestor::table').locator('tbody tr').all();
  return Promise.all(rows.map((row) => row.locator('th, td').allTextContents()));
};

it('shows at any time what the engine has come to by then', async () => {
  const { page, complaints } = await openFile(browser, demo);
  const line = prepare(parseScenario(DEMO, 'demo'), 'stop and fix', 1);
  for (const now of [0, 59, 3600, 11_707, 13_500, 17_000, 20_480, 21_600]) {
    line.calendar.run(now);
    await goTo(page, now);
    expect(await page.locator('#clock').textContent()).toBe(clockText(now));
    const told = new Map((await cells(page, 'table-now')).map(([name, ...rest]) => [name, rest]));
    expect([...told.keys()].sort()).toEqual([...line.stations.keys()].sort());
    for (const [name, { machines, inbox }] of line.stations) {
      const { letter, word } = STATE_LOOKS[STATES[machines[0]!.state]!];
      const places = Number.isFinite(inbox?.capacity) ? `of ${inbox!.capacity} places` : 'waiting';
      const front = inbox === null ? 'no places' : `${inbox.held} ${places}`;
      expect(told.get(name)!.slice(0, 2), `${name} at ${now} s`).toEqual([`${letter}${word}`, front]);
    }
    const { good, scrapped } = line.tally;
    expect(await page.locator('#counts').textContent()).toContain(`${good} good, ${scrapped} scrapped`);
    for (const [name, onHand] of await cells(page, 'table-stocks-now'))
      expect(onHand!.replace(/,.*/, ''), name).toBe(String(line.stocks.get(name!)!.onHand || 'none'));
  }
  expect(complaints).toEqual([]);
});

it('tells of one part what mendline trace tells, and what it truly is only when that is opened', async () => {
  const { page, complaints } = await openFile(browser, demo);
  const asked = ['trace', join(scratch.path, 'demo.yaml'), ...STOP, '--part', '812'];
  const json = JSON.parse((await scratch.mendline([...asked, '--true-values', '--json'])).out);
  const text = (await scratch.mendline([...asked, '--true-values'])).out.replace(/\s+/g, ' ');
  await page.getByLabel('Number of the part').fill('812');
  await page.getByRole('button', { name: 'Follow it' }).click();
  const story = await cells(page, 'table-history');
  const moments = new Set(json.events.map((event: { at_s: number }) => clockText(event.at_s)));
  expect(new Set(story.map(([when]) => when))).toEqual(moments);
  for (const [when, where, what] of story) expect(text).toContain(`${when} ${where} ${what}`);
  expect(await page.locator('#truths').isVisible()).toBe(false);
  await page.getByText('What it truly is, which no policy sees').click();
  const truth = await cells(page, 'table-truth');
  expect(truth.length).toBe(json.truth.length);
  for (const [when, where, what] of truth) expect(text).toContain(`${when} ${where} ${what}`);
  await page.locator('#history button').nth(5).click();
  expect(await page.locator('#clock').textContent()).toBe(story[5]![0]);
  const current = page.locator('#history tr[aria-current]');
  expect(await current.count()).toBe(1);
  expect(await current.locator('button').textContent()).toBe(story[5]![0]);
  expect(complaints).toEqual([]);
});

it('is worked by the keyboard: plays, stands, steps from event to event, and moves the time', async () => {
  const { page, complaints } = await openFile(browser, demo);
  const press = (key: string) => page.keyboard.press(key);
  const focused = () => page.evaluate('document.activeElement.id');
  const reach = async (id: string) => {
    for (let i = 0; i < 30 && (await focused()) !== id; i++) await press('Tab');
    expect(await focused()).toBe(id);
  };
  const status = () => page.locator('#status').textContent();
  await press('Tab');
  await press('Enter');
  await reach('time');
  await press('ArrowRight');
  expect(await page.locator('#clock').textContent()).toBe('0:00:01');
  expect(await page.locator('#time').getAttribute('aria-valuetext')).toBe('0:00:01');
  await reach('play');
  await press('Space');
  await expect.poll(() => page.locator('#clock').textContent(), { timeout: 20_000 }).toMatch(/^0:0[1-9]/);
  // Nothing is announced while it plays.
  expect(await status()).toBe('');
  await press('Space');
  const stopped = await page.locator('#clock').textContent();
  expect(await status()).toContain(`Stopped at ${stopped}`);
  for (const kind of ['scrap', 'stop', 'stock']) await page.locator(`input[value=${kind}]`).uncheck();
  await page.locator('#play').focus();
  await reach('next');
  await press('Enter');
  const begun = await status();
  expect(begun).toMatch(/^\d:\d\d:\d\d: disturbance begins: heater runs cold\.$/);
  await press('Enter');
  expect(await status()).toMatch(/response begins: stop-and-fix/);
  await page.locator('#before').focus();
  await press('Enter');
  expect(await status()).toBe(begun);
  for (const kind of ['disturbance', 'response']) await page.locator(`input[value=${kind}]`).uncheck();
  await page.locator('input[value=scrap]').check();
  await page.locator('#next').focus();
  await press('Enter');
  expect(await status()).toMatch(/: part \d+ is scrapped at \w+: /);
  const part = /part (\d+)/.exec((await status())!)![1];
  await page.getByRole('button', { name: `Follow part ${part}` }).click();
  expect(await focused()).toBe('where');
  expect(await page.locator('#where').textContent()).toContain(`part ${part}`);
  expect(complaints).toEqual([]);
});

/** What a screen reader is told of without being asked. */
const LIVE = 'output, [role=status], [role=alert], [role=log], [aria-live]:not([aria-live=off])';

it('tells nobody anything while it plays, but where the slider is, once a second', async () => {
  const { page, complaints } = await openFile(browser, demo);
  await page.locator('#play').click();
  const { live, told, drawn } = (await page.evaluate(`new Promise((done) => {
    const counted = { live: 0, told: 0, drawn: 0 };
    const count = (key, node, options) =>
      new MutationObserver((changes) => { counted[key] += changes.length; }).observe(node, options);
    const within = { childList: true, characterData: true, subtree: true };
    for (const node of document.querySelectorAll('${LIVE}')) count('live', node, within);
    count('told', document.getElementById('time'), { attributeFilter: ['aria-valuetext'] });
    count('drawn', document.getElementById('clock'), within);
    setTimeout(() => done(counted), 2500);
  })`)) as Record<string, number>;
  expect(live).toBe(0);
  expect(drawn).toBeGreaterThan(2);
  expect(told).toBeGreaterThanOrEqual(1);
  expect(told).toBeLessThanOrEqual(3);
  expect(complaints).toEqual([]);
});

it('asks for one frame at a time, however often it is played and stopped', async () => {
  const { page } = await openFile(browser, demo);
  const most = await page.evaluate(`new Promise((done) => {
    const waiting = new Set();
    let most = 0;
    const [ask, drop] = [requestAnimationFrame, cancelAnimationFrame];
    window.requestAnimationFrame = (act) => {
      const handle = ask((at) => { waiting.delete(handle); act(at); });
      most = Math.max(most, waiting.add(handle).size);
      return handle;
    };
    window.cancelAnimationFrame = (handle) => { waiting.delete(handle); drop(handle); };
    for (let i = 0; i < 5; i++) document.getElementById('play').click();
    setTimeout(() => done(most), 300);
  })`);
  expect(most).toBe(1);
});

it('keeps the focus on a part as the line moves on, and says nothing of where it stood before', async () => {
  const { page, complaints } = await openFile(browser, demo);
  await goTo(page, 3600);
  await page.locator('#next').click();
  expect(await page.locator('#status').textContent()).not.toBe('');
  const button = page.locator('#now-stations button').last();
  const part = await button.textContent();
  await button.focus();
  const focused = () => page.evaluate('document.activeElement.textContent');
  await goTo(page, Number(await page.locator('#time').inputValue()) + 2);
  expect(await focused()).toBe(part);
  await goTo(page, 20_000);
  expect(await page.evaluate('document.activeElement.getAttribute("role")')).toBe('region');
  await page.locator('#next').click();
  await page.getByLabel('Number of the part').fill('812');
  await page.getByRole('button', { name: 'Follow it' }).click();
  await page.locator('#next').click();
  expect(await page.locator('#status').textContent()).not.toBe('');
  await page.locator('#history button').nth(5).click();
  expect(await page.locator('#status').textContent()).toBe('');
  expect(await page.locator('#offer').isVisible()).toBe(false);
  expect(complaints).toEqual([]);
});

it('plays nothing for those who ask for little motion, and lets them step', async () => {
  const { page, complaints } = await openFile(browser, demo, { reducedMotion: 'reduce' });
  expect(await page.locator('#play').isDisabled()).toBe(true);
  expect(await page.locator('#still').isVisible()).toBe(true);
  await page.locator('#next').click();
  expect(await page.locator('#status').textContent()).not.toBe('');
  expect(complaints).toEqual([]);
});

it.each([1280, 390])('has no barrier that axe-core finds, and fits, %d px wide', async (width) => {
  const { page } = await openFile(browser, demo, { width });
  const fits = () => page.evaluate('document.documentElement.scrollWidth <= window.innerWidth');
  expect([await barriers(page), await fits()]).toEqual([[], true]);
  await page.getByLabel('Number of the part').fill('812');
  await page.getByRole('button', { name: 'Follow it' }).click();
  await page.getByText('What it truly is, which no policy sees').click();
  await page.locator('#next').click();
  expect([await barriers(page), await fits()]).toEqual([[], true]);
});

it('prints the line as it stands, and one part only where one is followed', async () => {
  const { page, complaints } = await openFile(browser, demo);
  await goTo(page, 13_500);
  await onPaper(page);
  const shows = (what: string) => page.locator(what).isVisible();
  for (const wanted of ['#clock', '#row-0', '#table-now', '#table-spans'])
    expect(await shows(wanted), wanted).toBe(true);
  for (const none of ['#play', '#time', '#kinds', '#one-part', '#now .how'])
    expect(await shows(none), none).toBe(false);
  expect(await cutOff(page)).toEqual([]);
  await page.emulateMedia({ media: 'screen' });
  await page.getByLabel('Number of the part').fill('812');
  await page.getByRole('button', { name: 'Follow it' }).click();
  await onPaper(page);
  expect([await shows('#table-history'), await shows('#follow')]).toEqual([true, false]);
  expect(await cutOff(page)).toEqual([]);
  expect(complaints).toEqual([]);
});

/** Names hold no slash and no full stop. */
const NAME = '<script>alert(3)<img onerror=alert(4) src=x>';

it('shows names as they are written, whatever they say', async () => {
  const evil = '</script><script>alert(1)</script><img src=x onerror=alert(2)>';
  const text = quick({ title: evil, policy: evil })
    .replaceAll('gauging', JSON.stringify(NAME))
    .concat(DISTURBED.replace('gauging', JSON.stringify(NAME)).replace('a stop', JSON.stringify(NAME)));
  const { page, complaints } = await openFile(browser, await made('evil', text));
  expect(await page.locator('h1').textContent()).toBe(evil);
  await page.locator('#next').click();
  await page.getByLabel('Number of the part').fill('5');
  await page.getByRole('button', { name: 'Follow it' }).click();
  const names = (await cells(page, 'table-now')).map(([name]) => name);
  expect(names).toContain(NAME);
  expect((await cells(page, 'table-spans'))[0]![0]).toBe(NAME);
  expect(complaints).toEqual([]);
});

it('shows finished goods, and who of a crew is where', async () => {
  const text = `${quick().replace('cycle: 9 s,', 'cycle: 9 s, handling: { load: 2 s, unload: 1 s, by: robot },')}
crew: { robot: { number: 1, serves: first-come, move: 1 s } }
demand: { every: 30 s, pieces: 1, due-after: 1 s, finished-goods: { at-start: 2, most: 900 } }
`;
  const { page, complaints } = await openFile(browser, await made('ordered', text));
  expect(await page.locator('#goods').textContent()).toBe('2');
  const line = prepare(parseScenario(text, 'ordered'), 'carry on', 1);
  line.calendar.run(1800);
  await goTo(page, 1800);
  expect(await page.locator('#goods').textContent()).toBe(String(line.demand!.stock));
  expect((await cells(page, 'table-stocks-now')).at(-1)).toEqual([
    'finished goods',
    String(line.demand!.stock),
  ]);
  await goTo(page, 1);
  expect(await cells(page, 'table-crews-now')).toEqual([['robot', 'at forming, for handling at forming']]);
  expect(await page.locator('.lane').allTextContents()).toEqual([expect.stringContaining('crew: robot')]);
  expect(await barriers(page)).toEqual([]);
  expect(complaints).toEqual([]);
});
