import { createHash } from 'node:crypto';
import { escapeHtml } from './escape.ts';
import { contentsOf, dataElement, section } from './html.ts';
import { type Joined, joinedOrigin } from './joined.ts';
import { PAGE_STYLE } from './page-style.ts';

/** What every page has around its sections. */
export interface Frame {
  /** Of the document, and of the page itself. */
  readonly name: string;
  readonly title: string;
  /** What kind of report it is. */
  readonly kind: string;
  /** The section that somebody at a keyboard may go to at once, and how that is called. */
  readonly skip: { readonly id: string; readonly text: string };
  readonly sections: string;
  /** Looks besides those of all pages. */
  readonly style?: string;
  /** What the page was made from, as data; left out where a document beside it says so. */
  readonly madeFrom?: object;
  /** What runs in the page; left out, nothing does. */
  readonly program?: Program;
}

/** A program in a page, with data for it as an element. */
interface Program {
  readonly text: string;
  readonly data: string;
}

/** What a page says of where it comes from. */
export interface Origins {
  readonly file: string;
  readonly sha256: string;
  readonly joined: readonly Joined[];
  /** Files with policies written as code. */
  readonly modules: readonly { readonly path: string; readonly sha256: string }[];
  readonly version: string;
  /** Left out where there are several. */
  readonly policy?: string;
  /** Such as `1 to 40`. */
  readonly seeds: string;
  readonly command: string;
}

/** The same of a report of its own, which tells its seeds itself. */
export interface TitledOrigins extends Omit<Origins, 'seeds' | 'policy'> {
  readonly title: string;
}

const CAUTION =
  'mendline is a planning aid: it is no substitute for risk assessment, local codes and competent people. ' +
  'Heated forming machines, robots and machines that restart can hurt people; nothing here says that a way of ' +
  'recovering is safe to carry out.';

/** The program as it may stand in a page: nothing in it ends the element or begins a comment. */
const inline = (text: string): string =>
  text.replaceAll(/<\/(script)/gi, '<\\/$1').replaceAll('<!--', '<\\!--');

/** What the page allows: its own look, and of programs this very one and workers made of it. */
function policyOf(program: string | undefined): string {
  const looks = "default-src 'none'; style-src 'unsafe-inline'";
  if (program === undefined) return looks;
  const hash = createHash('sha256').update(program).digest('base64');
  return `${looks}; script-src 'sha256-${hash}'; worker-src blob:`;
}

/** The element of a page that holds what it was made from. */
export const MADE_FROM = 'made-from';

/** One file with everything in it: nothing fetched, and nothing run but the program given. */
export function framed({ name, title, kind, skip, sections, style = '', madeFrom, program }: Frame): string {
  const text = program && inline(program.text);
  const script = program ? `${program.data}\n<script id="program">${text}</script>\n` : '';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policyOf(text)}">
<title>${escapeHtml(name)}</title>
<style>${PAGE_STYLE}${style}</style>
</head>
<body>
<a class="skip" href="#${skip.id}">${escapeHtml(skip.text)}</a>
<header>
<p class="kind">mendline ${kind}</p>
<h1>${escapeHtml(title)}</h1>
</header>
${contentsOf(sections)}<main>
${sections}
</main>
<footer>
${section('caution', 'Caution', `<p class="caution">${escapeHtml(CAUTION)}</p>`)}
</footer>
${madeFrom ? `${dataElement(MADE_FROM, madeFrom)}\n` : ''}${script}</body>
</html>
`;
}

export function originList({ policy, seeds, command, ...origins }: Origins): string {
  const { file, sha256, joined, modules, version } = origins;
  const code = modules.map(
    (module) =>
      `<dt>policy module</dt><dd>${escapeHtml(module.path)}</dd>\n` +
      `<dt>its SHA-256</dt><dd><code>${escapeHtml(module.sha256)}</code></dd>\n`,
  );
  return `<dl>
<dt>scenario</dt><dd>${escapeHtml(file)}</dd>
<dt>its SHA-256</dt><dd><code>${escapeHtml(sha256)}</code></dd>
${joinedOrigin(joined)}${code.join('')}<dt>mendline</dt><dd>version ${escapeHtml(version)}</dd>
${policy === undefined ? '' : `<dt>policy</dt><dd>${escapeHtml(policy)}</dd>\n`}<dt>seeds</dt><dd>${escapeHtml(seeds)}</dd>
<dt>command</dt><dd><code>${escapeHtml(command)}</code></dd>
</dl>`;
}
