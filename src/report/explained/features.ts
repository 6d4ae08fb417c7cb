import type { ExplainedFeature } from '../../experiment/explained/feature.ts';
import { fixed } from '../format.ts';
import { fromText, note, row, shareRowIfAny, size, title } from './rows.ts';

const index = (value: number): string => (Number.isFinite(value) ? fixed(value, 2) : 'without bound');

/** A shift smaller than this is none, mm. */
const NO_SHIFT = 5e-5;

function shiftText({ shifts }: ExplainedFeature): string[] {
  const told = shifts
    .filter(({ shift }) => Math.abs(shift) >= NO_SHIFT)
    .map(({ name, shift }) => `${name} ${shift > 0 ? '+' : ''}${fixed(shift, 4)} mm`);
  return told.length > 0 ? [`mean off its design by: ${told.join(', ')}`] : [];
}

export function featureLines(it: ExplainedFeature, width: number): string[] {
  const { name, madeAt, aim, limits } = it.spec;
  const within = limits ? `, limits ${size(limits.lower)} to ${size(limits.upper)}` : ', no limits';
  const notes =
    it.openBy === null
      ? [
          ...(it.pp === null || it.ppk === null ? [] : [`Pp ${index(it.pp)}, Ppk ${index(it.ppk)}`]),
          ...shiftText(it),
          fromText(it.from),
        ]
      : [`no closed form: ${it.openBy}`];
  return [
    ...title(`${name}, made at ${madeAt}: aim ${size(aim)}${within}`, width),
    row('mean, mm', it.mean, width),
    row('standard deviation, mm', it.sd, width),
    ...shareRowIfAny('outside the limits', it.outside, width),
    ...notes.flatMap((text) => note(text, width)),
  ];
}
