import fc from 'fast-check';

/** Seconds that each made-up line is run for, before and while it is counted. */
export const WARM_UP = 100;
export const LENGTH = 700;

const seconds = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => `${tenths / 10} s`);

/** Laws of a time; `least` above zero keeps a source from starting parts without end at one instant. */
const law = (least: number) =>
  fc.oneof(
    seconds(least, 20),
    fc.record({ distribution: fc.constant('exponential'), mean: seconds(1, 20) }),
    fc.record({
      distribution: fc.constant('gamma'),
      mean: seconds(1, 20),
      cv: fc.constantFrom('0 %', '30 %', '100 %', '200 %'),
    }),
    fc.record({
      distribution: fc.constant('triangular'),
      low: seconds(least, 3),
      mode: seconds(3, 5),
      high: seconds(5, 20),
    }),
    fc.record({
      distribution: fc.constant('empirical'),
      values: fc.array(seconds(least, 20), { minLength: 1, maxLength: 4 }),
    }),
  );

const counted = fc.constantFrom('working', 'clock');
/** `made` in one of so many cases, else undefined. */
const seldom = <T>(made: fc.Arbitrary<T>, oneIn: number): fc.Arbitrary<T | undefined> =>
  fc.nat({ max: oneIn - 1 }).chain((n) => (n === 0 ? made : fc.constant(undefined)));

/** Who is called, if anybody, and with what priority where the crew goes by that. */
const call = fc.record({ crew: fc.boolean(), priority: fc.integer({ min: 1, max: 3 }) });

/** A life with no upper bound: one that always ends before the cycle would be refused where the cycle starts anew. */
const boundless = fc.record({ distribution: fc.constant('exponential'), mean: seconds(5, 60) });
const breakdown = fc.record({
  ...{ every: law(0.5), boundless, counted, repair: law(0), call },
  cycle: fc.constantFrom('resumes', 'restarts', 'scraps'),
});

const task = fc.record({
  by: fc.oneof(
    fc.record({ cycles: fc.integer({ min: 1, max: 20 }) }),
    fc.record({ every: boundless, counted }),
  ),
  takes: law(0),
  call,
});

/** What a station of any kind may be given. */
const equipment = fc.record({
  machines: fc.constantFrom(1, 1, 2, 3),
  speed: fc.constantFrom('100 %', '100 %', '80 %'),
  handling: seldom(fc.record({ load: seconds(0, 4), unload: seconds(0.5, 4), call }), 3),
  setUp: seldom(task, 5),
  maintenance: seldom(task, 6),
  warmUp: seldom(fc.record({ after: seconds(1, 20), takes: law(0) }), 6),
  breakdowns: seldom(fc.array(breakdown, { minLength: 1, maxLength: 3 }), 3),
  whileDown: fc.constantFrom('unloads', 'nothing', 'loads-and-unloads'),
  shiftEnd: seldom(fc.constantFrom('finishes', 'resumes', 'restarts', 'scraps'), 5),
});

/** No conveyor enters parts faster than it carries them: spacing x (places - 1) stays below the transit. */
const buffer = fc.oneof(
  fc.constantFrom(0, 0, 1, 2, 5, 'unlimited'),
  fc.constantFrom(0, 3, 'unlimited'),
  fc.record({
    places: fc.integer({ min: 1, max: 5 }),
    transit: seconds(4, 20),
    spacing: fc.constantFrom('0 s', '0.5 s', '1 s'),
  }),
);

/** How a station passes on: to the next, or also to the one after that, or back to the beginning. */
const route = fc.record({
  by: fc.constantFrom('only', 'only', 'share', 'priority', 'state'),
  skips: fc.boolean(),
  // With limited buffers a way back may close a circle for good: seldom.
  back: fc.nat({ max: 11 }).map((n) => n === 0),
});

