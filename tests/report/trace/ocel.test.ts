import { describe, expect, it } from 'vitest';
import { traced } from '../../../src/experiment/traced.ts';
import { logRows } from '../../../src/report/trace/log-rows.ts';
import { ocelText } from '../../../src/report/trace/ocel.ts';
import { blanks, small } from '../../line/small-line.ts';
import { brokenRules, type Ocel } from './ocel-rules.ts';
import { SOURCE } from './traced-sample.ts';
import { written } from './written.ts';

const made = (withTruth = false, trace = SOURCE().trace) =>
  JSON.parse(written(ocelText(logRows(trace, withTruth), { ...SOURCE(), trace }, {})).toString()) as Ocel;

/** The minimal example of the format's public description, which must pass; what is left out of it are empty lists. */
const MINIMAL: Ocel = {
  eventTypes: [{ name: 'create-order', attributes: [{ name: 'total-items', type: 'integer' }] }],
  objectTypes: [{ name: 'order', attributes: [{ name: 'item', type: 'integer' }] }],
  events: [
    {
      ...{ id: 'e1', type: 'create-order', time: '1970-01-01T00:00:00Z' },
      attributes: [{ name: 'total-items', value: 1 }],
      relationships: [{ objectId: 'o1', qualifier: 'item' }] as never,
    },
  ],
  objects: [
    {
      ...{ id: 'o1', type: 'order', relationships: [] },
      attributes: [{ name: 'item', time: '1970-01-01T00:00:00Z', value: 1 }] as never,
    },
  ],
};

describe('the rules that logs are tested by', () => {
  it('let the published example pass, and find what is wrong', () => {
    expect(brokenRules(MINIMAL)).toEqual([]);
    const event = MINIMAL.events[0]!;
    const wrong: readonly Partial<Ocel>[] = [
      { eventTypes: [] },
      { objects: [] },
      { objects: [...MINIMAL.objects, ...MINIMAL.objects] },
      { events: [{ ...event, time: '1 Jan 1970' }] },
      { events: [{ ...event, attributes: [{ name: 'total-items', value: 1.5 }] }] },
      { events: [{ ...event, attributes: [{ name: 'other', value: 1 }] }] },
      { objectTypes: [{ name: 'order', attributes: [{ name: 'item', type: 'number' }] }] },
    ];
    for (const change of wrong) expect(brokenRules({ ...MINIMAL, ...change })).not.toEqual([]);
    const { objects: _, ...three } = MINIMAL;
    expect(brokenRules(three)).not.toEqual([]);
  });
});

