import { Buffer } from './buffer.ts';
import type { Line } from './line.ts';
import type { Place } from './place.ts';
import type { Station } from './station.ts';

/** Stations wait for each other in a circle: nothing among them will ever move again. */
export class StandstillError extends Error {
  constructor(circle: readonly Station[]) {
    const closed = Math.max(...circle.map((station) => station.blockedSince));
    const waits = circle.map(
      (station, i) =>
        `"${station.name}" waits for room in front of "${circle[(i + 1) % circle.length]!.name}"`,
    );
    super(
      `the line came to a standstill at ${closed} s: ${waits.join(', ')}. Give one of these stations a larger buffer (for rework, "buffer: unlimited")`,
    );
    this.name = 'StandstillError';
  }
}

/** Throws when stations of the line block each other in a circle. A circle, once closed, never opens. */
export function refuseStandstill(line: Line): void {
  for (const first of line.stations.values()) {
    const chain: Station[] = [];
    let at: Station | undefined = first;
    // Whether it is down besides makes no difference: what it has finished has nowhere to go.
    while (at?.blockedBy && !chain.includes(at)) {
      chain.push(at);
      const place: Place | undefined = at.blockedBy;
      at = place instanceof Buffer ? line.stations.get(place.consumer.name) : undefined;
    }
    if (at?.blockedBy) throw new StandstillError(chain.slice(chain.indexOf(at)));
  }
}
