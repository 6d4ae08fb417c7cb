import { loadOf, type StationSpec } from '../../scenario/stations.ts';
import { OnCarriers } from '../carriers.ts';
import type { Operation } from '../machine.ts';
import { arrive } from './operation/arrive.ts';
import { assemble } from './operation/assemble.ts';
import { form } from './operation/form.ts';
import { gauge } from './operation/gauge.ts';
import { mark } from './operation/mark.ts';
import { rework } from './operation/rework.ts';
import { trim } from './operation/trim.ts';
import { work } from './operation/work.ts';
import type { Plan } from './plan.ts';

function bare(spec: StationSpec, plan: Plan): Operation {
  switch (spec.does) {
    case 'work':
      return work(spec, plan);
    case 'form':
      return form(spec, plan);
    case 'trim':
      return trim(spec, plan);
    case 'mark':
      return mark(spec, plan);
    case 'gauge':
      return gauge(spec, plan);
    case 'assemble':
      return assemble(spec, plan);
    case 'rework':
      return rework(spec, plan);
    case 'arrive':
      return arrive(spec, plan);
  }
}

/** What the station does to parts, with the carriers it needs for it. All its machines share the operation. */
export function operationOf(spec: StationSpec, plan: Plan): Operation {
  let operation = bare(spec, plan);
  for (const { name, from } of plan.scenario.carriers) {
    if (from !== spec.name) continue;
    const carriers = plan.line.carriers.get(name)!;
    carriers.consumers.push(plan.station(spec.name));
    carriers.load = loadOf(spec);
    operation = new OnCarriers(carriers, operation, loadOf(spec));
  }
  return operation;
}
