import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses } from './sample.ts';

/** SOUND with a bench that looks first. Rims are within their limits up to 0.2 mm. */
const LOOKING = changed(
  'rim: { removes: 80 %, own-sd: 0.06 mm }',
  'rim: { removes: 80 %, own-sd: 0.06 mm, most: 0.5 mm, only: down, takes: 20 s/mm }',
);

describe('a rework station', () => {
  it('may say how far, in which direction and at what pace it corrects', () => {
    const bench = parseScenario(LOOKING, 'cell.yaml').stations.find(({ name }) => name === 'bench')!;
    expect(bench).toMatchObject({
      corrects: [
        {
          ...{ name: 'rim', removes: 0.8, ownSd: 0.06, most: 0.5, only: 'down' },
          takes: { value: 20, of: 'time', per: 'length' },
        },
      ],
    });
  });

  refuses(
    [
      ['most: 0.5 mm', 'most: ¤0 mm', '0 mm is not allowed: a length here is above zero'],
      ['most: 0.5 mm', 'most: ¤-0.5 mm', 'a length here is above zero'],
      ['only: down', 'only: ¤dwn', '"dwn" is not known here; did you mean "down"?'],
      ['takes: 20 s/mm', 'takes: ¤20 s', '"20 s": expected a time per something, such as 20 s/mm'],
      ['takes: 20 s/mm', 'takes: ¤20 s/kPa', 'expected a time per length, such as 20 s/mm'],
      ['takes: 20 s/mm', 'takes: ¤-20 s/mm', 'the time for a correction cannot be negative'],
      ['own-sd: 0.06 mm', 'own-sd: ¤-0.06 mm', 'a length here is not negative'],
      [
        'most: 0.5 mm',
        'most: ¤0.2 mm',
        '"rim" is within its limits up to a deviation of 0.2 mm, so nothing that is outside could ever be brought in',
      ],
      [
        'most: 0.5 mm, only: down',
        'most: ¤0.1 mm, only: up',
        '"rim" is within its limits up to a deviation of 0.2 mm',
      ],
      ['most: 0.5 mm, only: down', 'most: ¤0.1 mm', 'give more than that'],
    ],
    LOOKING,
  );

  it('may have any reach where the feature has no limits', () => {
    const text = changed('        tolerance: 0.2 mm\n', '', LOOKING);
    parseScenario(changed('most: 0.5 mm', 'most: 0.1 mm', text), 'cell.yaml');
  });

  describe('that corrects what is made only after parts come to it is refused', () => {
    const tab = 'tab: { removes: 80 %, own-sd: 0 mm }';
    const correctsTab = changed('      rim: { removes', `      ¤${tab}\n      rim: { removes`);
    const message = (from: string) =>
      `"tab" is corrected here, but parts may come here from "${from}", and it is made only later, at "packing"`;
    const later = (text: string) =>
      changed('made-at: trimming', 'made-at: packing', text).replace(
        'packing: { does: work',
        'packing: { does: trim',
      );

    it('as its rejects', () => {
      expectRefused(later(correctsTab), message('assembly'));
    });

    it('by a policy alone', () => {
      const text = later(correctsTab).replace('misfit: bench', 'misfit: scrap');
      expectRefused(text, message('assembly'));
      expectRefused(
        text.replace(
          '{ do: rework, at: assembly, bench: bench }',
          '{ do: inspect, at: gauging, every: 2, off-limits: bench }',
        ),
        message('gauging'),
      );
    });

    it('by way of another bench', () => {
      expectRefused(
        later(correctsTab)
          .replace('misfit: bench', 'misfit: first bench')
          .replace('    - { do: rework, at: assembly, bench: bench }\n', '')
          .replace(
            '  bench:\n',
            '  first bench: { does: rework, buffer: unlimited, cycle: 9 s, limit: 1, corrects: {}, to: bench }\n  bench:\n',
          ),
        message('assembly'),
      );
    });

    it('but not where it is made before, though the bench sends parts back to before that', () => {
      const text = correctsTab.replace('¤', '');
      parseScenario(text, 'cell.yaml');
      const bench = text.slice(text.indexOf('  bench:'));
      parseScenario(text.replace(bench, bench.replace('to: gauging', 'to: trimming')), 'cell.yaml');
    });
  });
});
