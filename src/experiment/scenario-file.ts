import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseJoined } from '../scenario/parse.ts';
import type { Raw } from '../scenario/raw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { SupplementSpec } from '../scenario/supplement.ts';

/** A file cannot be read at all. */
export class UnreadableFileError extends Error {
  constructor(path: string, why: string) {
    super(`${path}: ${why}`);
    this.name = 'UnreadableFileError';
  }
}

/** A file as it was read. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
  readonly sha256: string;
}

export interface ScenarioFile extends TextFile {
  /** With what the supplements add. */
  readonly scenario: Scenario;
  /** As data before it was checked, from which others can be made (`parseChanged`). */
  readonly raw: Raw;
  readonly supplements: readonly (TextFile & SupplementSpec)[];
}

const article = (what: string) => (/^[aeiou]/.test(what) ? 'an' : 'a');

/** Why a file of that kind cannot be read, in words that name the remedy. */
export const reasons = (what: string, example: string): Readonly<Record<string, string>> => ({
  ENOENT: `there is no such file; name ${article(what)} ${what}, such as ${example}`,
  EISDIR: `this is a folder; name ${article(what)} ${what} file in it`,
  EACCES: 'reading it is not permitted',
});
export const OF_SCENARIOS = reasons('scenario', 'scenarios/tray-cell.yaml');
const OF_SUPPLEMENTS = reasons('supplement', 'scenarios/policies/stop-on-misfits.yaml');

/** @throws UnreadableFileError */
export function readText(path: string, reasons: Readonly<Record<string, string>>): TextFile {
  try {
    const text = readFileSync(path, 'utf8');
    return { path, text, sha256: createHash('sha256').update(text).digest('hex') };
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new UnreadableFileError(path, reasons[code ?? ''] ?? message);
  }
}

/**
 * Reads and checks a scenario file and the supplements that are joined to it.
 * @throws UnreadableFileError, ScenarioError
 */
export function readScenario(path: string, supplements: readonly string[] = []): ScenarioFile {
  const line = readText(path, OF_SCENARIOS);
  const others = supplements.map((other) => readText(other, OF_SUPPLEMENTS));
  const source = (file: TextFile) => ({ source: file.path, text: file.text });
  const read = parseJoined(source(line), others.map(source));
  return {
    ...line,
    scenario: read.scenario,
    raw: read.raw,
    supplements: others.map((other, i) => ({ ...other, ...read.supplements[i]! })),
  };
}
