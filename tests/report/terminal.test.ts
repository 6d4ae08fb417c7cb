import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { STATES } from '../../src/line/state.ts';
import { widthOf, wrap } from '../../src/report/columns.ts';
import { comparisonText, singleText } from '../../src/report/terminal.ts';
import { verdictSentences } from '../../src/report/verdict.ts';
import { outcome, shares, wobble } from './fake.ts';
import { sampleOutcomes, samplePage } from './sample.ts';

const PLAIN = { title: 'Tray cell', colour: false, width: 80 };
const widest = (text: string) => Math.max(...text.split('\n').map(widthOf));

describe('comparisonText', () => {
  const { comparison } = samplePage();

  it('fits 80 columns and cuts a long policy name', () => {
    const text = comparisonText(comparison, PLAIN);
    expect(widest(text)).toBeLessThanOrEqual(80);
    expect(text).toContain('\u2026');
  });

  it('fits 80 columns with large numbers and a long baseline', () => {
    const names = [
      'a baseline with a name that goes on and on and on',
      '\u578b\u578b\u578b\u578b\u578b\u578b\u578b',
    ];
    const outcomes = names.flatMap((name, p) =>
      [1, 2, 3].map((seed) =>
        outcome(name, seed, {
          throughput_per_h: 4321 + p * 900 + wobble(p, seed),
          lead_time_s: 4e6 * (p + 1),
        }),
      ),
    );
    expect(widest(comparisonText(compare(names, outcomes), PLAIN))).toBeLessThanOrEqual(80);
  });

  it('opens with the verdict and ends with what the intervals hold for', () => {
    const flat = comparisonText(comparison, PLAIN).replace(/\s+/g, ' ');
    expect(flat.startsWith(`Tray cell ${verdictSentences(comparison)[0]}`)).toBe(true);
    expect(flat).toContain('120 runs: 4 policies, each under the same 30 seeds.');
    expect(flat).toContain(`for ${comparison.comparisons} comparisons`);
  });

  it('shows every pair where asked to, in 80 columns, and no pair else', () => {
    const text = comparisonText(comparison, { ...PLAIN, pairs: true });
    expect(widest(text)).toBeLessThanOrEqual(80);
    expect(text).toMatch(
      /^every pair: throughput, good \/h \(higher is better\)\npolicy +against +difference/m,
    );
    expect(text.match(/^rework +adjust the form/gm)).toHaveLength(comparison.measures.length);
    expect(text.replace(/\s+/g, ' ')).toContain(
      `All ${6 * comparison.measures.length} intervals of pairs, over all measures, hold together at 95 %`,
    );
    expect(comparisonText(comparison, PLAIN)).not.toContain('every pair:');
  });

  it('tells under each table how many more runs would decide, and who may be best', () => {
    const text = comparisonText(comparison, PLAIN);
    expect(text).toMatch(/^undecided: rework, run about \d+ more/m);
    expect(text.match(/^(May be|Surely) best in /gm)!.length).toBeGreaterThanOrEqual(
      comparison.measures.length,
    );
  });

  it('has the longest verdict in two lines within 80 columns, and leaves out differences that are none', () => {
    const made = (changed: number) =>
      comparisonText(
        compare(
          ['carry on', 'look closer after misfits'],
          ['carry on', 'look closer after misfits'].flatMap((name, p) =>
            [1, 2, 3].map((seed) =>
              outcome(name, seed, { throughput_per_h: 4321.123 + seed + p * changed * (1 + seed / 10) }),
            ),
          ),
          null,
          new Map([['throughput_per_h', 100]]),
        ),
        PLAIN,
      );
    expect(widest(made(1))).toBeLessThanOrEqual(80);
    expect(made(1)).toMatch(/ no difference\n +worth having$/m);
    expect(made(1)).toMatch(/^look closer after misfits: surely better, but by too little\.$/m);
    expect(made(1)).toMatch(/^Worth having: more than 100 good \/h\.$/m);
    expect(made(0)).toMatch(/ no difference worth having$/m);
    expect(made(0)).toMatch(/^No change in any run\.$/m);
    expect(made(0)).not.toContain('its interval');
  });

  it('says why an interval has no width', () => {
    const outcomes = [0, 1].flatMap((p) =>
      [1, 2, 3].map((seed) => outcome('ab'[p]!, seed, { throughput_per_h: 40 + p })),
    );
    expect(comparisonText(compare(['a', 'b'], outcomes), PLAIN)).toMatch(
      /^b: every run gave the same difference, so that its interval has no width\.$/m,
    );
  });

  it('says the same without colour', () => {
    const coloured = comparisonText(comparison, { ...PLAIN, colour: true });
    expect(coloured).toContain('\u001b[');
    expect(stripVTControlCharacters(coloured)).toBe(comparisonText(comparison, PLAIN));
  });

  it('takes control characters out of names', () => {
    const outcomes = ['a', 'b\u001b[2J'].flatMap((name) =>
      [1, 2].map((seed) => outcome(name, seed, { fit_rate: 0.5 })),
    );
    expect(comparisonText(compare(['a', 'b\u001b[2J'], outcomes), PLAIN)).not.toContain('\u001b');
  });
});

