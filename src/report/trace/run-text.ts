import type { PartEvent } from '../../line/trace/part-events.ts';
import type { Trace } from '../../line/trace/trace.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { padLeft, padRight, printable, widthOf, wrap } from '../columns.ts';
import { durationText } from '../duration.ts';
import { counted, listed } from '../words.ts';
import { clockText } from './clock-text.ts';
import { CAUSES } from './event-words.ts';

/** How many scrapped parts are named. */
const NAMED = 8;
/** How many times that something was there. */
const SPANS = 12;

type Scrapped = Extract<PartEvent, { kind: 'scrapped' }>;
export const scrappedIn = ({ events }: Trace): Scrapped[] =>
  events.filter((event): event is Scrapped => event.kind === 'scrapped');

/** How often each cause sent parts to scrap, the commonest first. */
export function causesIn(scrapped: readonly Scrapped[]): [Scrapped['why'], number][] {
  const counts = new Map<Scrapped['why'], number>();
  for (const { why } of scrapped) counts.set(why, (counts.get(why) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one);
}

function totals({ parts, warmUp, end }: Trace, scrapped: readonly Scrapped[]): string[] {
  const left = (as: string) => parts.filter((part) => part.left?.as === as).length;
  const away = left('turned-away');
  const fates = [
    `${left('good')} left as good`,
    `${scrapped.length} were scrapped`,
    ...(away > 0 ? [`${away} were turned away`] : []),
    `${parts.filter((part) => part.left === null).length} were in the line at the end`,
  ];
  const length =
    warmUp > 0 ? `${durationText(end)}, of which ${durationText(warmUp)} to warm up` : durationText(end);
  const why = causesIn(scrapped).map(([cause, count]) => `${count} ${CAUSES[cause]}`);
  return [
    `Of ${counted(parts.length, 'part')} started in ${length}, ${listed(fates)}.`,
    ...(why.length > 0 ? [`Scrapped: ${why.join('; ')}.`] : []),
  ];
}

/** Rows of cells as lines, all but the last column padded; the last is wrapped. */
function table(rows: readonly (readonly string[])[], width: number): string[] {
  const last = rows[0]!.length - 1;
  const widths = rows[0]!.slice(0, last).map((_, i) => Math.max(...rows.map((row) => widthOf(row[i]!))));
  const room = width - widths.reduce((sum, own) => sum + own + 2, 0);
  return rows.flatMap((row) => {
    const start = widths
      .map((own, i) => (i === 0 ? padLeft(row[i]!, own) : padRight(row[i]!, own)))
      .join('  ');
    const [head = '', ...more] = wrap(row[last]!, room);
    return [`${start}  ${head}`.trimEnd(), ...more.map((text) => ' '.repeat(width - room) + text)];
  });
}

const span = (begin: number, end: number | null) =>
  `${clockText(begin)} ${end === null ? 'on' : `to ${clockText(end)}`}`;

/** What was there from when to when, with a heading; nothing where there was nothing. */
function spans(heading: string, rows: readonly (readonly [string, string])[], width: number): string[] {
  if (rows.length === 0) return [];
  const lines = table(
    rows.slice(0, SPANS).map(([when, what]) => [when, printable(what)]),
    width,
  );
  const more = rows.length > SPANS ? [`and ${rows.length - SPANS} more times, which --json lists`] : [];
  return [...wrap(heading, width), ...lines, ...more, ''];
}

/**
 * What a run came to, and which parts may be asked for.
 * @param ask the command that tells of one part, without its number
 */
export function runText(trace: Trace, scenario: Scenario, width: number, ask: string): string {
  const scrapped = scrappedIn(trace);
  const named = scrapped.slice(0, NAMED);
  const rows = named.map(({ at, part, station, why }) => [
    `part ${part}`,
    ...[clockText(at), printable(station), CAUSES[why]],
  ]);
  const example = named[0]?.part ?? 1;
  return [
    ...wrap(printable(scenario.title), width),
    ...wrap(printable(`One run, policy "${trace.policy}", seed ${trace.seed}`), width),
    '',
    ...totals(trace, scrapped).flatMap((text) => wrap(text, width)),
    '',
    ...(rows.length > 0
      ? [scrapped.length > NAMED ? `The first ${NAMED} that were scrapped:` : 'Those that were scrapped:']
      : []),
    ...(rows.length > 0 ? [...table(rows, width), ''] : []),
    ...spans(
      'What disturbed the line, which no policy is told:',
      trace.disturbances.map(({ name, begin, end }) => [span(begin, end), name]),
      width,
    ),
    ...spans(
      'When responses of the policy were in force:',
      trace.responses.map(({ does, name, began, ended }) => [
        span(began, ended),
        name === null ? does : `${does} (${name})`,
      ]),
      width,
    ),
    // Not broken in two, so that it can be copied.
    ...(trace.parts.length > 0 ? ['To follow one part:', `  ${ask} --part ${example}`, ''] : []),
  ].join('\n');
}
