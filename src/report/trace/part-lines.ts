import type { PartEvent } from '../../line/trace/part-events.ts';
import type { Trace, TracedDemand, Truth } from '../../line/trace/trace.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import { durationText } from '../duration.ts';
import { toMillisecond } from './clock-text.ts';
import { ATTEMPTS, CAUSES, DONE, lengthText, piecesText, pieceText } from './event-words.ts';

/** What must be known of a station to tell what it did. */
export interface StationTold {
  readonly name: string;
  readonly does: StationSpec['does'];
  readonly machines: number;
  readonly perSheet?: number;
  readonly fits?: readonly { readonly hole: string; readonly shaft: string }[];
}

interface Stations {
  readonly stations: readonly StationTold[];
}

/** One thing that is told of a part. */
export interface StoryLine {
  readonly at: number;
  readonly station: string;
  readonly text: string;
}

const FLAWS = { incomplete: CAUSES.incomplete, webbed: CAUSES.webbed, thin: CAUSES.thin } as const;

/** What takes a part off its machine. */
const MOVES: ReadonlySet<PartEvent['kind']> = new Set([
  ...(['off-carrier', 'waits', 'passes', 'kept', 'good', 'turned-away'] as const),
]);

const timed = <Of extends { readonly at: number }>(one: Of): Of => ({ ...one, at: toMillisecond(one.at) });

/** Tells the events of one part in their order. */
class Teller {
  private readonly scenario: Stations;
  private readonly events: readonly PartEvent[];

  /** @param events those of the part */
  constructor(events: readonly PartEvent[], scenario: Stations) {
    this.scenario = scenario;
    this.events = events;
  }

  /** @param truths to be told where they came about */
  lines(truths: readonly Truth[]): StoryLine[] {
    const told = this.events.map((event, i) => ({ event, text: this.text(event, i) }));
    const lines: StoryLine[] = [];
    let next = 0;
    for (const [i, { event, text }] of told.entries()) {
      lines.push(...this.movesOn(event, i));
      if (text !== null) lines.push({ at: event.at, station: event.station, text });
      const after = told[i + 1]?.event;
      while (next < truths.length && isBefore(truths[next]!, after)) {
        const { at, station } = truths[next]!;
        lines.push({ at, station, text: `in truth ${this.truth(truths[next++]!)}` });
      }
    }
    return lines;
  }

  /** That it stood on the machine after its cycle was over, which no event says. */
  private movesOn({ at, kind }: PartEvent, i: number): StoryLine[] {
    if (this.events[i - 1]?.kind === 'off-carrier') return [];
    const before = this.events
      .slice(0, i)
      .findLast((event) => event.kind === 'ends' || event.kind === 'begins');
    if (!MOVES.has(kind) || before?.kind !== 'ends' || before.at === at) return [];
    return [
      { at, station: before.station, text: `leaves the machine ${durationText(at - before.at)} later` },
    ];
  }

  private does(station: string) {
    return this.scenario.stations.find(({ name }) => name === station)!;
  }

  /** The last of these kinds before the event at this place, at the same station. */
  private before(i: number, kind: PartEvent['kind']): PartEvent | undefined {
    const { station } = this.events[i]!;
    return this.events.slice(0, i).findLast((event) => event.kind === kind && event.station === station);
  }

  /** Null for what the next line tells, too. */
  private text(event: PartEvent, i: number): string | null {
    switch (event.kind) {
      case 'started': {
        if (event.from === null) return 'comes in';
        const spec = this.does(event.station);
        const cavity = (spec.perSheet ?? 1) > 1 ? `, in cavity ${event.cavity}` : '';
        return `started from ${pieceText(event.from)}${cavity}`;
      }
      case 'waits':
        return this.events[i + 1]?.at === event.at ? null : 'waits in front';
      case 'passes':
        return 'goes past';
      case 'kept':
        return 'kept, to be done here before it leaves';
      case 'on-carrier':
        return `put on a carrier (${event.carriers})`;
      case 'off-carrier':
        return `taken off its carrier (${event.carriers})`;
      case 'begins':
        return this.begins(event, i);
      case 'ends':
        return this.ends(event, i);
      case 'read': {
        const how = {
          read: 'mark read',
          'by-hand': 'mark not read, found out by hand',
          'not-read': 'mark not read',
        };
        return `${how[event.how]}${event.sent ? '; sent to be marked anew' : ''}`;
      }
      case 'gauged':
        return gaugedText(event);
      case 'tried':
        return `tried${event.mates.length > 0 ? ` with ${piecesText(event.mates)}` : ''}: ${ATTEMPTS[event.result]}`;
      case 'aside':
        return `put aside for want of a mate${event.mates.length > 0 ? `, with ${piecesText(event.mates)}` : ''}`;
      case 'good':
        return `leaves as good, ${durationText(event.at - this.events[0]!.at)} after it was started`;
      case 'scrapped':
        return `scrapped: ${CAUSES[event.why]}`;
      case 'turned-away':
        return 'turned away for want of room';
    }
  }

