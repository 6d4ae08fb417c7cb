import { expect, it } from 'vitest';
import { UsageError } from '../../src/cli/usage-error.ts';
import { beginningOf, sizeNote } from '../../src/cli/watch-size.ts';
import { traced } from '../../src/experiment/traced.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { DISTURBED, quick } from './command.ts';

const LONG = quick().replace('length: 1 h', 'length: 5 h') + DISTURBED;
const scenario = parseScenario(LONG, 'quick.yaml');

it('plays back the beginning of the same run', () => {
  const end = 2 * 3600;
  const beginning = beginningOf(scenario, 2);
  expect(beginning.run.warmUp + beginning.run.length).toBe(end);
  const [part, whole] = [beginning, scenario].map((one) => traced(one, 'scrap at once', 1).trace);
  expect(part!.events.length).toBeGreaterThan(1000);
  expect(part!.events).toEqual(whole!.events.filter(({ at }) => at <= end));
  expect(part!.truths).toEqual(whole!.truths.filter(({ at }) => at <= end));
  expect(part!.disturbances).toEqual(whole!.disturbances);
  expect(beginningOf(scenario, 6)).toBe(scenario);
});

it('has no beginning that ends within the warm-up', () => {
  const slow = parseScenario(LONG.replace('warm-up: 10 min', 'warm-up: 90 min'), 'slow.yaml');
  expect(() => beginningOf(slow, 1)).toThrow('--hours 1 ends within the warm-up of 1.5 h');
  expect(beginningOf(slow, 2).run.length).toBe(1800);
});

it('says what to do about a page that is large, and refuses one that is too large', () => {
  const hours = 310 / 60;
  expect(sizeNote(scenario, 1_500_000)).toBe('');
  expect(sizeNote(scenario, 2_000_000)).toContain(`--hours ${Math.floor((1.5 * hours) / 2)} plays back`);
  // Less than the warm-up would be no run.
  expect(sizeNote(scenario, 9_900_000)).toMatch(/MB and takes a while to open: --hours plays back/);
  expect(() => sizeNote(scenario, 25_000_000)).toThrow(UsageError);
  expect(() => sizeNote(scenario, 25_000_000)).toThrow(
    'the page would have 25.0 MB, and more than 10.0 MB is asking too much of a browser; --hours 2 plays back',
  );
});
