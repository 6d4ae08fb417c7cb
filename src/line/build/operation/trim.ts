import { normalBlocks } from '../../../kernel/distributions/normal.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Burr } from '../../burr.ts';
import { Trim } from '../../operations/trim.ts';
import { Tool } from '../../tool.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

function burrOf(spec: SpecOf<'trim'> & { readonly name: string }, { line }: Plan): Burr | null {
  if (!spec.tool?.burr) return null;
  const { first, per, grows, ownSd, most, deburring } = spec.tool.burr;
  const { parts, streams } = line;
  const luck = () => parts.luck(normalBlocks(streams.of(`station/${spec.name}/burr`), ownSd));
  const own = ownSd > 0 ? luck() : null;
  return new Burr(parts, { first, grows: grows / per, own, most, deburring });
}

export function trim(spec: SpecOf<'trim'>, plan: Plan): Trim {
  const { parts, streams, tally } = plan.line;
  const features = [...plan.line.features.values()].filter((feature) => feature.spec.madeAt === spec.name);
  for (const feature of features) feature.isCut = true;
  const worn = features.flatMap((feature) => {
    const { name, wear } = feature.spec;
    if (!wear) return [];
    const { per, shift, spread } = wear;
    const luck = () => parts.luck(normalBlocks(streams.of(`feature/${name}/wear`), spread / per));
    return [{ feature, shift: shift / per, scatter: spread > 0 ? luck() : null }];
  });
  const tools = spec.tool || worn.length > 0 ? Array.from({ length: spec.machines }, () => new Tool()) : null;
  if (tools !== null) plan.tools.set(spec.name, tools);
  return new Trim(timeOf(spec, plan), parts, { features, worn, tools, burr: burrOf(spec, plan), tally });
}
