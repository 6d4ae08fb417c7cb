import { expect } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import type { Line } from '../../src/line/line.ts';
import { blanks, gaugedCell, small } from '../line/small-line.ts';

export const disturbed = (body: string, disturbances: string): string =>
  `${body}disturbances:\n${disturbances}`;

/** The line after so many seconds; `look` is called before they begin. */
export function runFor(seconds: number, body: string, look?: (line: Line) => void): Line {
  const line = prepare(small(`${seconds} s`, body), 'carry on', 1);
  look?.(line);
  line.calendar.run(seconds);
  return line;
}

const rounded = (value: number): number => Math.round(value * 1e9) / 1e9;

/** What the gauge of a gauged cell reads of the trays loaded at 0, 10, 20, ... s, less their nominal, mm. */
export function readings(disturbances: string, seconds: number, cell = gaugedCell()): number[] {
  const seen: number[] = [];
  runFor(seconds, disturbances === '' ? cell : disturbed(cell, disturbances), (line) => {
    line.gauges.get('gauging')!.readingListeners.push((_feature, reading) => {
      seen.push(rounded(reading - 100));
    });
  });
  return seen;
}

/** When good parts leave, s. */
export function leaves(body: string, seconds: number): number[] {
  const at: number[] = [];
  runFor(seconds, body, (line) => {
    line.good.leaving.push((_row, _stayed, now) => {
      at.push(rounded(now));
    });
  });
  return at;
}

/** One station of 10 s a cycle; the keys besides are YAML. */
export const oneStation = (keys = ''): string =>
  blanks(`  only: { does: work, takes: blank, cycle: 10 s, ${keys && `${keys}, `}to: good }\n`);

/** Expects each number to be what it should be, up to rounding. */
export function expectEach(seen: readonly number[], expected: readonly number[]): void {
  expect(seen.length).toBe(expected.length);
  for (const [i, value] of expected.entries()) expect(seen[i], `number ${i}`).toBeCloseTo(value, 7);
}
