import { uniformBlocks } from '../kernel/distributions/uniform.ts';
import type { Stream, Streams } from '../kernel/streams.ts';
import type { ForcingSpec } from '../scenario/stations/forcing.ts';
import type { Fit } from './fit.ts';
import type { PartTable } from './part-table.ts';

/** A press that puts together what is too tight, as far as its force goes. */
export class Forcing {
  /** Time of one pressing, s. */
  readonly takes: number;
  private readonly spec: ForcingSpec;
  private readonly parts: PartTable;
  private readonly luck: number;
  private readonly again: Stream;

  constructor(spec: ForcingSpec, station: string, parts: PartTable, streams: Streams) {
    this.spec = spec;
    this.takes = spec.takes;
    this.parts = parts;
    this.luck = parts.luck(uniformBlocks(streams.of(`station/${station}/forcing`)));
    this.again = streams.of(`station/${station}/forcing/again`);
  }

  /** Whether it is tried: something is too tight, nothing too loose, and the part without a flaw. */
  isTried({ missing, excess, flawed }: Fit): boolean {
    return missing > 0 && excess === 0 && !flawed;
  }

  /** Whether its force is enough. */
  closes(fit: Fit): boolean {
    return this.isTried(fit) && this.spec.stiffness * fit.missing <= this.spec.limit;
  }

  /** Whether pressing spoils this part; each call is one pressing. */
  spoils(row: number): boolean {
    const spoilt = this.parts.get(row, this.luck) < this.spec.damages;
    this.parts.set(row, this.luck, this.again());
    return spoilt;
  }
}
