import type { z } from 'zod';
import type { DisturbanceSpec } from './disturbances.ts';
import { suggestion } from './nearest.ts';
import type { Finding, Path } from './problem.ts';
import type { ResponseSpec } from './responses.ts';
import type { schema } from './schema.ts';
import type { SpecOf, StationSpec } from './stations.ts';
import { type Dimension, nameOf } from './units.ts';

type Raw = z.output<typeof schema>;

/** Every name the file gives, by section. */
export interface Names {
  readonly stock: readonly string[];
  readonly parts: readonly string[];
  readonly stations: readonly string[];
  /** Of the part, and of the forming stations. */
  readonly features: readonly string[];
  readonly settings: readonly string[];
  /** What each station says under `to`. */
  readonly next: ReadonlyMap<string, unknown>;
  /** By policy, the places in the file of the responses given here; without an entry, all are given. */
  readonly places: ReadonlyMap<string, readonly number[]>;
}

const RESERVED = ['good', 'scrap', 'pass'];

/** Checks what one entry says of another. Holds the findings and what the checks look things up in. */
class Checker {
  readonly found: Finding[] = [];
  readonly raw: Raw;
  readonly names: Names;
  readonly stations: ReadonlyMap<string, StationSpec>;
  /** Where each forming setting belongs. */
  readonly settings: Map<string, { dimension: Dimension; station: string }>;

  constructor(raw: Raw, names: Names) {
    this.raw = raw;
    this.names = names;
    this.stations = new Map(raw.stations.map((station) => [station.name, station]));
    this.settings = new Map();
    for (const station of raw.stations) {
      if (station.does !== 'form') continue;
      for (const setting of station.settings ?? []) {
        if (this.settings.has(setting.name)) {
          this.say(
            ['stations', station.name, 'settings', setting.name],
            `another station has a setting "${setting.name}" already; settings need names of their own`,
          );
        }
        this.settings.set(setting.name, { dimension: setting.target.dimension, station: station.name });
      }
    }
  }

  /** The stock of that name, unless it is unknown or has problems of its own. */
  stock(name: string) {
    return this.raw.stock.find((stock) => stock.name === name);
  }

  say(path: Path, message: string): void {
    this.found.push({ path, message });
  }

  /** Says so unless `word` is known; `what` names its kind. */
  known(path: Path, word: string, list: readonly string[], what: string): boolean {
    if (list.includes(word)) return true;
    const message = `"${word}" is no ${what}${suggestion(word, list)}`;
    // A name that stands as a key is pointed at itself, not at its value.
    this.found.push(
      path.at(-1) === word ? { path: path.slice(0, -1), key: word, message } : { path, message },
    );
    return false;
  }

  /** Says so unless `word` names a station that does one of `does`. A station with problems of its own passes. */
  station(path: Path, word: string, does: readonly StationSpec['does'][]): void {
    if (!this.known(path, word, this.names.stations, 'station')) return;
    const found = this.stations.get(word);
    if (found && does.length > 0 && !does.includes(found.does)) {
      this.say(
        path,
        `"${word}" is a station that does ${found.does}; expected one that does ${does.join(' or ')}`,
      );
    }
  }

  /** Where a rejected part goes: one of the words, or a rework station. */
  reject(path: Path, word: string, words: readonly string[]): void {
    if (words.includes(word)) return;
    if (!this.names.stations.includes(word)) {
      this.known(
        path,
        word,
        [...words, ...this.names.stations],
        `place for rejects (${words.join(', ')} or a rework station)`,
      );
    } else this.station(path, word, ['rework']);
  }
}

function checkStation(check: Checker, station: StationSpec): void {
  const path = ['stations', station.name];
  if (RESERVED.includes(station.name))
    check.say(path, `"${station.name}" has a meaning of its own; give the station another name`);
  if (station.to === station.name) check.say([...path, 'to'], 'a station cannot pass its parts to itself');
  else if (
    check.known([...path, 'to'], station.to, ['good', ...check.names.stations], 'station (or "good")')
  ) {
    const next = check.stations.get(station.to);
    if (next && isSource(next))
      check.say([...path, 'to'], `"${station.to}" takes from stock, so no station can feed it`);
  }
  switch (station.does) {
    case 'work':
      if (station.takes !== undefined) {
        check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
        if (station.buffer !== undefined)
          check.say([...path, 'buffer'], 'a station that takes from stock has no buffer in front');
      } else if (station.buffer === undefined)
        check.say(
          path,
          '"buffer" is missing: places for parts waiting in front of the station, or unlimited',
        );
      break;
    case 'form':
      check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
      check.known([...path, 'makes'], station.makes, check.names.parts, 'kind of part');
      if (station.heating && station.heating.per !== 'length')
        check.say([...path, 'heating'], 'expected a time per length, such as 16 s/mm');
      if (station.heating && station.heating.value < 0)
        check.say([...path, 'heating'], 'heating time cannot be negative');
      if (
        station.heating &&
        check.stock(station.takes)?.thickness === undefined &&
        check.stock(station.takes)
      ) {
        check.say(
          [...path, 'heating'],
          `heating goes by thickness, but the stock "${station.takes}" has none`,
        );
      }
      break;
    case 'gauge':
      for (const { name } of station.measures)
        check.known([...path, 'measures', name], name, check.names.features, 'feature');
      check.reject([...path, 'off-limits'], station.offLimits, ['pass', 'scrap']);
      break;
    case 'assemble':
      checkAssembly(check, station, path);
      break;
    case 'rework':
      for (const { name } of station.corrects)
        check.known([...path, 'corrects', name], name, check.names.features, 'feature');
      break;
  }
}

