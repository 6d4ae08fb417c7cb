import fc from 'fast-check';
import { mean, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { small } from './small-line.ts';

interface Serial {
  /** The law of each station's cycle, and what else it is given. */
  readonly stations: readonly { readonly cycle: object | string; readonly breakdowns?: object }[];
  /** Places in front of all but the first. */
  readonly buffers: readonly number[];
  /** Blanks to start with; without end where left out. */
  readonly blanks?: number;
}

const LENGTH = 2000;

function serial({ stations, buffers, blanks }: Serial, length = LENGTH): Scenario {
  const named = stations.map((station, i) => [
    `s${i}`,
    {
      ...{ does: 'work', ...station, to: i + 1 < stations.length ? `s${i + 1}` : 'good' },
      ...(i === 0 ? { takes: 'blank' } : { buffer: buffers[i - 1] }),
    },
  ]);
  const stock = { blank: blanks === undefined ? { unlimited: true } : { 'on-hand': blanks } };
  return small(
    `${length} s`,
    `stock: ${JSON.stringify(stock)}\nstations: ${JSON.stringify(Object.fromEntries(named))}`,
  );
}

/** When parts left the line, in order, and the time that each station took for each part. */
function record(scenario: Scenario, seed: number, times?: readonly (readonly number[])[]) {
  const line = prepare(scenario, 'carry on', seed);
  const left: number[] = [];
  line.good.leaving.push((_row, _stayed, now) => left.push(now));
  // The first load of the source is taken already: only its record comes late.
  const took = scenario.stations.map(({ name }, j) => {
    const machine = line.stations.get(name)!.machines[0]!;
    const own: number[] = j === 0 ? [machine.cycle] : [];
    const begin = machine.operation.begin.bind(machine.operation);
    machine.operation.begin = (at) => {
      const begun = begin(at);
      if (!begun) return false;
      if (times) at.cycle = times[j]![own.length]!;
      own.push(at.cycle);
      return true;
    };
    return own;
  });
  line.calendar.run(scenario.run.length);
  return { left, took };
}

const time = fc.integer({ min: 1, max: 100 }).map((tenths) => `${tenths / 10} s`);
const law = fc.oneof(
  time,
  fc.record({ distribution: fc.constant('exponential'), mean: time }),
  fc.record({
    distribution: fc.constant('gamma'),
    mean: time,
    cv: fc.constantFrom('30 %', '100 %', '200 %'),
  }),
  fc.record({ distribution: fc.constant('uniform'), low: fc.constant('0 s'), high: time }),
);
const wear = fc
  .record({
    every: fc.record({ distribution: fc.constant('exponential'), mean: time }),
    ...{ counted: fc.constant('working'), repair: law, cycle: fc.constant('resumes') },
  })
  .map((stop) => ({ stop }));

const serials = <T extends object>(station: fc.Arbitrary<T>, least = 2) =>
  fc.integer({ min: least, max: 6 }).chain((many) =>
    fc.record({
      stations: fc.array(station, { minLength: many, maxLength: many }),
      buffers: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: many - 1, maxLength: many - 1 }),
      /** Places added to each of them. */
      more: fc.array(fc.constantFrom(0, 1, 3), { minLength: many - 1, maxLength: many - 1 }),
      seed: fc.integer({ min: 1, max: 1000 }),
    }),
  );
const reliable = fc.record({ cycle: law });

/** Rounding of sums over a run. */
const ROUNDING = 1e-9 * LENGTH;

