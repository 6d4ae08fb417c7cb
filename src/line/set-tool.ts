import type { Line } from './line.ts';

/**
 * Lets each machine of a trimming station renew its tool, by the set-up or maintenance of that name or by the only one
 * that does; what comes back does so whenever it is called.
 */
export function setTool(line: Line, station: string, by?: string): () => void {
  const { stations, toolChanges, done } = line;
  const { machines } = stations.get(station)!;
  const changes = toolChanges.filter(
    ({ machine, task }) => machines.includes(machine) && (by === undefined || task.name === by),
  );
  let asked = 0;
  done.set(`tool_changes_${station}`, () => asked);
  return () => {
    asked += changes.length;
    for (const { machine, task } of changes) {
      task.fallDue();
      // An idle machine does it at once.
      if (line.started) machine.wake();
    }
  };
}
