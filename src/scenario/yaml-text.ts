import {
  type Document,
  isAlias,
  isScalar,
  Lexer,
  LineCounter,
  Parser,
  parseDocument,
  visit,
  type YAMLError,
} from 'yaml';
import type { Problem } from './problem.ts';

/** Of a text that is no YAML at all, the first complaints say as much as all of them. */
const MOST_PROBLEMS = 10;
/** A scenario is some ten kilobytes and nests some ten deep. Far beyond, the YAML reader takes long or fails. */
const MOST_CHARACTERS = 300_000;
const MOST_DEPTH = 100;

/** A message and the offset in the text that it is about. */
interface Place {
  readonly at: number;
  readonly message: string;
}

/** The layout itself is broken, so that what the reader says of later lines mostly follows from it. */
const LAYOUT: ReadonlySet<string> = new Set([
  'BAD_INDENT',
  'BLOCK_AS_IMPLICIT_KEY',
  'BLOCK_IN_FLOW',
  'MISSING_CHAR',
  'MULTILINE_IMPLICIT_KEY',
  'TAB_AS_INDENT',
  'UNEXPECTED_TOKEN',
]);

const NO_COLON = 'a key without its ":"; write "key: value", with a space after the colon';
const ONE_COLUMN = 'the keys of one mapping start in the same column';

/** What the YAML reader found, in words that name the remedy where its own do not. */
function yamlMessage({ code, message }: YAMLError): string {
  switch (code) {
    case 'BLOCK_AS_IMPLICIT_KEY':
      return `this value does not end where it should: a text with ": " in it needs quotes, and ${ONE_COLUMN}; look at the next line, too`;
    case 'BLOCK_IN_FLOW':
      return 'a comma is missing between two entries in brackets, or a bracket is not closed';
    case 'MULTILINE_IMPLICIT_KEY':
      return NO_COLON;
    case 'TAB_AS_INDENT':
      return 'a tab indents this line; indent with spaces';
    case 'MULTIPLE_DOCS':
      return 'a second YAML document starts here; a scenario is one document, so take this line out';
    case 'DUPLICATE_KEY':
      return 'this key is in the same mapping twice; keep one of the two';
    case 'TAG_RESOLVE_FAILED':
      return 'a tag (a word after "!") means nothing in a scenario; take it out';
    default:
      if (message.includes('end with a')) return `a bracket is not closed before this line: ${message}`;
      if (code === 'BAD_INDENT') return `this line is indented unlike those beside it; ${ONE_COLUMN}`;
      if (message.includes('followed by map values')) return NO_COLON;
      return `not readable as YAML: ${message}`;
  }
}

/** Without the faults of layout that a tab, or else the first of them, brings about in the lines behind it. */
function withoutEchoes(errors: readonly YAMLError[]): YAMLError[] {
  const layout = errors.filter(({ code }) => LAYOUT.has(code)).sort((a, b) => a.pos[0] - b.pos[0]);
  const tabs = layout.filter(({ code }) => code === 'TAB_AS_INDENT');
  const told = tabs.length > 0 ? tabs : layout.slice(0, 1);
  return errors.filter((error) => !LAYOUT.has(error.code) || told.includes(error));
}

/** Where the document is none that a scenario could be. */
function problemsOf(document: Document): Place[] {
  const found = withoutEchoes([...document.errors, ...document.warnings]).map((error) => ({
    at: error.pos[0],
    message: yamlMessage(error),
  }));
  visit(document, {
    Node: (_, node) => {
      const at = node.range?.[0] ?? 0;
      if (isAlias(node) && !node.resolve(document))
        found.push({ at, message: `nothing above is marked "&${node.source}"; write the entry out` });
      // Every language that reads the results stumbles over this name.
      if (isScalar(node) && node.value === '__proto__')
        found.push({ at, message: '"__proto__" cannot be a name; choose another' });
    },
  });
  return found.sort((a, b) => a.at - b.at).slice(0, MOST_PROBLEMS);
}

/** What keeps the text from being given to the YAML reader, if anything does. */
function unfit(text: string): Place | undefined {
  if (text.length > MOST_CHARACTERS) {
    return {
      at: 0,
      message: `the file has ${text.length} characters; a scenario has at most ${MOST_CHARACTERS}`,
    };
  }
  // An undecodable byte comes out as the replacement character.
  const stray = text.search(/[\0\uFFFD]/);
  if (stray >= 0) return { at: stray, message: 'this is not text in UTF-8; save the scenario as UTF-8 text' };
  // The reader calls itself for each level, but the parser below it keeps a stack of its own.
  const parser = new Parser();
  for (const word of new Lexer().lex(text)) {
    for (const _ of parser.next(word));
    if (parser.stack.length > MOST_DEPTH) {
      return {
        at: parser.offset,
        message: `nested more than ${MOST_DEPTH} deep; close brackets and lists before`,
      };
    }
  }
  return undefined;
}

/**
 * The text as plain data with the document that knows its places, or what makes it unreadable.
 * @param opens what is said of an empty file
 */
export function readYaml(
  text: string,
  opens = 'a scenario starts with "mendline: 1"',
):
  | { readonly document: Document; readonly lines: LineCounter; readonly raw: unknown }
  | { readonly problems: readonly Problem[] } {
  const lines = new LineCounter();
  const refused = (places: readonly Place[]) => ({
    problems: places.map(({ at, message }) => {
      const { line, col } = lines.linePos(at);
      return { line: Math.max(1, line), column: Math.max(1, col), message };
    }),
  });
  const why = unfit(text);
  if (why) {
    lines.addNewLine(0);
    for (const { index } of text.slice(0, why.at).matchAll(/\n/g)) lines.addNewLine(index + 1);
    return refused([why]);
  }
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, logLevel: 'error' });
  const found = problemsOf(document);
  if (found.length > 0) return refused(found);
  let raw: unknown;
  try {
    raw = document.toJS();
  } catch (error) {
    // The reader's own guard against aliases of aliases of aliases.
    if (!(error instanceof ReferenceError)) throw error;
    return refused([
      { at: 0, message: 'the aliases ("*name") of this file multiply without end; write the entries out' },
    ]);
  }
  if (raw === null || raw === undefined) {
    return refused([{ at: 0, message: `the file is empty; ${opens}` }]);
  }
  return { document, lines, raw };
}