describe('a serial line', { timeout: 60_000 }, () => {
  // Blocking after service as a recursion on part k at station j: it enters when it has left j - 1, which is when there
  // is room: Y. Dallery and S. B. Gershwin (1992), Queueing Systems 12, 3-94 (from memory).
  it('lets parts leave when the recursion of blocking after service says', () => {
    let compared = 0;
    fc.assert(
      fc.property(serials(reliable, 1), ({ stations, buffers, seed }) => {
        const { left, took } = record(serial({ stations, buffers }), seed);
        const leaves = stations.map(() => [] as number[]);
        for (let k = 0; k < left.length; k++) {
          stations.forEach((_, j) => {
            const before = leaves[j]![k - 1] ?? 0;
            const start = Math.max(j > 0 ? leaves[j - 1]![k]! : 0, before);
            // With B places in front of the next, part k - B - 1 must have left that one before k can leave this one.
            const room = j + 1 < stations.length ? (leaves[j + 1]![k - buffers[j]! - 1] ?? 0) : 0;
            leaves[j]![k] = Math.max(start + took[j]![k]!, room);
          });
          expect(Math.abs(leaves.at(-1)![k]! - left[k]!)).toBeLessThan(ROUNDING);
          compared++;
        }
      }),
      { numRuns: 100, seed: 21 },
    );
    expect(compared).toBeGreaterThan(10_000);
  });

  // By the same recursion every leaving time falls, or stays, as a buffer grows. Breakdowns that count work and resume
  // only lengthen the times at a station, each part's by the same whatever the buffers are.
  it.each([
    ['reliable', reliable],
    ['of stations that wear', fc.record({ cycle: law, breakdowns: wear })],
  ])('%s lets no part leave later with more places in its buffers', (_, station) => {
    let earlier = 0;
    fc.assert(
      fc.property(serials(station), ({ stations, buffers, more, seed }) => {
        const { left } = record(serial({ stations, buffers }), seed);
        const wider = buffers.map((places, i) => places + more[i]!);
        const { left: other } = record(serial({ stations, buffers: wider }), seed);
        expect(other.length).toBeGreaterThanOrEqual(left.length);
        for (const [k, at] of left.entries()) expect(other[k]).toBeLessThanOrEqual(at + ROUNDING);
        if (left.some((at, k) => other[k]! < at - ROUNDING)) earlier++;
      }),
      { numRuns: 150, seed: 22 },
    );
    // A comparison of lines that never differ would compare nothing.
    expect(earlier).toBeGreaterThan(40);
  });

  it('with breakdowns by the clock and lost cycles passes on no less with more places, beyond noise', () => {
    const stop = fc
      .record({
        every: fc.record({ distribution: fc.constant('exponential'), mean: fc.constantFrom('20 s', '60 s') }),
        counted: fc.constantFrom('clock', 'working'),
        repair: law,
        cycle: fc.constantFrom('resumes', 'restarts'),
      })
      .map((one) => ({ stop: one }));
    const RUNS = 12;
    let gained = 0;
    fc.assert(
      fc.property(serials(fc.record({ cycle: law, breakdowns: stop })), ({ stations, buffers, more }) => {
        const wider = buffers.map((places, i) => places + more[i]!);
        const [narrow, wide] = [serial({ stations, buffers }), serial({ stations, buffers: wider })];
        const gains = Array.from({ length: RUNS }, (_, i) => {
          const good = (scenario: Scenario) => simulate(scenario, 'carry on', i + 1).counts.good;
          return good(wide) - good(narrow);
        });
        const error = Math.sqrt(sampleVariance(gains) / RUNS);
        // With 11 degrees of freedom a line that gains nothing falls below in one of 400 checks.
        expect(mean(gains)).toBeGreaterThanOrEqual(-3.5 * error);
        if (mean(gains) > 3.5 * error) gained++;
      }),
      { numRuns: 40, seed: 23 },
    );
    expect(gained).toBeGreaterThan(10);
  });
});

// Reversibility: G. Yamazaki and H. Sakasegawa (1975), Properties of duality in tandem queueing systems, Annals of the
// Institute of Statistical Mathematics 27; E. J. Muth (1979), The reversibility property of production lines,
// Management Science 25 (both from memory).
describe('a reversed reliable line', { timeout: 60_000 }, () => {
  it('takes as long for so many parts with the same times, the last part first', () => {
    const PARTS = 40;
    let compared = 0;
    fc.assert(
      fc.property(
        serials(fc.record({ cycle: fc.constant('1 s') })),
        fc.infiniteStream(fc.integer({ min: 1, max: 100 })),
        ({ stations, buffers }, stream) => {
          const times = stations.map(() => [...stream.take(PARTS)].map((tenths) => tenths / 10));
          const lasts = (ahead: readonly number[][], places: readonly number[]) => {
            // The source begins before its times can be set, so all parts first pass one that takes no time and has room
            // for all of them behind it: the first of the line proper is never starved by it.
            const given = {
              stations: [{ cycle: '0 s' }, ...stations],
              buffers: [PARTS, ...places],
              blanks: PARTS,
            };
            const { left } = record(serial(given, 100_000), 1, [ahead[0]!.map(() => 0), ...ahead]);
            expect(left).toHaveLength(PARTS);
            return left.at(-1)!;
          };
          const ahead = lasts(times, buffers);
          const back = lasts(
            [...times].reverse().map((own) => [...own].reverse()),
            [...buffers].reverse(),
          );
          expect(Math.abs(ahead - back)).toBeLessThan(1e-9 * ahead);
          compared++;
        },
      ),
      { numRuns: 100, seed: 24 },
    );
    expect(compared).toBe(100);
  });

  it('has the same throughput, within the standard errors of both', () => {
    const RUNS = 20;
    let differ = 0;
    fc.assert(
      fc.property(serials(reliable), ({ stations, buffers }) => {
        const rates = (line: Serial, from: number) =>
          Array.from(
            { length: RUNS },
            (_, i) => simulate(serial(line, 4000), 'carry on', from + i).counts.good,
          );
        const ahead = rates({ stations, buffers }, 1);
        // Seeds of its own: the two directions are independent.
        const back = rates({ stations: [...stations].reverse(), buffers: [...buffers].reverse() }, 1001);
        const error = Math.sqrt((sampleVariance(ahead) + sampleVariance(back)) / RUNS);
        // From an empty start any number of parts takes equally long in distribution either way, so no time is needed
        // to settle, and the counts of the whole run have the same mean.
        expect(Math.abs(mean(ahead) - mean(back))).toBeLessThanOrEqual(3.5 * error);
        if (error > 0) differ++;
      }),
      { numRuns: 25, seed: 25 },
    );
    expect(differ).toBeGreaterThan(10);
  });
});
