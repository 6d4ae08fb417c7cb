// Puts the engine and what works a class page into one text that any browser runs: .build/class-page.js.
import { join } from 'node:path';
import { build } from 'rolldown';

const root = join(import.meta.dirname, '..');
await build({
  input: join(root, 'src', 'classroom', 'main.ts'),
  platform: 'browser',
  logLevel: 'warn',
  output: { file: join(root, '.build', 'class-page.js'), format: 'iife', minify: true },
});
