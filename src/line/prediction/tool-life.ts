import { meanOf, varianceOf } from '../../kernel/distributions/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { meanCycle } from '../mean-cycle.ts';

/**
 * How many cuts a tool of a trimming station makes until it is replaced, where the scenario settles that; else why it
 * does not. By working time it is that over the mean cycle, so right to a cut or so.
 */
export function toolLife(
  spec: SpecOf<'trim'> & { readonly name: string },
  scenario: Scenario,
): number | { readonly why: string } {
  const tool = `the tool of "${spec.name}"`;
  const [by, ...others] = spec.tool?.renewedBy ?? [];
  if (by === undefined) return { why: `${tool} is never renewed` };
  if (others.length > 0) return { why: `${tool} is renewed by more than one event` };
  const task = [...spec.setUps, ...spec.maintenance].find(({ name }) => name === by);
  if (!task) return { why: `${tool} is renewed when the station breaks down` };
  if (task.cycles !== undefined) return task.cycles;
  const { worked } = meanCycle(spec, scenario);
  const settled =
    task.counted === 'working' && varianceOf(task.every!) === 0 && worked > 0 && !spec.tool?.burr;
  if (!settled) return { why: `how many cuts ${tool} makes depends on the run` };
  return Math.max(1, Math.ceil(meanOf(task.every!) / worked));
}
