import { expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { small } from './small-line.ts';

// Both assemblies take frames from one stock; a tray fits a frame in about half of all cases, by the frame alone.
const body = `
stock:
  sheet: { unlimited: true }
  frame: { unlimited: true, features: { groove: { nominal: 100 mm, own-sd: 1 mm } } }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 1 s, to: first }
  first:
    does: assemble
    buffer: 0
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 50 mm }]
    misfit: bench
    to: second
  second:
    does: assemble
    buffer: unlimited
    takes: [frame]
    cycle: 1 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 50 mm }]
    misfit: scrap
    to: good
  bench: { does: rework, buffer: unlimited, cycle: 1 s, limit: 1, corrects: {}, to: second }`;

it('stations that share a stock share its pieces, not copies of their luck', () => {
  const line = prepare(small('600 s', body), 'carry on', 1);
  const results: Record<string, boolean[]> = { first: [], second: [] };
  for (const [name, told] of Object.entries(results)) {
    line.assemblies.get(name)!.fitListeners.push((misfit) => told.push(misfit));
  }
  line.calendar.run(600);
  const both = Math.min(results.first!.length, results.second!.length);
  expect(both).toBeGreaterThan(200);
  const agree = results.first!.slice(0, both).filter((misfit, i) => misfit === results.second![i]).length;
  // Independent halves agree in half of all cases; the standard error of the share is 0.5 / sqrt(both).
  expect(Math.abs(agree / both - 0.5)).toBeLessThan((4 * 0.5) / Math.sqrt(both));
});