  private begins({ station, machine, at }: Extract<PartEvent, { kind: 'begins' }>, i: number): string | null {
    if (this.events[i - 1]?.kind === 'started') return null;
    const by = this.does(station).machines > 1 ? `begun by ${machine}` : 'begun';
    const waited = at - (this.before(i, 'waits')?.at ?? at);
    return waited > 0 ? `${by}, after ${durationText(waited)} of waiting` : by;
  }

  private ends({ station, at }: PartEvent, i: number): string | null {
    const next = this.events[i + 1]?.kind;
    if (next === 'gauged' || next === 'tried' || next === 'aside') return null;
    const begun = this.before(i, 'begins')?.at;
    const sent = this.events.slice(0, i).findLast(({ kind }) => kind === 'read' || kind === 'begins');
    if (sent?.kind === 'read' && sent.sent) return 'sent on its way to be marked anew';
    const after =
      begun === undefined || begun === at ? '' : `, ${durationText(at - begun)} after it was begun`;
    return `${DONE[this.does(station).does]}${after}`;
  }

  private truth(truth: Truth): string {
    switch (truth.kind) {
      case 'size':
        return `${truth.feature} is ${lengthText(truth.size)}`;
      case 'flaw':
        return `it is ${FLAWS[truth.flaw].replace(/^its wall is/, 'of a wall that is')}, which nobody sees`;
      case 'mark':
        return truth.took
          ? `the mark took${truth.grade ? `, grade ${truth.grade}` : ''}`
          : 'the mark did not take';
      case 'clearances': {
        const { fits = [] } = this.does(truth.station);
        const each = fits.map(
          ({ hole, shaft }, i) => `${hole} \u2212 ${shaft} = ${lengthText(truth.clearances[i]!)}`,
        );
        return `the clearance is ${each.join('; ')}`;
      }
    }
  }
}

/** Whether a truth came about before the event that is told next. */
const isBefore = (truth: Truth, next: PartEvent | undefined): boolean =>
  next === undefined ||
  truth.at < next.at ||
  (truth.at === next.at &&
    (truth.station !== next.station || next.kind === 'good' || next.kind === 'scrapped'));

function gaugedText({ readings, known, off }: Extract<PartEvent, { kind: 'gauged' }>): string {
  const each = readings.map(
    ({ feature, reading, off }) => `${feature} ${lengthText(reading)}${off ? ' (off limits)' : ''}`,
  );
  const seen = off && readings.every((reading) => !reading.off) ? '; seen to be flawed' : '';
  return `reads ${each.join(', ')}${seen}${known ? '' : '; of which part is not known'}`;
}

/** Who came from a crew while the part was on a machine, and what for. */
function served(events: readonly PartEvent[], crews: Trace['crews'], end: number): StoryLine[] {
  return events.flatMap((event, i) => {
    if (event.kind !== 'begins') return [];
    const { at: from, station, machine } = event;
    const until = events.slice(i + 1).find(({ kind }) => MOVES.has(kind) || kind === 'scrapped')?.at ?? end;
    return crews.flatMap(({ name, number, jobs }) =>
      jobs
        .filter((it) => it.station === station && it.machine === machine)
        .map((it) => ({
          ...it,
          came: toMillisecond(it.came),
          left: it.left === null ? null : toMillisecond(it.left),
        }))
        .filter(({ came }) => came >= from && came < until)
        .map(({ member, job, came, left }): StoryLine => {
          const who = number > 1 ? `${name} ${member}` : name;
          const done = left === null ? '' : `, done ${durationText(left - came)} later`;
          return { at: came, station, text: `${who} comes for "${job}"${done}` };
        }),
    );
  });
}

const FINISHED_GOODS = 'finished goods';

/** What became of a part that left as good, where good assemblies are ordered. */
function handedOver({ handed }: TracedDemand, part: number, left: number, end: number): StoryLine {
  const found = handed.find((one) => one.part === part);
  const own = found && timed(found);
  if (!own) return { at: end, station: FINISHED_GOODS, text: 'still there as the run ends' };
  const after = own.at > left ? `, after ${durationText(own.at - left)} there` : ' at once';
  return { at: own.at, station: FINISHED_GOODS, text: `goes to order ${own.order}${after}` };
}

/** What is known of a run to tell of its parts. */
export type Told = Pick<Trace, 'events' | 'truths' | 'parts' | 'end' | 'crews' | 'demand'>;

/** What happened to a part, line by line; what it truly was is told only where that is asked for. */
export function partLines(trace: Told, scenario: Stations, part: number, withTruth: boolean): StoryLine[] {
  const { crews, demand } = trace;
  const end = toMillisecond(trace.end);
  const truths = withTruth ? trace.truths.filter((truth) => truth.part === part).map(timed) : [];
  const events = trace.events.filter((event) => event.part === part).map(timed);
  const told = new Teller(events, scenario).lines(truths);
  const lines = [...told, ...served(events, crews, end)].sort((one, other) => one.at - other.at);
  const { left } = trace.parts[part - 1]!;
  if (left === null) {
    const { station } = told.at(-1)!;
    return [...lines, { at: end, station, text: 'still in the line as the run ends' }];
  }
  return demand && left.as === 'good'
    ? [...lines, handedOver(demand, part, toMillisecond(left.at), end)]
    : lines;
}
