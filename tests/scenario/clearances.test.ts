import { describe, expect, it } from 'vitest';
import { clearances, sideNamed } from '../../src/scenario/clearances.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused } from './sample.ts';

/** SOUND with classes on the groove of the frame and the tab of the tray, which make a pair. */
function pair(groove: string, tab: string, keys = ''): string {
  return changed(
    '- { hole: frame.groove, shaft: rim, least: 0.1 mm, most: 0.6 mm }',
    `- ¤{ hole: frame.groove, shaft: tab${keys} }`,
    changed(
      '        nominal: 18 mm\n',
      `        ${tab.split(', ').join('\n        ')}\n`,
      changed('groove: { nominal: 120.3 mm }', `groove: { ${groove} }`),
    ),
  );
}
const plain = (text: string) => text.replaceAll('¤', '');

function clearanceOf(text: string): [number, number] {
  const scenario = parseScenario(plain(text), 'cell.yaml');
  const station = scenario.stations.find(({ does }) => does === 'assemble')!;
  if (station.does !== 'assemble') throw new Error('no assembly');
  const { least, most } = clearances(station.fits[0]!, scenario);
  return [least, most].map((mm) => Number((mm * 1000).toFixed(6))) as [number, number];
}

describe('the clearance limits of a pair', () => {
  // D04, D05, D07: ISO 286-2; µm.
  it.each<[string, string, string, [number, number]]>([
    ['25 mm', 'H7', 'g6', [7, 41]],
    ['25 mm', 'H7', 'p6', [-35, -1]],
    ['50 mm', 'H8', 'f7', [25, 89]],
  ])('at %s of %s/%s follow from the classes', (nominal, hole, shaft, expected) => {
    expect(
      clearanceOf(pair(`nominal: ${nominal}, class: ${hole}`, `nominal: ${nominal}, class: ${shaft}`)),
    ).toEqual(expected);
  });

  it('are those given where they are given', () => {
    const text = pair('nominal: 25 mm, class: H7', 'nominal: 24 mm', ', least: 10 um, most: 2 mm');
    expect(clearanceOf(text)).toEqual([10, 2000]);
  });

  it.each([
    ['nominal: 25 mm, class: H7', 'nominal: 25 mm', 'both sides need a class, and "tab" has none'],
    ['nominal: 25 mm', 'nominal: 25 mm, class: g6', 'both sides need a class, and "frame.groove" has none'],
    [
      'nominal: 25 mm, class: h7',
      'nominal: 25 mm, class: g6',
      '"frame.groove" is the hole of this pair, but h7 is a class of shafts',
    ],
    [
      'nominal: 25 mm, class: H7',
      'nominal: 25 mm, class: G6',
      '"tab" is the shaft of this pair, but G6 is a class of holes',
    ],
    [
      'nominal: 25 mm, class: H7',
      'nominal: 24 mm, class: g6',
      'one nominal size, and these are 25 and 24 mm; give "least" and "most"',
    ],
  ])('are refused where the classes do not say them: %s with %s', (groove, tab, message) => {
    expectRefused(pair(groove, tab), message);
  });

  it('are refused by half, and crossed', () => {
    const classes = ['nominal: 25 mm, class: H7', 'nominal: 25 mm, class: g6'] as const;
    expectRefused(pair(...classes, ', least: 0 mm'), 'give both "least" and "most", or neither');
    expectRefused(pair(...classes, ', least: 1 mm, most: 0 mm'), '"least" must lie below "most"');
  });

  it('need the case of a class to be right also where they are given', () => {
    expectRefused(
      pair('nominal: 25 mm, class: g6', 'nominal: 25 mm', ', least: 0 mm, most: 1 mm'),
      'g6 is a class of shafts; those of holes are in upper case',
    );
  });
});

describe('a side of a pair', () => {
  it('is found by its name', () => {
    const scenario = parseScenario(
      plain(pair('nominal: 25 mm, class: H7', 'nominal: 25 mm, class: g6')),
      'cell.yaml',
    );
    expect(sideNamed('frame.groove', scenario)!.class).toBe('H7');
    expect(sideNamed('tab', scenario)!.class).toBe('g6');
    for (const name of ['frame.tab', 'groove', 'lid.groove', 'tray.tab'])
      expect(sideNamed(name, scenario)).toBeUndefined();
  });

  it('that belongs to a mate the station does not take is refused with what to do', () => {
    const text = changed(
      '  film: { unlimited: true }',
      '  lid: { unlimited: true, features: { slot: { nominal: 120.3 mm } } }\n  film: { unlimited: true }',
    );
    expectRefused(
      changed('hole: frame.groove', 'hole: ¤lid.slot', text),
      '"lid.slot" is of a mate that this station does not take; add "lid" to "takes"',
    );
    expectRefused(changed('hole: frame.groove', 'hole: ¤lid.slt', text), '"lid.slt" is no feature');
  });
});
