import type { Stream } from '../kernel/streams.ts';
import type { ReaderSpec } from '../scenario/stations/reader.ts';
import type { PartTable } from './part-table.ts';
import type { Place } from './place.ts';
import type { Tally } from './tally.ts';
import type { Upsets } from './upset.ts';

export interface ReaderParts {
  readonly parts: PartTable;
  readonly tally: Tally;
  /** Column of the part's luck at its first visit, and draws for later ones. */
  readonly luck: number;
  readonly again: Stream;
  /** Column: 1 when the part's mark took. */
  readonly marked: number;
  /** Column of the mark's grade, as its place in `GRADES`; null where all are alike. */
  readonly grade: number | null;
  /** Where parts are marked anew, and the column that counts how often this reader sent them; null where none are. */
  readonly reMark: { readonly place: Place; readonly sent: number } | null;
}

/** By number of attempts from one on, the chance that a mark is read within so many, each of chance `one`. */
function within(one: number, tries: number): number[] {
  const chances = [one];
  while (chances.length < tries) chances.push(chances.at(-1)! + (1 - chances.at(-1)!) * one);
  return chances;
}

/**
 * Reads marks in front of a station. A mark that did not take is never read. One number a visit decides which attempt
 * is the first that reads, so that what is known beforehand is what happens.
 */
export class Reader {
  readonly spec: ReaderSpec;
  /** Told of every visit: whether all attempts to read failed. */
  readonly listeners: ((unread: boolean) => void)[] = [];
  /** Of the part read last: the time that further attempts and finding out by hand add, s. */
  seconds = 0;
  /** Of the part read last: where it goes instead of being worked on; null when it stays. */
  sent: Place | null = null;
  /** What disturbs the chance of an attempt; null where nothing does. */
  upsets: Upsets | null = null;
  private readonly on: ReaderParts;
  /** By grade, the chances of `within`. */
  private readonly chances: readonly (readonly number[])[];
  /** By grade, the last of them: the chance that a mark is read at all. */
  private readonly atAll: Float64Array;
  /** Those of a mark that did not take. */
  private readonly none: readonly number[];

  constructor(spec: ReaderSpec, on: ReaderParts) {
    this.spec = spec;
    this.on = on;
    this.chances = spec.chances.map((one) => within(one, spec.tries));
    this.atAll = Float64Array.from(this.chances, (chances) => chances.at(-1)!);
    this.none = within(0, spec.tries);
  }

  /** Whether the mark of this waiting part would be read here; changes nothing. */
  canRead(row: number): boolean {
    const { parts, luck, marked, grade } = this.on;
    if (parts.get(row, marked) !== 1) return false;
    if (this.upsets !== null) return parts.get(row, luck) < this.chancesOf(row).at(-1)!;
    return parts.get(row, luck) < this.atAll[grade === null ? 0 : parts.get(row, grade)]!;
  }

  /**
   * Tries to read the mark of the part that is being loaded; says whether it is known then, be it by hand.
   * @param stays whether it is not sent to be marked anew, whatever the rule
   */
  read(row: number, stays = false): boolean {
    const { parts, luck, again } = this.on;
    const { tries, retry, unread } = this.spec;
    const chances = this.chancesOf(row);
    const drawn = parts.get(row, luck);
    parts.set(row, luck, again());
    let failed = 0;
    while (failed < tries && drawn >= chances[failed]!) failed++;
    const read = failed < tries;
    this.seconds = (read ? failed : tries - 1) * retry;
    this.sent = null;
    if (!read) this.unread(row, stays);
    for (const listener of this.listeners) listener(!read);
    return read || unread.byHand !== null;
  }

  private chancesOf(row: number): readonly number[] {
    const { parts, marked, grade } = this.on;
    if (parts.get(row, marked) !== 1) return this.none;
    const chances = this.chances[grade === null ? 0 : parts.get(row, grade)]!;
    const share = this.upsets === null ? 1 : this.upsets.factor();
    return share === 1 ? chances : within(Math.min(1, share * chances[0]!), this.spec.tries);
  }

  /** All attempts failed. */
  private unread(row: number, stays: boolean): void {
    const { parts, tally, reMark } = this.on;
    const { unread } = this.spec;
    tally.unread++;
    if (unread.byHand !== null) this.seconds += unread.byHand;
    if (reMark === null || stays) return;
    const before = parts.get(row, reMark.sent);
    if (before >= unread.reMark!.limit) return;
    parts.set(row, reMark.sent, before + 1);
    tally.reMarked++;
    this.sent = reMark.place;
  }
}
