import type { z } from 'zod';
import { suggestion } from '../nearest.ts';
import type { Finding, Path } from '../problem.ts';
import type { schema } from '../schema.ts';
import type { StationSpec } from '../stations.ts';
import type { Dimension } from '../units.ts';
import { Ways } from './ways.ts';

/** A scenario as the schema gives it, perhaps with its faulty entries left out. */
export type Raw = z.output<typeof schema>;

/** Every name the file gives, by section. */
export interface Names {
  readonly stock: readonly string[];
  readonly parts: readonly string[];
  readonly stations: readonly string[];
  readonly crew: readonly string[];
  readonly calendars: readonly string[];
  readonly disturbances: readonly string[];
  /** Of the part, and of the forming stations. */
  readonly features: readonly string[];
  readonly settings: readonly string[];
  /** What each station says under `to`. */
  readonly next: ReadonlyMap<string, unknown>;
  /** Whether the file itself has something there, so that it is no default. */
  readonly given: (path: Path) => boolean;
  /** By policy, the places in the file of the responses given here; without an entry, all are given. */
  readonly places: ReadonlyMap<string, readonly number[]>;
}

/** Checks what one entry says of another. Holds the findings and what the checks look things up in. */
export class Checker {
  readonly found: Finding[] = [];
  readonly raw: Raw;
  readonly names: Names;
  readonly stations: ReadonlyMap<string, StationSpec>;
  readonly ways: Ways;
  /** Where each forming setting belongs. */
  readonly settings: Map<string, { dimension: Dimension; station: string }>;

  constructor(raw: Raw, names: Names) {
    this.raw = raw;
    this.names = names;
    this.stations = new Map(raw.stations.map((station) => [station.name, station]));
    this.ways = new Ways(raw.stations);
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

  /** The feature of that name, unless it is unknown or its part has problems of its own. */
  feature(name: string) {
    return this.raw.parts?.flatMap(({ features }) => features).find((feature) => feature.name === name);
  }

  say(path: Path, message: string): void {
    this.found.push({ path, message });
  }

  /** Says so unless `word` is known; `what` names its kind. */
  known(path: Path, word: string, list: readonly string[], what: string): boolean {
    if (list.includes(word)) return true;
    this.sayOf(path, word, `"${word}" is no ${what}${suggestion(word, list)}`);
    return false;
  }

  /** Says something of the word at `path`. A name that stands as a key is pointed at itself, not at its value. */
  sayOf(path: Path, word: string, message: string): void {
    this.found.push(
      path.at(-1) === word ? { path: path.slice(0, -1), key: word, message } : { path, message },
    );
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

  /** The rework stations, and those with problems of their own, which may be meant to be some. */
  get benches(): string[] {
    return this.names.stations.filter((name) => (this.stations.get(name)?.does ?? 'rework') === 'rework');
  }

  /** Where a rejected part goes: one of the words, or a rework station. */
  reject(path: Path, word: string, words: readonly string[]): void {
    if (words.includes(word)) return;
    if (!this.names.stations.includes(word)) {
      this.known(
        path,
        word,
        [...words, ...this.benches],
        `place for rejects (${words.join(', ')} or a rework station)`,
      );
    } else this.station(path, word, ['rework']);
  }
}
