import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Where systems keep it; CHROMIUM says another place. */
const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser'];

const found = (): string | undefined =>
  [process.env.CHROMIUM, ...PLACES].find((path) => path !== undefined && existsSync(path));

/** On Debian and its like, to whom may. */
function install(): void {
  console.error('mendline: installing Chromium for the tests of pages ...');
  for (const words of [['update'], ['install', '-y', '--no-install-recommends', 'chromium']])
    spawnSync('apt-get', words, {
      stdio: ['ignore', 'ignore', 2],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
}

/** A browser that draws pages as readers see them, and that asks nothing of any network. */
export async function openChromium(): Promise<Browser> {
  if (found() === undefined) install();
  const executablePath = found();
  if (executablePath === undefined)
    throw new Error(
      'The tests of pages need Chromium, and it could not be installed: install it (Debian: apt-get install chromium), or name it in CHROMIUM.',
    );
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-background-networking'] });
}
