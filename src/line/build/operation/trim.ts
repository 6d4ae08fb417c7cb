import { normalBlocks } from '../../../kernel/distributions/normal.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Trim } from '../../operations/trim.ts';
import { Tool } from '../../tool.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

export function trim(spec: SpecOf<'trim'>, plan: Plan): Trim {
  const { parts, streams } = plan.line;
  const features = [...plan.line.features.values()].filter((feature) => feature.spec.madeAt === spec.name);
  const worn = features.flatMap((feature) => {
    const { name, wear } = feature.spec;
    if (!wear) return [];
    const { per, shift, spread } = wear;
    const luck = () => parts.luck(normalBlocks(streams.of(`feature/${name}/wear`), spread / per));
    return [{ feature, shift: shift / per, scatter: spread > 0 ? luck() : null }];
  });
  const tools = spec.tool || worn.length > 0 ? Array.from({ length: spec.machines }, () => new Tool()) : null;
  if (tools !== null) plan.tools.set(spec.name, tools);
  return new Trim(timeOf(spec, plan), parts, { features, worn, tools });
}
