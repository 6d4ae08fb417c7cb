import { describe, expect, it } from 'vitest';
import { standardNormal } from '../../src/kernel/distributions/normal.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { Wander } from '../../src/line/wander.ts';

// Its variance and autocorrelation are checked by simulation in outside-checks/cases/forming.ts.
describe('a wandering setting', () => {
  const made = (seed: number) => new Wander(2, 640, standardNormal(new Streams(seed).of('wander')));

  it('is a function of time alone: it does not matter who looks when', () => {
    const [often, seldom] = [made(3), made(3)];
    const seen = new Map<number, number>();
    for (let now = 0; now <= 50_000; now += 7) seen.set(now, often.at(now));
    for (const now of [0, 700, 707, 14_000, 49_000]) expect(seldom.at(now)).toBe(seen.get(now));
    expect(made(4).at(0)).not.toBe(made(3).at(0));
  });

  it('moves on a grid of a 64th of the pull-back', () => {
    const wander = made(3);
    const values = new Set(Array.from({ length: 1000 }, (_, i) => wander.at(i)));
    // 1000 s in steps of 10 s, the first at 0.
    expect(values.size).toBe(100);
  });
});
