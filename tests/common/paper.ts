import type { Page } from 'playwright-core';

/** A4 less its margins, in px of 1/96 inch. */
const WIDTH = 680;

/** Has a page printed, as PDF, and leaves it as it stands on paper. Gives the number of sheets. */
export async function onPaper(page: Page): Promise<number> {
  const pdf = await page.pdf({ format: 'A4' });
  await page.setViewportSize({ width: WIDTH, height: 900 });
  await page.emulateMedia({ media: 'print' });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** What would be cut off at the right edge, by its beginning. */
export const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate((edge) => {
    const { document } = globalThis as unknown as {
      document: {
        querySelectorAll: (
          what: string,
        ) => Iterable<{ outerHTML: string; getBoundingClientRect: () => { right: number; width: number } }>;
      };
    };
    return [...document.querySelectorAll('main *')]
      .filter((element) => element.getBoundingClientRect().right > edge + 1)
      .map(({ outerHTML }) => outerHTML.slice(0, 80));
  }, WIDTH);
