import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import { RunawayResponseError } from '../../src/policy/runaway.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { blanks, gaugedCell, ran, seconds, small } from '../line/small-line.ts';
import { changed } from '../scenario/sample.ts';
import { turns } from './told.ts';

const body = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }');
const at = (timing: string, length = 99) => turns(body, length, `do: hold, station: only, ${timing}`);

describe('a response', () => {
  it('is in force while its condition holds', () => {
    expect(at('when: { from: 30 s, to: 50 s }')).toEqual([
      [30, true],
      [50, false],
    ]);
    expect(at('when: { to: 50 s }')).toEqual([
      [0, true],
      [50, false],
    ]);
  });

  it('comes into force once it was noticed and acted on', () => {
    expect(at('when: { from: 30 s, to: 50 s }, notice: 5 s, acts-after: 10 s')).toEqual([
      [45, true],
      [50, false],
    ]);
  });

  it('does not, where its condition has ended before', () => {
    expect(at('when: { from: 30 s, to: 50 s }, notice: 5 s, acts-after: 16 s')).toEqual([]);
    // From 34 s on it is counted anew.
    const twice = '{ any: [{ from: 30 s, to: 32 s }, { from: 34 s, to: 90 s }] }';
    expect(at(`when: ${twice}, notice: 5 s`)).toEqual([
      [39, true],
      [90, false],
    ]);
  });

  it('lasts as long as it says, whatever its condition', () => {
    expect(at('when: { from: 30 s, to: 31 s }, lasts: 40 s')).toEqual([
      [30, true],
      [70, false],
    ]);
    expect(at('when: { from: 30 s, to: 31 s }, notice: 5 s, lasts: 40 s')).toEqual([
      [35, true],
      [75, false],
    ]);
    expect(at('when: { from: 30 s }, lasts: 10 s')).toEqual([
      [30, true],
      [40, false],
    ]);
  });

  it('goes on until another condition holds', () => {
    expect(at('when: { from: 30 s, to: 31 s }, until: { from: 55 s }')).toEqual([
      [30, true],
      [55, false],
    ]);
    // Whichever comes first.
    expect(at('when: { from: 30 s }, until: { from: 55 s }, lasts: 1 min')).toEqual([
      [30, true],
      [55, false],
    ]);
    // Ended before it was noticed.
    expect(at('when: { from: 30 s, to: 31 s }, notice: 30 s, until: { from: 55 s }')).toEqual([]);
  });

  it('does not begin while what ends it holds', () => {
    expect(at('when: { from: 10 s }, until: { from: 5 s, to: 20 s }')).toEqual([[20, true]]);
    expect(at('when: { from: 10 s, to: 15 s }, until: { from: 5 s, to: 20 s }')).toEqual([]);
  });

  it('begins again when its condition begins to hold anew', () => {
    const often = '{ any: [{ from: 10 s, to: 15 s }, { from: 40 s, to: 60 s }] }';
    expect(at(`when: ${often}, lasts: 10 s`)).toEqual([
      [10, true],
      [20, false],
      [40, true],
      [50, false],
    ]);
  });

  it('after a cool-down begins again if its condition still holds', () => {
    expect(at('when: { from: 10 s, to: 45 s }, lasts: 10 s, cool-down: 5 s')).toEqual([
      [10, true],
      [20, false],
      [25, true],
      [35, false],
      [40, true],
      [50, false],
    ]);
    const often = '{ any: [{ from: 10 s, to: 20 s }, { from: 22 s, to: 30 s }, { from: 40 s }] }';
    expect(at(`when: ${often}, cool-down: 5 s`)).toEqual([
      [10, true],
      [20, false],
      [25, true],
      [30, false],
      [40, true],
    ]);
  });

  it('without a condition is in force from the start on, and ends as it says', () => {
    const cell = gaugedCell();
    expect(turns(cell, 99, 'do: inspect, at: gauging, every: 2')).toEqual([[0, true]]);
    expect(turns(cell, 99, 'do: inspect, at: gauging, every: 2, lasts: 30 s')).toEqual([
      [0, true],
      [30, false],
    ]);
    expect(turns(cell, 99, 'do: inspect, at: gauging, every: 2, acts-after: 30 s')).toEqual([[30, true]]);
  });

  it('goes by another, which it names', () => {
    const other = (timing: string) => `do: slow, station: only, to: 50 %, name: the other, ${timing}`;
    expect(
      turns(
        body,
        99,
        'do: hold, station: only, when: { response: the other }',
        other('when: { from: 30 s, to: 50 s }'),
      ),
    ).toEqual([
      [30, true],
      [50, false],
    ]);
    expect(
      turns(
        body,
        99,
        'do: hold, station: only, when: { not: { response: the other } }',
        other('when: { from: 30 s }'),
      ),
    ).toEqual([
      [0, true],
      [30, false],
    ]);
  });

  it('goes by one that stops and fixes, while that holds its station', () => {
    const text = `${gaugedCell({ rim: 'tolerance: 0.5 mm' })}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 95 s, for: 50 s }
policies:
  p:
    - do: stop-and-fix
      name: stop
      station: forming
      watch: { at: gauging, sees: off-limits, count: 1, of-last: 1 }
      takes: 30 s
    - { do: hold, station: gauging, when: { response: stop } }
`;
    // Seen by 111 s; the tray formed by 120 s waits until 141 s.
    expect(seconds(ran(small('142 s', text), 'p'), 'gauging', 142)).toEqual({
      working: 12,
      starved: 100,
      held: 30,
    });
  });

  it('waits by times of its own where they vary', () => {
    const notice = 'notice: { distribution: uniform, low: 10 s, high: 20 s }';
    const twice = '{ any: [{ from: 30 s, to: 31 s }, { from: 60 s, to: 61 s }] }';
    const found = at(`when: ${twice}, lasts: 1 s, ${notice}`);
    const waits = [found[0]![0] - 30, found[2]![0] - 60];
    for (const wait of waits) expect(Math.abs(wait - 15)).toBeLessThan(5);
    expect(waits[0]).not.toBe(waits[1]);
    // Whatever else it says, and whatever another does.
    const other = `do: slow, station: only, to: 50 %, when: { from: 1 s }, ${notice}`;
    const named = `do: hold, station: only, name: it, when: { from: 30 s }, ${notice}`;
    expect(turns(body, 99, named, other)).toEqual([[found[0]![0], true]]);
  });
});

