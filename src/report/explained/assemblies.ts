import type { ExplainedAssembly, ExplainedPair } from '../../experiment/explained/assembly.ts';
import { fixed } from '../format.ts';
import { fromText, note, row, shareRow, shareRowIfAny, size, title } from './rows.ts';

const range = ({ lower, upper }: { lower: number; upper: number }): string =>
  `${fixed(lower, 4)} to ${fixed(upper, 4)} mm`;

function pairLines(it: ExplainedPair, width: number): string[] {
  const { stack, from } = it;
  return [
    ...title(`${it.shaft} in ${it.hole}: clearance ${size(it.least)} to ${size(it.most)}`, width),
    row('clearance, mm', it.clearance, width),
    row('standard deviation, mm', it.sd, width),
    shareRow('fits', it.fits, width),
    ...shareRowIfAny('too tight', it.tight, width),
    ...shareRowIfAny('too loose', it.loose, width),
    ...(stack
      ? note(
          `within the limits of both: ${range(stack.worst)} at worst, ${range(stack.rootSumSquare)} by root sum square`,
          width,
        )
      : []),
    ...(from.length > 0 || it.clearance.predicted !== null ? note(fromText(from), width) : []),
  ];
}

export function assemblyLines(
  { station, pairs, all, forcing, openBy }: ExplainedAssembly,
  width: number,
): string[] {
  const together = [
    shareRow(pairs.length > 1 ? 'all pairs fit' : 'fits', all, width),
    ...(forcing
      ? [
          ...shareRowIfAny('pressed together', forcing.forced, width),
          ...shareRowIfAny('spoilt by pressing', forcing.damaged, width),
          ...shareRowIfAny('too tight for the press', forcing.tight, width),
        ]
      : []),
    ...(openBy === null ? [] : note(`no closed form: ${openBy}`, width)),
  ];
  const more = pairs.length > 1 || forcing || openBy !== null;
  return [
    ...pairs.flatMap((pair) => pairLines(pair, width)),
    ...(more ? [...title(`${station}, all together`, width), ...together] : []),
  ];
}
