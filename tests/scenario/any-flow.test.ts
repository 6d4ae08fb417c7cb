import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { ScenarioError } from '../../src/scenario/problem.ts';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const MINUTES = 7 * 24 * 60;

/** The messages that a scenario of these sections is refused with; none when it is taken. JSON is YAML. */
function messages(sections: object): string[] {
  const head = { mendline: 1, title: 'any', about: 'made up at random' };
  const run = { 'warm-up': '0 s', length: '1 h', seeds: 1 };
  try {
    parseScenario(JSON.stringify({ ...head, run, ...sections, policies: { 'carry on': [] } }), 'any.yaml');
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems.map(({ message }) => message);
    throw error;
  }
  return [];
}

describe('any calendar', () => {
  const shift = fc.record({
    days: fc.uniqueArray(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 3 }),
    begins: fc.integer({ min: 0, max: 1439 }),
    lasts: fc.oneof(fc.integer({ min: 1, max: 1440 }), fc.integer({ min: 1, max: 300 })),
  });

  it('is refused just when two shifts work in the same minute', () => {
    const seen = { overlapping: 0, sound: 0 };
    fc.assert(
      fc.property(fc.array(shift, { minLength: 1, maxLength: 3 }), (shifts) => {
        const worked = new Uint8Array(MINUTES);
        for (const { days, begins, lasts } of shifts)
          for (const day of days)
            for (let i = 0; i < lasts; i++) worked[(day * 1440 + begins + i) % MINUTES]!++;
        const overlapping = worked.some((times) => times > 1);
        const found = messages({
          stations: { in: { does: 'arrive', every: '1 s', calendar: 'week', to: 'good' } },
          calendars: {
            week: {
              shifts: shifts.map(({ days, begins, lasts }) => ({
                days: days.map((day) => DAYS[day]),
                begins: `${begins} min`,
                lasts: `${lasts} min`,
              })),
            },
          },
        });
        expect(found.some((message) => message.startsWith('shifts overlap'))).toBe(overlapping);
        expect(found.length > 0).toBe(overlapping);
        seen[overlapping ? 'overlapping' : 'sound']++;
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(30);
  });
});

describe('any net of routes', () => {
  it('is taken just when every station is fed and from each some way leads to "good"', () => {
    const seen = { taken: 0, unfed: 0, round: 0 };
    const net = fc.integer({ min: 1, max: 6 }).chain((n) =>
      fc.array(fc.uniqueArray(fc.integer({ min: 1, max: n + 1 }), { minLength: 1, maxLength: 3 }), {
        minLength: n + 1,
        maxLength: n + 1,
      }),
    );
    fc.assert(
      fc.property(net, (wanted) => {
        // Station 0 is the source; number n + 1 stands for "good".
        const good = wanted.length;
        const next = wanted.map((ways, i) => {
          const others = ways.filter((way) => way !== i);
          return others.length > 0 ? others : [good];
        });
        const name = (i: number) => (i === good ? 'good' : `s${i}`);
        // Warshall: what leads to what by one way or more.
        const leads = Array.from({ length: good + 1 }, (_, i) =>
          Array.from({ length: good + 1 }, (_, j) => next[i]?.includes(j) ?? false),
        );
        for (let k = 0; k <= good; k++)
          for (let i = 0; i <= good; i++)
            for (let j = 0; j <= good; j++) leads[i]![j] ||= leads[i]![k]! && leads[k]![j]!;
        const stations = next.map((_, i) => i);
        const unfed = stations.filter((i) => i > 0 && !leads[0]![i]);
        const stuck = stations.filter((i) => !leads[i]![good]);
        const found = messages({
          stations: Object.fromEntries(
            next.map((ways, i) => [
              name(i),
              {
                ...(i === 0 ? { does: 'arrive', every: '1 s' } : { does: 'work', buffer: 1, cycle: '1 s' }),
                to: {
                  by: 'priority',
                  routes: ways
                    .filter((way) => way !== good)
                    .concat(ways.filter((way) => way === good))
                    .map(name),
                },
              },
            ]),
          ),
        });
        expect(found.filter((message) => message.startsWith('nothing feeds')).length).toBe(unfed.length);
        const round = found.filter((message) => message.startsWith('parts from here go round for ever'));
        expect(round.length > 0).toBe(stuck.length > 0);
        // The way that is told is one that parts take, and it closes.
        for (const message of round) {
          const way = /: (.*);/
            .exec(message)![1]!
            .split(' > ')
            .map((word) => Number(word.slice(1)));
          expect(way.at(-1)).toBe(way[0]);
          for (const [k, to] of way.slice(1).entries()) expect(next[way[k]!]).toContain(to);
        }
        expect(found.length).toBe(unfed.length + round.length);
        if (found.length === 0) seen.taken++;
        if (unfed.length > 0) seen.unfed++;
        if (round.length > 0) seen.round++;
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(30);
  });
});
