import { Fit } from '../line/fit.ts';
import type { Line } from '../line/line.ts';
import type { Machine, Operation } from '../line/machine.ts';
import type { Assemble } from '../line/operations/assemble.ts';
import { isBound } from '../scenario/bound.ts';
import { foreseen } from '../scenario/foreseen.ts';
import type { PolicySpec, Scenario } from '../scenario/scenario.ts';
import type { SpecOf } from '../scenario/stations.ts';
import type { Install } from './install.ts';

/** Where misfits of either kind are scrapped, so that to know one is to be done with it. */
interface Scrapped {
  readonly tight: boolean;
  readonly loose: boolean;
}

/** Assembles as before, but an attempt that is bound to end in scrap takes no time, as if it had been known before. */
class Seeing implements Operation {
  readonly finish: (machine: Machine) => void;
  private readonly inner: Operation;
  private readonly assembly: Assemble;
  private readonly scrapped: Scrapped;
  private readonly fit: Fit;

  constructor(inner: Operation, assembly: Assemble, scrapped: Scrapped) {
    const { parts, pairs, flaw } = assembly.on;
    this.inner = inner;
    this.assembly = assembly;
    this.scrapped = scrapped;
    this.fit = new Fit(parts, pairs, flaw);
    this.finish = (machine) => inner.finish!(machine);
  }

  ready(machine: Machine): boolean {
    return this.inner.ready(machine);
  }

  begin(machine: Machine): boolean {
    if (!this.inner.begin(machine)) return false;
    if (this.isInVain(machine)) machine.cycle = 0;
    return true;
  }

  private isInVain(machine: Machine): boolean {
    const hand = this.assembly.hands[machine.slot]!;
    if (hand.destined !== null) return false;
    const { fit, scrapped } = this;
    fit.judge(machine.load[0]!, hand.mate);
    const { forcing } = this.assembly.on;
    if (fit.fits || forcing?.closes(fit)) return false;
    // As the assembly tells them apart.
    const isTight = !fit.flawed && (forcing === null ? fit.missing >= fit.excess : fit.excess === 0);
    return isTight ? scrapped.tight : scrapped.loose;
  }
}

function seeAt(line: Line, { name, misfit, tight = misfit, loose = misfit }: SpecOf<'assemble'>): void {
  const scrapped = { tight: tight === 'scrap', loose: loose === 'scrap' };
  const assembly = line.assemblies.get(name)!;
  for (const machine of line.stations.get(name)!.machines)
    machine.wrap((inner) => new Seeing(inner, assembly, scrapped));
}

/** The scenario as a policy meets it: as it is written, but to one that foresees. */
export const foreseeing = (scenario: Scenario, policy: PolicySpec): Scenario =>
  isBound(policy) ? foreseen(scenario) : scenario;

/** The one door to true values: it opens to the policy that foresees, on a line that has not started, and to no other. */
export function seeTruth(line: Line, scenario: Scenario, policy: PolicySpec): void {
  if (!isBound(policy)) return;
  for (const station of scenario.stations) if (station.does === 'assemble') seeAt(line, station);
}

/** Nothing is left to do through the controls, which would show it no true values. */
export const foresee: Install<'foresee'> = () => null;
