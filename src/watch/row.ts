import { STATE_LOOKS } from '../report/state-words.ts';
import type { Run, Whereabouts } from '../report/watch/run.ts';

const INK = '#1d2326';
const SOFT = '#6f777b';
const MARK = '#2c5684';
const TINT = '#f3f1ea';

/** Of the width of a row: the places in front, and the cycle. */
const FRONT = 0.56;
const CYCLE = 0.62;
/** px: of a row above its rules, of one rule, of the narrowest place that is drawn by itself. */
const ABOVE = 16;
const LANE = 12;
const NARROWEST = 5;
const WIDEST = 16;
const MOST_LANES = 8;
/** Dots to a px at least, so that the drawing is sharp on paper, too. */
const LEAST_SCALE = 2;

/** Where a part was drawn, px. */
interface Spot {
  readonly part: number;
  readonly x: number;
}

/** Draws one station: the places in front of it, and how far its cycle is. */
export class Row {
  private readonly run: Run;
  private readonly station: number;
  private readonly canvas: HTMLCanvasElement;
  private readonly pen: CanvasRenderingContext2D;
  private readonly lanes: number;
  private readonly height: number;
  private width = 0;
  private spots: Spot[] = [];

  constructor(run: Run, station: number, canvas: HTMLCanvasElement) {
    this.run = run;
    this.station = station;
    this.canvas = canvas;
    this.pen = canvas.getContext('2d')!;
    this.lanes = Math.min(MOST_LANES, run.playback.stations[station]!.machines);
    this.height = ABOVE + LANE * Math.max(this.lanes, 1) + 4;
    canvas.style.height = `${this.height}px`;
    this.fit();
  }

  /** Takes the width that the page gives it. */
  fit(): void {
    const scale = Math.max(LEAST_SCALE, devicePixelRatio);
    this.width = this.canvas.clientWidth;
    this.canvas.width = Math.round(this.width * scale);
    this.canvas.height = Math.round(this.height * scale);
    this.pen.setTransform(scale, 0, 0, scale, 0, 0);
    this.pen.font = "600 12px system-ui, 'Segoe UI', Helvetica, Arial, sans-serif";
  }

  /** @param here the parts at this station */
  draw(now: number, here: readonly Whereabouts[], followed: number): void {
    this.pen.clearRect(0, 0, this.width, this.height);
    this.spots = [];
    this.front(
      now,
      here.filter(({ manner }) => manner === 'waits'),
      followed,
    );
    for (let machine = 0; machine < this.lanes; machine++) this.rule(now, machine);
    for (const where of here)
      if (where.manner === 'cycle' || where.manner === 'stands') this.inWork(now, where, followed);
  }

  /** The part drawn nearest to a place of the canvas; null where none is near. */
  partAt(x: number): number | null {
    let nearest: Spot | null = null;
    for (const spot of this.spots)
      if (nearest === null || Math.abs(spot.x - x) < Math.abs(nearest.x - x)) nearest = spot;
    return nearest && Math.abs(nearest.x - x) < WIDEST ? nearest.part : null;
  }

  private front(now: number, waiting: readonly Whereabouts[], followed: number): void {
    const { buffer } = this.run.playback.stations[this.station]!;
    if (buffer === null) return;
    const level = this.run.frontAt(this.station, now)!;
    const room = this.width * FRONT;
    const slot = buffer.places === null ? NARROWEST + 2 : Math.min(WIDEST, room / Math.max(1, buffer.places));
    const places = buffer.places ?? Math.floor(room / slot);
    const queue = [...waiting].sort((one, other) => one.since - other.since || one.part - other.part);
    if (slot >= NARROWEST) this.squares({ room, slot, places, level, drawn: buffer.places !== null });
    else this.bar(room, buffer.places!, level);
    const step = Math.max(slot, slot >= NARROWEST ? slot : room / buffer.places!);
    for (const [i, { part }] of queue.entries()) {
      const x = room - step * (i + 0.5);
      if (x < 0) break;
      this.spots.push({ part, x });
      if (part === followed) this.highlight(x, part);
    }
  }

  private squares(its: {
    readonly room: number;
    readonly slot: number;
    readonly places: number;
    readonly level: number;
    readonly drawn: boolean;
  }): void {
    const { room, slot, places, level, drawn } = its;
    const size = slot - 2;
    this.pen.lineWidth = 1;
    this.pen.strokeStyle = SOFT;
    this.pen.fillStyle = SOFT;
    const height = Math.min(LANE, Math.max(8, size));
    for (let i = 0; i < places; i++) {
      const x = room - slot * (i + 1) + 1;
      if (i < level) this.pen.fillRect(x, ABOVE, size, height);
      else if (drawn) this.pen.strokeRect(x + 0.5, ABOVE + 0.5, size - 1, height - 1);
    }
  }

  private bar(room: number, places: number, level: number): void {
    this.pen.fillStyle = TINT;
    this.pen.fillRect(0, ABOVE, room, LANE);
    this.pen.fillStyle = SOFT;
    const filled = (room * Math.min(level, places)) / places;
    this.pen.fillRect(room - filled, ABOVE, filled, LANE);
    this.pen.strokeStyle = SOFT;
    this.pen.lineWidth = 1;
    this.pen.strokeRect(0.5, ABOVE + 0.5, room - 1, LANE - 1);
  }

  private rule(now: number, machine: number): void {
    const { colour } = STATE_LOOKS[this.run.stateAt(this.station, machine, now)];
    const [from, y] = [this.width * CYCLE, ABOVE + LANE * machine + 3];
    this.pen.fillStyle = colour;
    this.pen.fillRect(from, y, this.width - from - 4, 6);
    this.pen.strokeStyle = INK;
    this.pen.lineWidth = 1;
    this.pen.strokeRect(from + 0.5, y + 0.5, this.width - from - 5, 5);
  }

  private inWork(now: number, { part, manner, machine, since, until }: Whereabouts, followed: number): void {
    const from = this.width * CYCLE + 3;
    const room = this.width - from - 7;
    const done = manner === 'stands' || until <= since ? 1 : Math.min(1, (now - since) / (until - since));
    const x = from + room * done;
    const y = ABOVE + LANE * Math.min(machine, this.lanes - 1);
    this.pen.fillStyle = '#fff';
    this.pen.fillRect(x - 3, y, 6, LANE);
    this.pen.fillStyle = INK;
    this.pen.fillRect(x - 2, y, 4, LANE);
    this.spots.push({ part, x });
    if (part === followed) this.highlight(x, part);
  }

  /** The part that is followed, with its number above it. */
  private highlight(x: number, part: number): void {
    const { pen } = this;
    pen.fillStyle = MARK;
    pen.fillRect(x - 4, ABOVE - 1, 8, LANE + 4);
    const text = String(part);
    const half = pen.measureText(text).width / 2;
    pen.textAlign = 'center';
    pen.fillText(text, Math.max(half, Math.min(this.width - half, x)), ABOVE - 4);
  }
}
