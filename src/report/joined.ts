import { escapeHtml } from './escape.ts';

/** A supplement that was joined to the scenario. */
export interface Joined {
  readonly file: string;
  readonly text: string;
  readonly sha256: string;
  readonly title: string;
  readonly about: string;
  readonly helps: string | null;
  readonly hurts: string | null;
}

/** Each in a paragraph: what it is, and when it should help and hurt. */
export const joinedTexts = (joined: readonly Joined[]): string[] =>
  joined.map(({ file, title, helps, hurts }) =>
    [
      `${title} (${file}).`,
      ...(helps === null ? [] : [`Should help: ${helps.trim()}`]),
      ...(hurts === null ? [] : [`Should hurt: ${hurts.trim()}`]),
    ].join(' '),
  );

export interface JoinedDocument {
  readonly file: string;
  readonly title: string;
  readonly sha256: string;
}

/** For documents: nothing at all where nothing was joined. */
export function joinedJson(joined: readonly Joined[]): { readonly supplements?: readonly JoinedDocument[] } {
  if (joined.length === 0) return {};
  return { supplements: joined.map(({ file, title, sha256 }) => ({ file, title, sha256 })) };
}

/** What a page says of where they come from, behind the same of the scenario. */
export const joinedOrigin = (joined: readonly Joined[]): string =>
  joined
    .map(
      ({ file, sha256 }) =>
        `<dt>joined to it</dt><dd>${escapeHtml(file)}</dd>\n<dt>its SHA-256</dt><dd><code>${escapeHtml(sha256)}</code></dd>\n`,
    )
    .join('');

/** The text of a file, to be unfolded. */
export const unfolded = (file: string, text: string): string =>
  `<details>\n<summary>${escapeHtml(file)}</summary>\n<pre tabindex="0">${escapeHtml(text)}</pre>\n</details>`;
