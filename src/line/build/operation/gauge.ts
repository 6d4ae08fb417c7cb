import { uniformBlocks } from '../../../kernel/distributions/uniform.ts';
import type { Inspection } from '../../../scenario/inspection.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { samplingPlan } from '../../../standards/iso-2859.ts';
import { Appraisers, Gauging } from '../../gauging.ts';
import { Gauge, type GaugeParts } from '../../operations/gauge.ts';
import { GaugeLots, type LotRules } from '../../operations/gauge-lots.ts';
import { ByClock, FirstOfDelivery, OneIn, type Sampling } from '../../sampling.ts';
import type { Plan } from '../plan.ts';
import { shortOf } from '../traps.ts';
import { readerOf } from './reader.ts';
import { timeOf } from './visits.ts';

type ByPlan = Extract<Inspection, { by: 'plan' }>;

function samplingOf(inspection: Exclude<Inspection, ByPlan>, { line, delivery }: Plan): Sampling {
  switch (inspection.by) {
    case 'count':
      return new OneIn(inspection.every);
    case 'clock':
      return new ByClock(inspection.every);
    case 'delivery':
      return new FirstOfDelivery(line.parts, delivery!, inspection.first);
  }
}

function lotRules({ lot, aql, rejected }: ByPlan, spec: SpecOf<'gauge'>, plan: Plan): LotRules {
  const { parts, streams, tally, rejectsTo } = plan.line;
  return {
    lot,
    plans: {
      normal: samplingPlan(lot, aql, 'normal'),
      tightened: samplingPlan(lot, aql, 'tightened'),
    },
    rejected: rejected === 'screen' ? null : rejectsTo(rejected, spec.name, 'lot-rejected'),
    luck: parts.luck(uniformBlocks(streams.of(`station/${spec.name}/sample`))),
    again: streams.of(`station/${spec.name}/sample/again`),
    tally,
    onShort: shortOf(spec, plan),
  };
}

function partsOf(spec: SpecOf<'gauge'>, plan: Plan): GaugeParts {
  const { parts, streams, features, calendar } = plan.line;
  const { name, appraisers } = spec;
  return {
    gaugings: spec.measures.map(
      (measure) => new Gauging(features.get(measure.name)!, measure, appraisers, name, parts, streams),
    ),
    flaw: plan.line.flaw,
    appraisers: appraisers > 1 ? new Appraisers(appraisers, name, parts, streams) : null,
    takes: spec.measures.reduce((sum, { takes }) => sum + takes, 0),
    time: timeOf(spec, plan),
    next: plan.next.get(name)!,
    reader: readerOf(spec, plan),
    marked: plan.marked,
    owed: spec.reader?.unread.reMark ? parts.column(0) : null,
    unread: plan.line.scrapFor(name, 'unread'),
    calendar,
    parts,
  };
}

export function gauge(spec: SpecOf<'gauge'>, plan: Plan): Gauge {
  const { inspection, name, machines } = spec;
  const on = partsOf(spec, plan);
  const rejects = plan.line.rejectsTo(spec.offLimits, name, 'off-limits');
  const made =
    inspection.by === 'plan'
      ? new GaugeLots(on, lotRules(inspection, spec, plan), rejects, machines)
      : new Gauge(on, samplingOf(inspection, plan), rejects);
  plan.line.gauges.set(name, made);
  for (const { feature, sums } of on.gaugings) {
    if (sums !== null) plan.line.readings.push({ gauge: name, feature, sums });
  }
  return made;
}
