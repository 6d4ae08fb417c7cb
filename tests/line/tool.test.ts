import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { small } from './small-line.ts';

interface Given {
  readonly wear?: string;
  readonly trimming?: string;
  readonly offLimits?: string;
  readonly tolerance?: string;
  readonly more?: string;
}

/** Forms a tray every 10 s, trims it in 4 s and gauges its tab, 20 mm as designed, without error. */
const cell = ({ wear = '', trimming = '', offLimits = 'pass', tolerance = '', more = '' }: Given) => `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      tab: { nominal: 20 mm, ${tolerance} made-at: trimming${wear && `, wear: ${wear}`} }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: trimming }
  trimming: { does: trim, buffer: unlimited, cycle: 4 s, to: gauging${trimming && `, ${trimming}`} }
  gauging:
    does: gauge
    buffer: 9
    cycle: 1 s
    every: 1
    measures:
      tab: { repeatability: 0 mm }
    off-limits: ${offLimits}
    to: good
${more}`;

/** How far each tab is from its design when it is gauged, um, rounded to a billionth. */
function offs(given: Given, seconds: number): number[] {
  const line = prepare(small(`${seconds} s`, cell(given)), 'carry on', 1);
  const seen: number[] = [];
  line.gauges.get('gauging')!.readingListeners.push((_feature, reading) => seen.push(reading));
  line.calendar.run(seconds);
  return seen.map((reading) => Number((1000 * (reading - 20)).toFixed(6)));
}

const WEAR = '{ per: 10, shift: -0.1 mm }';

// Trays come to the trimming station at 10, 20, ... s and are gauged 5 s later.
describe('a tool', () => {
  it('moves the edge in proportion to the cuts it made before, and is never renewed unless told', () => {
    expect(offs({ wear: WEAR }, 70)).toEqual([0, -10, -20, -30, -40, -50]);
  });

  it.each([
    ['set-ups', 'set-ups: { blade: { cycles: 3, takes: 2 s } }'],
    ['maintenance', 'maintenance: { blade: { cycles: 3, takes: 2 s } }'],
    [
      'breakdowns',
      // Three cuts are 12 s of work: it breaks in the fourth, which begins anew with the new tool.
      'breakdowns: { blade: { every: 12.001 s, counted: working, repair: 1 s, cycle: restarts } }',
    ],
  ])('is renewed by the %s that are named, and by no others', (_, done) => {
    const renewed = `${done}, tool: { renewed-by: [blade] }`;
    expect(offs({ wear: WEAR, trimming: renewed }, 70)).toEqual([0, -10, -20, 0, -10, -20]);
    const not = `${done}, tool: { renewed-by: [] }`;
    expect(offs({ wear: WEAR, trimming: not }, 70)).toEqual([0, -10, -20, -30, -40, -50]);
  });

  it('belongs to one machine of the station', () => {
    // A cut takes 16 s, so the two machines take the trays in turns.
    const two = 'machines: 2, speed: 25 %';
    expect(offs({ wear: WEAR, trimming: two }, 100)).toEqual([0, 0, -10, -10, -20, -20, -30, -30]);
  });

  it('cuts a part once: a second visit neither moves the edge nor wears the tool', () => {
    // From the third tray on each is off limits by its first reading, goes to the bench and comes back as it was.
    const bench = `  bench: { does: rework, buffer: unlimited, cycle: 1 s, limit: 1, corrects: {}, to: trimming }`;
    const seen = offs({ wear: WEAR, tolerance: 'tolerance: 0.015 mm,', offLimits: 'bench', more: bench }, 62);
    expect(seen).toEqual([0, -10, -20, -20, -30, -30, -40, -40]);
  });

  it('scatters each part by a deviate of its own, in proportion to its cuts', () => {
    // Whatever the tool has done before a part, its deviate is the same: k cuts here are k modulo 3 there.
    const wear = '{ per: 10, spread: 0.1 mm }';
    const worn = offs({ wear }, 3000);
    const renewed = offs(
      {
        wear,
        trimming: 'set-ups: { blade: { cycles: 3, takes: 2 s } }, tool: { renewed-by: [blade] }',
      },
      3000,
    );
    expect(worn.length).toBeGreaterThan(290);
    expect(worn[0]).toBe(0);
    expect(worn[1]).not.toBe(0);
    for (const [k, off] of worn.entries()) {
      if (k > 0) expect(renewed[k]).toBeCloseTo((off / k) * (k % 3), 5);
    }
  });
});
