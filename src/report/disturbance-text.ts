import type { Law } from '../kernel/distributions/index.ts';
import type { BreakdownSpec } from '../scenario/breakdowns.ts';
import { isNothing } from '../scenario/disturbances/nothing.ts';
import type { DisturbanceSpec } from '../scenario/disturbances.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { disturbedText } from './disturbed-text.ts';
import { durationText } from './duration.ts';
import { lawText } from './law-text.ts';
import { counted } from './words.ts';

/** The earliest that a time may be, where its law has such a bound. */
function earliest(law: Law): number {
  if (law.distribution === 'constant') return law.value;
  if (law.distribution === 'empirical') return Math.min(...law.values);
  return law.distribution === 'uniform' || law.distribution === 'triangular' ? law.low : 0;
}

/** How it builds up and fades, where it does. */
function courseText(it: DisturbanceSpec): string {
  const { ramp, fades } = { ramp: undefined, fades: undefined, ...it };
  const ends = it.for.distribution === 'constant' && ramp !== undefined && it.for.value < ramp;
  const up = ramp === undefined ? '' : `, building up over ${durationText(ramp)}`;
  return `${up}${ends ? ', which it does not last' : ''}${fades === undefined ? '' : `, fading over ${durationText(fades)}`}`;
}

function comingText({ at, after, burst, againAfter, for: lasts }: DisturbanceSpec): string {
  const parts = after && `${counted(after.parts, 'part')} of "${after.of}"`;
  const good = after && `${after.parts} good`;
  const begins = at
    ? `from ${lawText(at)} after the start`
    : `after ${after!.of === undefined ? good : parts}`;
  const times = burst ? `, ${burst.times} times ${lawText(burst.apart)} apart` : '';
  const again = againAfter ? `, again ${lawText(againAfter)} after its end` : '';
  return `${begins} for ${lawText(lasts)}${times}${again}`;
}

/** A disturbance in words: what it does, from when, for how long, in runs that end after so many seconds. */
function disturbanceText(it: DisturbanceSpec, end: number): string {
  const late =
    it.at && earliest(it.at) >= end ? '; that is after the end of the run, so it never happens' : '';
  const nothing = isNothing(it) ? '; that changes nothing' : '';
  return `${it.name}: ${disturbedText(it)}${courseText(it)}, ${comingText(it)}${late || nothing}`;
}

const FATES = {
  resumes: 'its cycle resumes',
  restarts: 'its cycle starts anew',
  scraps: 'its part is scrapped',
} as const satisfies Record<BreakdownSpec['cycle'], string>;

function breakdownText(
  station: string,
  { name, every, counted, repair, cycle, crew }: BreakdownSpec,
): string {
  const clock = counted === 'working' ? 'of work' : 'by the clock';
  const by = crew === undefined ? '' : ` by "${crew}"`;
  const told = `after ${lawText(every)} ${clock}, repaired in ${lawText(repair)}${by}; ${FATES[cycle]}`;
  return `"${station}" breaks down (${name}): ${told}`;
}

/** All that goes wrong in a scenario, in words: its disturbances, then the breakdowns of its stations. */
export function disturbanceTexts({ run, disturbances, stations }: Scenario): string[] {
  return [
    ...disturbances.map((it) => disturbanceText(it, run.warmUp + run.length)),
    ...stations.flatMap(({ name, breakdowns }) =>
      breakdowns.map((breakdown) => breakdownText(name, breakdown)),
    ),
  ];
}

/** The cases of a scenario, in words; nothing where the one case is all of its disturbances. */
export const caseTexts = ({ cases }: Scenario): string[] =>
  cases.map(({ name, disturbances }) => `${name}: ${disturbances.join(', ') || 'undisturbed'}`);
