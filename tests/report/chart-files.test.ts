import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { chartFiles } from '../../src/report/chart-files.ts';
import { outcome } from './fake.ts';
import { sampleLooked } from './looked-sample.ts';
import { ORIGIN } from './origin-sample.ts';
import { sampleTwins } from './twins-sample.ts';

const twins = sampleTwins(2);
const policies = twins.curves.map(({ policy }) => policy);
const outcomes = [1, 2].flatMap((seed) =>
  policies.map((policy, i) => outcome(policy, seed, { fit_rate: 0.5 + i / 10 + seed / 100 })),
);
const files = chartFiles(compare(policies, outcomes), { twins, pilot: undefined }, ORIGIN);

describe('chartFiles', () => {
  it('has a file for every chart of the page', () => {
    expect(files.map(({ name }) => name)).toEqual([
      'intervals-fit_rate.svg',
      'states-1-carry-on.svg',
      'states-2-a-name-that-goes-on-and-on-until-it-has.svg',
      'rates-1-carry-on.svg',
      'rates-2-a-name-that-goes-on-and-on-until-it-has.svg',
    ]);
    expect(
      chartFiles(compare(policies, outcomes), { twins: undefined, pilot: undefined }, ORIGIN),
    ).toHaveLength(3);
  });

  it.each(files)('$name has a title, and says what its signs mean', ({ content }) => {
    expect(content).toMatch(/<title id="title">[^<]+<\/title>/);
    expect(content).toMatch(/<desc id="told">[^<]+<\/desc>/);
    expect(content).toMatch(/Dot: mean|Mean share|Solid: good/);
  });

  it('has those of sizes and levels, too, where these were looked at', () => {
    const looked = sampleLooked();
    const named = chartFiles(compare(policies, outcomes), { looked }, ORIGIN).map(({ name }) => name);
    expect(named.filter((name) => /^(sizes|levels)-/.test(name))).toHaveLength(
      looked.sizes.length + looked.levels.length,
    );
    expect(looked.sizes.length * looked.levels.length).toBeGreaterThan(0);
  });

  it('keeps names apart that differ in other signs alone', () => {
    const alike = ['a/b', 'a:b', '../c'];
    const runs = alike.map((policy) => outcome(policy, 1, { fit_rate: 0.5 }));
    const names = chartFiles(compare(alike, runs), { twins: undefined, pilot: undefined }, ORIGIN).map(
      ({ name }) => name,
    );
    expect(names.slice(1)).toEqual(['states-1-a-b.svg', 'states-2-a-b.svg', 'states-3-c.svg']);
  });
});
