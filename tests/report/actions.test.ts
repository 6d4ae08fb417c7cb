import { expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { checkJson } from '../../src/report/check-json.ts';
import { checkText } from '../../src/report/check-text.ts';
import { runsCsv } from '../../src/report/csv.ts';
import { lineDrawing } from '../../src/report/line-drawing.ts';
import { ran, small } from '../line/small-line.ts';

const line = small(
  '1 h',
  `
stock:
  blank: { on-hand: 900, reserve: 50 }
stations:
  feed: { does: work, takes: blank, cycle: 10 s, to: wash }
  wash: { does: work, buffer: 9, cycle: 8 s, to: good, breakdowns: { jam: { every: 9 h, counted: clock, repair: 1 h, cycle: resumes, crew: fitter } } }
  second: { does: work, buffer: 9, cycle: 9 s, to: good }
crew: { fitter: { number: 1 } }
policies:
  carry on: []
  act:
    - { do: reroute, at: feed, to: second, when: { from: 10 min, to: 20 min } }
    - { do: skip, station: wash, later: no, when: { from: 30 min, to: 40 min } }
    - { do: prioritise, crew: fitter, first: [wash], when: { from: 10 min } }
    - { do: draw-on-reserve, stock: blank, when: { from: 10 min } }`,
);
const flat = (text: string) => text.replace(/\s+/g, ' ');

it('tells by which policy a station is fed that nothing else feeds', () => {
  expect(lineDrawing(line, 80).slice(0, 2)).toEqual([
    '  blank > feed > (9) wash > good',
    '  feed > by a policy: (9) second > good',
  ]);
});

it('tells what each action acts on, and what is in reserve', () => {
  const text = flat(checkText(line, idealLine(line), 80));
  expect(text).toContain(
    'act: reroute (feed to second), skip (wash), prioritise (fitter), draw-on-reserve (blank)',
  );
  expect(text).toContain('"blank": 900 pieces on hand and 50 more in reserve, never ordered');
  const source = { scenario: line, ideal: idealLine(line), file: 'x', sha256: '' };
  expect(checkJson(source)).toMatchObject({ stocks: [{ on_hand: 900, reserve: 50 }] });
});

it('gives what the actions did a column each, empty for policies without', () => {
  const [head, ...rows] = runsCsv([ran(line), ran(line, 'act')])
    .trim()
    .split('\r\n')
    .map((row) => row.split(','));
  const column = (name: string) => rows.map((row) => row[head!.indexOf(name)]);
  // Those that come every 10 s from 600 s up to 1190 s, and from 1800 s up to 2390 s.
  expect(column('did_rerouted_feed_parts')).toEqual(['', '60']);
  expect(column('did_skipped_wash_parts')).toEqual(['', '60']);
  expect(column('did_drawn_blank_pieces')).toEqual(['', '50']);
  expect(runsCsv([ran(line)])).not.toContain('did_');
});
