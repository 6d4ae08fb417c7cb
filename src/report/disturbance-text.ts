import type { Law } from '../kernel/distributions/index.ts';
import type { BreakdownSpec } from '../scenario/breakdowns.ts';
import type { DisturbanceSpec } from '../scenario/disturbances.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { unitsOf } from '../scenario/units.ts';
import { GRADES } from '../standards/mark-grade.ts';
import { durationText } from './duration.ts';
import { lawText } from './law-text.ts';

const share = (of: number): string => `${Number((of * 100).toPrecision(3))} %`;

function marksText({ station, takesHold, grades }: Extract<DisturbanceSpec, { disturbs: 'marks' }>): string {
  const some = (grades ?? []).flatMap((of, i) => (of > 0 ? [`${share(of)} ${GRADES[i]}`] : []));
  const by = grades === undefined ? '' : ` graded ${some.join(', ')}`;
  if (takesHold === undefined) return `marks at "${station}" are${by}`;
  return `only ${share(takesHold)} of marks take at "${station}"${by && `,${by}`}`;
}

function what(it: DisturbanceSpec): string {
  switch (it.disturbs) {
    case 'setting': {
      const by = `${it.by.value > 0 ? '+' : '\u2212'}${Math.abs(it.by.value)} ${unitsOf(it.by.dimension)[0]}`;
      return `setting "${it.setting}" off by ${by}${it.ramp ? `, building up over ${durationText(it.ramp)}` : ''}`;
    }
    case 'supplier':
      return `no deliveries of "${it.stock}"`;
    case 'marks':
      return marksText(it);
    case 'station':
      return `"${it.station}" stands still`;
  }
}

/** The earliest that a time may be, where its law has such a bound. */
function earliest(law: Law): number {
  if (law.distribution === 'constant') return law.value;
  return law.distribution === 'uniform' || law.distribution === 'triangular' ? law.low : 0;
}

/** A disturbance in words: what it does, from when, for how long, in runs that end after so many seconds. */
function disturbanceText(it: DisturbanceSpec, end: number): string {
  const again = it.againAfter ? `, again ${lawText(it.againAfter)} after its end` : '';
  const late = earliest(it.at) >= end ? '; that is after the end of the run, so it never happens' : '';
  return `${it.name}: ${what(it)}, from ${lawText(it.at)} after the start for ${lawText(it.for)}${again}${late}`;
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
