import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import type { Line } from '../../src/line/line.ts';
import { SelfCheckError, selfCheck } from '../../src/line/self-check.ts';
import { small } from './small-line.ts';

const BODY = `
stock:
  sheet: { on-hand: 1000 }
  frame: { unlimited: true, features: { groove: { nominal: 100.2 mm, own-sd: 0.2 mm } } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 2, cycle: 10 s, handling: { by: robot, load: 1 s }, to: assembly }
  assembly:
    does: assemble
    buffer: 3
    takes: [frame]
    cycle: 4 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0 mm, most: 0.5 mm }]
    misfit: scrap
    mate-tries: 2
    to: good
crew: { robot: { number: 1 } }
carriers: { nest: { number: 5, from: forming } }
demand: { every: 7 s, due-after: 1 min, finished-goods: { most: 50 } }
`;

function lineAfter(seconds: number): Line {
  const line = prepare(small('1 h', BODY), 'carry on', 1);
  line.calendar.run(seconds);
  return line;
}

describe('the self-check', () => {
  it('passes a sound line at any time', () => {
    for (const seconds of [0, 1, 61.5, 1000, 3600]) expect(() => selfCheck(lineAfter(seconds))).not.toThrow();
  });

  it.each<[string, (line: Line) => void]>([
    ['parts started = good + scrapped', (line) => line.tally.scrapped++],
    [
      'parts started = parts in a piece',
      (line) => {
        line.tally.started++;
        line.tally.good++;
      },
    ],
    ['Little', (line) => (line.tally.stayedSeconds += 100)],
    ['stock "sheet": taken', (line) => line.stocks.get('sheet')!.tally.taken++],
    ['stock "sheet": initial', (line) => line.stocks.get('sheet')!.tally.delivered++],
    ['stock "sheet": on hand', (line) => line.stocks.get('sheet')!.lots.add(9, 1)],
    ['stock "sheet": ordered', (line) => line.stocks.get('sheet')!.tally.missing++],
    ['stock "frame": taken', (line) => line.stocks.get('frame')!.tally.taken++],
    ['carriers "nest"', (line) => line.carriers.get('nest')!.ready++],
    ['finished goods', (line) => line.demand!.stock++],
    ['states of "assembly"', (line) => (line.stations.get('assembly')!.machines[0]!.seconds[1]! += 1)],
    ['the work done at "forming"', (line) => (line.stations.get('forming')!.machines[0]!.worked += 3600)],
  ])('names what does not hold: %s', (quantity, spoil) => {
    const line = lineAfter(3600);
    spoil(line);
    expect(() => selfCheck(line)).toThrow(SelfCheckError);
    expect(() => selfCheck(line)).toThrow(`self-check failed: ${quantity}`);
  });
});