describe('ocelText', () => {
  it('keeps the rules, with and without what no policy sees', () => {
    expect(brokenRules(made())).toEqual([]);
    expect(brokenRules(made(true))).toEqual([]);
    const truth = (document: Ocel) => document.eventTypes.filter(({ name }) => name.startsWith('true '));
    expect(truth(made())).toEqual([]);
    expect(truth(made(true)).map(({ name }) => name)).toEqual(['true size', 'true mark', 'true clearances']);
  });

  it('relates jobs to who does them, and parts to their carriers and orders', () => {
    const scenario = small(
      '60 s',
      `${blanks(`
  first: { does: work, takes: blank, cycle: 10 s, handling: { load: 1 s, unload: 1 s, by: robot }, to: good }
`)}
crew: { robot: { number: 1, serves: first-come, move: 0 s } }
carriers: { nest: { number: 2, from: first, return: 5 s } }
demand: { every: 25 s, pieces: 1, due-after: 1 s, finished-goods: { at-start: 0, most: 8 } }
`,
    );
    const document = made(false, traced(scenario, 'carry on', 1).trace);
    expect(brokenRules(document)).toEqual([]);
    const related = (type: string) =>
      document.events.find((event) => event.type === type)!.relationships.map(({ objectId }) => objectId);
    expect(related('crew comes')).toEqual(['station/first', 'machine/first/1', 'crew/robot/1']);
    expect(related('on-carrier')).toEqual(['part/1', 'station/first', 'carriers/nest']);
    expect(related('handed over')).toEqual(['part/1', 'order/1']);
    expect(related('order comes')).toEqual(['order/1']);
  });

  it('is written event by event, so that no text of all of them is made', () => {
    const source = SOURCE();
    const rows = logRows(source.trace, true);
    const pieces = [...ocelText(rows, source, {})];
    expect(pieces.length).toBeGreaterThan(rows.length);
    expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThan(1500);
  });

  it('relates what happens to parts, pieces, lots, assemblies, stations and machines', () => {
    const { events, objects } = made();
    const find = (type: string, part: string) =>
      events.find(
        (event) => event.type === type && event.relationships.some(({ objectId }) => objectId === part),
      );
    // Part 1 is formed by 10 s, marked by 11 s, not gauged, and fits the first frame at 12 s.
    expect(find('tried', 'part/1')).toMatchObject({
      time: '2000-01-01T00:00:12.000Z',
      relationships: [
        { objectId: 'part/1', qualifier: 'part' },
        { objectId: 'assembly/1/1', qualifier: 'makes' },
        { objectId: 'piece/frame/1', qualifier: 'mate' },
        { objectId: 'station/fitting', qualifier: 'at' },
      ],
    });
    const object = (id: string) => objects.find((it) => it.id === id)!;
    expect(object('assembly/1/1').relationships).toEqual([
      { objectId: 'part/1', qualifier: 'has part' },
      { objectId: 'piece/frame/1', qualifier: 'has mate' },
    ]);
    expect(object('part/2').relationships).toEqual([{ objectId: 'piece/sheet/1', qualifier: 'made from' }]);
    expect(object('piece/frame/1').relationships).toEqual([{ objectId: 'lot/frame/0', qualifier: 'of lot' }]);
    // Part 2 does not fit, so there is no assembly of it.
    expect(objects.map(({ id }) => id)).not.toContain('assembly/2/1');
    expect(object('machine/fitting/2').attributes).toMatchObject([{ name: 'name', value: 'fitting 2' }]);
    expect(object('run/1').attributes.find(({ name }) => name === 'command')!.value).toBe(
      'mendline trace odd.yaml --seed 1',
    );
  });

  it('has an assembly for each time that mates are joined, the one before as a part of it', () => {
    // A blank is cut by 10 s, gets a bolt at 12 s and a nut at 15 s.
    const text = blanks(`
  cut: { does: work, takes: blank, cycle: 10 s, to: one }
  one: { does: assemble, buffer: 2, takes: [bolt], cycle: 2 s, fits: [], misfit: scrap, to: two }
  two: { does: assemble, buffer: 2, takes: [nut], cycle: 3 s, fits: [], misfit: scrap, to: good }
`).replace('stock:', 'stock:\n  bolt: { unlimited: true }\n  nut: { unlimited: true }');
    const { trace } = traced(small('15 s', text), 'carry on', 1);
    const { events, objects } = made(false, trace);
    const relations = (type: string) =>
      events.filter((event) => event.type === type).map(({ relationships }) => relationships);
    const at = (station: string) => ({ objectId: `station/${station}`, qualifier: 'at' });
    expect(relations('tried')).toEqual([
      [
        { objectId: 'part/1', qualifier: 'part' },
        { objectId: 'assembly/1/1', qualifier: 'makes' },
        { objectId: 'piece/bolt/1', qualifier: 'mate' },
        at('one'),
      ],
      [
        { objectId: 'part/1', qualifier: 'part' },
        { objectId: 'assembly/1/1', qualifier: 'assembly' },
        { objectId: 'assembly/1/2', qualifier: 'makes' },
        { objectId: 'piece/nut/1', qualifier: 'mate' },
        at('two'),
      ],
    ]);
    expect(relations('good')).toEqual([
      [
        { objectId: 'part/1', qualifier: 'part' },
        { objectId: 'assembly/1/2', qualifier: 'assembly' },
        at('two'),
      ],
    ]);
    const assemblies = objects.filter(({ type }) => type === 'assembly');
    expect(assemblies.map(({ id, relationships }) => [id, relationships])).toEqual([
      [
        'assembly/1/1',
        [
          { objectId: 'part/1', qualifier: 'has part' },
          { objectId: 'piece/bolt/1', qualifier: 'has mate' },
        ],
      ],
      [
        'assembly/1/2',
        [
          { objectId: 'assembly/1/1', qualifier: 'has part' },
          { objectId: 'piece/nut/1', qualifier: 'has mate' },
        ],
      ],
    ]);
  });

  it('takes the kinds of values from what they are, whatever the stocks are called', () => {
    const text = blanks(`
  cut: { does: work, takes: blank, cycle: 10 s, to: one }
  one: { does: assemble, buffer: 2, takes: [rod_mm], cycle: 2 s, fits: [], misfit: scrap, to: good }
`).replace('stock:', 'stock:\n  rod_mm: { unlimited: true }');
    const { trace } = traced(small('15 s', text), 'carry on', 1);
    const tried = made(false, trace).eventTypes.find(({ name }) => name === 'tried')!;
    expect(tried.attributes).toEqual([
      { name: 'result', type: 'string' },
      { name: 'mate_lot_rod_mm', type: 'integer' },
      { name: 'mate_piece_rod_mm', type: 'integer' },
    ]);
  });
});
