import type { Door, Waiter } from './place.ts';

/** Stations wait for each other in a circle: nothing among them will ever move again. */
export class StandstillError extends Error {
  /** @param waits who waits for what, in words */
  constructor(waits: readonly string[], time: number, advice: string) {
    super(`the line came to a standstill at ${Number(time.toFixed(1))} s: ${waits.join(', ')}. ${advice}`);
    this.name = 'StandstillError';
  }
}

/** The doors of which one must open for a blocked machine to go on; null when one will open without its help. */
function shutDoors(machine: Waiter): readonly Door[] | null {
  const doors = machine.blockedAt?.doors(machine.blockedRow);
  return !doors || doors.some((door) => door.open) ? null : doors;
}

const PLAIN_STEPS = 1000;

/** The plain case, without any list: one machine waits for one other, and so on to one that is not blocked. */
function endsFreely(first: Waiter): boolean {
  let at = first;
  // A way that has not ended by then leads into a circle.
  for (let steps = 0; steps < PLAIN_STEPS; steps++) {
    const doors = at.blockedAt?.doors(at.blockedRow);
    if (!doors) return true;
    const door = doors[0]!;
    if (doors.length > 1 || door.consumer.machines.length > 1) return false;
    if (door.open) return true;
    at = door.consumer.machines[0]!;
    if (at === first) return false;
  }
  return false;
}

/**
 * Called when a machine is blocked. Throws when it waits only for machines that are blocked themselves and wait
 * only for such machines in turn: a circle, once closed, never opens. Whether one of them is down besides makes no
 * difference, for what it has finished has nowhere to go.
 * @param now present time, s
 * @throws StandstillError
 */
export function refuseStandstill(first: Waiter, now: number): void {
  if (endsFreely(first)) return;
  const waits = new Map<Waiter, readonly Door[]>([[first, []]]);
  for (const [machine] of waits) {
    const doors = shutDoors(machine);
    if (!doors) return;
    waits.set(machine, doors);
    for (const { consumer } of doors) {
      for (const other of consumer.machines) if (!waits.has(other)) waits.set(other, []);
    }
  }
  // Of all that stand still, tell of those that this one waits for and that wait for it: the knot itself.
  const chain: Waiter[] = [];
  let at = first;
  while (!chain.includes(at)) {
    chain.push(at);
    at = waits.get(at)![0]!.consumer.machines[0]!;
  }
  const knot = chain.slice(chain.indexOf(at));
  throw new StandstillError(
    knot.map((machine) => {
      const doors = [...new Set(waits.get(machine)!.map((door) => door.consumer.name))];
      return `"${machine.name}" waits for room in front of "${doors.join('" or "')}"`;
    }),
    now,
    'Give one of these stations a larger buffer (for rework, "buffer: unlimited")',
  );
}
