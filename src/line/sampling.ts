import type { PartTable } from './part-table.ts';

/** Which of the parts that come to a gauge are gauged. Asked once about each, in their order. */
export interface Sampling {
  /** @param now present time, s */
  chooses(row: number, now: number): boolean;
}

/** The last of every so many parts. */
export class OneIn implements Sampling {
  private readonly every: number;
  private arrived = 0;

  constructor(every: number) {
    this.every = every;
  }

  chooses(): boolean {
    return ++this.arrived % this.every === 0;
  }
}

/** The first part after each full period of the clock. Periods in which none comes are not made up for. */
export class ByClock implements Sampling {
  private readonly period: number;
  /** The number of the period whose end is waited for. */
  private waitsFor = 1;

  /** @param period s */
  constructor(period: number) {
    this.period = period;
  }

  chooses(_row: number, now: number): boolean {
    if (now < this.waitsFor * this.period) return false;
    // The quotient may be rounded down to the period that has just ended.
    this.waitsFor = Math.max(this.waitsFor, Math.floor(now / this.period)) + 1;
    return true;
  }
}

/** The first parts of each delivery that come, whatever the order in which deliveries mingle. */
export class FirstOfDelivery implements Sampling {
  private readonly parts: PartTable;
  private readonly delivery: number;
  private readonly first: number;
  /** By delivery, how many were gauged. */
  private readonly gauged: number[] = [];

  /** @param delivery column of the part's delivery */
  constructor(parts: PartTable, delivery: number, first: number) {
    this.parts = parts;
    this.delivery = delivery;
    this.first = first;
  }

  chooses(row: number): boolean {
    const delivery = this.parts.get(row, this.delivery);
    while (this.gauged.length <= delivery) this.gauged.push(0);
    if (this.gauged[delivery]! >= this.first) return false;
    this.gauged[delivery]!++;
    return true;
  }
}
