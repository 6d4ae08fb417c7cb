import { describe, expect, it } from 'vitest';
import { StandstillError } from '../../src/line/standstill.ts';
import { ran, small } from './small-line.ts';

/** Every part is read off limits, for the gauge is 10 mm out: all go round by the bench. */
const knot = (benchBuffer: number | string) => `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, tolerance: 1 mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 2 s, to: gauging }
  gauging:
    does: gauge
    buffer: 1
    cycle: 1 s
    every: 1
    measures:
      rim: { bias: 10 mm, repeatability: 0 mm }
    off-limits: bench
    to: good
  bench:
    does: rework
    buffer: ${benchBuffer}
    cycle: 3 s
    limit: 4
    corrects: {}
    to: gauging`;

describe('a standstill', () => {
  it('of a gauge and a bench that wait for room at each other is found and named', () => {
    let caught: unknown;
    try {
      ran(small('1 h', knot(1)));
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(StandstillError);
    const { message } = caught as Error;
    expect(message).toContain('"gauging" waits for room in front of "bench"');
    expect(message).toContain('"bench" waits for room in front of "gauging"');
    expect(message).not.toContain('forming');
  });

  it('is found also when a station of the circle is down at the end of the run', () => {
    const stopped =
      '\ndisturbances:\n  halt: { disturbs: station, station: gauging, at: 50 min, for: 20 min }';
    expect(() => ran(small('1 h', knot(1) + stopped))).toThrow(StandstillError);
  });

  it('cannot come before a bench with unlimited room, where every part ends as scrap after its last visit', () => {
    const { counts } = ran(small('1 h', knot('unlimited')));
    expect(counts.good).toBe(0);
    expect(counts.scrapped).toBeGreaterThan(0);
  });

  it('is not seen in a line that is only blocked for a while', () => {
    const body = `
stock:
  blank: { unlimited: true }
stations:
  a: { does: work, takes: blank, cycle: 1 s, to: b }
  b: { does: work, buffer: 0, cycle: 1 s, to: c }
  c: { does: work, buffer: 0, cycle: 1000 s, to: good }`;
    expect(ran(small('900 s', body)).stateShares.a!.blocked).toBeGreaterThan(0.9);
  });
});
