import type { Document, LineCounter } from 'yaml';
import { isMap, isNode, isScalar } from 'yaml';

export type Path = readonly PropertyKey[];

/** Something wrong in a scenario, and where in its structure. `key` points at a key of the mapping at `path`. */
export interface Finding {
  readonly path: Path;
  readonly key?: string;
  readonly message: string;
}

/** A finding with its place in the text; lines and columns count from 1. */
export interface Problem {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

/** Characters shown of the offending line. */
const SHOWN = 70;

/** Text without what a terminal would obey; each such character becomes one that shows. */
const printable = (text: string): string => text.replace(/(?!\t)\p{Cc}/gu, '\uFFFD');

/** A text with its problems, and what it is called in messages. */
export interface Refused {
  readonly source: string;
  readonly text: string;
  readonly problems: readonly Problem[];
}

/** The text of a scenario, or of what is joined to it, has problems; all of them are listed, text by text. */
export class ScenarioError extends Error {
  readonly refused: readonly Refused[];

  constructor(refused: readonly Refused[]) {
    const counts = refused.map(
      ({ source, problems: { length } }) => `${source}: ${length} ${length === 1 ? 'problem' : 'problems'}`,
    );
    super(counts.join('\n'));
    this.name = 'ScenarioError';
    this.refused = refused;
  }

  get problems(): readonly Problem[] {
    return this.refused.flatMap(({ problems }) => problems);
  }

  /** Each problem as `file:line:column: message` over the offending line and a mark below its place. */
  describe(): string {
    return this.refused.map(describe).join('\n');
  }
}

function describe({ source, text, problems }: Refused): string {
  const lines = text.split(/\r?\n/);
  return problems
    .map(({ line, column, message }) => {
      const number = String(line).padStart(5);
      const full = printable(lines[line - 1] ?? '');
      const from = Math.max(0, Math.min(column - 40, full.length - SHOWN));
      const shown = full.slice(from, from + SHOWN);
      // Tabs stay tabs, so that the mark stands below its place however wide they are shown.
      const mark = `${shown.slice(0, Math.max(0, column - 1 - from)).replace(/[^\t]/g, ' ')}^`;
      return `${source}:${line}:${column}: ${printable(message)}\n${number} | ${shown}\n      | ${mark}`;
    })
    .join('\n');
}

function offset(document: Document, { path, key }: Finding): number {
  for (let depth = path.length; depth >= 0; depth--) {
    const node = document.getIn(path.slice(0, depth), true);
    if (!isNode(node) || !node.range) continue;
    if (depth === path.length && key !== undefined && isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === key);
      if (pair && isScalar(pair.key) && pair.key.range) return pair.key.range[0];
    }
    // A mapping's own text starts at its first key; the key that holds it is the better place to point at.
    const parent = depth > 0 ? document.getIn(path.slice(0, depth - 1), true) : undefined;
    if (isMap(node) && !node.flow && isMap(parent)) {
      const pair = parent.items.find((item) => item.value === node);
      if (pair && isScalar(pair.key) && pair.key.range) return pair.key.range[0];
    }
    return node.range[0];
  }
  return 0;
}

/** Puts each finding at its line and column, in the order of the text, each message once a place. */
export function locate(findings: readonly Finding[], document: Document, lines: LineCounter): Problem[] {
  const seen = new Set<string>();
  return findings
    .map((finding) => ({ at: offset(document, finding), message: finding.message }))
    .sort((a, b) => a.at - b.at)
    .filter(({ at, message }) => !seen.has(`${at} ${message}`) && seen.add(`${at} ${message}`))
    .map(({ at, message }) => {
      const { line, col } = lines.linePos(at);
      return { line: Math.max(1, line), column: Math.max(1, col), message };
    });
}
