import type { FeatureSpec } from '../../scenario/parts.ts';

/** How judgements of one feature compared with the truth. */
export interface Judged {
  gauged: number;
  off: number;
  badPassed: number;
  goodRejected: number;
}

/** Compares what a gauge judges with what is true. */
export class GaugeProbe {
  gauged = 0;
  /** Parts with any reading off limits. */
  off = 0;
  /** Lots judged by an acceptance plan, and those accepted. */
  lots = 0;
  lotsAccepted = 0;
  readonly features = new Map<string, Judged>();

  see({ name, limits }: FeatureSpec, truth: number, off: boolean): void {
    if (limits === null) return;
    let seen = this.features.get(name);
    if (!seen) {
      seen = { gauged: 0, off: 0, badPassed: 0, goodRejected: 0 };
      this.features.set(name, seen);
    }
    const bad = truth < limits.lower || truth > limits.upper;
    seen.gauged++;
    if (off) seen.off++;
    if (bad && !off) seen.badPassed++;
    if (!bad && off) seen.goodRejected++;
  }

  judged(off: boolean): void {
    this.gauged++;
    if (off) this.off++;
  }

  judgedLot(accepted: boolean): void {
    this.lots++;
    if (accepted) this.lotsAccepted++;
  }
}
