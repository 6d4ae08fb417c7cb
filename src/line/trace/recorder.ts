import type { ResponseSpec } from '../../scenario/responses.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { Episodes } from '../episodes.ts';
import type { Line } from '../line.ts';
import { STATES, type State } from '../state.ts';
import { followCarriers } from './carrying.ts';
import { followDemand } from './finished-goods.ts';
import { followCrews } from './jobs.ts';
import { Log } from './log.ts';
import { followMoves } from './moves.ts';
import { followSights } from './sights.ts';
import { Steps } from './steps.ts';
import { Supply } from './supply.ts';
import { tap } from './tap.ts';
import type { Adjustment, Trace, TracedCrew, TracedDemand, TracedResponse, TracedStation } from './trace.ts';
import { Visits } from './visits.ts';

/** What is written down of a line once it is about to start. */
interface Followed {
  readonly log: Log;
  readonly supply: Supply;
  readonly stations: readonly TracedStation[];
  readonly crews: readonly TracedCrew[];
  readonly demand: TracedDemand | null;
}

/**
 * Writes down all that happens in one run. It looks on from outside: what it puts around the objects of a line draws
 * nothing and schedules nothing, so that the run is the same with and without it, and a line that nobody traces has
 * none of it.
 */
export class Recorder {
  readonly episodes = new Episodes();
  private readonly responses: TracedResponse[] = [];
  private readonly adjustments: Adjustment[] = [];
  private readonly most: number | undefined;
  private followed: Followed | null = null;

  /** @param most how many events of parts are written down; by default as many as fit into memory */
  constructor(most?: number) {
    this.most = most;
  }

  /** What comes back is told whether a response, by its place among these, is in force. */
  turned(responses: readonly ResponseSpec[], clock: { readonly now: number }) {
    return (response: number, on: boolean): void => {
      const { now } = clock;
      const open = this.responses.findLastIndex((it) => it.number === response + 1 && it.ended === null);
      if (!on && open >= 0) this.responses[open] = { ...this.responses[open]!, ended: now };
      if (!on || open >= 0) return;
      const spec = responses[response]!;
      const name = 'name' in spec && spec.name !== undefined ? spec.name : null;
      this.responses.push({ number: response + 1, does: spec.do, name, began: now, ended: null });
    };
  }

  /** Follows a line, of which all is built that there will be, before its first part. It throws as it runs: TraceTooLongError. */
  follow(line: Line, scenario: Scenario): void {
    const { warmUp, length } = scenario.run;
    const log = new Log(line, warmUp + length, this.most);
    const supply = new Supply(line);
    // Before the moves, as a part leaves its carrier before it leaves the line.
    followCarriers(line, scenario, log);
    const levels = followMoves(line, log);
    const demand = followDemand(line, scenario.demand, log);
    const crews = followCrews(line, scenario);
    followSights(line, log, supply);
    for (const [name, { setting }] of line.settings)
      for (const how of ['adjust', 'retarget'] as const)
        tap(setting, how, (inner) => (to, now) => {
          this.adjustments.push({ at: now, setting: name, how, to });
          inner(to, now);
        });
    const stations = scenario.stations.map((spec): TracedStation => {
      const { machines, inbox } = line.stations.get(spec.name)!;
      const level = levels.get(spec.name);
      return {
        ...{ name: spec.name, does: spec.does },
        buffer: level && inbox ? { places: inbox.capacity, level } : null,
        machines: machines.map((machine) => {
          machine.wrap((inner) => new Visits(inner, spec.name, line, log, supply));
          const states = new Steps<State>(STATES[machine.state]!);
          machine.watches ??= [];
          machine.watches.push({ enters: (_, state) => states.set(log.now, STATES[state]!) });
          return { name: machine.name, states };
        }),
      };
    });
    this.followed = { log, supply, stations, crews, demand };
  }

  /** All that was written down, once the run is over. */
  trace({ run }: Scenario, policy: string, seed: number): Trace {
    const { log, supply, stations, crews, demand } = this.followed!;
    return {
      ...{ policy, seed, warmUp: run.warmUp, end: run.warmUp + run.length, stations },
      ...{ stocks: supply.traced(), crews, demand },
      ...{ parts: log.parts, events: log.events, truths: log.truths },
      disturbances: this.episodes.all,
      responses: this.responses,
      adjustments: this.adjustments,
    };
  }
}
