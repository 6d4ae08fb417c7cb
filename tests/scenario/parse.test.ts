import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, problems, refusal, SOUND } from './sample.ts';

const read = (text: string) => parseScenario(text, 'cell.yaml');

describe('parseScenario', () => {
  it('takes a sound scenario into seconds, millimetres and shares', () => {
    const { title, run, stocks, parts, stations, disturbances, policies } = read(SOUND);
    expect(title).toBe('A sound cell');
    expect(run).toEqual({ warmUp: 3600, warmUpBy: 'given', length: 28800, seeds: 4 });
    expect(stocks.map(({ name }) => name)).toEqual(['sheet', 'frame', 'film']);
    expect(stocks[0]).toMatchObject({ onHand: 90, leadTime: { distribution: 'constant', value: 7200 } });
    expect(parts[0]!.features[0]).toMatchObject({
      name: 'rim',
      nominal: 120,
      tolerance: 0.2,
      shrinkage: 0.004,
      cavities: [0.02, -0.02],
      lotSd: 0,
      gains: { heater: { value: -0.03, of: 'length', per: 'temperature' } },
    });
    expect(stations[0]).toMatchObject({
      does: 'form',
      settings: [{ name: 'heater', target: { value: 150, dimension: 'temperature' } }],
    });
    expect(disturbances[0]).toMatchObject({ name: 'cold', by: { law: { value: -6 } } });
    expect(policies.map(({ name, responses }) => [name, responses.map((response) => response.do)])).toEqual([
      ['carry on', []],
      ['stop and fix', ['stop-and-fix']],
      ['the rest', ['inspect', 'retune', 'match', 'rework']],
    ]);
  });

  it('keeps the order of the file for stations, stocks and policies', () => {
    const swapped = changed('  carry on: []\n', '').replace(/\n$/, '\n  carry on: []\n');
    expect(read(swapped).policies.map(({ name }) => name)).toEqual(['stop and fix', 'the rest', 'carry on']);
  });

  it('reads the same from a file with CRLF line ends', () => {
    expect(read(SOUND.replaceAll('\n', '\r\n'))).toEqual(read(SOUND));
  });

  it('reads the same from a file with a byte order mark', () => {
    expect(read(`\uFEFF${SOUND}`)).toEqual(read(SOUND));
  });

  it('counts no column for a byte order mark and no line twice for CRLF', () => {
    const text = changed('mendline: 1', 'mendline: 2').replaceAll('\n', '\r\n');
    expect(problems(`\uFEFF${text}`)).toMatchObject([{ line: 1, column: 11 }]);
    const later = changed('to: packing', 'to: paking').replaceAll('\n', '\r\n');
    const line = SOUND.split('\n').findIndex((one) => one.includes('to: packing')) + 1;
    expect(problems(later)).toMatchObject([{ line, column: '    to: '.length + 1 }]);
  });

  it('takes an entry written once and used again by its alias', () => {
    const text = changed('cycle: 5 s', 'cycle: &slow { distribution: gamma, mean: 5 s, cv: 10 % }').replace(
      'cycle: 4 s',
      'cycle: *slow',
    );
    const [, trimming, marking] = read(text).stations;
    expect(marking!.cycle).toEqual(trimming!.cycle);
    expect(marking!.cycle).toEqual({ distribution: 'gamma', mean: 5, sd: 0.5 });
  });

  it.each(['constructor', 'toString', 'hasOwnProperty', 'prototype', 'valueOf'])(
    'takes "%s" for a name like any other',
    (name) => {
      const scenario = read(SOUND.replaceAll('packing', name).replaceAll('frame', `x${name}`));
      expect(scenario.stations.map((station) => station.name)).toContain(name);
      expectRefused(changed('by: rim, weight', `by: ¤${name}, weight`), `"${name}" is no feature`);
    },
  );
});

