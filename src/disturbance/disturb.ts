import { type Law, samplerOf } from '../kernel/distributions/index.ts';
import type { Line } from '../line/line.ts';
import { Counted } from '../line/operations/wrapped.ts';
import { Course } from '../line/upset.ts';
import { isNothing } from '../scenario/disturbances/nothing.ts';
import type { DisturbanceSpec } from '../scenario/disturbances.ts';
import { effectOf } from './effects.ts';
import { Episode } from './episode.ts';

/** Calls `then` once, as soon as so many parts are finished at a station, or have left the line as good. */
function afterParts(
  line: Line,
  { parts, of }: NonNullable<DisturbanceSpec['after']>,
  then: () => void,
): void {
  let left = parts;
  const count = (more: number) => {
    const before = left;
    left -= more;
    if (before > 0 && left <= 0) then();
  };
  if (of === undefined) line.good.leaving.push(() => count(1));
  else
    for (const machine of line.stations.get(of)!.machines) machine.wrap((inner) => new Counted(inner, count));
}

/** Lets the disturbances come over the line, each with draws of its own. One that comes to nothing is left out. */
export function disturb(line: Line, disturbances: readonly DisturbanceSpec[]): void {
  for (const spec of disturbances) {
    if (isNothing(spec)) continue;
    const draw = (purpose: string, law: Law) =>
      samplerOf(law, line.streams.of(`disturbance/${spec.name}/${purpose}`));
    const course =
      'ramp' in spec || 'fades' in spec ? new Course(spec.ramp ?? 0, spec.fades ?? 0) : new Course();
    const { at, after, againAfter, burst } = spec;
    const episode = new Episode(spec.name, line, effectOf(spec, { line, course, draw }), course, {
      at: at ? draw('at', at) : null,
      lasts: draw('for', spec.for),
      again: againAfter ? draw('again-after', againAfter) : null,
      burst: burst ? { times: burst.times, apart: draw('burst/apart', burst.apart) } : null,
    });
    if (after) afterParts(line, after, () => episode.come());
  }
}
