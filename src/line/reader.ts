import { uniformBlocks } from '../kernel/distributions/uniform.ts';
import type { Stream, Streams } from '../kernel/streams.ts';
import type { ReaderSpec } from '../scenario/stations/reader.ts';
import type { PartTable } from './part-table.ts';
import type { Tally } from './tally.ts';

/** Reads marks in front of a station. A mark that did not take is never read. */
export class Reader {
  readonly spec: ReaderSpec;
  /** Told of every attempt to read: whether it failed. */
  readonly listeners: ((unread: boolean) => void)[] = [];
  private readonly parts: PartTable;
  private readonly tally: Tally;
  private readonly luck: number;
  private readonly again: Stream;
  private readonly marked: number;

  constructor(
    spec: ReaderSpec,
    station: string,
    parts: PartTable,
    streams: Streams,
    marked: number,
    tally: Tally,
  ) {
    this.spec = spec;
    this.parts = parts;
    this.tally = tally;
    this.luck = parts.luck(uniformBlocks(streams.of(`station/${station}/reader`)));
    this.again = streams.of(`station/${station}/reader/again`);
    this.marked = marked;
  }

  /** Whether the mark of this waiting part would be read here; changes nothing. */
  canRead(row: number): boolean {
    return this.parts.get(row, this.marked) === 1 && this.parts.get(row, this.luck) < this.spec.reads;
  }

  /** Tries to read the mark of the part that is being loaded. */
  read(row: number): boolean {
    const read = this.canRead(row);
    this.parts.set(row, this.luck, this.again());
    if (!read) this.tally.unread++;
    for (const listener of this.listeners) listener(!read);
    return read;
  }
}
