import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { ChangeError, changedRaw, writtenAt } from '../../src/scenario/changed.ts';
import { parseChanged, parseJoined, parseScenario } from '../../src/scenario/parse.ts';

const text = readFileSync('scenarios/tray-cell.yaml', 'utf8');
const { raw } = parseJoined({ source: 'line', text }, []);

it('gives the scenario that the text would with the value in its place', () => {
  const at = 'stations/trimming/buffer';
  expect(writtenAt(raw, at)).toBe(24);
  const written = parseScenario(text.replace('buffer: 24', 'buffer: 7'), 'line');
  expect(parseChanged(raw, [{ at, is: 7 }])).toEqual(written);
  expect(writtenAt(raw, at)).toBe(24);
});

it('reaches into lists, and several places at once', () => {
  const changes = [
    { at: 'policies/sort and match/1/bank', is: 4 },
    { at: 'stock/frame/on-hand', is: 9 },
  ];
  const written = text.replace('bank: 16', 'bank: 4').replace('on-hand: 2200', 'on-hand: 9');
  expect(parseChanged(raw, changes)).toEqual(parseScenario(written, 'line'));
});

it('adds a key that is not written', () => {
  const found = parseChanged(raw, [{ at: 'stations/trimming/machines', is: 2 }]);
  expect(found.stations.find(({ name }) => name === 'trimming')).toMatchObject({ machines: 2 });
});

it('names the nearest place where there is none such', () => {
  const refused = (at: string) => expect(() => changedRaw(raw, [{ at, is: 1 }]));
  refused('stations/triming/buffer').toThrow(
    new ChangeError(
      '"stations/triming/buffer": there is no "triming" in "stations"; did you mean "trimming"?',
    ),
  );
  refused('stations/trimming/buffer/places').toThrow('"stations/trimming/buffer" has nothing inside');
  refused('policies/sort and match/2/bank').toThrow('there is no "2" in "policies/sort and match"');
  refused('stations/').toThrow('there is no "" in "stations"');
});

it('says what keeps a value from standing there', () => {
  const refused = (at: string, is: string | number) => expect(() => parseChanged(raw, [{ at, is }]));
  refused('stations/trimming/buffer', -3).toThrow(
    /^with stations\/trimming\/buffer = -3 .*stations\/trimming\/buffer: /,
  );
  refused('stations/trimming/bufer', 3).toThrow('did you mean "buffer"?');
  refused('stations/marking/cycle', 4).toThrow(/unit/);
});
