import { standardNormal } from '../../../kernel/distributions/normal.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Rework } from '../../operations/rework.ts';
import type { Plan } from '../plan.ts';
import { timeOf } from './visits.ts';

type CorrectionSpec = SpecOf<'rework'>['corrects'][number];

function reachOf({ most, only, takes }: CorrectionSpec) {
  if (most === undefined && only === undefined && takes === undefined) return null;
  const far = most ?? Number.POSITIVE_INFINITY;
  return { below: only === 'down' ? 0 : far, above: only === 'up' ? 0 : far, pace: takes?.value ?? 0 };
}

export function rework(spec: SpecOf<'rework'>, plan: Plan): Rework {
  const { parts, streams, features, tally } = plan.line;
  const corrections = spec.corrects.map((it) => ({
    feature: features.get(it.name)!,
    removes: it.removes,
    ownSd: it.ownSd,
    z: standardNormal(streams.of(`station/${spec.name}/rework/${it.name}`)),
    reach: reachOf(it),
  }));
  const scrap = plan.line.scrapFor(spec.name, 'out-of-reach');
  const next = plan.next.get(spec.name)!;
  return new Rework({ time: timeOf(spec, plan), parts, next, scrap, tally }, corrections);
}
