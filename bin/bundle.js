// Puts what runs in a page into one text that any browser runs: .build/class-page.js with the engine, .build/watch-page.js.
import { join } from 'node:path';
import { build } from 'rolldown';

const root = join(import.meta.dirname, '..');
for (const [folder, file] of [
  ['classroom', 'class-page.js'],
  ['watch', 'watch-page.js'],
])
  await build({
    input: join(root, 'src', folder, 'main.ts'),
    platform: 'browser',
    logLevel: 'warn',
    output: { file: join(root, '.build', file), format: 'iife', minify: true },
  });
