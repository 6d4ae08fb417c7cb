import { samplerOf } from '../kernel/distributions/index.ts';
import type { Line } from '../line/line.ts';
import type { DisturbanceSpec } from '../scenario/disturbances.ts';
import { effectOf } from './effects.ts';
import { Episode } from './episode.ts';

/** Lets the disturbances come over the line, each with draws of its own. */
export function disturb(line: Line, disturbances: readonly DisturbanceSpec[]): void {
  for (const spec of disturbances) {
    const stream = (purpose: string) => line.streams.of(`disturbance/${spec.name}/${purpose}`);
    new Episode(spec.name, line, effectOf(spec, line), {
      at: samplerOf(spec.at, stream('at')),
      lasts: samplerOf(spec.for, stream('for')),
      again: spec.againAfter ? samplerOf(spec.againAfter, stream('again-after')) : null,
    });
  }
}
