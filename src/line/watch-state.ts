import type { ShownState, StationCondition } from '../scenario/conditions/station.ts';
import type { Line } from './line.ts';
import { STATES } from './state.ts';
import { StateWatch } from './state-watch.ts';

/** Tells whether machines of a station have been in certain states for so long: once the line has started, and at each change from then on. */
export function watchState(line: Line, condition: StationCondition, tell: (holds: boolean) => void): void {
  const { station, is, for: long, machines: least } = condition;
  const { machines } = line.stations.get(station)!;
  const counts = STATES.map((state) => is.includes(state.replace('_', '-') as ShownState));
  const watch = new StateWatch(
    station,
    { counts, for: long, least: least ?? machines.length },
    machines.map(({ state }) => state),
    line.calendar,
    tell,
  );
  for (const machine of machines) machine.watches = [...(machine.watches ?? []), watch];
}
