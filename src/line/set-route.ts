import type { Line } from './line.ts';

/** What sends the parts of a station to another, by its name, from then on; null for where they always go. */
export function setRoute(line: Line, from: string): (to: string | null) => void {
  const detour = line.detours.get(from)!;
  detour.mayTurn = true;
  line.done.set(`rerouted_${from}_parts`, () => detour.turned);
  return (to) => {
    detour.turnTo(to === null ? null : line.entrance(to));
    // Parts that go past the station wait there, too.
    for (const station of line.stations.values()) station.retry();
  };
}
