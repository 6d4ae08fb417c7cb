import fc from 'fast-check';

const seconds = (low: number, high: number) => fc.integer({ min: low, max: high }).map((s) => `${s} s`);
/** A time of so many seconds, always or in the mean. */
export const law = (low: number, high: number) =>
  fc.oneof(
    seconds(low, high),
    fc
      .integer({ min: Math.max(1, low), max: high })
      .map((s) => ({ distribution: 'exponential', mean: `${s} s` })),
  );
const seldom = <T>(of: fc.Arbitrary<T>, times = 3) => fc.option(of, { nil: undefined, freq: times });
const percent = (low: number, high: number) =>
  fc.integer({ min: low, max: high }).map((share) => `${share} %`);

const terms = {
  delivers: seldom(
    fc.record({
      sound: seldom(percent(50, 100)),
      short: seldom(fc.record({ chance: percent(5, 90), share: percent(0, 95) })),
    }),
  ),
  incoming: seldom(fc.record({ takes: seldom(law(0, 40)), finds: seldom(percent(0, 100)) })),
  outages: seldom(fc.record({ every: law(20, 300), for: law(0, 100) })),
  price: seldom(fc.integer({ min: 0, max: 9 })),
  'per-order': seldom(fc.integer({ min: 0, max: 9 })),
};

const rule = fc.oneof(
  fc.record({ 'reorder-at': fc.integer({ min: 0, max: 20 }), order: fc.integer({ min: 1, max: 30 }) }),
  fc
    .integer({ min: 0, max: 20 })
    .chain((at) =>
      fc.record({ 'reorder-at': fc.constant(at), 'up-to': fc.integer({ min: at + 1, max: at + 30 }) }),
    ),
  fc.record({ 'up-to': fc.integer({ min: 1, max: 30 }) }),
);

const suppliers = fc
  .tuple(
    fc.boolean(),
    fc.array(fc.record({ ...terms, 'lead-time': law(1, 90) }), { minLength: 1, maxLength: 3 }),
  )
  .map(([byRank, all]) =>
    Object.fromEntries(
      all.map((own, i) => [
        `supplier ${i}`,
        {
          ...own,
          ...(byRank ? { rank: i + 1 } : { share: `${i === 0 ? 100 - 20 * (all.length - 1) : 20} %` }),
        },
      ]),
    ),
  );

/** Any stock that is ordered. */
export const stock = fc
  .record({
    ...{
      'on-hand': fc.integer({ min: 1, max: 30 }),
      rule,
      'lead-time': law(1, 90),
      suppliers: seldom(suppliers, 1),
    },
    ...terms,
    review: seldom(seconds(10, 90)),
    'in-sequence': fc.constantFrom('yes', 'no'),
    'least-order': seldom(fc.integer({ min: 1, max: 10 })),
    'lots-of': seldom(fc.integer({ min: 1, max: 6 })),
    'one-order-at-a-time': fc.constantFrom('yes', 'no', 'no'),
    'when-short': fc.constantFrom('waits', 'backorders'),
    'shelf-life': seldom(law(20, 200)),
    holding: seldom(fc.integer({ min: 0, max: 9 })),
    expedite: fc.record({ 'lead-time': law(0, 20), price: fc.integer({ min: 0, max: 9 }) }),
  })
  .map(({ rule, ...keys }) => ({ ...keys, ...rule }));