function checkAssembly(check: Checker, station: SpecOf<'assemble'>, path: Path): void {
  for (const [i, stock] of station.takes.entries()) {
    check.known([...path, 'takes', i], stock, check.names.stock, 'stock');
    if (station.takes.indexOf(stock) < i) check.say([...path, 'takes', i], `"${stock}" is listed twice`);
  }
  const ofMates = check.raw.stock
    .filter((stock) => station.takes.includes(stock.name))
    .flatMap((stock) => (stock.features ?? []).map((feature) => `${stock.name}.${feature.name}`));
  const allMatesSound = station.takes.every((name) => check.raw.stock.some((stock) => stock.name === name));
  for (const [i, { hole, shaft }] of station.fits.entries()) {
    const sides = { hole, shaft };
    for (const side of ['hole', 'shaft'] as const) {
      if (sides[side].includes('.') && !allMatesSound) continue;
      check.known(
        [...path, 'fits', i, side],
        sides[side],
        [...check.names.features, ...ofMates],
        'feature of the part or of a mate this station takes',
      );
    }
    if (hole.includes('.') === shaft.includes('.')) {
      check.say(
        [...path, 'fits', i],
        'a pair needs one feature of the part and one of a mate (written MATE.FEATURE)',
      );
    }
  }
  check.reject([...path, 'misfit'], station.misfit, ['scrap']);
}

function isSource(station: StationSpec): boolean {
  return station.does === 'form' || (station.does === 'work' && station.takes !== undefined);
}

function checkFeatures(check: Checker): void {
  for (const [i, part] of (check.raw.parts ?? []).entries()) {
    if (i > 0) check.say(['parts', part.name], 'a line makes one kind of part in this version of the format');
    for (const feature of part.features) {
      const path = ['parts', part.name, 'features', feature.name];
      check.station([...path, 'made-at'], feature.madeAt, ['form', 'trim']);
      const maker = check.stations.get(feature.madeAt);
      if (!maker) continue;
      const gains = Object.entries(feature.gains ?? {});
      if (maker.does !== 'form') {
        if (feature.mould !== undefined)
          check.say(
            [...path, 'mould'],
            `only a formed feature has a mould; "${maker.name}" does ${maker.does}`,
          );
        if (gains.length > 0)
          check.say(
            [...path, 'gains'],
            `only a formed feature follows forming settings; "${maker.name}" does ${maker.does}`,
          );
        continue;
      }
      if (feature.cavities && feature.cavities.length !== maker.perSheet) {
        check.say(
          [...path, 'cavities'],
          `${feature.cavities.length} offsets for ${maker.perSheet} cavities; expected one for each part of a sheet`,
        );
      }
      for (const [name, gain] of gains) {
        const own = (maker.settings ?? []).map((setting) => setting.name);
        if (!check.known([...path, 'gains', name], name, ['thickness', ...own], `setting of "${maker.name}"`))
          continue;
        if (name === 'thickness' && check.stock(maker.takes) && !check.stock(maker.takes)?.thickness) {
          check.say([...path, 'gains', name], `the stock "${maker.takes}" has no thickness`);
        }
        const dimension = name === 'thickness' ? 'length' : check.settings.get(name)!.dimension;
        if (gain.per !== dimension) {
          check.say(
            [...path, 'gains', name],
            `"${name}" is ${nameOf(dimension)}, so its gain is a length per ${dimension}`,
          );
        }
      }
    }
  }
}

function checkDisturbance(check: Checker, it: DisturbanceSpec): void {
  const path = ['disturbances', it.name];
  switch (it.disturbs) {
    case 'setting': {
      const setting = check.settings.get(it.setting);
      if (
        !check.known([...path, 'setting'], it.setting, check.names.settings, 'setting of a forming station')
      )
        return;
      if (setting && setting.dimension !== it.by.dimension) {
        check.say(
          [...path, 'by'],
          `"${it.setting}" is ${nameOf(setting.dimension)}, so expected a change in its units`,
        );
      }
      return;
    }
    case 'supplier': {
      check.known([...path, 'stock'], it.stock, check.names.stock, 'stock');
      const stock = check.stock(it.stock);
      if (stock && stock.reorderAt === undefined)
        check.say([...path, 'stock'], `"${it.stock}" is never ordered, so its supplier cannot fail it`);
      return;
    }
    case 'marks':
      return check.station([...path, 'station'], it.station, ['mark']);
    case 'station':
      return check.station([...path, 'station'], it.station, []);
  }
}

