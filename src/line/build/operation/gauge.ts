import { normalBlocks, standardNormal } from '../../../kernel/distributions/normal.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { Gauge } from '../../operations/gauge.ts';
import type { Plan } from '../plan.ts';
import { readerOf } from './reader.ts';
import { timeOf } from './visits.ts';

export function gauge(spec: SpecOf<'gauge'>, plan: Plan): Gauge {
  const { parts, streams, scrap, features, gauges, rejectsTo } = plan.line;
  const gaugings = spec.measures.map(({ name, bias, repeatability }) => ({
    feature: features.get(name)!,
    bias,
    repeatability,
    luck: parts.luck(normalBlocks(streams.of(`station/${spec.name}/reading/${name}`))),
    again: standardNormal(streams.of(`station/${spec.name}/reading/${name}/again`)),
  }));
  const rejects = rejectsTo(spec.offLimits, spec.name);
  const next = plan.next.get(spec.name)!;
  const time = timeOf(spec, plan);
  const reader = readerOf(spec, plan);
  const made = new Gauge(
    { time, next, scrap, parts, reader, marked: plan.marked, gaugings, flaw: plan.line.flaw },
    spec.every,
    rejects,
  );
  gauges.set(spec.name, made);
  return made;
}
