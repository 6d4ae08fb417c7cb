import { routesOf } from '../routes.ts';
import type { StationSpec } from '../stations.ts';

/** The ways of the parts from station to station, by the routes alone: where a line passes what it does not reject. */
export class Ways {
  private readonly next: ReadonlyMap<string, readonly string[]>;

  constructor(stations: readonly StationSpec[]) {
    this.next = new Map(stations.map((station) => [station.name, routesOf(station)]));
  }

  /** What parts come to after `name` with the place each was first reached from, the nearest first; "good" too. */
  private after(name: string): ReadonlyMap<string, string> {
    const reached = new Map<string, string>();
    const queue = [name];
    for (const at of queue) {
      for (const to of this.next.get(at) ?? []) {
        if (reached.has(to)) continue;
        reached.set(to, at);
        if (to !== name) queue.push(to);
      }
    }
    return reached;
  }

  /** Whether parts that leave `from` may come to `to`. */
  lead(from: string, to: string): boolean {
    return this.after(from).has(to);
  }

  /** Whether parts at `from` may leave as good without passing `station`; they pass it if they are there. */
  avoid(from: string, station: string): boolean {
    const seen = new Set(from === station ? [] : [from]);
    for (const at of seen) for (const to of this.next.get(at) ?? []) if (to !== station) seen.add(to);
    return seen.has('good');
  }

  /** The stations that parts may come to after `from`, the nearest first. */
  beyond(from: string): string[] {
    return [...this.after(from).keys()].filter((name) => this.next.has(name));
  }

  /** The shortest way from one station to another, both included; there must be one. */
  shortest(from: string, to: string): string[] {
    const reached = this.after(from);
    const way = [to];
    do way.unshift(reached.get(way[0]!)!);
    while (way[0] !== from);
    return way;
  }

  /** Every station from which some way leads to `to`. */
  leadingTo(to: string): ReadonlySet<string> {
    const before = new Map<string, string[]>();
    for (const [name, next] of this.next) {
      for (const one of next) {
        const known = before.get(one);
        if (known) known.push(name);
        else before.set(one, [name]);
      }
    }
    const leading = new Set<string>();
    const queue = [to];
    for (const at of queue) {
      for (const name of before.get(at) ?? []) {
        if (leading.has(name)) continue;
        leading.add(name);
        queue.push(name);
      }
    }
    return leading;
  }
}
