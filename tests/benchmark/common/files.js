// Where things stand, and the child processes that do the measured work.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { program } from './timing.js';

const here = join(import.meta.dirname, '..');
const root = join(here, '..', '..');

export const PEERS = join(here, 'peers');
export const REFERENCE = join(here, 'reference-line.yaml');
export const SCENARIOS = join(root, 'scenarios');
export const DEMO = join(SCENARIOS, 'tray-cell.yaml');
export const COMMAND = join(root, 'bin', 'mendline.js');

let folder;

/** A folder outside the repository, gone when the benchmark ends. */
export function scratch(name, content) {
  if (!folder) {
    folder = mkdtempSync(join(tmpdir(), 'mendline-bench-'));
    process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  }
  const path = join(folder, name);
  if (content !== undefined) writeFileSync(path, content);
  return path;
}

/** Runs children/NAME.js in a process of its own, so that no measurement warms or spoils another's code. */
export async function child(name, ...args) {
  const script = join(here, 'children', `${name}.js`);
  const { out } = await program(process.execPath, [script, ...args.map(String)]);
  return JSON.parse(out);
}
