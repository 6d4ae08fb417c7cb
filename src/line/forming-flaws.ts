import { meanWall } from '../standards/draw-ratio.ts';
import type { Flaw } from './flaw.ts';
import type { Machine } from './machine.ts';
import type { Place } from './place.ts';
import type { FormingProbe } from './probes/forming-probe.ts';
import type { Tally } from './tally.ts';

/** Kinds of flaws, each a count of `Tally`. */
type Kind = 'incomplete' | 'webbed' | 'thin';

/** What becomes of parts: null scraps them, else they are marked and pass. */
export type Outside = Flaw | null;

/** Between which deviations of a setting from its target parts form well. */
export interface Window {
  /** Place of the setting among the deviations of a cycle. */
  readonly of: number;
  readonly lowest: number;
  readonly highest: number;
  readonly outside: Outside;
}

export interface Wall {
  readonly drawRatio: number;
  /** Thinnest mean wall, mm. */
  readonly least: number;
  /** Share of the wall lost per unit by which the setting at place `of` lies above its target. */
  readonly thinning: number;
  readonly of: number;
  readonly outside: Outside;
}

/** Where parts go on to, and where they are scrapped for a flaw of each kind. */
type Ways = Readonly<Record<Kind | 'next', Place>>;

interface Found {
  readonly kind: Kind;
  readonly outside: Outside;
}

/** The mean wall of the parts of a sheet, mm. */
function wallLeft({ thinning, of, drawRatio }: Wall, deviations: Float64Array, thickness: number): number {
  const lost = thinning === 0 ? 0 : thinning * Math.max(0, deviations[of]!);
  return meanWall(thickness, drawRatio) * (1 - lost);
}

/** Finds what is wrong with the parts of a sheet, and sends them where such parts go. One flaw counts, the window's first. */
export class FormingFlaws {
  /** Looks at each sheet; null while nobody asks. */
  probe: FormingProbe | null = null;
  private readonly window: Window | null;
  private readonly wall: Wall | null;
  private readonly tally: Tally;
  private readonly ways: Ways;
  /** By machine: what is wrong with the sheet on it. */
  private readonly found: (Found | null)[] = [];

  constructor(window: Window | null, wall: Wall | null, tally: Tally, ways: Ways) {
    this.window = window;
    this.wall = wall;
    this.tally = tally;
    this.ways = ways;
  }

  /** A sheet is loaded, with these deviations of its settings; `thickness` in mm. */
  begin({ slot }: Machine, deviations: Float64Array, thickness: number): void {
    const found = this.flawOf(deviations, thickness);
    this.found[slot] = found;
    const { wall } = this;
    if (this.probe !== null)
      this.probe.see(found?.kind ?? null, wall === null ? null : wallLeft(wall, deviations, thickness));
  }

  /** The cycle is over: counts the flawed parts, and marks or scraps them. */
  finish(machine: Machine): void {
    const { load, loaded, outlets } = machine;
    const found = this.found[machine.slot]!;
    const out = found !== null && found.outside === null ? this.ways[found.kind] : this.ways.next;
    for (let i = 0; i < loaded; i++) outlets[i] = out;
    if (found === null) return;
    this.tally[found.kind] += loaded;
    if (found.outside !== null) for (let i = 0; i < loaded; i++) found.outside.put(load[i]!);
  }

  private flawOf(deviations: Float64Array, thickness: number): Found | null {
    const { window, wall } = this;
    if (window !== null) {
      const deviation = deviations[window.of]!;
      if (deviation < window.lowest) return { kind: 'incomplete', outside: window.outside };
      if (deviation > window.highest) return { kind: 'webbed', outside: window.outside };
    }
    if (wall === null) return null;
    return wallLeft(wall, deviations, thickness) < wall.least
      ? { kind: 'thin', outside: wall.outside }
      : null;
  }
}
