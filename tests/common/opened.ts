import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

/** A page that is open, with all that it said or asked for which it should not. */
export interface Opened {
  readonly page: Page;
  readonly complaints: readonly string[];
}

/** Opens a page from its file. */
export async function openFile(
  browser: Browser,
  path: string,
  {
    width = 1280,
    prepare,
    ...wishes
  }: { width?: number | undefined; prepare?: (() => void) | undefined } & Pick<
    BrowserContextOptions,
    'reducedMotion'
  > = {},
): Promise<Opened> {
  const page = await browser.newPage({ ...wishes, viewport: { width, height: 900 } });
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => complaints.push(`dialog: ${dialog.message()}`));
  page.on('request', (request) => {
    if (!/^(file|blob):/.test(request.url())) complaints.push(`request: ${request.url()}`);
  });
  if (prepare) await page.addInitScript(prepare);
  await page.goto(pathToFileURL(path).href);
  return { page, complaints };
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