const stock = fc.oneof(
  fc.constant({ unlimited: true }),
  fc.record({
    'on-hand': fc.integer({ min: 0, max: 30 }),
    'reorder-at': fc.integer({ min: 0, max: 30 }),
    order: fc.integer({ min: 1, max: 20 }),
    'lead-time': law(0),
  }),
  fc.record({ 'on-hand': fc.integer({ min: 0, max: 30 }) }),
);

/** Spares: few, that come again soon, or many, so that most lines go on. */
const elements = fc.oneof(
  fc.record({
    'on-hand': fc.integer({ min: 1, max: 2 }),
    'up-to': fc.integer({ min: 1, max: 2 }),
    'lead-time': fc.oneof(seconds(10, 60), law(0.5)),
    'when-short': fc.constantFrom('waits', 'backorders'),
  }),
  fc.constant({ unlimited: true }),
  fc.record({ 'on-hand': fc.integer({ min: 5, max: 20 }) }),
);

/** How an assembling station would match. */
const match = fc
  .record({
    places: fc.constantFrom({ among: 4 }, { among: 4 }, { bank: 1 }, { bank: 5 }, { bank: 5 }),
    rule: fc.constantFrom(
      ...(['hardest-fit', 'best-margin', 'first-fit'] as const).map((rule) => ({ rule, guard: '0.2 mm' })),
      { rule: 'classes', classes: { number: 3, width: '0.3 mm' } },
    ),
    patience: fc.constantFrom('0 s', '7 s', '50 s', '1 h'),
    takes: seconds(0, 2),
  })
  .map(({ places, rule, patience, takes }) => ({
    ...{ ...places, ...rule, takes, 'mate-repeatability': '0.05 mm' },
    ...('bank' in places && { patience }),
  }));

/** What stands behind the source, in any order. */
const behind = fc.record({
  does: fc.constantFrom('work', 'work', 'work', 'trim', 'mark', 'gauge', 'gauge', 'assemble'),
  ...{ buffer, cycle: law(0), equipment, route, match },
  batch: fc.constantFrom(1, 1, 2, 3),
  every: fc.integer({ min: 1, max: 3 }),
  rejects: fc.constantFrom('pass', 'scrap', 'bench', 'bench'),
  reader: seldom(
    fc.record({
      unread: fc.constantFrom('pass', 'scrap', 'by hand', 'anew', 'anew'),
      ...{ tries: fc.integer({ min: 1, max: 3 }), limit: fc.integer({ min: 1, max: 2 }) },
    }),
    2,
  ),
  grades: fc.constantFrom(
    undefined,
    { grades: { A: '60 %', C: '30 %', F: '10 %' } },
    { quality: { scans: 2, contrast: { mean: '60 %', sd: '10 %', 'scan-sd': '5 %' } } },
  ),
  withoutMates: fc.constantFrom('wait', 'scrap'),
  inspects: fc.constantFrom('count', 'clock', 'delivery', 'delivery', 'delivery', 'plan', 'plan'),
  lot: fc.integer({ min: 2, max: 4 }),
  rejected: fc.constantFrom('screen', 'scrap', 'bench'),
  forcing: seldom(
    fc.record({
      ...{ stiffness: fc.constant('100 N/mm'), limit: fc.constantFrom('30 N', '1 kN') },
      ...{ damages: fc.constantFrom('20 %', '50 %'), takes: seconds(0, 3) },
    }),
    2,
  ),
});

const crew = fc.record({
  number: fc.integer({ min: 1, max: 2 }),
  serves: fc.constantFrom('first-come', 'priority', 'nearest'),
  move: fc.constantFrom('0 s', '1 s', '3 s'),
  takes: seconds(0, 5),
  calendar: seldom(fc.constant(true), 5),
});

