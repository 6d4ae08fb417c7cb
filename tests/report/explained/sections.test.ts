import { describe, expect, it } from 'vitest';
import { explain } from '../../../src/experiment/explanation.ts';
import { widthOf } from '../../../src/report/columns.ts';
import { explainText } from '../../../src/report/explain-text.ts';
import { cell } from '../../line/prediction/cell.ts';

const flat = (text: string) => text.replace(/\s+/g, ' ');
const told = (given: Parameters<typeof cell>[0], width = 80) => {
  const scenario = cell(given);
  return explainText(explain(scenario, 2), scenario, width);
};

/** All that may be told of, at once. */
const ALL = {
  thickness: '{ nominal: 1 mm, own-sd: 0.04 mm }',
  settings:
    '{ heater: { target: 150 °C, cycle-sd: 2 °C, sensor-bias: 1 °C, drift: 0.1 °C/h, when-cold: { after: 1 h, by: -3 °C, fades: 2 min } } }',
  forming:
    'window: { setting: heater, from: 147 °C, to: 153 °C }\n    wall: { draw-ratio: 2, least: 0.47 mm, thinning: 0.5 %/°C }',
  frame: 'groove: { nominal: 10.2 mm, class: H12, capability: 1 }',
  rim: 'tolerance: 0.3 mm, own-sd: 0.1 mm, gains: { heater: 0.05 mm/°C }',
  others: '      tab: { nominal: 5 mm, tolerance: 1 mm, made-at: trimming, wear: { per: 900, shift: 1 mm } }',
  fits: '- { hole: frame.groove, shaft: rim, least: 0.1 mm, most: 0.5 mm }',
  forcing: '{ stiffness: 400 N/mm, limit: 20 N, damages: 10 % }',
  measures: 'rim: { repeatability: 0.03 mm, reproducibility: 0.04 mm }\n      tab: { repeatability: 0.1 mm }',
  gaugeBuffer: 99,
  inspection: 'acceptance: { lot: 50, aql: 2.5 %, rejected: screen }',
  marking: 'grades: { A: 60 %, B: 40 % }',
};

describe('the sections of an explanation', () => {
  const text = told(ALL);

  it.each([
    'forming, of all sheets',
    'incomplete, %',
    'webbed, %',
    'mean wall, mm',
    'wall too thin, %',
    'mean off its design by: heater sensor −0.0500 mm, drift of heater +0.0050 mm',
    'no closed form: the tool of "trimming" is never renewed',
    // H12 over 10 to 18 mm: 0 to 0.18 mm (ISO 286-1, table 1); 10.2 to 10.38 less 9.7 to 10.3.
    'within the limits of both: −0.1000 to 0.6800 mm at worst',
    'pressed together, %',
    'spoilt by pressing, %',
    'too tight for the press, %',
    // sd sqrt(0.01 + 0.01) of the part, 0.05 of the gauge: 0.05 / sqrt(0.0225); 1.41 x 0.1414 / 0.05 = 3.99. The drift adds a trace.
    'rim at gauging: gauge error 33.3 % of the spread of the readings (% GRR), 3 distinct categories',
    'tab at gauging',
    // ISO 2859-1, tables 1 and 2-A: 26 to 50 is letter D; at 2.5 % the arrow leads to letter C, sample 5.
    'lots of 50 at gauging: letter C, sample 5',
    'lots accepted, %',
    'marks of marking: 100.0 % take; of these grade A 60.0 %, B 40.0 %',
    'What drifts counts as spread over the run.',
    'Not predicted: that "forming" is off while it is cold.',
  ])('tell: %s', (part) => expect(flat(text)).toContain(part));

  it('show what is not predicted as unknown, beside what the line did', () => {
    const tab = text.slice(text.indexOf('tab, made at'));
    expect(flat(tab)).toMatch(/mean, mm unknown [\d.]+ /);
  });

  it.each([60, 80])('stay within %d columns', (width) => {
    for (const line of told(ALL, width).split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(width);
  });

  it('leave out what does not occur', () => {
    const plain = told({ rim: 'tolerance: 1 mm, own-sd: 0.01 mm', frame: 'groove: { nominal: 10.5 mm }' });
    for (const part of [
      'outside the limits',
      'too tight',
      'too loose',
      'off limits',
      'bad,',
      'pressed',
      'forming, of',
      'lots',
    ])
      expect(plain).not.toContain(part);
    expect(flat(plain)).toMatch(/ fits, % 100/);
    expect(plain.match(/fits, %/g)).toHaveLength(1);
  });
});
