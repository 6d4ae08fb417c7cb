import type { Trace } from '../../line/trace/trace.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { padLeft, padRight, printable, widthOf, wrap } from '../columns.ts';
import { clockText } from './clock-text.ts';
import { partLines } from './part-lines.ts';

/** A name of a station longer than this is broken. */
const WIDEST_STATION = 18;

/** `In truth there was meanwhile: heater runs cold from 2:46:10 to 7:20:00.` */
function meanwhile({ disturbances, parts, end }: Trace, part: number): string[] {
  const { started, left } = parts[part - 1]!;
  const there = disturbances.filter((it) => it.begin <= (left?.at ?? end) && (it.end ?? end) >= started);
  if (there.length === 0) return ['In truth nothing disturbed the line meanwhile.'];
  const each = there.map(
    ({ name, begin, end: over }) =>
      `${name} from ${clockText(begin)}${over === null ? ' on' : ` to ${clockText(over)}`}`,
  );
  return [`In truth there was meanwhile: ${each.join('; ')}.`];
}

/** The story of one part, a line for each thing that happened to it. */
export function partText(
  trace: Trace,
  scenario: Scenario,
  part: number,
  { withTruth, width }: { readonly withTruth: boolean; readonly width: number },
): string {
  const lines = partLines(trace, scenario, part, withTruth);
  const clocks = lines.map(({ at }) => clockText(at));
  const first = Math.max(...clocks.map((clock) => clock.length));
  const second = Math.min(
    WIDEST_STATION,
    Math.max(...lines.map(({ station }) => widthOf(printable(station)))),
  );
  const rows = lines.flatMap(({ station, text }, i) => {
    const names = wrap(printable(station), second);
    const said = wrap(printable(text), width - first - second - 4, '  ');
    return Array.from({ length: Math.max(names.length, said.length) }, (_, k) =>
      `${padLeft(k === 0 ? clocks[i]! : '', first)}  ${padRight(names[k] ?? '', second)}  ${said[k] ?? ''}`.trimEnd(),
    );
  });
  const { policy, seed, parts } = trace;
  const notes = withTruth
    ? [...meanwhile(trace, part), 'What begins with "in truth" no gauge, no reader and no policy sees.']
    : ['What it truly is, and no policy sees, is told with --true-values.'];
  return [
    ...wrap(printable(scenario.title), width),
    ...wrap(printable(`Part ${part} of ${parts.length}, policy "${policy}", seed ${seed}`), width),
    '',
    ...rows,
    '',
    ...notes.flatMap((note) => wrap(printable(note), width)),
    '',
  ].join('\n');
}
