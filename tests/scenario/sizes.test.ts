import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

/** The tab of SOUND's tray and the groove of its frame with other keys. */
const tab = (keys: string) => changed('        nominal: 18 mm\n', `        ${keys}\n`);
const groove = (keys: string) => changed('groove: { nominal: 120.3 mm }', `groove: { ${keys} }`);

function tabOf(keys: string) {
  const { parts } = parseScenario(tab(keys.split(', ').join('\n        ')), 'cell.yaml');
  return parts[0]!.features.find(({ name }) => name === 'tab')!;
}

describe('the size of a feature', () => {
  // ISO 286-2: 25 g6 is -20 to -7 µm.
  it('has the limits of its class and aims at their middle', () => {
    const { limits, aim, ownSd } = tabOf('nominal: 25 mm, class: g6');
    expect(limits!.lower).toBeCloseTo(24.98, 12);
    expect(limits!.upper).toBeCloseTo(24.993, 12);
    expect(aim).toBeCloseTo(24.9865, 12);
    expect(ownSd).toBe(0);
  });

  it('aims at its nominal with a plain tolerance, and without one', () => {
    expect(tabOf('nominal: 25 mm, tolerance: 0.5 mm')).toMatchObject({
      limits: { lower: 24.5, upper: 25.5 },
      aim: 25,
    });
    expect(tabOf('nominal: 25 mm, own-sd: 0.1 mm')).toMatchObject({ limits: null, aim: 25, ownSd: 0.1 });
  });

  // Cp = (upper - lower) / (6 sd).
  it('spreads as its capability says', () => {
    expect(tabOf('nominal: 25 mm, class: H7, capability: 1').ownSd).toBeCloseTo(0.021 / 6, 12);
    expect(tabOf('nominal: 25 mm, tolerance: 0.3 mm, capability: 2').ownSd).toBeCloseTo(0.05, 12);
  });

  it('of a mate is said in the same words', () => {
    const { stocks } = parseScenario(groove('nominal: 120 mm, class: H8, capability: 1.5'), 'cell.yaml');
    const [feature] = stocks.find(({ name }) => name === 'frame')!.features!;
    // IT8 over 80 up to 120 mm is 54 µm.
    expect(feature!.aim).toBeCloseTo(120.027, 12);
    expect(feature!.ownSd).toBeCloseTo(0.054 / 9, 12);
  });

  const refused = (keys: string, message: string) =>
    it(`is refused where it is wrong: ${keys}`, () => {
      expectRefused(tab(keys.split(', ').join('\n        ')), message);
      // In SOUND the frame's mates have the same keys, but no tolerance.
      if (!keys.includes('tolerance')) expectRefused(groove(keys), message);
    });
  refused(
    'nominal: 25 mm, class: ¤H4',
    '"H4" is no class of the table, which has grades 5 to 13; the nearest is "H5"',
  );
  refused('nominal: 25 mm, class: ¤z6', '"z6" is no class of the table, which has the holes D to H and JS');
  refused(
    'nominal: 25 mm, class: ¤7',
    'expected a tolerance class of ISO 286, such as H7 for a hole or g6 for a shaft',
  );
  refused('nominal: 25 mm, tolerance: 1 mm, class: ¤H7', 'give either "tolerance" or "class"');
  refused('nominal: 501 mm, class: ¤H7', 'classes are for nominal sizes above 0 and up to 500 mm');
  refused('nominal: -1 mm, class: ¤H7', 'classes are for nominal sizes above 0');
  refused('nominal: 25 mm, class: H7, own-sd: 1 mm, capability: ¤1', 'give either "own-sd" or "capability"');
  refused('nominal: 25 mm, capability: ¤1', 'a capability needs limits: give a "class"');
  refused('nominal: 25 mm, class: H7, capability: ¤0', 'expected a number above zero, such as 1.33');
  refused('nominal: 25 mm, class: H7, capability: ¤1 mm', 'expected a number above zero, such as 1.33');
  refused('nominal: 25 mm, own-sd: ¤-0.1 mm', '-0.1 mm is not allowed: a length here is not negative');

  refuses([['tolerance: 0.2 mm', 'tolerance: ¤-0.2 mm', '-0.2 mm is not allowed']], SOUND);
});
