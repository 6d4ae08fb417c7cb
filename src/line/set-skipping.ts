import type { Line } from './line.ts';
import type { Skipping } from './skip/bypass.ts';

/** What lets parts go past a station from then on; null for none. */
export function setSkipping(line: Line, name: string): (skipping: Skipping | null) => void {
  const bypass = line.bypasses.get(name)!;
  const { owed } = bypass;
  bypass.mayTurn = true;
  line.done.set(`skipped_${name}_parts`, () => bypass.skipped);
  if (owed) line.done.set(`made_up_${name}_parts`, () => owed.madeUp);
  return (skipping) => {
    bypass.turnTo(skipping);
    // Whatever waits for room there may find it elsewhere now.
    for (const station of line.stations.values()) station.retry();
  };
}
