import { describe, expect, it } from 'vitest';
import { caseTexts, disturbanceTexts } from '../../src/report/disturbance-text.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { EVERY } from '../disturbance/every-disturbance.ts';
import { changed } from '../scenario/sample.ts';

const texts = (text = EVERY) => disturbanceTexts(parseScenario(text, 'cell.yaml'));
const told = (name: string, text = EVERY) => texts(text).find((one) => one.startsWith(`${name}: `));

describe('the text of a disturbance', () => {
  it.each([
    [
      'off',
      '"rim" is made off by +0.2 mm and with 150 % of its own spread, from 2 h after the start for 1 h',
    ],
    ['knocked', '"gauging" reads "rim" off by +0.05 mm and with 300 % of its repeatability, from 2 h'],
    ['dim', 'an attempt at "assembly" reads 60 % of the marks that it reads otherwise, from'],
    ['bad lot', 'lots of "sheet" come with "thickness" off by +0.2 mm and 20 % more of them unsound, from'],
    ['tired', '"forming" works at 70 % of its speed, building up over 30 min, from 2 h'],
    ['ill', '"assembly": breaks down (torn) 300 % as often, its repairs take 200 % of their time, from'],
    ['away', '1 of "fitter" away, from'],
    ['slow belt', 'the conveyor to "packing" moves at 50 % of its speed, fading over 10 min, from'],
    ['rush', '200 % of the usual orders come, after 50 parts of "forming" for 1 h, 2 times 5 min apart'],
    ['cold', 'setting "heater" off by \u22126 °C, from 2 h after the start for 4 h'],
  ])('tells of "%s" that %s', (name, text) => {
    expect(told(name)).toContain(`${name}: ${text}`);
  });

  it('tells of sizes that vary', () => {
    const by = (law: string) => told('cold', changed('by: -6 °C', `by: ${law}`, EVERY));
    expect(by('{ distribution: normal, mean: -6 °C, sd: 1 °C }')).toContain('off by about \u22126 °C');
    expect(by('{ distribution: uniform, low: -6 °C, high: 2 °C }')).toContain('off by \u22126 °C to +2 °C');
    expect(by('{ distribution: empirical, values: [3 °C, 4 °C, 3 °C] }')).toContain(
      'off by one of +3 °C, +4 °C',
    );
  });

  it('says where a ramp is longer than the disturbance, and where it comes to nothing', () => {
    expect(told('tired', changed('ramp: 30 min', 'ramp: 2 h', EVERY))).toContain(
      'building up over 2 h, which it does not last, from',
    );
    expect(told('tired', changed('to: 70 %', 'to: 100 %', EVERY))).toMatch(/; that changes nothing$/);
    expect(texts().some((text) => text.includes('changes nothing'))).toBe(false);
  });

  it('says where all the times at which it may begin lie after the end of the run', () => {
    const at = (time: string) => told('dim', changed('to: 60 %, at: 2 h', `to: 60 %, at: ${time}`, EVERY));
    expect(at('{ distribution: empirical, values: [9 h, 10 h] }')).toContain('it never happens');
    expect(at('{ distribution: empirical, values: [9 h, 8 h] }')).not.toContain('it never happens');
  });

  it('counts good parts', () => {
    expect(told('rush', changed('parts: 50, of: forming', 'parts: 50', EVERY))).toContain(
      'come, after 50 good for 1 h',
    );
  });
});

describe('the text of cases', () => {
  it('lists what comes in each', () => {
    const text = changed('policies:\n', 'cases:\n  two: [late, cold]\n  calm: []\npolicies:\n', EVERY);
    expect(caseTexts(parseScenario(text, 'cell.yaml'))).toEqual(['two: late, cold', 'calm: undisturbed']);
    expect(caseTexts(parseScenario(EVERY, 'cell.yaml'))).toEqual([]);
  });
});
