import { samplerOf } from '../../../kernel/distributions/index.ts';
import { kindsOf } from '../../../scenario/stand-ins.ts';
import type { StationSpec } from '../../../scenario/stations.ts';
import { Intake } from '../../intake.ts';
import type { Source, SourceParts, Supply } from '../../operations/source.ts';
import type { Plan } from '../plan.ts';

/** What a source works on. */
export function sourceParts(spec: StationSpec, takes: string, plan: Plan): SourceParts {
  const { calendar, parts, tally, streams, stocks } = plan.line;
  const station = plan.station(spec.name);
  // Deliveries of several stocks are numbered in turn.
  const names = [...stocks.keys()];
  const supplies = kindsOf(takes, plan.scenario.stocks).map((name, i): Supply => {
    const stock = stocks.get(name)!;
    const wants = station.machines.map(() => stock.want(station, i > 0));
    const place = names.indexOf(name);
    return { stock, wants, numberOf: (lot) => lot * names.length + place, standsIn: i > 0, taken: 0 };
  });
  const cycle = samplerOf(spec.cycle, streams.of(`station/${spec.name}/cycle`));
  return { calendar, parts, tally, supplies, cycle, delivery: plan.delivery };
}

/** Lets the self-check know what a source takes and makes, and policies what it takes. */
export function counted<Of extends Source>(source: Of, { name }: StationSpec, plan: Plan): Of {
  const { line } = plan;
  const { supplies } = source.on;
  for (const supply of supplies) {
    // What is taken is started on at once.
    const { stock } = supply;
    line.takers.push({ stock: stock.name, taken: () => supply.taken, heldSeconds: () => 0 });
  }
  line.starts.push(() => source.taken * source.perPiece);
  const kinds = supplies.map(({ stock }) => stock.name);
  const wake = () => line.wake(plan.station(name));
  line.substitution.intakes.push(new Intake(kinds, wake, (place) => source.use(place)));
  return source;
}
