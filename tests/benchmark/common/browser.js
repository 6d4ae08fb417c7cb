// The browser that pages are measured in, and how they are opened there.
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

/** Lends a browser to what measures in it. */
export async function inBrowser(measure) {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-background-networking'],
  });
  try {
    await measure(browser);
  } finally {
    await browser.close();
  }
}

/** Opens a file as on a desk. @param before runs in the page before anything of its own */
export async function opened(browser, file, before) {
  const view = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  if (before) await view.addInitScript(before);
  await view.goto(pathToFileURL(file).href);
  return view;
}
