// Brings a checkout to the state the scripts need: packages installed, src/ compiled and bundled to .build/.
// Each half is skipped when what it depends on has not changed. Uses nothing that must be installed first.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const oldest = [20, 19];
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < oldest[0] || (major === oldest[0] && minor < oldest[1])) {
  console.error(`mendline needs Node ${oldest.join('.')} or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

function filesBelow(folder) {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

function fingerprint(files) {
  const hash = createHash('sha256').update(process.versions.modules + process.platform + process.arch);
  for (const file of files) hash.update(file.slice(root.length)).update(readFileSync(file));
  return hash.digest('hex');
}

/** Runs `work` unless `stamp` already holds the fingerprint of `files`. */
function unlessDone(stamp, files, work) {
  const now = fingerprint(files);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return;
  work();
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, now);
}

function run(what, command, args) {
  console.error(`mendline: ${what} ...`);
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2] });
  if (status === 0) return;
  console.error(`mendline: ${what} failed${error ? `: ${error.message}` : ''}`);
  process.exit(1);
}

const packages = join(root, 'node_modules');
unlessDone(join(packages, '.ready'), [join(root, 'package.json'), join(root, 'package-lock.json')], () => {
  const npm = process.env.npm_execpath;
  if (npm) run('installing packages', process.execPath, [npm, 'ci', '--no-audit', '--no-fund']);
  else run('installing packages', 'npm', ['ci', '--no-audit', '--no-fund']);
});

const built = join(root, '.build');
const settings = ['tsconfig.json', 'package-lock.json', 'bin/bundle.js'].map((file) => join(root, file));
unlessDone(join(built, '.ready'), [...filesBelow(join(root, 'src')), ...settings], () => {
  rmSync(built, { recursive: true, force: true });
  run('compiling', process.execPath, [join(packages, 'typescript', 'bin', 'tsc'), '-p', join(root, 'src')]);
  run('bundling', process.execPath, [join(root, 'bin', 'bundle.js')]);
});
