import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { widthOf, wrap } from '../../src/report/columns.ts';
import { comparisonText, singleText } from '../../src/report/terminal.ts';
import { verdictSentences } from '../../src/report/verdict.ts';
import { outcome, wobble } from './fake.ts';
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

describe('singleText', () => {
  it('lists the measures and what every station did, in 80 columns', () => {
    const outcomes = sampleOutcomes().filter(({ policy }) => policy === 'rework');
    const text = singleText(compare(['rework'], outcomes), PLAIN);
    expect(widest(text)).toBeLessThanOrEqual(80);
    expect(text).toMatch(/^throughput, good \/h +\d/m);
    expect(text).toMatch(/^form +60\.0 +10\.0 +20\.0 +10\.0 +0\.0$/m);
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
