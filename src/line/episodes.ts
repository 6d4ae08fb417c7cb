/** One time that a disturbance was there. Times in s since the start of the run. */
export interface EpisodeRecord {
  readonly name: string;
  readonly begin: number;
  /** Null while it lasts. */
  readonly end: number | null;
  /** When a response first acted while it lasted; null when none did. */
  readonly answered: number | null;
}

/** Notes when disturbances came and went, and when the policy first acted meanwhile. A policy cannot see it. */
export class Episodes {
  readonly all: EpisodeRecord[] = [];
  /** Places in `all` of those under way. */
  private open: number[] = [];

  begin(name: string, now: number): void {
    this.open.push(this.all.push({ name, begin: now, end: null, answered: null }) - 1);
  }

  /** Ends the oldest of this name that is under way. */
  end(name: string, now: number): void {
    const place = this.open.find((at) => this.all[at]!.name === name);
    if (place === undefined) return;
    this.all[place] = { ...this.all[place]!, end: now };
    this.open = this.open.filter((at) => at !== place);
  }

  /** A response did something. */
  act(now: number): void {
    for (const at of this.open) {
      const episode = this.all[at]!;
      if (episode.answered === null) this.all[at] = { ...episode, answered: now };
    }
  }
}
