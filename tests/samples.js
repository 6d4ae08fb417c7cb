// Writes what stands in reports/ anew: after a change that moves a result, a page or what runs in one. The pictures
// need Chromium, as tests/picture.js says; npm run validate and npm run calibrate-intervals write their own two.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const compared = ['tray-cell', 'calm-line', 'pegs', 'spare-elements', 'clips-short'];
const COMMANDS = [
  ...compared.map((name) => ['bin/mendline.js', 'compare', `scenarios/${name}.yaml`]),
  ['bin/mendline.js', 'classroom', 'scenarios/exercises/buffer.yaml'],
  ['bin/mendline.js', 'watch', 'scenarios/tray-cell.yaml', '--policy', 'stop and fix'],
  ['tests/picture.js'],
];

for (const command of COMMANDS) {
  console.error(command.join(' '));
  const { status } = spawnSync(process.execPath, command, {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (status !== 0) process.exit(1);
}
