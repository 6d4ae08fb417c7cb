import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseScenario } from '../scenario/parse.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** The scenario file cannot be read at all. */
export class UnreadableFileError extends Error {
  constructor(path: string, why: string) {
    super(`${path}: ${why}`);
    this.name = 'UnreadableFileError';
  }
}

export interface ScenarioFile {
  readonly path: string;
  readonly text: string;
  readonly sha256: string;
  readonly scenario: Scenario;
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file; name a scenario, such as scenarios/tray-cell.yaml',
  EISDIR: 'this is a folder; name a scenario file in it',
  EACCES: 'reading it is not permitted',
};

/**
 * Reads and checks a scenario file.
 * @throws UnreadableFileError, ScenarioError
 */
export function readScenario(path: string): ScenarioFile {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new UnreadableFileError(path, reasons[code ?? ''] ?? message);
  }
  const sha256 = createHash('sha256').update(text).digest('hex');
  return { path, text, sha256, scenario: parseScenario(text, path) };
}
