import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = new URL('../../', import.meta.url);
const command = fileURLToPath(new URL('bin/mendline.js', root));
export const shipped = (name: string): string => fileURLToPath(new URL(`scenarios/${name}`, root));

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own to work in. */
export class Scratch {
  readonly path = mkdtempSync(join(tmpdir(), 'mendline-test-'));

  /** Writes a file and returns its path. */
  file(name: string, content: string): string {
    const path = join(this.path, name);
    writeFileSync(path, content);
    return path;
  }

  /** Everything in the folder and below, by path. */
  files(): string[] {
    return readdirSync(this.path, { recursive: true }).map(String).sort();
  }

  start(args: readonly string[], env: Record<string, string> = {}): ChildProcess {
    return spawn(process.execPath, [command, ...args], { cwd: this.path, env: { ...process.env, ...env } });
  }

  mendline(args: readonly string[], env: Record<string, string> = {}): Promise<Ended> {
    return ended(this.start(args, env));
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** What a command wrote, once it has ended. */
export function ended(child: ChildProcess): Promise<Ended> {
  let out = '';
  let err = '';
  child.stdout?.setEncoding('utf8').on('data', (text) => {
    out += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text) => {
    err += text;
  });
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, out, err })));
}

/** To be put behind `quick`: the gauge stands still for a while. */
export const DISTURBED = `disturbances:
  a stop: { disturbs: station, station: gauging, at: 20 min, for: 10 min }
`;

/** A short scenario of two policies, quick to run. Rework feeds back into the gauge. */
export function quick({
  title = 'A quick cell',
  policy = 'carry on',
  bench = 'unlimited',
  seeds = 3,
} = {}): string {
  return `mendline: 1
title: ${JSON.stringify(title)}
about: Invented, to be run in no time.
run: { warm-up: 10 min, length: 1 h, seeds: ${seeds} }
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, tolerance: 0.1 mm, made-at: forming, own-sd: 0.1 mm }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 9 s, to: gauging }
  gauging:
    does: gauge
    buffer: 1
    cycle: { distribution: exponential, mean: 6 s }
    every: 1
    measures: { rim: { repeatability: 0.01 mm } }
    off-limits: bench
    to: good
  bench:
    does: rework
    buffer: ${bench}
    cycle: 30 s
    limit: 9
    corrects: { rim: { removes: 50 %, own-sd: 0.05 mm } }
    to: gauging
policies:
  ${JSON.stringify(policy)}: []
  scrap at once:
    - { do: inspect, at: gauging, every: 1, off-limits: scrap }
`;
}
