import type { Severity } from './iso-2859.ts';

/** Lots among which a second one that is not accepted brings tightened inspection. */
export const AMONG = 5;
/** Lots accepted in a row that bring normal inspection back. */
export const IN_A_ROW = 5;

/**
 * Which inspection is in force, by the switching rules of ISO 2859-1:1999, clause 9 (MIL-STD-105E, 4.7): it starts normal;
 * tightened once 2 of 5 or fewer consecutive lots have not been accepted; normal again after 5 consecutive lots accepted.
 * Reduced inspection, which the standard leaves to the parties, is not used. After 5 lots not accepted on tightened
 * inspection the standard discontinues acceptance until the process is mended; here tightened inspection goes on. A lot
 * is original whenever it is complete, also when parts in it were there before.
 */
export class Switching {
  severity: Severity = 'normal';
  /** Lots since the last that was not accepted, on normal inspection. */
  private since = Number.POSITIVE_INFINITY;
  private inARow = 0;

  /** A lot was judged under the inspection in force. */
  tell(accepted: boolean): void {
    if (this.severity === 'normal') this.onNormal(accepted);
    else this.onTightened(accepted);
  }

  private onNormal(accepted: boolean): void {
    this.since++;
    if (accepted) return;
    if (this.since < AMONG) {
      this.severity = 'tightened';
      this.inARow = 0;
    }
    this.since = 0;
  }

  private onTightened(accepted: boolean): void {
    this.inARow = accepted ? this.inARow + 1 : 0;
    if (this.inARow < IN_A_ROW) return;
    this.severity = 'normal';
    this.since = Number.POSITIVE_INFINITY;
  }
}
