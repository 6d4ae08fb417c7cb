// The other programs of the reference line, where their tools are installed.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { PEERS, scratch } from './files.js';
import { program } from './timing.js';

const works = (command, ...args) =>
  program(command, args).then(
    () => true,
    () => false,
  );

/** Compiles the C++ program; null where there is no compiler. A program that does not compile is an error. */
export async function cppPeer() {
  if (!(await works('g++', '--version'))) return null;
  const built = scratch(process.platform === 'win32' ? 'reference-line.exe' : 'reference-line');
  if (!existsSync(built)) {
    await program('g++', ['-std=c++17', '-O3', '-o', built, join(PEERS, 'reference-line.cpp')]);
  }
  return async (length, seed) => JSON.parse((await program(built, [`${length}`, `${seed}`])).out);
}

/** Finds a Python that has the library; null where none has. */
export async function pythonPeer() {
  for (const python of ['python3', '/usr/bin/python3', 'python']) {
    if (!(await works(python, '-c', 'import simpy'))) continue;
    const script = join(PEERS, 'reference_line.py');
    return async (length, seed) => JSON.parse((await program(python, [script, `${length}`, `${seed}`])).out);
  }
  return null;
}
