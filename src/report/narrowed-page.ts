import type { Narrowed } from '../experiment/narrow.ts';
import { escapeHtml } from './escape.ts';
import { section } from './html.ts';
import { narrowedSentences } from './narrowed-text.ts';

/** Why there are as many runs as there are. */
export const narrowedSection = (narrowed: Narrowed): string =>
  section(
    'width',
    'Number of runs',
    narrowedSentences(narrowed)
      .map((text) => `<p>${escapeHtml(text)}</p>`)
      .join('\n'),
  );
