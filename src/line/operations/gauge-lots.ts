import type { Sampler } from '../../kernel/distributions/distribution.ts';
import type { SamplingPlan, Severity } from '../../standards/iso-2859.ts';
import { Switching } from '../../standards/iso-2859-switching.ts';
import type { Machine } from '../machine.ts';
import type { Place } from '../place.ts';
import type { Rejects } from '../rejects.ts';
import { OneIn } from '../sampling.ts';
import type { Tally } from '../tally.ts';
import { Gauge, type GaugeParts } from './gauge.ts';

export interface LotRules {
  readonly lot: number;
  readonly plans: Readonly<Record<Severity, SamplingPlan>>;
  /** Where all parts of a lot that is not accepted go; null gauges the rest of them instead. */
  readonly rejected: Rejects | null;
  /** Column: a number from 0 to 1; the parts that have the lowest of a lot are its sample. And draws for later visits. */
  readonly luck: number;
  readonly again: Sampler;
  readonly tally: Tally;
  /** Called when some parts are there, but not all of a lot, where they may never come. */
  readonly onShort: (() => void) | null;
}

/** What is found out of the lot on a machine when it is begun, by place on the machine. */
interface Findings {
  /** Whether the part is gauged, in the sample or since the lot is screened; and whether it is known which it is. */
  readonly gauged: Uint8Array;
  readonly known: Uint8Array;
  /** Where it goes to be marked anew, to be judged when it comes again; null for a part that is judged now. */
  readonly sent: (Place | null)[];
  accepted: boolean;
}

/**
 * Acceptance sampling of whole lots, each a random sample of so many parts. A part is nonconforming when any of its
 * readings is off limits. What the sample says is settled when the lot is begun, for it decides how long the cycle takes;
 * it is told and counted when the cycle is over. The cycle is that of the lot, plus the readings of each gauged part.
 */
export class GaugeLots extends Gauge {
  private readonly rules: LotRules;
  private readonly switching = new Switching();
  private readonly findings: readonly Findings[];
  private readonly sorted: Float64Array;

  /** @param machines how many machines the station has */
  constructor(on: GaugeParts, rules: LotRules, rejects: Rejects, machines: number) {
    super(on, new OneIn(1), rejects);
    this.rules = rules;
    this.sorted = new Float64Array(rules.lot);
    this.findings = Array.from({ length: machines }, () => ({
      gauged: new Uint8Array(rules.lot),
      known: new Uint8Array(rules.lot),
      sent: [],
      accepted: true,
    }));
  }

  override ready(machine: Machine): boolean {
    return machine.inbox!.count >= this.rules.lot;
  }

  override begin(machine: Machine): boolean {
    const { lot, rejected, onShort, plans } = this.rules;
    const inbox = machine.inbox!;
    if (inbox.count < lot) {
      if (onShort !== null && inbox.count > 0) onShort();
      return false;
    }
    for (let i = 0; i < lot; i++) machine.load[i] = inbox.shift();
    machine.loaded = lot;
    machine.cycle = this.on.time.of(machine.load[0]!);
    const plan = plans[this.switching.severity];
    const findings = this.findings[machine.slot]!;
    if (this.as !== null) for (const { upset } of this.on.gaugings) upset?.keep(machine.slot);
    this.draw(machine, plan.sample, findings);
    findings.accepted = this.nonconforming(machine, findings) <= plan.accept;
    if (!findings.accepted && rejected === null) findings.gauged.fill(1);
    // What goes away with its lot is not marked anew.
    const stays = !findings.accepted && rejected !== null;
    for (let i = 0; i < lot; i++) {
      findings.sent[i] = null;
      if (findings.gauged[i] === 0) continue;
      machine.cycle += this.on.takes;
      findings.known[i] = this.identify(machine, machine.load[i]!, stays) ? 1 : 0;
      findings.sent[i] = this.reader?.sent ?? null;
    }
    return true;
  }

  override finish(machine: Machine): void {
    const { lot, rejected, luck, again, tally } = this.rules;
    const { parts, next } = this.on;
    const { gauged, known, sent, accepted } = this.findings[machine.slot]!;
    // What is told is what decided, even where a disturbance has come or gone since.
    if (this.as !== null) this.as.slot = machine.slot;
    const whole = accepted || rejected === null ? null : rejected;
    for (let i = 0; i < lot; i++) {
      const row = machine.load[i]!;
      const judged = gauged[i] === 1 && sent[i] === null;
      if (whole === null) machine.outlets[i] = judged ? this.judge(row, known[i] === 1) : (sent[i] ?? next);
      else {
        // Each part is sent away once: as one of its lot, whatever its own readings say.
        if (judged) this.take(row, known[i] === 1);
        machine.outlets[i] = whole(row);
      }
      parts.set(row, luck, again());
    }
    if (this.as !== null) this.as.slot = null;
    if (accepted) tally.lotsAccepted++;
    else tally.lotsRejected++;
    if (this.probe !== null) this.probe.judgedLot(accepted);
    this.switching.tell(accepted);
  }

  /** Marks the parts of the sample. */
  private draw(machine: Machine, sample: number, { gauged }: Findings): void {
    const { lot, luck } = this.rules;
    const { sorted } = this;
    for (let i = 0; i < lot; i++) sorted[i] = this.on.parts.get(machine.load[i]!, luck);
    sorted.sort();
    const last = sorted[sample - 1]!;
    // Numbers of 32 bits may be the same; the sample keeps its size.
    let left = sample;
    for (let i = 0; i < lot; i++) {
      const chosen = left > 0 && this.on.parts.get(machine.load[i]!, luck) <= last;
      gauged[i] = chosen ? 1 : 0;
      if (chosen) left--;
    }
  }

  /** How many parts of the sample will be found off limits. */
  private nonconforming(machine: Machine, { gauged }: Findings): number {
    let found = 0;
    for (let i = 0; i < machine.loaded; i++) if (gauged[i] === 1 && this.willBeOff(machine.load[i]!)) found++;
    return found;
  }

  private willBeOff(row: number): boolean {
    const { gaugings, appraisers, flaw } = this.on;
    if (flaw?.isAt(row) === true) return true;
    const appraiser = appraisers === null ? 0 : appraisers.of(row);
    for (const gauging of gaugings) if (gauging.isOff(gauging.read(row, appraiser))) return true;
    return false;
  }
}
