import type { BufferSpec } from '../scenario/buffers.ts';
import { reroutesIn } from '../scenario/reroutes.ts';
import type { RouteSpec } from '../scenario/routes.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StationSpec } from '../scenario/stations.ts';
import { cut, printable, widthOf, wrap } from './columns.ts';
import { durationText } from './duration.ts';
import { fixed } from './format.ts';
import { lawText } from './law-text.ts';
import { counted } from './words.ts';

function bufferText({ places, transit }: BufferSpec): string {
  if (transit > 0) return `(conveyor of ${places}, ${durationText(transit)})`;
  return places === Number.POSITIVE_INFINITY ? '(unlimited)' : `(${places})`;
}

/** What stands behind a station's name: machines, and how it takes its parts. */
function manner(spec: StationSpec): string {
  const machines = spec.machines > 1 ? ` x${spec.machines}` : '';
  switch (spec.does) {
    case 'form':
      return `${machines}${spec.perSheet > 1 ? `, ${spec.perSheet} a sheet` : ''}`;
    case 'assemble':
      return `${machines} + ${spec.takes.map(printable).join(' + ')}`;
    case 'work':
      return `${machines}${spec.batch > 1 ? `, ${spec.batch} at a time` : ''}`;
    case 'gauge':
      return `${machines}${spec.inspection.by === 'plan' ? `, ${spec.inspection.lot} at a time` : ''}`;
    case 'arrive':
      return ` (${lawText(spec.cycle)} apart${spec.whenFull === 'lost' ? ', lost when full' : ''})`;
    default:
      return machines;
  }
}

function label(spec: StationSpec): string {
  const places = 'buffer' in spec && spec.buffer !== undefined ? `${bufferText(spec.buffer)} ` : '';
  return `${places}${printable(spec.name)}${manner(spec)}`;
}

/** What stands before one of several ways: its share, its rank, or that the freest is chosen. */
function wayText({ by, routes }: RouteSpec, index: number): string {
  switch (by) {
    case 'only':
      return '';
    case 'share': {
      const percentage = routes[index]!.share * 100;
      return `${fixed(percentage, Number.isInteger(Number(percentage.toPrecision(10))) ? 0 : 1)} %: `;
    }
    case 'priority':
      return `${['1st', '2nd', '3rd'][index] ?? `${index + 1}th`}: `;
    case 'state':
      return 'freest: ';
  }
}

/** Pieces of the drawing, broken between two of them. */
function wrapped(steps: readonly string[], width: number): string[] {
  const lines: string[] = [];
  let line = '  ';
  for (const [i, step] of steps.entries()) {
    const short = cut(step, width - 6);
    const piece = i === 0 ? short : ` > ${short}`;
    if (widthOf(line + piece) > width && line.trim() !== '') {
      lines.push(line);
      line = `    ${piece.trimStart()}`;
    } else line += piece;
  }
  return [...lines, line];
}

/** Draws chains of stations, each station once; where a chain comes to one that is drawn already, it ends at its name. */
class Pen {
  readonly lines: string[] = [];
  readonly #scenario: Scenario;
  readonly #width: number;
  readonly #seen = new Set<string>();

  constructor(scenario: Scenario, width: number) {
    this.#scenario = scenario;
    this.#width = width;
  }

  hasDrawn(name: string): boolean {
    return this.#seen.has(name);
  }

  /** The chain by the first of the ways, then one from each branch by each further way. */
  draw(before: readonly string[], first: string, firstWay = ''): void {
    const steps = [...before];
    const branches: [StationSpec, number][] = [];
    let way = firstWay;
    let name = first;
    for (;;) {
      const spec = this.#scenario.stations.find((station) => station.name === name);
      if (!spec || this.#seen.has(name)) {
        steps.push(`${way}${printable(name)}`);
        break;
      }
      this.#seen.add(name);
      steps.push(`${way}${label(spec)}`);
      branches.push(...spec.to.routes.slice(1).map((_, i): [StationSpec, number] => [spec, i + 1]));
      way = wayText(spec.to, 0);
      name = spec.to.routes[0]!.to;
    }
    this.lines.push(...wrapped(steps, this.#width));
    for (const [{ name: from, to }, index] of branches) {
      this.draw([printable(from)], to.routes[index]!.to, wayText(to, index));
    }
  }
}

/** What the signs of the drawing mean, as far as they occur, by the first of each. */
function key({ stations }: Scenario): string[] {
  const goes = (by: RouteSpec['by']) => stations.find(({ to }) => to.by === by);
  const places = stations
    .map((spec) => ('buffer' in spec && spec.buffer?.transit === 0 ? spec.buffer.places : Number.NaN))
    .find(Number.isFinite);
  const several = stations.find(({ machines }) => machines > 1)?.machines;
  const share = goes('share');
  return [
    ...(places === undefined ? [] : [`(${places}): ${counted(places, 'place')} for parts that wait`]),
    ...(several === undefined ? [] : [`x${several}: ${several} machines`]),
    ...(share ? [`${wayText(share.to, 0)}so many of the parts go this way`] : []),
    ...(goes('priority') ? ['1st, 2nd: the first way that has room'] : []),
    ...(goes('state') ? ['freest: the way to the station that is up and has fewest parts'] : []),
  ];
}

/**
 * The line in text: from each source along the stations to the way out, places of the buffer in front of a station
 * in brackets. Further ways from a branch begin anew at its name; circles end where they come back.
 */
export function lineDrawing(scenario: Scenario, width: number): string[] {
  const pen = new Pen(scenario, width);
  for (const spec of scenario.stations) {
    if (spec.does === 'arrive') pen.draw([], spec.name);
    else if ((spec.does === 'form' || spec.does === 'work') && spec.takes !== undefined)
      pen.draw([printable(spec.takes)], spec.name);
  }
  for (const [at, to] of reroutesIn(scenario)) {
    if (!pen.hasDrawn(to)) pen.draw([printable(at)], to, 'by a policy: ');
  }
  for (const { name } of scenario.stations) {
    if (!pen.hasDrawn(name)) pen.draw(['rejects, where sent'], name);
  }
  const signs = key(scenario);
  if (signs.length === 0) return pen.lines;
  return [...pen.lines, ...wrap(signs.join('; '), width - 2).map((line) => `  ${line}`)];
}
