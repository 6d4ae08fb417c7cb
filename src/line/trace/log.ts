import type { Line } from '../line.ts';
import type { ScrapPile } from '../scrap-pile.ts';
import type { PartEvent } from './part-events.ts';
import type { Piece } from './piece.ts';
import type { Steps } from './steps.ts';
import type { TracedPart, Truth } from './trace.ts';

/** A part in the line, as it is followed. */
export class Followed {
  readonly number: number;
  /** Where it is, or was last. */
  station = '';
  /** The level of the buffer that it waits in; null while it waits in none. */
  waitsIn: Steps<number> | null = null;
  /** The way that it goes to scrap; null while it goes none. */
  pile: ScrapPile | null = null;
  /** The true sizes noted so far, by feature, mm. */
  readonly sizes = new Map<string, number>();

  constructor(number: number) {
    this.number = number;
  }
}

type Growing<Of> = { -readonly [Key in keyof Of]: Of[Key] };
/** An event without what the log itself adds to it. */
type Told<Of> = Of extends PartEvent | Truth ? Omit<Of, 'at' | 'part'> : never;

/** More events of parts than these would not fit into memory with all that is made of them. */
const MOST_EVENTS = 2_000_000;
/** Of these, what tells how many there will be; and how many times too many those must be. */
const [TELLING, TOO_MANY] = [1 / 16, 2];

/** The run is too long to write down all that happens in it. */
export class TraceTooLongError extends Error {
  /** @param had as many as it had by `now`, s; it ends at `end` */
  constructor(most: number, had: number, now: number, end: number) {
    const three = (value: number) => Number(value.toPrecision(3));
    super(
      `a trace holds at most ${most} events of parts, and this run had ${had} after ${three(now / 3600)} of ` +
        `${three(end / 3600)} h, so that it would come to about ${three((had / now) * end)}; give it a shorter "length" under "run"`,
    );
    this.name = 'TraceTooLongError';
  }
}

/** What is written down of the parts of one line while it runs. */
export class Log {
  readonly events: PartEvent[] = [];
  readonly truths: Truth[] = [];
  readonly parts: Growing<TracedPart>[] = [];
  private readonly line: Line;
  private readonly most: number;
  private readonly end: number;
  /** So many events are the next to tell how many there will be. */
  private telling: number;
  private readonly rows: Followed[] = [];

  /**
   * @param end when the run ends, s
   * @param most how many events of parts it holds
   */
  constructor(line: Line, end: number, most = MOST_EVENTS) {
    this.line = line;
    this.end = end;
    this.most = most;
    this.telling = most * TELLING;
  }

  get now(): number {
    return this.line.calendar.now;
  }

  /** The part in this row of the table. */
  of(row: number): Followed {
    return this.rows[row]!;
  }

  /**
   * A part has been started, by a station that says so later.
   * @throws TraceTooLongError
   */
  start(row: number): void {
    if (this.events.length >= Math.min(this.telling, this.most)) this.refuseTooMany();
    const number = this.parts.push({
      number: this.parts.length + 1,
      ...{ started: this.now, station: '', from: null, left: null },
    });
    this.rows[row] = new Followed(number);
  }

  /** A run that is far too long is refused before all of it that fits has been done. */
  private refuseTooMany(): void {
    const { most, now, end } = this;
    const had = this.events.length;
    if (had >= most || (now > 0 && (had / now) * end > TOO_MANY * most))
      throw new TraceTooLongError(most, had, now, end);
    this.telling = 2 * had;
  }

  /** Says where a part that has just been started is, and what it was made from. */
  startedAt(station: string, row: number, piece: Piece | null, cavity: number): PartEvent {
    const followed = this.of(row);
    followed.station = station;
    const part = this.parts[followed.number - 1]!;
    part.station = station;
    part.from = piece === null ? null : { piece, cavity };
    const { now: at } = this;
    return {
      ...{ at, part: part.number, station, kind: 'started' },
      ...{ from: piece, cavity: piece === null ? null : cavity },
    };
  }

  tell(row: number, event: Told<PartEvent>): void {
    this.events.push({ at: this.now, part: this.of(row).number, ...event } as PartEvent);
  }

  /** What was told last did not come about. */
  takeBack(): void {
    this.events.pop();
  }

  reveal(row: number, truth: Told<Truth>): void {
    this.truths.push({ at: this.now, part: this.of(row).number, ...truth } as Truth);
  }
}
