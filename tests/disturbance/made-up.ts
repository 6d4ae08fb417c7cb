import fc from 'fast-check';
import { LENGTH, madeUpLine, WARM_UP } from '../line/made-up-line.ts';

/** What of a scenario's text is looked at here. */
interface Made {
  readonly stations: Record<string, Record<string, unknown>>;
  readonly stock: Record<string, Record<string, unknown>>;
  readonly crew?: Record<string, { readonly number: number }>;
  readonly demand?: object;
  readonly parts?: object;
}

const END = WARM_UP + LENGTH;
const seconds = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((time) => `${time} s`);
const fromList = (least: number, most: number, unit: string) =>
  fc.oneof(
    fc.integer({ min: least, max: most }).map((value) => `${value} ${unit}`),
    fc.record({
      distribution: fc.constant('uniform'),
      low: fc.constant(`${least} ${unit}`),
      high: fc.constant(`${most} ${unit}`),
    }),
  );

const asked = fc.record({
  kind: fc.nat(),
  which: fc.nat(),
  at: fc.option(seconds(0, END / 2), { nil: undefined }),
  parts: fc.integer({ min: 1, max: 30 }),
  for: fc.oneof(seconds(0, 5), seconds(20, 400), seconds(20, 400)),
  again: fc.option(seconds(1, 100), { nil: undefined }),
  burst: fc.option(fc.record({ times: fc.integer({ min: 2, max: 4 }), apart: seconds(0, 50) }), {
    nil: undefined,
  }),
  ramp: fc.option(seconds(1, 200), { nil: undefined }),
  fades: fc.option(seconds(1, 100), { nil: undefined }),
  ...{ less: fromList(0, 100, '%'), some: fromList(10, 300, '%'), share: fromList(0, 400, '%') },
  ...{ length: fromList(-1, 1, 'mm'), change: fromList(-20, 20, '°C') },
});

type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never;

/** Every disturbance that this line could meet. */
function possible(made: Made, it: Asked): object[] {
  const stations = Object.entries(made.stations);
  const of = (does: (station: Record<string, unknown>) => unknown, to: (station: string) => object) =>
    stations.flatMap(([name, station]) => (does(station) ? [to(name)] : []));
  const is = (does: string) => (station: Record<string, unknown>) => station.does === does;
  const belt = ({ buffer }: Record<string, unknown>) => typeof buffer === 'object' && buffer !== null;
  const ordered = Object.entries(made.stock).filter(([, stock]) => 'order' in stock || 'up-to' in stock);
  const { less, some, share, length } = it;
  return [
    ...of(is('form'), () => ({ disturbs: 'setting', setting: 'heater', by: it.change })),
    ...of(is('form'), () => ({ disturbs: 'feature', feature: 'rim', by: length, spread: share })),
    ...of(is('mark'), (station) => ({
      disturbs: 'marks',
      station,
      'takes-hold': less,
      grades: { F: '100 %' },
    })),
    ...of(is('gauge'), (station) => ({ disturbs: 'gauge', station, bias: length, spread: share })),
    ...of(
      (it) => it.reader,
      (station) => ({ disturbs: 'reader', station, to: less }),
    ),
    ...of(
      (it) => it.breakdowns,
      (station) => ({ disturbs: 'health', station, 'as-often': some, 'repairs-take': share }),
    ),
    ...of(belt, (station) => ({ disturbs: 'conveyor', station, to: less })),
    ...of(
      () => true,
      (station) => ({ disturbs: 'speed', station, to: some }),
    ),
    ...of(
      () => true,
      (station) => ({ disturbs: 'station', station, cycle: 'scraps' }),
    ),
    ...ordered.map(([stock]) => ({ disturbs: 'supplier', stock })),
    ...ordered.map(([stock]) => ({
      ...{ disturbs: 'lot', stock, unsound: less },
      ...(stock === 'mate' && { feature: 'groove', by: length }),
    })),
    ...Object.keys(made.crew ?? {}).map((crew) => ({ disturbs: 'crew', crew, away: 1 })),
    ...(made.demand ? [{ disturbs: 'demand', to: some }] : []),
  ];
}

/** What few lines have, and is chosen the more often where there is one. */
const SELDOM = ['setting', 'feature', 'marks', 'gauge', 'reader', 'lot'];
const SWITCHES = ['station', 'supplier', 'crew'];

function disturbanceOf(made: Made, it: Asked): object {
  const all = possible(made, it) as { disturbs: string }[];
  const known = [...new Set(all.map(({ disturbs }) => disturbs))];
  const kinds = known.flatMap((kind) => (SELDOM.includes(kind) ? [kind, kind, kind, kind] : [kind]));
  const ofKind = all.filter(({ disturbs }) => disturbs === kinds[it.kind % kinds.length]);
  const stations = Object.keys(made.stations);
  const of = stations[it.which % (stations.length + 1)];
  const hit = ofKind[it.which % ofKind.length]!;
  return {
    ...hit,
    ...(it.at === undefined ? { after: { parts: it.parts, of } } : { at: it.at }),
    ...{ for: it.for, 'again-after': it.again, burst: it.burst },
    ...(!SWITCHES.includes(hit.disturbs) && { ramp: it.ramp, fades: it.fades }),
  };
}

/** A line made up at random with up to four disturbances of any kind that it could meet, as text, and a seed. */
export const disturbedLine = fc
  .tuple(madeUpLine, fc.array(asked, { minLength: 1, maxLength: 4 }))
  .map(([{ text, seed }, wanted]) => {
    const made = JSON.parse(text);
    if (made.stations.s0.does === 'form') {
      made.stations.s0.settings = { heater: { target: '150 °C' } };
      made.parts.tray.features.rim.gains = { heater: '0.05 mm/°C' };
    }
    made.disturbances = Object.fromEntries(wanted.map((it, i) => [`upset ${i}`, disturbanceOf(made, it)]));
    return { text: JSON.stringify(made, null, 1), seed };
  });
