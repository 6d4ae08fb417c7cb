import type { Line } from './line.ts';
import type { Machine } from './machine.ts';

/** Stations wait for each other in a circle: nothing among them will ever move again. */
export class StandstillError extends Error {
  constructor(
    waits: readonly { readonly who: string; readonly forRoomAt: readonly string[] }[],
    time: number,
  ) {
    const told = waits.map(
      ({ who, forRoomAt }) => `"${who}" waits for room in front of "${forRoomAt.join('" or "')}"`,
    );
    super(
      `the line came to a standstill at ${time} s: ${told.join(', ')}. Give one of these stations a larger buffer (for rework, "buffer: unlimited")`,
    );
    this.name = 'StandstillError';
  }
}

/** The stations behind the doors that a blocked machine waits at; null when a door will open by itself. */
function waitedFor(machine: Machine): readonly string[] | null {
  const blocked = machine.blockedBy;
  const doors = blocked?.place.doors(blocked.row);
  if (!doors || doors.some((door) => door.open)) return null;
  return [...new Set(doors.map((door) => door.consumer.name))];
}

/**
 * Called when a machine is blocked. Throws when it waits only for machines that are blocked themselves and wait
 * only for such machines in turn: a circle, once closed, never opens. Whether one of them is down besides makes no
 * difference, for what it has finished has nowhere to go.
 * @param now present time, s
 * @throws StandstillError
 */
export function refuseStandstill(line: Line, first: Machine, now: number): void {
  const waits = new Map<Machine, readonly string[]>([[first, []]]);
  for (const [machine] of waits) {
    const behind = waitedFor(machine);
    if (!behind) return;
    waits.set(machine, behind);
    for (const name of behind) {
      for (const other of line.stations.get(name)!.machines) if (!waits.has(other)) waits.set(other, []);
    }
  }
  // Of all that stand still, tell of those that this one waits for and that wait for it: the knot itself.
  const chain: Machine[] = [];
  let at = first;
  while (!chain.includes(at)) {
    chain.push(at);
    at = line.stations.get(waits.get(at)![0]!)!.machines[0]!;
  }
  const knot = chain.slice(chain.indexOf(at));
  throw new StandstillError(
    knot.map((machine) => ({ who: machine.name, forRoomAt: waits.get(machine)! })),
    now,
  );
}