describe('a text that is no scenario at all', () => {
  const only = (text: string) => {
    const found = problems(text);
    expect(found).toHaveLength(1);
    return found[0]!;
  };

  it.each([
    ['an empty file', ''],
    ['blank lines', '\n\n  \n'],
    ['comments alone', '# a plan\n# for later\n'],
    ['an empty document', '---\n'],
    ['null', 'null\n'],
  ])('%s is refused as empty', (_, text) => {
    expect(only(text)).toEqual({
      line: 1,
      column: 1,
      message: 'the file is empty; a scenario starts with "mendline: 1"',
    });
  });

  it.each(['- a list\n- of things\n', 'just words\n', '42\n'])(
    '%j is refused for want of the keys',
    (text) => {
      expect(only(text)).toMatchObject({ line: 1, column: 1 });
      expect(only(text).message).toBe(
        'expected a mapping with the keys mendline, title, about, run, stock, parts, stations, crew, carriers, calendars, demand, disturbances, cases, policies, sizings',
      );
    },
  );

  it('a tab as indent is refused where it is', () => {
    expectRefused('mendline: 1\nrun:\n¤\tseeds: 1\n', 'indent with spaces');
  });

  it.each([
    ['\tseeds: 1\n  length: 1 h', 'a tab indents this line', 3, 1],
    ['  seeds: 1\n   length: 1 h', 'this value does not end where it should', 3, 10],
    ['  seeds: 1\n length: 1 h', 'this line is indented unlike those beside it', 4, 1],
    ['  seeds: 1\n  length:1 h', 'a key without its ":"', 4, 3],
    ['  seeds 1\n  length: 1 h', 'a key without its ":"', 3, 3],
    ['  seeds: 1\n  length: a: b', 'a text with ": " in it needs quotes', 4, 11],
    ['  { seeds: 1 length: 1 h }', 'a comma is missing', 3, 12],
  ])('run: %j is refused once, with the remedy', (run, message, line, column) => {
    const found = problems(`mendline: 1\nrun:\n${run}\n  warm-up: 0 s\nparts:\n  a: 1\n`);
    expect(found).toEqual([{ line, column, message: expect.stringContaining(message) }]);
  });

  it('every line that a tab indents is told', () => {
    expect(problems('mendline: 1\nrun:\n\tseeds: 1\n\tlength: 1 h\n').map(({ line }) => line)).toEqual([
      3, 4,
    ]);
  });

  it('a bracket left open is refused on the line after', () => {
    const [first] = problems('mendline: 1\nrun: { seeds: 1\nstock: {}\n');
    expect(first).toMatchObject({ line: 3, column: 1 });
    expect(first!.message).toMatch(/^a bracket is not closed before this line/);
  });

  it('a key given twice is refused at the second', () => {
    expectRefused(changed('about:', '¤title: Again\nabout:'), 'this key is in the same mapping twice');
  });

  it('a second document is refused where it starts', () => {
    expectRefused(`${SOUND}¤---\n${SOUND}`, 'a scenario is one document');
  });

  it('an alias of nothing is refused where it is', () => {
    expectRefused(changed('cycle: 5 s', 'cycle: ¤*slow'), 'nothing above is marked "&slow"');
  });

  it('a tag is refused where it is, and nothing is run', () => {
    expectRefused(
      changed('title: A sound cell', 'title: ¤!!js/function "() => 1"'),
      'a tag (a word after "!")',
    );
  });

  it('an entry that contains itself is refused like any other wrong value', () => {
    expectRefused(changed('title: A sound cell', '¤title: &own\n  again: *own'), 'expected text');
  });

  it('aliases that multiply are refused', () => {
    const bomb = 'abcdefghij'
      .split('')
      .map(
        (name, i, all) =>
          `${name}: &${name} [${Array(10)
            .fill(i === 0 ? 'x' : `*${all[i - 1]}`)
            .join(', ')}]\n`,
      )
      .join('');
    expect(only(bomb).message).toContain('write the entries out');
  });

  it('bytes that are no UTF-8 are refused where they start', () => {
    const latin1 = new TextDecoder().decode(Buffer.from('mendline: 1\ntitle: caf\xe9\n', 'latin1'));
    expect(only(latin1)).toMatchObject({ line: 2, column: 11 });
    expect(only(latin1).message).toContain('save the scenario as UTF-8');
    expect(only('\0\0\0').message).toContain('UTF-8');
  });

  it('"__proto__" is refused as a name wherever it stands', () => {
    expectRefused(
      changed('to: packing', 'to: ¤__proto__').replace('\n  packing:', '\n  ¤__proto__:'),
      '"__proto__" cannot be a name',
      '"__proto__" cannot be a name',
    );
  });

  it.each([
    ['nonsense', '}: [ &x {{ : -\n'.repeat(140_000)],
    ['words', 'to be or not to be\n'.repeat(110_000)],
    ['comment below a sound scenario', `${SOUND}${`# ${'x'.repeat(98)}\n`.repeat(20_000)}`],
  ])('two megabytes of %s are refused', (_, text) => {
    expect(text.length).toBeGreaterThan(1_900_000);
    expect(only(text).message).toBe(`the file has ${text.length} characters; a scenario has at most 300000`);
  });

  it.each(['[', '{a: ', '- ', '? '])('%j nested without end is refused where it gets too deep', (opening) => {
    const [first, ...others] = problems(`mendline: 1\ntitle:\n  ${opening.repeat(5000)}`);
    expect(others).toEqual([]);
    expect(first!.line).toBe(3);
    expect(first!.message).toMatch(/^nested more than 100 deep/);
  });

  it('nonsense below that size is refused with a few lines, not thousands', () => {
    expect(problems('a: b: c\n'.repeat(5000)).length).toBeLessThanOrEqual(10);
  });
});

describe('all problems at once', () => {
  it('ten problems in one file are told together in the order of the text', () => {
    let text = SOUND;
    for (const [from, to] of [
      ['warm-up: 1 h', 'warm-up: ¤1'],
      ['order: 90\n', 'order: ¤0\n'],
      ['nominal: 120.3 mm', 'nominal: ¤120.3'],
      ['made-at: trimming', 'made-at: ¤triming'],
      ['heating: 24 s/mm', 'heating: ¤24 s'],
      ['takes-hold: 99 %', 'takes-hold: ¤199 %'],
      ['misfit: bench', 'misfit: ¤bnch'],
      ['{ disturbs: supplier', '{ disturbs: ¤suplier'],
      ['setting: heater, by: rim', 'setting: ¤heatr, by: rim'],
      ['{ do: match', '{ do: ¤macth'],
    ] as const) {
      text = changed(from, to, text);
    }
    expectRefused(
      text,
      'has no unit',
      'whole number from 1',
      'has no unit',
      'did you mean "trimming"?',
      'per something, such as 16 s/mm',
      'from 0 % to 100 %',
      'did you mean "bench"?',
      'did you mean "supplier"?',
      'did you mean "heater"?',
      'did you mean "match"?',
    );
  });

  it.each([
    ['a stock', 'on-hand: 90\n', 'on-hand: ¤some\n'],
    ['the part', 'nominal: 120 mm', 'nominal: ¤120'],
    ['the forming station', 'per-sheet: 2', 'per-sheet: ¤none'],
    ['the gauging station', 'every: 12', 'every: ¤often'],
    ['the marking station', 'takes-hold: 99 %', 'takes-hold: ¤often'],
    ['the rework station', 'limit: 2', 'limit: ¤0'],
    ['the stock of mates', 'nominal: 120.3 mm', 'nominal: ¤120.3'],
    ['the run', 'seeds: 4', 'seeds: ¤0'],
    ['the title', 'title: A sound cell', 'title: ¤[]'],
  ])('a problem in %s neither causes others nor hides them', (_, from, to) => {
    expectRefused(changed(from, to), /.*/);
    const both = changed('{ disturbs: station, station: packing', '{ disturbs: station, station: ¤paking');
    expectRefused(changed(from, to, both), /.*/, 'did you mean "packing"?');
  });

  it('a station with a problem is still asked where its parts go', () => {
    expectRefused(
      changed('trim, buffer: 9, cycle: 5 s, to: marking', 'trim, buffer: 9, cycle: ¤5, to: ¤markin'),
      '5 has no unit',
      'did you mean "marking"?',
    );
  });

  it('a response with a problem leaves the others of its policy to be checked, at their own places', () => {
    expectRefused(
      changed('every: 1, off-limits: scrap', 'every: ¤0, off-limits: scrap').replace(
        '{ do: match, at: assembly',
        '{ do: match, at: ¤asembly',
      ),
      'whole number',
      'did you mean "assembly"?',
    );
  });

  it('a missing section is told at the start, and the rest still checked', () => {
    const { problems: found } = refusal(
      changed('mendline: 1\n', '').replace('station: packing', 'station: paking'),
    );
    expect(found).toMatchObject([{ line: 1, column: 1 }, {}]);
    expect(found[0]!.message).toBe('"mendline" is missing: expected the version of the scenario format, 1');
    expect(found[1]!.message).toContain('did you mean "packing"?');
  });
});

describe('describe()', () => {
  it('gives file:line:column, the line, and a mark beneath the place', () => {
    const text = changed('seeds: 4 }', 'seeds: none }');
    expect(refusal(text).describe()).toBe(
      [
        'cell.yaml:4:42: expected a whole number from 1 to 10000',
        '    4 | run: { warm-up: 1 h, length: 8 h, seeds: none }',
        '      |                                          ^',
      ].join('\n'),
    );
  });

  it('marks the very character that is wrong, however long the line', () => {
    const long = changed('title: A sound cell', `title: A sound cell # ${'x'.repeat(300)}`).replace(
      'takes: 1 s }',
      `takes: 1 s, ${' '.repeat(200)}oops: 1 }`,
    );
    const [, line, mark] = refusal(long).describe().split('\n');
    expect(line!.slice(mark!.indexOf('^'))).toMatch(/^oops/);
    expect(Math.max(line!.length, mark!.length)).toBeLessThanOrEqual(80);
  });

  it('keeps a tab before the place, so that the mark stands beneath it', () => {
    const [, line, mark] = refusal(changed('title: A sound cell', 'title:\t[]')).describe().split('\n');
    expect(line).toContain('title:\t[]');
    expect(mark).toMatch(/\| {7}\t\^$/);
  });

  it('shows no character that a terminal would obey', () => {
    const text = changed('title: A sound cell', 'title: A sound cell\n"\\e[31mred": "\u0007"');
    const described = refusal(text).describe();
    expect(described).toContain('unknown key');
    expect(described.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });

  it('says in its message how many problems there are', () => {
    expect(refusal(changed('seeds: 4', 'seeds: 0')).message).toBe('cell.yaml: 1 problem');
    expect(refusal('').message).toBe('cell.yaml: 1 problem');
    expect(refusal(changed('seeds: 4', 'seeds: 0, sds: 1')).message).toBe('cell.yaml: 2 problems');
  });
});
