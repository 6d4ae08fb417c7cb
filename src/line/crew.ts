import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { ShiftMember } from './shifts.ts';

/** Whoever calls for one of a crew; it has one call open at a time. */
export interface Client {
  /** Number of the station it stands at. */
  readonly place: number;
  readonly priority: number;
  /** One of the crew is there, and stays until `release`. */
  attended(): void;
}

/** Whoever can be called. */
export interface Service {
  /** Somebody comes, perhaps at once. */
  call(client: Client): void;
  /** The client is served. */
  release(client: Client): void;
}

/** Where nobody is needed: the station does it itself, at once. */
export const BY_ITSELF: Service = { call: (client) => client.attended(), release: () => {} };

/** Who is served first: the longest waiting; the lowest priority number, then the longest waiting; or the nearest. */
type ServingRule = 'first-come' | 'priority' | 'nearest';

export interface CrewRules {
  readonly serves: ServingRule;
  /** Seconds to move from one station to another, by their numbers. */
  readonly travel: (from: number, to: number) => number;
}

/**
 * Technicians or handlers, people or robots, who are called to stations one at a time. One who becomes free stays
 * where it is until called; all begin at the first station. At the end of a shift each finishes what is under way.
 */
export class Crew implements Actor, Service, ShiftMember {
  readonly name: string;
  readonly number: number;
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #rules: CrewRules;
  /** Where each stands, and whom each serves. */
  readonly #places: Int32Array;
  readonly #serving: (Client | null)[];
  readonly #waiting: Client[] = [];
  #onShift = true;
  #busy = 0;
  #busySeconds = 0;
  #since = 0;

  constructor(name: string, number: number, calendar: Calendar, rules: CrewRules) {
    this.name = name;
    this.number = number;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
    this.#rules = rules;
    this.#places = new Int32Array(number);
    this.#serving = Array<Client | null>(number).fill(null);
  }

  call(client: Client): void {
    const free = this.#onShift ? this.#nearestFree(client.place) : -1;
    if (free < 0) this.#waiting.push(client);
    else this.#send(free, client);
  }

  release(client: Client): void {
    const who = this.#serving.indexOf(client);
    this.#serving[who] = null;
    this.#count(-1);
    this.#serveNext(who);
  }

  happen(_code: number, who: number): void {
    this.#serving[who]!.attended();
  }

  goOffShift(): void {
    this.#onShift = false;
  }

  comeOnShift(): void {
    this.#onShift = true;
    for (let who = 0; who < this.number; who++) if (this.#serving[who] === null) this.#serveNext(who);
  }

  /** Seconds that its members spent moving or serving, all together, up to now. */
  busySeconds(): number {
    this.#count(0);
    return this.#busySeconds;
  }

  #nearestFree(place: number): number {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let who = 0; who < this.number; who++) {
      if (this.#serving[who] !== null) continue;
      const way = this.#rules.travel(this.#places[who]!, place);
      if (way < least) {
        least = way;
        best = who;
      }
    }
    return best;
  }

  #serveNext(who: number): void {
    if (!this.#onShift || this.#waiting.length === 0) return;
    const rank = (client: Client): number => {
      if (this.#rules.serves === 'first-come') return 0;
      if (this.#rules.serves === 'priority') return client.priority;
      return this.#rules.travel(this.#places[who]!, client.place);
    };
    let chosen = 0;
    for (let i = 1; i < this.#waiting.length; i++) {
      if (rank(this.#waiting[i]!) < rank(this.#waiting[chosen]!)) chosen = i;
    }
    this.#send(who, this.#waiting.splice(chosen, 1)[0]!);
  }

  #send(who: number, client: Client): void {
    const way = this.#rules.travel(this.#places[who]!, client.place);
    this.#places[who] = client.place;
    this.#serving[who] = client;
    this.#count(1);
    if (way > 0) this.#calendar.schedule(this.#calendar.now + way, this.#me, 0, who);
    else client.attended();
  }

  #count(change: number): void {
    const { now } = this.#calendar;
    this.#busySeconds += this.#busy * (now - this.#since);
    this.#since = now;
    this.#busy += change;
  }
}