describe('a response that watches', () => {
  // Trays loaded at 100 to 140 s, gauged by 111 to 151 s, are off limits.
  const cell = `${gaugedCell({ rim: 'tolerance: 0.5 mm' })}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 95 s, for: 50 s }
`;
  const bad = 'when: { at: gauging, sees: off-limits, count: 1, of-last: 1 }';

  it('heeds no signal while it is in force', () => {
    const inspect = (timing: string) =>
      turns(cell, 220, `do: inspect, at: gauging, every: 1, ${bad}, ${timing}`);
    expect(inspect('lasts: 25 s')).toEqual([
      [111, true],
      [136, false],
      [141, true],
      [166, false],
    ]);
    expect(inspect('lasts: 25 s, cool-down: 6 s')).toEqual([
      [111, true],
      [136, false],
      [151, true],
      [176, false],
    ]);
    expect(inspect('lasts: 25 s, notice: 12 s')).toEqual([
      [123, true],
      [148, false],
      [163, true],
      [188, false],
    ]);
  });

  it('ends by a signal that is heeded only while it is in force', () => {
    // Good ones are gauged by 161 and 171 s.
    const until = 'until: { at: gauging, sees: off-limits, at-most: 0, of-last: 2 }';
    expect(turns(cell, 220, `do: inspect, at: gauging, every: 1, ${bad}, ${until}`)).toEqual([
      [111, true],
      [171, false],
    ]);
  });

  it('counts anew after its end', () => {
    // The bad ones of 111 and 121 s call; while it is in force, and so deaf, that of 131 s; then those of 141 and 151 s.
    const two = 'when: { at: gauging, sees: off-limits, count: 2, of-last: 9 }';
    expect(turns(cell, 220, `do: inspect, at: gauging, every: 1, ${two}, lasts: 12 s`)).toEqual([
      [121, true],
      [133, false],
      [151, true],
      [163, false],
    ]);
  });

  it('holds a station, so that nothing more is seen, and counts anew when it goes on', () => {
    // Thirteen are gauged: by 11 to 101 s; by 111 s, which holds it until 171 s; by 172 s, which holds it again, and
    // by 173 s the one that was taken at the very instant of the signal.
    const text = `${cell}policies:\n  p: [{ do: hold, station: gauging, ${bad}, lasts: 1 min }]\n`;
    expect(seconds(ran(small('220 s', text), 'p'), 'gauging', 220)).toEqual({
      working: 13,
      starved: 100,
      held: 60 + 47,
    });
  });

  it('acts for an instant where it can, as often as it sees', () => {
    const sped = `${gaugedCell({ rim: 'tolerance: 0.5 mm', sheet: 'on-hand: 20, reorder-at: 15, order: 20, lead-time: 999 s, expedite: { lead-time: 99 s }' })}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 95 s, for: 50 s }
`;
    expect(turns(sped, 130, `do: expedite, stock: sheet, ${bad}`)).toEqual([
      [111, true],
      [111, false],
      [121, true],
      [121, false],
    ]);
    expect(turns(sped, 130, `do: expedite, stock: sheet, ${bad}, notice: 7 s`)).toEqual([
      [118, true],
      [118, false],
      [128, true],
      [128, false],
    ]);
  });
});

