import { describe, expect, it } from 'vitest';
import type { Cell, Response } from '../../../src/policy/module/cell.ts';
import { demo, expectSame } from './cell-sample.ts';
import { ranWith } from './run-code.ts';

const LOW = { stock: 'frame', below: 1500, until: 2500 };
const WHEN = 'when: { stock: frame, below: 1500, until: 2500 }';

describe('what a policy as code switches', () => {
  it.each<[string, Response]>([
    ['do: slow, station: forming, to: 40 %', { do: 'slow', station: 'forming', to: '40 %' }],
    ['do: retarget, setting: heater, by: -2 °C', { do: 'retarget', setting: 'heater', by: '-2 °C' }],
    ['do: substitute, for: frame, by: frame b', { do: 'substitute', for: 'frame', by: 'frame b' }],
    ['do: hold, station: forming', { do: 'hold', station: 'forming' }],
    ['do: reject, at: assembly, to: bench', { do: 'reject', at: 'assembly', to: 'bench' }],
    ['do: change-tool, station: trimming', { do: 'change-tool', station: 'trimming' }],
    ['do: inspect, at: gauging, every: 1', { do: 'inspect', at: 'gauging', every: 1 }],
  ])('does what a response does while its condition holds: %s', (response, same) => {
    expectSame(`{ ${response}, ${WHEN} }`, (cell) => cell.when(LOW, cell.switching(same)));
  });

  it('does what a response does that is in force all the time', () => {
    expectSame('{ do: rework, at: assembly, bench: bench }', (cell) =>
      cell.switching({ do: 'rework', at: 'assembly', bench: 'bench' })(true),
    );
  });

  it('lets the last asked for have its way, whichever was switched last', () => {
    expectSame(`{ do: slow, station: forming, to: 40 %, ${WHEN} }`, (cell) => {
      const [first, last] = ['20 %', '40 %'].map((to) =>
        cell.switching({ do: 'slow', station: 'forming', to }),
      );
      cell.when(LOW, (low) => {
        last!(low);
        first!(low);
      });
    });
  });

  it.each<[string, (cell: Cell) => void, string]>([
    [
      'at a station',
      (cell) => cell.switching({ do: 'hold', station: 'formin' }),
      'switching: station: "formin" is no station; did you mean "forming"?',
    ],
    [
      'where it can be done',
      (cell) => cell.switching({ do: 'inspect', at: 'forming', every: 1 }),
      'switching: at: "forming" is a station that does form; expected one that does gauge',
    ],
    ['with units', (cell) => cell.switching({ do: 'slow', station: 'forming', to: 0.4 }), '0.4 has no unit'],
    [
      'as far as it goes',
      (cell) => cell.switching({ do: 'retarget', setting: 'heater', by: '9 °C' }),
      'switching: by: "heater" cannot be moved so far',
    ],
    [
      'without what decides when',
      (cell) => cell.switching({ do: 'hold', station: 'forming', when: LOW, lasts: '1 h' }),
      '"when" and "lasts" decide when, which is for whoever switches it; leave it out',
    ],
    [
      'of a kind that is switched',
      (cell) => cell.switching({ do: 'cannibalise', spare: 'frame', from: ['forming'] }),
      'switching: "cannibalise" sees to itself, so it cannot be switched; put it to work by itself',
    ],
    [
      'something that a line could do',
      (cell) => cell.switching({ do: 'foresee' }),
      'switching: "foresee" sees to itself, so it cannot be switched',
    ],
    ['of any kind', (cell) => cell.switching(5 as never), 'switching: expected a mapping with "do"'],
    [
      'on or off',
      (cell) => cell.switching({ do: 'hold', station: 'forming' })(1 as never),
      'a switch: 1 is neither true nor false',
    ],
  ])('must be %s', (_, start, message) => {
    expect(() => ranWith(demo, start)).toThrow(message);
  });

  it('must be asked for before the line runs', () => {
    const late = (cell: Cell) => cell.after(60, () => cell.switching({ do: 'hold', station: 'forming' }));
    expect(() => ranWith(demo, late)).toThrow('switching: this is asked for in "start"');
  });
});

describe('a response of the format that a policy as code puts to work', () => {
  it.each<[string, string, Response]>([
    [
      'all the time',
      '{ do: match, at: assembly, among: 8, guard: 0.05 mm, mate-repeatability: 0.02 mm, takes: 0.4 s }',
      {
        ...{ do: 'match', at: 'assembly', among: 8, guard: '0.05 mm' },
        ...{ 'mate-repeatability': '0.02 mm', takes: '0.4 s' },
      },
    ],
    [
      'when its condition says so',
      '{ do: inspect, at: gauging, every: 1, when: { at: assembly, sees: misfits, count: 3, of-last: 25 }, notice: 2 min, lasts: 1 h }',
      {
        ...{ do: 'inspect', at: 'gauging', every: 1, notice: '2 min', lasts: '1 h' },
        when: { at: 'assembly', sees: 'misfits', count: 3, 'of-last': 25 },
      },
    ],
  ])('does what it does in a scenario, %s', (_, response, same) => {
    expectSame(response, (cell) => cell.respond(same));
  });

  it('may go by another, by its name', () => {
    const scrap = { do: 'reject', at: 'gauging', to: 'scrap' };
    const start = (named: string) => (cell: Cell) => {
      cell.respond({ do: 'inspect', name: 'look', at: 'gauging', every: 1, when: LOW });
      cell.respond({ ...scrap, when: { response: named } });
    };
    const { counts } = ranWith(demo, (cell) => {
      cell.respond({ do: 'inspect', name: 'look', at: 'gauging', every: 1, when: LOW });
      cell.respond({ ...scrap, when: LOW });
    });
    expect(ranWith(demo, start('look')).counts).toEqual(counts);
    expect(ranWith(demo, () => {}).counts).not.toEqual(counts);
    expect(() => ranWith(demo, start('lok'))).toThrow('did you mean "look"?');
  });

  it.each<[string, (cell: Cell) => void, string]>([
    ['of a known kind', (cell) => cell.respond({ do: 'mach' }), 'did you mean "match"?'],
    ['whole', (cell) => cell.respond({ do: 'rework', at: 'assembly' }), 'respond: bench: "bench" is missing'],
    [
      'of what is there',
      (cell) => cell.respond({ do: 'rework', at: 'assembly', bench: 'bnch' }),
      'respond: bench: "bnch" is no station; did you mean "bench"?',
    ],
    [
      'without another that it would undo',
      (cell) => {
        const retune = { do: 'retune', setting: 'heater', by: 'rim', weight: '20 %', deadband: '0.03 mm' };
        cell.respond(retune);
        cell.respond(retune);
      },
      'this policy retunes "heater" already',
    ],
    [
      'one that a line could do',
      (cell) => cell.respond({ do: 'foresee' }),
      '"foresee" is a bound, and nothing that a policy could do',
    ],
    [
      'one that can begin with the line',
      (cell) => cell.respond({ do: 'keep', stock: 'frame', 'on-hand': 3000 }),
      '"keep" holds from before the run on',
    ],
  ])('must be %s', (_, start, message) => {
    expect(() => ranWith(demo, start)).toThrow(message);
  });
});