describe('a measure that no run gives', () => {
  const comparison = compare(
    ['a', 'b'],
    ['a', 'b'].flatMap((name) => [1, 2].map((seed) => outcome(name, seed, { throughput_per_h: 40 + seed }))),
  );

  it('is left out of the text, and does not count among the comparisons', () => {
    const text = comparisonText(comparison, PLAIN);
    expect(text).toContain('throughput');
    for (const word of ['fit rate', 'orders on time', 'finished goods', 'no value']) {
      expect(text).not.toContain(word);
    }
    expect(comparison.comparisons).toBe(1);
    expect(singleText(comparison, PLAIN)).not.toContain('finished goods');
  });
});

describe('singleText', () => {
  it('parts the table of states in two where a terminal is too narrow for all of them', () => {
    const states = STATES.map((state) => [state, 1 / STATES.length]);
    const own = shares(Object.fromEntries(states));
    const run = { ...outcome('a', 1), stateShares: { 'hardening oven': own } };
    const text = singleText(compare(['a'], [run]), { ...PLAIN, width: 60 });
    const lines = text.split('\n');
    for (const line of lines) expect(widthOf(line), line).toBeLessThanOrEqual(60);
    const rows = lines.filter((line) => line.startsWith('hardening'));
    expect(rows).toHaveLength(2);
    expect(rows.join(' ').match(/\b10\.0\b/g)).toHaveLength(STATES.length);
  });

  it('lists the measures and what every station did, in 80 columns', () => {
    const outcomes = sampleOutcomes().filter(({ policy }) => policy === 'rework');
    const text = singleText(compare(['rework'], outcomes), PLAIN);
    expect(widest(text)).toBeLessThanOrEqual(80);
    expect(text).toMatch(/^throughput, good \/h +\d/m);
    expect(text).toMatch(/^form +60\.0 +10\.0 +20\.0 +10\.0 +0\.0$/m);
  });

  it('always shows the five states a reader looks for, and the others by their words where they occur', () => {
    const told = (own: Parameters<typeof shares>[0]) =>
      singleText(compare(['a'], [{ ...outcome('a', 1), stateShares: { press: shares(own) } }]), PLAIN);
    expect(told({ working: 1 })).toMatch(/^station +working +starved +blocked +down +held$/m);
    const shift = told({ working: 0.5, off_shift: 0.5 });
    expect(shift).toMatch(/^ +off$/m);
    expect(shift).toMatch(/^station +working +starved +blocked +down +shift +held$/m);
    expect(shift).toMatch(/^press +50\.0 +0\.0 +0\.0 +0\.0 +50\.0 +0\.0$/m);
  });

  it('fits all states into 80 columns, none of them by its key', () => {
    const every = shares(Object.fromEntries(STATES.map((state) => [state, 1 / STATES.length])));
    const names = ['a station with a long name', 'press', 'x'];
    const text = singleText(
      compare(
        ['a'],
        [
          {
            ...outcome('a', 1),
            stateShares: {
              ...Object.fromEntries(names.map((name) => [name, every])),
              idle: shares({ off_shift: 1 }),
            },
          },
        ],
      ),
      PLAIN,
    );
    expect(widest(text)).toBeLessThanOrEqual(80);
    expect(text).not.toContain('_');
    // One more than there is room for comes in a table of its own.
    expect(text).toMatch(/^a station wi… +10\.0( +10\.0){8}$/m);
    expect(text).toMatch(/^a station with a long name +10\.0$/m);
  });

  it('tells how busy the crews were, the mean over the runs', () => {
    const runs = [0.2, 0.4].map((busy, i) => ({
      ...outcome('a', i + 1),
      crewBusyShares: { fitter: busy, robot: 0.6 },
    }));
    expect(singleText(compare(['a'], runs), PLAIN)).toMatch(
      /^what the crews did, % of the counted time\ncrew +busy\nfitter +30\.0\nrobot +60\.0\n$/m,
    );
    expect(singleText(compare(['a'], [outcome('a', 1)]), PLAIN)).not.toContain('crew');
  });

  it('says that one run gives no interval', () => {
    const text = singleText(compare(['a'], [outcome('a', 1, { fit_rate: 0.5 })]), PLAIN);
    expect(text).toContain('no interval');
    expect(text).toContain('One run gives no interval.');
  });
});

describe('wrap', () => {
  it('keeps every character of a word longer than the line', () => {
    const lines = wrap(`ab ${'x'.repeat(25)}`, 10);
    expect(lines.every((line) => widthOf(line) <= 10)).toBe(true);
    expect(lines.join('').replaceAll(' ', '')).toBe(`ab${'x'.repeat(25)}`);
  });
});
