import { expect, it } from 'vitest';
import { capabilitiesOf } from '../../src/experiment/capabilities.ts';
import { compare } from '../../src/experiment/comparison.ts';
import { capabilitiesJson } from '../../src/report/capability-json.ts';
import { capabilityRows } from '../../src/report/capability-text.ts';
import { singleText } from '../../src/report/terminal.ts';
import { outcome } from './fake.ts';

const found = (cpk: number | null, readings = 50) => ({
  ...{ gauge: 'gauging', feature: 'rim', readings, mean: 120.01, sdWithin: 0.05, sdOverall: 0.06 },
  ...{ cp: 1.5, cpk, pp: 1.25, ppk: 1.2 },
});
const runs = [1.1, 1.3].map((cpk, i) => ({ ...outcome('a', i + 1), capabilities: [found(cpk)] }));
const capabilities = capabilitiesOf(runs, 0.95);

it('shows a feature with its mean, spread and capability', () => {
  const text = singleText(compare(['a'], runs), { title: 'sample', colour: false, width: 80 }, capabilities);
  expect(text).toContain('rim as read at gauging');
  // The standard error is 0.1, and t of 1 degree of freedom at 97.5 % is 12.706.
  expect(text).toMatch(/^Cpk +1\.20 +\u22120\.07 to 2\.47$/m);
  expect(text).toMatch(/^mean, mm +120\.010 +120\.010 to 120\.010$/m);
});

it('leaves out what no run gives, and a feature that nothing was read of', () => {
  const none = capabilitiesOf([{ ...outcome('a', 1), capabilities: [found(null)] }], 0.95);
  const names = capabilityRows(none[0]!).map(({ name }) => name);
  expect(names).toContain('Cp');
  expect(names).not.toContain('Cpk');
  expect(capabilityRows(none[0]!)[0]!.interval).toBe('no interval');
  const unread = capabilitiesOf([{ ...outcome('a', 1), capabilities: [found(null, 0)] }], 0.95);
  expect(capabilityRows(unread[0]!)).toEqual([]);
});

it('gives the same as data, in the units of the keys', () => {
  const [data] = capabilitiesJson(capabilities) as Record<string, unknown>[];
  expect(Object.keys(data!)).toEqual([
    ...['gauge', 'feature', 'readings', 'mean_mm', 'sd_within_mm', 'sd_overall_mm'],
    ...['cp', 'cpk', 'pp', 'ppk'],
  ]);
  expect(data!.cpk).toMatchObject({ mean: expect.closeTo(1.2, 12), runs: 2 });
});
