import type { ExplainedForming } from '../../experiment/explained/forming.ts';
import { row, shareRow, title } from './rows.ts';

export function formingLines(
  { station, incomplete, webbed, thin, wall }: ExplainedForming,
  width: number,
): string[] {
  return [
    ...title(`${station}, of all sheets`, width),
    ...(incomplete ? [shareRow('incomplete', incomplete, width)] : []),
    ...(webbed ? [shareRow('webbed', webbed, width)] : []),
    ...(wall ? [row('mean wall, mm', wall.mean, width), row('standard deviation, mm', wall.sd, width)] : []),
    ...(thin ? [shareRow('wall too thin', thin, width)] : []),
  ];
}
