import type { BufferSpec } from '../scenario/buffers.ts';
import { routesOf } from '../scenario/routes.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StationSpec } from '../scenario/stations.ts';
import { printable } from './columns.ts';
import { durationText } from './duration.ts';

function bufferText({ places, transit }: BufferSpec): string {
  const room = places === Number.POSITIVE_INFINITY ? 'unlimited' : String(places);
  return transit > 0 ? `(${room}, ${durationText(transit)})` : `(${room})`;
}

function label(spec: StationSpec): string {
  const name = printable(spec.name);
  const places = 'buffer' in spec && spec.buffer !== undefined ? `${bufferText(spec.buffer)} ` : '';
  if (spec.does === 'form') return `${name} x${spec.perSheet}`;
  if (spec.does === 'assemble') return `${places}${name} + ${spec.takes.map(printable).join(' + ')}`;
  return `${places}${name}`;
}

/** The chain of stations that parts pass from `first`, up to `seen` ones or the way out. */
function chain(first: StationSpec, scenario: Scenario, seen: Set<string>): string[] {
  const steps: string[] = [];
  let at: StationSpec | undefined = first;
  while (at) {
    if (seen.has(at.name)) {
      steps.push(printable(at.name));
      return steps;
    }
    seen.add(at.name);
    steps.push(label(at));
    const to: string = routesOf(at)[0]!;
    if (to === 'good') steps.push('good');
    at = scenario.stations.find(({ name }) => name === to);
  }
  return steps;
}

function wrapped(steps: readonly string[], width: number): string[] {
  const lines: string[] = [];
  let line = '  ';
  for (const [i, step] of steps.entries()) {
    const piece = i === 0 ? step : ` > ${step}`;
    if (line.length + piece.length > width && line.trim() !== '') {
      lines.push(line);
      line = `    ${piece.trimStart()}`;
    } else line += piece;
  }
  return [...lines, line];
}

/**
 * The line in text: from each stock along the stations to the way out, places of the buffer in front of a
 * station in brackets; branches that feed back end at the station they feed.
 */
export function lineDrawing(scenario: Scenario, width: number): string[] {
  const seen = new Set<string>();
  const lines = scenario.stations.flatMap((spec) =>
    (spec.does === 'form' || spec.does === 'work') && spec.takes !== undefined
      ? wrapped([printable(spec.takes), ...chain(spec, scenario, seen)], width)
      : [],
  );
  for (const spec of scenario.stations) {
    if (!seen.has(spec.name))
      lines.push(...wrapped(['rejects, where sent', ...chain(spec, scenario, seen)], width));
  }
  return lines;
}