function checkResponse(check: Checker, it: ResponseSpec, path: Path): void {
  switch (it.do) {
    case 'stop-and-fix': {
      check.station([...path, 'station'], it.station, []);
      check.station([...path, 'watch', 'at'], it.watch.at, ['gauge', 'assemble']);
      const at = check.stations.get(it.watch.at);
      if (at?.does === 'gauge' && it.watch.sees === 'misfits')
        check.say(
          [...path, 'watch', 'sees'],
          `"${at.name}" gauges; misfits are seen where parts are assembled`,
        );
      if (at?.does === 'assemble' && it.watch.sees === 'off-limits')
        check.say(
          [...path, 'watch', 'sees'],
          `"${at.name}" assembles; readings off limits are seen where parts are gauged`,
        );
      if (it.watch.sees === 'unread' && at && !('reader' in at && at.reader))
        check.say([...path, 'watch', 'sees'], `"${at.name}" has no reader, so no mark can go unread there`);
      return;
    }
    case 'inspect':
      check.station([...path, 'at'], it.at, ['gauge']);
      if (it.offLimits !== undefined) check.reject([...path, 'off-limits'], it.offLimits, ['pass', 'scrap']);
      return;
    case 'retune': {
      check.known([...path, 'setting'], it.setting, check.names.settings, 'setting of a forming station');
      if (!check.known([...path, 'by'], it.by, check.names.features, 'feature')) return;
      const feature = check.raw.parts?.flatMap((part) => part.features).find(({ name }) => name === it.by);
      const gain = feature?.gains?.[it.setting];
      if (feature && check.settings.has(it.setting) && !gain?.value)
        check.say(
          [...path, 'by'],
          `"${it.by}" has no gain for "${it.setting}", so its readings cannot guide it`,
        );
      // A station with problems of its own may be the one that gauges.
      const gauged =
        check.stations.size < check.names.stations.length ||
        check.raw.stations.some(
          (station) => station.does === 'gauge' && station.measures.some(({ name }) => name === it.by),
        );
      if (!gauged) check.say([...path, 'by'], `no station gauges "${it.by}"`);
      return;
    }
    case 'match':
      return check.station([...path, 'at'], it.at, ['assemble']);
    case 'rework':
      check.station([...path, 'at'], it.at, ['gauge', 'assemble']);
      return check.station([...path, 'bench'], it.bench, ['rework']);
  }
}

/** Where parts may go from a station besides `to`, and where a policy may send them. */
function rejectsOf(station: StationSpec): string[] {
  if (station.does === 'gauge') return [station.offLimits];
  return station.does === 'assemble' ? [station.misfit] : [];
}

function checkFlow(check: Checker): void {
  const { stations, policies } = check.raw;
  const fed = new Set(stations.flatMap((station) => [station.to, ...rejectsOf(station)]));
  for (const response of policies.flatMap((policy) => policy.responses)) {
    if (response.do === 'rework') fed.add(response.bench);
    if (response.do === 'inspect' && response.offLimits !== undefined) fed.add(response.offLimits);
  }
  /** Stations of circles that were told. */
  const told = new Set<string>();
  for (const station of stations) {
    if (!isSource(station) && !fed.has(station.name)) {
      check.say(
        ['stations', station.name],
        `nothing feeds "${station.name}": no station passes parts to it, and it takes no stock`,
      );
    }
    const passed: string[] = [];
    let at: StationSpec | undefined = station;
    while (at && !passed.includes(at.name)) {
      passed.push(at.name);
      at = check.stations.get(at.to);
    }
    if (at !== station || told.has(station.name)) continue;
    for (const name of passed) told.add(name);
    check.say(
      ['stations', station.name, 'to'],
      `parts from here go round for ever: ${[...passed, at.name].join(' > ')}; let one station pass to "good"`,
    );
  }
  if (stations.length === 0) check.say(['stations'], 'a line needs at least one station');
  if (policies.length === 0) check.say(['policies'], 'expected at least one policy, such as "carry on: []"');
}

/**
 * What the entries of a scenario say of each other and do not hold.
 * @param whole whether nothing was left out of `raw`; only then can the flow be judged
 */
export function crossReferences(raw: Raw, names: Names, whole: boolean): Finding[] {
  const check = new Checker(raw, names);
  for (const station of raw.stations) checkStation(check, station);
  for (const [name, to] of names.next) {
    // A station with other problems still says where its parts go.
    if (check.stations.has(name) || typeof to !== 'string' || /^[\d\s]/.test(to)) continue;
    check.known(['stations', name, 'to'], to, ['good', ...names.stations], 'station (or "good")');
  }
  checkFeatures(check);
  for (const it of raw.disturbances ?? []) checkDisturbance(check, it);
  for (const { name, responses } of raw.policies) {
    for (const [i, response] of responses.entries()) {
      checkResponse(check, response, ['policies', name, names.places.get(name)?.[i] ?? i]);
    }
  }
  // With a wrong name on the way, the flow is not what it was meant to be.
  if (whole && check.found.length === 0) checkFlow(check);
  return check.found;
}
