import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { ran, seconds, small } from './small-line.ts';

/**
 * One sheet of four trays, done at 1000 s: rims 0.3, -0.3, 0.6 and 0.1 mm off, of which 0.2 mm are allowed, and all tabs 0.1 mm
 * off. The bench takes 10 s for a tray, and more if its corrections say so.
 */
const cell = (corrects: string, tab = 'tolerance: 0.2 mm,') => `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, tolerance: 0.2 mm, made-at: forming, cavities: [0.3 mm, -0.3 mm, 0.6 mm, 0.1 mm] }
      tab: { nominal: 20 mm, ${tab} made-at: forming, cavities: [0.1 mm, 0.1 mm, 0.1 mm, 0.1 mm] }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 4, cycle: 1000 s, to: gauging }
  gauging:
    does: gauge
    buffer: unlimited
    cycle: 1 s
    every: 1
    measures:
      rim: { repeatability: 0 mm }
      tab: { repeatability: 0 mm }
    off-limits: bench
    to: good
  bench: { does: rework, buffer: unlimited, cycle: 10 s, limit: 1, corrects: { ${corrects} }, to: gauging }
`;

const END = 1900;
const at = (corrects: string) => ran(small(`${END} s`, cell(corrects)));

/** How far the rim and the tab of each tray that left the bench are off, mm, in the order of leaving it. */
function left(body: string): number[][] {
  const line = prepare(small(`${END} s`, body), 'carry on', 1);
  const seen: number[][] = [];
  line.gauges.get('gauging')!.readingListeners.push((feature, reading, row) => {
    if (line.parts.get(row!, line.reworked) === 0) return;
    const off = Number((reading - feature.spec.aim).toFixed(9));
    if (feature.spec.name === 'rim') seen.push([off]);
    else seen.at(-1)!.push(off);
  });
  line.calendar.run(END);
  return seen;
}

const RIM = 'rim: { removes: 100 %, own-sd: 0 mm';

const OLD = `${RIM} }`;
const ALL_TAB = 'tab: { removes: 100 %, own-sd: 0 mm';

describe('a bench that looks first', () => {
  it.each([
    ['corrects what is high alone', `${RIM}, only: down }`, 1, 30],
    ['corrects what is low alone', `${RIM}, only: up }`, 2, 30],
    ['corrects what is not too far off', `${RIM}, most: 0.5 mm }`, 1, 30],
    // 0.3, 0.3 and 0.6 mm.
    ['takes time for what it removes', `${RIM}, takes: 20 s/mm }`, 0, 30 + 1.2 * 20],
    ['and no more', 'rim: { removes: 75 %, own-sd: 0 mm, takes: 20 s/mm }', 0, 30 + 0.9 * 20],
    ['takes none for a hopeless tray', `${RIM}, takes: 20 s/mm, most: 0.5 mm, only: down }`, 2, 30 + 6],
    ['takes no tray for hopeless that is within limits', `${OLD}, ${ALL_TAB}, only: up }`, 0, 30],
    ['takes time for nothing that is within limits', `${OLD}, ${ALL_TAB}, takes: 9 s/mm }`, 0, 30],
  ])('%s', (_, corrects, hopeless, working) => {
    const outcome = at(corrects);
    // Three trays come to it; the fourth is within its limits at the gauge.
    expect(outcome.counts).toMatchObject({ hopeless, scrapped: hopeless, good: 4 - hopeless, reworked: 3 });
    expect(seconds(outcome, 'bench', END).working).toBeCloseTo(working, 6);
  });

  it('leaves alone what is within its limits, and corrects the rest', () => {
    // Without a look everything is corrected.
    expect(left(cell(`${OLD}, ${ALL_TAB} }`))).toEqual([...Array(3)].map(() => [0, 0]));
    expect(left(cell(`${OLD}, ${ALL_TAB}, most: 0.5 mm }`))).toEqual([...Array(3)].map(() => [0, 0.1]));
    // A feature without limits is brought to its aim unless it is there.
    expect(left(cell(`${OLD}, ${ALL_TAB}, most: 0.5 mm }`, ''))).toEqual([...Array(3)].map(() => [0, 0]));
  });

  it('keeps the reading of what it leaves alone, and no other', () => {
    const line = prepare(small(`${END} s`, cell(`${OLD}, ${ALL_TAB}, most: 0.5 mm }`)), 'carry on', 1);
    const { operation } = line.stations.get('bench')!.machines[0]!;
    const kept: number[][] = [];
    const finish = operation.finish!.bind(operation);
    operation.finish = (machine) => {
      finish(machine);
      const row = machine.load[0]!;
      kept.push(['rim', 'tab'].map((name) => line.parts.get(row, line.features.get(name)!.reading)));
    };
    line.calendar.run(END);
    expect(kept).toEqual([...Array(3)].map(() => [Number.NaN, expect.closeTo(20.1, 9)]));
  });

  it('scraps a tray for one feature that it cannot bring in, and alters no other', () => {
    const line = prepare(small(`${END} s`, cell(`${OLD}, ${ALL_TAB}, only: up }`, '')), 'carry on', 1);
    const tabs: number[] = [];
    line.scrap.leaving.push((row) => tabs.push(line.parts.get(row, line.features.get('tab')!.truth)));
    const rims: number[] = [];
    line.scrap.leaving.push((row) => rims.push(line.parts.get(row, line.features.get('rim')!.truth)));
    line.calendar.run(END);
    expect(tabs).toEqual([...Array(3)].map(() => expect.closeTo(20.1, 9)));
    expect(rims.map((rim) => Number((rim - 100).toFixed(9)))).toEqual([0.3, -0.3, 0.6]);
    expect(line.tally.hopeless).toBe(3);
  });

  it('judges each tray for itself where several machines share the work', () => {
    const two = cell(`${RIM}, only: down }`).replace('cycle: 10 s, limit', 'cycle: 10 s, machines: 3, limit');
    expect(ran(small(`${END} s`, two)).counts).toMatchObject({ hopeless: 1, scrapped: 1, good: 3 });
  });
});
