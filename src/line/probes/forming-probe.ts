import { Sums } from './sums.ts';

/** What can be wrong with the parts of a sheet, from the window and from the wall. */
type Kind = 'incomplete' | 'webbed' | 'thin';

/** Looks at the sheets that a forming station takes. */
export class FormingProbe {
  sheets = 0;
  incomplete = 0;
  webbed = 0;
  thin = 0;
  /** Mean walls, mm. */
  readonly walls = new Sums();

  see(kind: Kind | null, wall: number | null): void {
    this.sheets++;
    if (kind !== null) this[kind]++;
    if (wall !== null) this.walls.add(wall);
  }
}
