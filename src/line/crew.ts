import type { Actor, Calendar } from '../kernel/calendar.ts';
import type { ShiftMember } from './shifts.ts';

/** Whoever calls for one of a crew; it has one call open at a time. */
export interface Client {
  /** What it wants done. */
  readonly name: string;
  readonly machine: { readonly name: string };
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

/** Told who is sent, by their place from 0, to whom, and how long the way is, s. */
export type SendingListener = (who: number, client: Client, way: number) => void;

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
  readonly sending: SendingListener[] = [];
  readonly #calendar: Calendar;
  readonly #me: number;
  readonly #rules: CrewRules;
  /** Where each stands, and whom each serves: those of the crew, then those who were called besides. */
  readonly #places: number[];
  readonly #serving: (Client | null)[];
  readonly #waiting: Client[] = [];
  #onShift = true;
  /** How many of them are away. */
  #away = 0;
  #busy = 0;
  #busySeconds = 0;
  #since = 0;
  /** Stations whose calls are served before others, in this order; null where a policy says nothing. */
  #first: readonly number[] | null = null;
  /** How many are called besides, and how many of those are there: one that left finishes what is under way. */
  #called = 0;
  #calledHere = 0;
  #calledSeconds = 0;
  #calledSince = 0;

  constructor(name: string, number: number, calendar: Calendar, rules: CrewRules) {
    this.name = name;
    this.number = number;
    this.#calendar = calendar;
    this.#me = calendar.enter(this);
    this.#rules = rules;
    this.#places = Array<number>(number).fill(0);
    this.#serving = Array<Client | null>(number).fill(null);
  }

  call(client: Client): void {
    const free = this.#mayServe ? this.#nearestFree(client.place) : -1;
    if (free < 0) this.#waiting.push(client);
    else this.#send(free, client);
  }

  release(client: Client): void {
    const who = this.#serving.indexOf(client);
    this.#serving[who] = null;
    this.#count(-1);
    if (who < this.#working) this.#serveNext(who);
    if (who >= this.number) this.#countCalled();
  }

  /** So many more are there from now on; whoever comes begins at the first station, whoever goes finishes first. */
  reinforce(by: number): void {
    if (by === this.#called) return;
    const before = this.#working;
    this.#called = by;
    for (let who = before; who < this.#working; who++) {
      this.#serving[who] ??= null;
      if (this.#serving[who] === null) this.#places[who] = 0;
    }
    this.#countCalled();
    if (this.#onShift)
      for (let who = before; who < this.#working; who++)
        if (this.#serving[who] === null) this.#serveNext(who);
  }

  /** Serves calls from these stations, by their numbers, before others; null as ever. */
  serveFirst(stations: readonly number[] | null): void {
    this.#first = stations;
  }

  happen(_code: number, who: number): void {
    this.#serving[who]!.attended();
  }

  goOffShift(): void {
    this.#onShift = false;
    this.#countCalled();
  }

  comeOnShift(): void {
    this.#onShift = true;
    this.#countCalled();
    this.#serveAll();
  }

  /** So many of them go away, until as many come back. Who is at work finishes first; the others serve where they can. */
  sendAway(number: number): void {
    this.#away += number;
  }

  comeBack(number: number): void {
    this.#away -= number;
    this.#serveAll();
  }

  /** Seconds that its members spent moving or serving, all together, up to now. */
  busySeconds(): number {
    this.#count(0);
    return this.#busySeconds;
  }

  /** Seconds that those who were called were there in their shifts, or finished what was under way, up to now. */
  calledSeconds(): number {
    this.#countCalled();
    return this.#calledSeconds;
  }

  get #working(): number {
    return this.number + this.#called;
  }

  /** Whether there is one who could take a call, if one is free. */
  get #mayServe(): boolean {
    return this.#onShift && (this.#away === 0 || this.#busyHere < this.#working - this.#away);
  }

  /** How many are at work, but for those who were called and have left. */
  get #busyHere(): number {
    let busy = 0;
    for (let who = 0; who < this.#working; who++) if (this.#serving[who] !== null) busy++;
    return busy;
  }

  #serveAll(): void {
    for (let who = 0; who < this.#working; who++) if (this.#serving[who] === null) this.#serveNext(who);
  }

  #nearestFree(place: number): number {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let who = 0; who < this.#working; who++) {
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
    if (!this.#mayServe || this.#waiting.length === 0) return;
    const rank = (client: Client): number => {
      if (this.#rules.serves === 'first-come') return 0;
      if (this.#rules.serves === 'priority') return client.priority;
      return this.#rules.travel(this.#places[who]!, client.place);
    };
    let chosen = 0;
    for (let i = 1; i < this.#waiting.length; i++) {
      const [one, best] = [this.#waiting[i]!, this.#waiting[chosen]!];
      const sooner = this.#turnOf(one) - this.#turnOf(best) || rank(one) - rank(best);
      if (sooner < 0) chosen = i;
    }
    this.#send(who, this.#waiting.splice(chosen, 1)[0]!);
  }

  /** Where a call stands among those that a policy puts first; all the others come after them. */
  #turnOf({ place }: Client): number {
    if (this.#first === null) return 0;
    const turn = this.#first.indexOf(place);
    return turn < 0 ? this.#first.length : turn;
  }

  #send(who: number, client: Client): void {
    const way = this.#rules.travel(this.#places[who]!, client.place);
    this.#places[who] = client.place;
    this.#serving[who] = client;
    this.#count(1);
    for (const tell of this.sending) tell(who, client, way);
    if (way > 0) this.#calendar.schedule(this.#calendar.now + way, this.#me, 0, who);
    else client.attended();
  }

  #countCalled(): void {
    if (this.#places.length === this.number) return;
    const { now } = this.#calendar;
    this.#calledSeconds += this.#calledHere * (now - this.#calledSince);
    this.#calledSince = now;
    const there = this.#onShift ? this.#called : 0;
    let late = 0;
    for (let who = this.number + there; who < this.#serving.length; who++)
      if (this.#serving[who] !== null) late++;
    this.#calledHere = there + late;
  }

  #count(change: number): void {
    const { now } = this.#calendar;
    this.#busySeconds += this.#busy * (now - this.#since);
    this.#since = now;
    this.#busy += change;
  }
}
