import { expect, it } from 'vitest';
import { leftOut, reasonsToDiffer } from '../../../src/report/explained/reasons.ts';
import { cell } from '../../line/prediction/cell.ts';

const BENCH = '  bench: { does: rework, buffer: unlimited, cycle: 9 s, limit: 1, corrects: {}, to: gauging }';
const WINDOW = 'window: { setting: heater, from: 140 °C';
const HEATER = '{ heater: { target: 150 °C } }';

it('nothing makes a plain line differ from its prediction', () => {
  expect(reasonsToDiffer(cell())).toEqual([]);
  expect(leftOut(cell())).toEqual([]);
});

it.each([
  [{ offLimits: 'scrap' }, '"gauging" takes parts out'],
  [{ misfit: 'bench', more: BENCH }, '"bench" alters parts'],
  [{ settings: HEATER, forming: `${WINDOW} }` }, '"forming" scraps parts with a flaw'],
  [{ settings: HEATER, forming: `${WINDOW}, outside: pass }` }, 'parts with a flaw pass "forming"'],
  [{ settings: '{ heater: { target: 150 °C, drift: 1 °C/h } }' }, '"heater" drifts'],
  [
    { settings: '{ heater: { target: 150 °C, when-cold: { after: 1 min, by: -3 °C, fades: 2 min } } }' },
    '"heater" is off while "forming" is cold',
  ],
  [
    { others: '      tab: { nominal: 5 mm, made-at: trimming, wear: { per: 9, shift: 1 mm } }' },
    'whole lives of the tool of "trimming"',
  ],
  [{ reader: '{ reads: 90 %, unread: scrap }' }, '"gauging" scraps parts by their marks'],
])('with %j it says why', (given, reason) => {
  expect(reasonsToDiffer(cell(given))).toEqual([expect.stringContaining(reason)]);
});

it('of acceptance sampling it tells more than one', () => {
  const given = (rejected: string) =>
    cell({
      gaugeBuffer: 99,
      rim: 'tolerance: 1 mm',
      inspection: `acceptance: { lot: 50, aql: 2.5 %, rejected: ${rejected} }`,
    });
  expect(reasonsToDiffer(given('screen'))[1]).toContain('more parts of bad lots');
  expect(reasonsToDiffer(given('scrap'))[1]).toContain('takes lots out');
});

it('says what is not predicted', () => {
  const cold = '{ heater: { target: 150 °C, when-cold: { after: 1 min, by: -3 °C, fades: 2 min } } }';
  expect(leftOut(cell({ settings: cold }))).toEqual(['that "forming" is off while it is cold']);
});