/** Shifts of some minutes, one after the other, so that a short run sees several. */
const hours = fc
  .array(
    fc.record({
      ...{ idles: fc.integer({ min: 10, max: 100 }), works: fc.integer({ min: 60, max: 250 }) },
      break: seldom(fc.integer({ min: 1, max: 30 }), 2),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((shifts) => {
    let now = 0;
    return shifts.map((shift) => {
      const begins = now + shift.idles;
      now = begins + shift.works;
      return {
        ...{ days: ['mon'], begins: `${begins} s`, lasts: `${shift.works} s` },
        ...(shift.break && { breaks: [{ after: `${shift.break} s`, lasts: `${shift.break / 2} s` }] }),
      };
    });
  });

const asked = {
  sheet: stock,
  mate: stock,
  first: fc.record({
    does: fc.constantFrom('form', 'form', 'work', 'arrive'),
    ...{ cycle: law(0.5), equipment, route },
    perSheet: fc.integer({ min: 1, max: 4 }),
    whenFull: fc.constantFrom('waits', 'lost'),
  }),
  behind: fc.array(behind, { maxLength: 4 }),
  bench: fc.record({ cycle: law(0), equipment, limit: fc.integer({ min: 1, max: 3 }) }),
  ...{ fitter: crew, robot: crew, hours },
  carriers: seldom(
    fc.record({
      number: fc.integer({ min: 4, max: 9 }),
      ...{ from: fc.nat(), to: fc.option(fc.nat(), { nil: undefined }), return: seconds(0, 10) },
    }),
    3,
  ),
  demand: seldom(
    fc.record({
      ...{
        every: fc.oneof(law(0.5), seconds(50, 200)),
        pieces: fc.integer({ min: 1, max: 3 }),
        'due-after': seconds(0, 60),
      },
      'finished-goods': fc.record({
        'at-start': fc.integer({ min: 0, max: 3 }),
        most: fc.integer({ min: 3, max: 10 }),
      }),
    }),
    4,
  ),
  stoppages: fc.array(
    fc.record({
      ...{ station: fc.nat(), at: law(0), for: law(0) },
      cycle: fc.constantFrom('resumes', 'restarts', 'scraps'),
      'again-after': fc.option(law(0.5), { nil: undefined }),
    }),
    { maxLength: 2 },
  ),
  seed: fc.integer({ min: 1, max: 1000 }),
  // Behind all others, so that these stay as they were.
  spares: seldom(fc.record({ element: elements, modes: fc.constantFrom(1, 3, 6, 7) }), 3),
};

type Asked = {
  readonly [Key in keyof typeof asked]: (typeof asked)[Key] extends fc.Arbitrary<infer T> ? T : never;
};
type Equipment = typeof equipment extends fc.Arbitrary<infer T> ? T : never;
type Crew = typeof crew extends fc.Arbitrary<infer T> ? T : never;
type Route = typeof route extends fc.Arbitrary<infer T> ? T : never;
type Call = typeof call extends fc.Arbitrary<infer T> ? T : never;

/** Whoever is called, and from where: what nobody uses would be refused. */
class Callers {
  readonly of = { fitter: new Set<string>(), robot: new Set<string>() };
  readonly #crews: { readonly fitter: Crew; readonly robot: Crew };

  constructor(crews: { readonly fitter: Crew; readonly robot: Crew }) {
    this.#crews = crews;
  }

  from(station: string, who: 'fitter' | 'robot', key: 'crew' | 'by', { crew, priority }: Call) {
    if (!crew) return {};
    this.of[who].add(station);
    return { [key]: who, ...(this.#crews[who].serves === 'priority' && { priority }) };
  }
}

/** The keys of a station for what it was given. */
function given(
  station: string,
  on: Equipment,
  callers: Callers,
  calendar: { used: boolean },
  spares: Asked['spares'],
) {
  const doneBy = (it: { by: object; takes: unknown; call: Call } | undefined, name: string) =>
    it && { [name]: { ...it.by, takes: it.takes, ...callers.from(station, 'fitter', 'crew', it.call) } };
  const modes = on.breakdowns?.map(({ every, boundless: life, call, ...rest }, i) => [
    `mode ${i}`,
    {
      ...{ every: rest.cycle === 'resumes' ? every : life, ...rest },
      ...callers.from(station, 'fitter', 'crew', call),
      ...(spares && (spares.modes >> i) % 2 === 1 && { spare: 'element' }),
    },
  ]);
  if (on.shiftEnd) calendar.used = true;
  return {
    ...{ machines: on.machines, speed: on.speed, 'while-down': on.whileDown },
    'warm-up': on.warmUp,
    'set-ups': doneBy(on.setUp, 'tool'),
    maintenance: doneBy(on.maintenance, 'oil'),
    breakdowns: modes && Object.fromEntries(modes),
    ...(on.handling && {
      handling: {
        ...{ load: on.handling.load, unload: on.handling.unload },
        ...callers.from(station, 'robot', 'by', on.handling.call),
      },
    }),
    ...(on.shiftEnd && { calendar: 'hours', 'shift-end': on.shiftEnd }),
  };
}

/** Where station number `i` passes parts to. `behind` are the buffers of those that follow. */
function passesTo(i: number, { by, skips, back }: Route, behind: Asked['behind'], demand: boolean) {
  const name = (at: number) => (at < behind.length ? `s${at + 1}` : 'good');
  // The last but one of the ways may lead back, and one always leads on.
  const ways = [
    name(i),
    ...(skips && i < behind.length ? [name(i + 1)] : []),
    ...(back && i > 0 ? ['s1'] : []),
  ];
  const unique = [...new Set(ways)].filter((way) => way !== `s${i}`);
  if (by === 'only' || unique.length === 1) return unique[0]!;
  if (by === 'share') {
    const share = 100 / unique.length;
    const first = 100 - Math.floor(share) * (unique.length - 1);
    return {
      by,
      routes: Object.fromEntries(unique.map((way, k) => [way, `${k === 0 ? first : Math.floor(share)} %`])),
    };
  }
  // A way that always has room may only be the last in an order.
  const always = (way: string) =>
    way === 'good' ? !demand : behind[Number(way.slice(1)) - 1]!.buffer === 'unlimited';
  const inOrder = unique.findIndex(always);
  return { by: inOrder < 0 || inOrder === unique.length - 1 ? by : 'state', routes: unique };
}

/** A reader behind these stations: the last that marks marks anew what is not read, else one that does only that. */
function readerOf(
  { unread, tries, limit }: NonNullable<Asked['behind'][number]['reader']>,
  before: readonly { readonly does: string }[],
) {
  const marker = before.findLastIndex(({ does }) => does === 'mark');
  const anew = { 're-mark': marker < 0 ? 'second' : `s${marker + 1}`, limit };
  const given = { pass: 'pass', scrap: 'scrap', 'by hand': { 'by-hand': '3 s' }, anew }[unread]!;
  const reads = { A: '90 %', B: '80 %', C: '60 %', D: '20 %' };
  return { reads, tries, retry: '0.5 s', unread: given };
}

/** A scenario in the format of the files, whole and sound. */
function scenarioOf(it: Asked) {
  const { sheet, first, hours, demand, carriers, stoppages } = it;
  const callers = new Callers({ fitter: it.fitter, robot: it.robot });
  const calendar = { used: false };
  const formed = first.does === 'form';
  // Where nothing is formed, nothing can be gauged or assembled.
  const rest = it.behind.map((station) => ({
    ...station,
    does: formed || station.does === 'mark' ? station.does : ('work' as const),
  }));
  const stations: Record<string, object> = {
    s0: {
      form: { does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': first.perSheet, cycle: first.cycle },
      work: { does: 'work', takes: 'sheet', cycle: first.cycle },
      arrive: { does: 'arrive', every: first.cycle, 'when-full': first.whenFull },
    }[first.does],
  };
  const own = first.does === 'arrive' ? {} : given('s0', first.equipment, callers, calendar, it.spares);
  stations.s0 = { ...stations.s0, ...own, to: passesTo(0, first.route, rest, demand !== undefined) };
  let feeder: string | undefined;
  let anew = false;
  let mostBatched = 1;
  rest.forEach((station, i) => {
    const { does, every, rejects, buffer, cycle } = station;
    const name = `s${i + 1}`;
    // A mark is read only behind the station that makes it.
    const marked = !rest.slice(i).some((later) => later.does === 'mark');
    const reader = station.reader && marked ? readerOf(station.reader, rest.slice(0, i)) : undefined;
    const read = reader && { reader };
    if (typeof reader?.unread === 'object' && (does === 'gauge' || does === 'assemble')) {
      anew ||= 're-mark' in reader.unread;
      if ('re-mark' in reader.unread && reader.unread['re-mark'] === 'second')
        stations.second = { does: 'mark', buffer: 2, cycle: '2 s', 'takes-hold': '70 %', to: name };
    }
    // The bench sends parts back to one gauge only; it is fed from that gauge, so a bench always has a way out.
    const bench = rejects === 'bench' && does === 'gauge' && feeder === undefined;
    if (bench) feeder = name;
    const reject = rejects === 'bench' && !bench ? 'scrap' : rejects;
    const places = typeof buffer === 'object' ? buffer.places : buffer;
    const batch =
      does === 'work' && (places === 'unlimited' || Number(places) >= station.batch) ? station.batch : 1;
    const { inspects, lot } = station;
    // A lot needs room to gather.
    const room =
      does === 'gauge' && inspects === 'plan' && places !== 'unlimited' && Number(places) < lot
        ? lot
        : buffer;
    const inspection =
      inspects === 'plan'
        ? {
            acceptance: {
              lot,
              aql: '10 %',
              rejected: station.rejected === 'bench' && !bench ? 'scrap' : station.rejected,
            },
          }
        : inspects === 'delivery' && !('unlimited' in sheet)
          ? { 'first-of-lot': every }
          : { every: inspects === 'clock' ? `${10 * every} s` : every };
    mostBatched = Math.max(mostBatched, batch, does === 'gauge' && 'acceptance' in inspection ? lot : 1);
    const equipped = given(name, station.equipment, callers, calendar, it.spares);
    const kinds: Record<string, object> = {
      work: { batch },
      trim: {
        tool: {
          'renewed-by': Object.keys(equipped['set-ups'] ?? {}),
          burr: { per: 10, grows: '0.1 mm', 'own-sd': '0.1 mm', most: '0.1 mm', deburring: '2 s' },
        },
      },
      mark: { 'takes-hold': '90 %', ...station.grades },
      gauge: {
        ...{ ...inspection, measures: { rim: { bias: '0.1 mm', repeatability: '0.5 mm', takes: '0.5 s' } } },
        ...{ 'off-limits': reject, ...read },
      },
      assemble: {
        ...{ takes: ['mate'], 'without-mates': station.withoutMates, misfit: 'scrap', 'mate-tries': every },
        forcing: station.forcing,
        ...{
          fits: [
            { hole: 'mate.groove', shaft: 'rim', least: station.forcing ? '0.7 mm' : '0 mm', most: '2 mm' },
          ],
          ...read,
        },
      },
    };
    stations[name] = {
      ...{ does, buffer: room, cycle, ...equipped, ...kinds[does] },
      to: passesTo(i + 1, station.route, rest, demand !== undefined),
    };
  });
  if (feeder !== undefined) {
    const { limit, cycle, equipment } = it.bench;
    // Some benches look first.
    const reach = limit > 1 && { most: '0.6 mm', only: 'down', takes: '5 s/mm' };
    stations.bench = {
      ...{
        does: 'rework',
        buffer: 'unlimited',
        cycle,
        ...given('bench', equipment, callers, calendar, it.spares),
        limit,
      },
      ...{ corrects: { rim: { removes: '50 %', 'own-sd': '0.1 mm', ...reach } }, to: feeder },
    };
  }
  const names = Object.keys(stations);
  const crews = (['fitter', 'robot'] as const).flatMap((who) => {
    const from = [...callers.of[who]];
    if (from.length === 0) return [];
    const { number, serves, move, takes, calendar: byHours } = it[who];
    if (byHours) calendar.used = true;
    const moves = from.length > 1 ? [{ between: [from[0], from[1]], takes }] : undefined;
    return [[who, { number, serves, move, moves, ...(byHours && { calendar: 'hours' }) }]];
  });
  const closes = [first, ...rest].some(({ route }, i) => route.back && i > 0);
  return {
    ...{ mendline: 1, title: 'any', about: 'a line made up at random' },
    run: { 'warm-up': `${WARM_UP} s`, length: `${LENGTH} s`, seeds: 1 },
    stock: stocksOf(it, Object.values(stations)),
    parts: formed ? { tray: { features: { rim } } } : undefined,
    stations,
    ...(crews.length > 0 && { crew: Object.fromEntries(crews) }),
    ...(calendar.used && { calendars: { hours: { shifts: hours } } }),
    ...(carriers && !closes && !anew && { carriers: carriersOf(carriers, rest, first, mostBatched) }),
    ...(demand && { demand }),
    disturbances: Object.fromEntries(
      stoppages.map(({ station, ...when }, i) => [
        `stoppage ${i}`,
        { disturbs: 'station', station: names[station % names.length], ...when },
      ]),
    ),
    policies: {
      'carry on': [],
      match: rest.flatMap(({ does, match }, i) =>
        does === 'assemble' ? [{ do: 'match', at: `s${i + 1}`, ...match }] : [],
      ),
      ...borrowing(it, stations),
    },
  };
}

/** The stocks that some station takes from: others would be refused. */
function stocksOf({ sheet, mate, spares }: Asked, stations: readonly object[]) {
  const features = { groove: { nominal: '11 mm', 'own-sd': '0.3 mm' } };
  const text = JSON.stringify(stations);
  const used = (name: string) =>
    [`"takes":"${name}"`, `"takes":["${name}"]`, `"spare":"${name}"`].some((key) => text.includes(key));
  const all = Object.entries({ sheet, mate: { ...mate, features }, element: spares?.element });
  return Object.fromEntries(all.filter(([name]) => used(name)));
}

/** A policy that takes spares out of machines, where there are any to take. */
function borrowing({ spares }: Asked, stations: Record<string, object>) {
  const from = Object.keys(stations).filter((name) =>
    JSON.stringify(stations[name]).includes('"spare":"element"'),
  );
  if (from.length < 2 || !spares || 'unlimited' in spares.element) return {};
  return { borrow: [{ do: 'cannibalise', spare: 'element', from }] };
}

const rim = {
  ...{ nominal: '10 mm', tolerance: '0.5 mm', 'made-at': 's0' },
  ...{ 'own-sd': '0.5 mm', 'lot-sd': '0.1 mm' },
};

/** Carriers from the source, or from a station that the parts pass once, enough for every batch on the way. */
function carriersOf(
  { number, from, to, return: back }: NonNullable<Asked['carriers']>,
  rest: readonly { readonly does: string }[],
  first: Asked['first'],
  batched: number,
) {
  const loaded = first.does === 'form' ? first.perSheet : 1;
  // A bench sends parts to its gauge anew: take them where they start, unless they arrive by themselves.
  const gauged = rest.some(({ does }) => does === 'gauge');
  const least = first.does === 'arrive' ? 1 : 0;
  if (least > rest.length) return undefined;
  const at = gauged && least === 0 ? 0 : least + (from % (rest.length + 1 - least));
  return {
    pallet: {
      ...{ number: number + loaded * batched, from: `s${at}`, return: back },
      ...(to !== undefined && at < rest.length && { to: `s${at + 1 + (to % (rest.length - at))}` }),
    },
  };
}

/** A line made up at random as the text of a scenario, and a seed to run it with. */
// JSON is YAML, and leaves out what is undefined.
export const madeUpLine = fc
  .record(asked)
  .map((it) => ({ text: JSON.stringify(scenarioOf(it as Asked), null, 1), seed: it.seed }));
