import type { SpecOf } from '../../../scenario/stations.ts';
import { Form } from '../../operations/form.ts';
import type { Plan } from '../plan.ts';
import { counted, sourceParts } from './source.ts';

export function form(spec: SpecOf<'form'>, plan: Plan): Form {
  const { settings, features, streams } = plan.line;
  const sheet = plan.scenario.stocks.find(({ name }) => name === spec.takes)!;
  const made = new Form(
    sourceParts(spec, spec.takes, plan),
    spec,
    sheet,
    settings,
    [...features.values()],
    streams,
  );
  return counted(made, spec.takes, plan);
}
