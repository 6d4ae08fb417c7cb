import { describe, expect, it } from 'vitest';
import { parseJoined } from '../../src/scenario/parse.ts';
import { ScenarioError } from '../../src/scenario/problem.ts';
import { sizeAt } from '../../src/scenario/sizings.ts';

const LINE = `mendline: 1
title: a line
about: made up
run: { warm-up: 0 s, length: 1 h, seeds: 2 }
stock: { blank: { unlimited: true } }
stations:
  first: { does: work, takes: blank, cycle: 1 min, to: second }
  second: { does: work, buffer: 1, cycle: 1 min, to: good }
policies: { carry on: [] }
`;

const SIZE = '{ at: stations/second/buffer, least: 1, most: 9, step: 2, cost: 3 }';
const MEETS = '[{ measure: throughput, at-least: 50 /h }]';
const asked = (size = SIZE, rest = `meets: ${MEETS}`) =>
  `mendline: 1\ntitle: sizes\nabout: made up\nsizings:\n  enough:\n    sizes: { places: ${size} }\n    ${rest}\n`;

const read = (supplement: string) =>
  parseJoined({ source: 'line.yaml', text: LINE }, [{ source: 'sizes.yaml', text: supplement }]).scenario
    .sizings!;

/** What is said to be wrong with a supplement. */
function refused(supplement: string): string {
  try {
    read(supplement);
  } catch (error) {
    if (error instanceof ScenarioError) return error.describe();
    throw error;
  }
  return 'nothing';
}

describe('a sizing', () => {
  it('is read with what is left out', () => {
    expect(read(asked())).toEqual([
      {
        name: 'enough',
        money: 'money',
        sizes: [
          {
            ...{ name: 'places', at: ['stations/second/buffer'], least: 1, step: 2, count: 5, unit: '' },
            cost: 3,
          },
        ],
        meets: [{ measure: 'throughput', atLeast: '50 /h' }],
        sure: 0.95,
      },
    ]);
  });

  it('gives whole numbers or values with their unit, without what binary arithmetic adds', () => {
    const [size] = read(asked('{ at: run/warm-up, least: 0.1 h, most: 0.5 h, step: 0.1 h, cost: 1 }'))[0]!
      .sizes;
    expect([0, 1, 2, 3, 4].map((steps) => sizeAt(size!, steps))).toEqual([
      '0.1 h',
      '0.2 h',
      '0.3 h',
      '0.4 h',
      '0.5 h',
    ]);
    const [places] = read(asked())[0]!.sizes;
    expect(sizeAt(places!, 4)).toBe(9);
  });

  it.each([
    ['least above most', '{ at: x, least: 9, most: 1, cost: 1 }', 'expected no less than "least"'],
    [
      'a step that does not lead there',
      '{ at: x, least: 1, most: 9, step: 3, cost: 1 }',
      'expected steps that lead from 1 to 9 exactly',
    ],
    ['no step', '{ at: x, least: 1, most: 9, step: 0, cost: 1 }', 'expected a step above 0'],
    [
      'a negative cost',
      '{ at: x, least: 1, most: 9, cost: -1 }',
      'expected what one more costs: a number, not negative',
    ],
    [
      'units that differ',
      '{ at: x, least: 1 h, most: 90 min, step: 1 h, cost: 1 }',
      'expected the unit of "least", h; found min',
    ],
    [
      'no number',
      '{ at: x, least: few, most: 9, cost: 1 }',
      '"few": expected a number, or one with its unit',
    ],
    [
      'a key written wrongly',
      '{ at: x, lest: 1, most: 9, cost: 1 }',
      'unknown key "lest"; did you mean "least"?',
    ],
    [
      'steps without end',
      '{ at: x, least: 1, most: 100000000, cost: 1 }',
      'expected fewer than 1000000 steps',
    ],
    ['nothing that costs', '{ at: x, least: 1, most: 9, cost: 0 }', 'nothing costs anything'],
  ])('is refused with its place: %s', (_what, size, message) => {
    const said = refused(asked(size));
    expect(said).toContain(message);
    expect(said).toMatch(/sizes\.yaml:[67]:\d+/);
  });

  it.each([
    ['no target', 'meets: []', 'expected one target or more'],
    [
      'both ends',
      'meets: [{ measure: throughput, at-least: 5 /h, at-most: 6 /h }]',
      'expected either "at-least" or "at-most"',
    ],
    ['all but sure', `meets: ${MEETS}\n    sure: 100 %`, 'expected a share above 50 % and below 100 %'],
    ['hardly sure', `meets: ${MEETS}\n    sure: 40 %`, 'expected a share above 50 % and below 100 %'],
  ])('is refused for its target: %s', (_what, rest, message) => {
    expect(refused(asked(SIZE, rest))).toContain(message);
  });

  it('of the same name as one that is there is refused', () => {
    expect(() =>
      parseJoined({ source: 'line.yaml', text: LINE + asked().split('\n').slice(3).join('\n') }, [
        { source: 'sizes.yaml', text: asked() },
      ]),
    ).toThrow(ScenarioError);
  });
});
