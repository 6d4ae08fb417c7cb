import { describe, expect, it } from 'vitest';
import { type Stream, Streams } from '../../src/kernel/streams.ts';

const first = (stream: Stream, count: number) => Array.from({ length: count }, stream);

describe('streams', () => {
  it('give the same numbers twice for the same seed and purpose', () => {
    const once = first(new Streams(7).of('station/gauging/cycle'), 100);
    expect(first(new Streams(7).of('station/gauging/cycle'), 100)).toEqual(once);
  });

  it('give the same numbers whatever else was asked for before', () => {
    const alone = first(new Streams(7).of('b'), 100);
    const streams = new Streams(7);
    first(streams.of('a'), 12);
    expect(first(streams.of('b'), 100)).toEqual(alone);
  });

  it('differ from purpose to purpose and from seed to seed', () => {
    const all = [
      new Streams(1).of('a'),
      new Streams(1).of('b'),
      new Streams(2).of('a'),
      new Streams(12).of(''),
    ];
    const heads = all.map((stream) => first(stream, 5).join());
    expect(new Set(heads).size).toBe(all.length);
  });

  it('never mix up a seed and the name that follows it', () => {
    expect(first(new Streams(1).of('1|a'), 5)).not.toEqual(first(new Streams(11).of('a'), 5));
  });

  it('are uniform on [0, 1): counts of 20 equal classes pass the chi-square test', () => {
    const counts = new Array<number>(20).fill(0);
    const draws = 200_000;
    const stream = new Streams(3).of('uniform');
    for (let i = 0; i < draws; i++) {
      const u = stream();
      counts[Math.floor(u * 20)]!++;
    }
    // A number outside [0, 1) would have gone to no class.
    expect(counts.length).toBe(20);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(draws);
    const each = draws / 20;
    const statistic = counts.reduce((sum, count) => sum + (count - each) ** 2 / each, 0);
    // 99.9 % point of chi-square with 19 degrees of freedom, any statistics table.
    expect(statistic).toBeLessThan(43.82);
  });

  it('of neighbouring seeds and purposes are uncorrelated', () => {
    const draws = 50_000;
    const pairs = [
      [new Streams(1).of('a'), new Streams(2).of('a')],
      [new Streams(1).of('station/s1/cycle'), new Streams(1).of('station/s2/cycle')],
      [new Streams(1).of('x'), new Streams(1).of('x/again')],
    ] as const;
    for (const [left, right] of pairs) {
      let sum = 0;
      for (let i = 0; i < draws; i++) sum += (left() - 0.5) * (right() - 0.5);
      // The product of two independent uniforms about 1/2 has mean 0 and standard deviation 1/12.
      expect(Math.abs(sum / draws)).toBeLessThan((4 / 12) * Math.sqrt(1 / draws));
    }
  });
});
