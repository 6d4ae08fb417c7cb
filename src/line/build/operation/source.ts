import { samplerOf } from '../../../kernel/distributions/index.ts';
import type { StationSpec } from '../../../scenario/stations.ts';
import type { Source } from '../../operations/source.ts';
import type { Plan } from '../plan.ts';

/** What a source works on. */
export function sourceParts(spec: StationSpec, takes: string, plan: Plan) {
  const { calendar, parts, tally, streams, stocks } = plan.line;
  const stock = stocks.get(takes)!;
  const wants = plan.station(spec.name).machines.map(() => stock.want(plan.station(spec.name)));
  const cycle = samplerOf(spec.cycle, streams.of(`station/${spec.name}/cycle`));
  // Deliveries of several stocks are numbered in turn.
  const names = [...stocks.keys()];
  const delivery =
    plan.delivery === null
      ? null
      : { column: plan.delivery, numberOf: (lot: number) => lot * names.length + names.indexOf(takes) };
  return { calendar, parts, tally, stock, wants, cycle, delivery };
}

/** Lets the self-check know what a source takes and makes. */
export function counted<Of extends Source>(source: Of, stock: string, { line }: Plan): Of {
  line.takers.push({ stock, taken: () => source.taken });
  line.starts.push(() => source.taken * source.perPiece);
  return source;
}