describe('what is set for a while', () => {
  const policy = (...responses: string[]) =>
    `\npolicies:\n  p: [${responses.map((text) => `{ ${text} }`).join(', ')}]\n`;

  it('is what it was before once it ends: how many are gauged', () => {
    // Gauged: those of 30 and 60 s by the station itself, each takes a second; one in one from 65 s to 95 s.
    const cell = (...responses: string[]) =>
      seconds(ran(small('130 s', gaugedCell({ every: 3 }) + policy(...responses)), 'p'), 'gauging', 130)
        .working;
    expect(cell()).toBe(4);
    // Those of 70, 80 and 90 s instead of that of 90 s; then the third that it is asked about after those of 60 s, of 120 s.
    expect(cell('do: inspect, at: gauging, every: 1, when: { from: 65 s, to: 95 s }')).toBe(2 + 3 + 1);
    // The later of two in force has its way, then the other.
    expect(
      cell(
        'do: inspect, at: gauging, every: 1, when: { from: 65 s, to: 95 s }',
        'do: inspect, at: gauging, every: 99, when: { from: 75 s, to: 85 s }',
      ),
    ).toBe(2 + 2 + 1);
    // In the other order, the longer one has its way all the time.
    expect(
      cell(
        'do: inspect, at: gauging, every: 99, when: { from: 75 s, to: 85 s }',
        'do: inspect, at: gauging, every: 1, when: { from: 65 s, to: 95 s }',
      ),
    ).toBe(2 + 3 + 1);
  });

  it('is what it was before once it ends: where rejects go', () => {
    const cell = `${gaugedCell({ rim: 'tolerance: 0.5 mm', offLimits: 'scrap' })}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 0 s, for: 9 h }
${policy('do: inspect, at: gauging, every: 1, off-limits: pass, when: { from: 35 s, to: 75 s }')}`;
    // All are off limits; gauged by 41, 51, 61 and 71 s of 11 to 91 s.
    expect(ran(small('99 s', cell), 'p').counts).toMatchObject({ good: 4, scrapped: 5 });
  });

  it('is what it was before once it ends: an adjustment stays, and nothing more is adjusted', () => {
    const cell = `${gaugedCell({ rim: 'tolerance: 5 mm' })}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 5 s, for: 9 h }
  hotter: { disturbs: setting, setting: heater, by: 20 °C, at: 75 s, for: 9 h }
${policy('do: retune, setting: heater, by: rim, rule: deadbeat, deadband: 0 mm, when: { from: 0 s, to: 50 s }')}`;
    const { capabilities } = ran(small('141 s', cell), 'p');
    // Readings by 11 s (100), 21, 31 (101, before it is cancelled), 41 to 81 (100), 91 to 141 s (102).
    expect(capabilities[0]!.mean).toBeCloseTo((100 + 2 * 101 + 5 * 100 + 6 * 102) / 14, 9);
  });
});

describe('a response in force for all of a run', () => {
  const rest = (when: string) => `  the rest:
    - { do: inspect, at: gauging, every: 1, off-limits: scrap${when} }
    - { do: retune, setting: heater, by: rim, weight: 20 %, deadband: 0.03 mm${when} }
    - { do: match, at: assembly, among: 9, guard: 0 mm, mate-repeatability: 0 mm, takes: 1 s${when} }
    - { do: rework, at: assembly, bench: bench${when} }
`;

  it('by its times does what it does without any', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 4 }), (seed, kinds) => {
        const text = (when: string) => {
          const lines = rest(when).split('\n');
          return changed(rest(''), `${lines.slice(0, 1 + kinds).join('\n')}\n`);
        };
        const outcome = (when: string) => simulate(parseScenario(text(when), 'sound.yaml'), 'the rest', seed);
        expect(outcome(', when: { from: 0 s, to: 10 h }')).toEqual(outcome(''));
        // One that never comes into force does nothing.
        const { policy: _, ...without } = simulate(parseScenario(text(''), 'sound.yaml'), 'carry on', seed);
        const { policy: __, ...late } = outcome(', when: { from: 10 h }');
        expect(late).toEqual(without);
      }),
      { numRuns: 12, seed: 6, endOnFailure: true },
    );
  });
});

describe('a response that ends what it goes by', () => {
  it('at one instant is an error that names it and the time', () => {
    const line = `${blanks(`
  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: work, buffer: 5, cycle: 4 s, to: good }`)}
policies:
  p: [{ do: hold, station: second, name: catch breath, when: { station: second, is: starved, for: 2 s, machines: 1 } }]`;
    // Idle from the start: held at 2 s, which ends it; then idle for 2 s again, and so on: time passes.
    expect(() => ran(small('99 s', line), 'p')).not.toThrow();
    const at = (text: string) => () => ran(small('99 s', text), 'p');
    const circle = line.replace('for: 2 s, ', '');
    expect(at(circle)).toThrow(RunawayResponseError);
    expect(at(circle)).toThrow(
      /the response "catch breath" \(hold\) triggers itself for ever: at 0 s of simulated time/,
    );
  });
});
