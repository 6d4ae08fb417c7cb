import type { SpecOf } from '../../../scenario/stations.ts';
import type { Pair } from '../../fit.ts';
import { Assemble, type Mate } from '../../operations/assemble.ts';
import { correlateMate } from '../correlate.ts';
import type { Plan } from '../plan.ts';
import { readerOf } from './reader.ts';
import { timeOf } from './visits.ts';

function mateOf(name: string, station: string, plan: Plan): Mate {
  const stock = plan.line.stocks.get(name)!;
  stock.consumers.push(plan.station(station));
  const spec = plan.scenario.stocks.find((candidate) => candidate.name === name)!;
  const features = (spec.features ?? []).map(({ name, nominal, lotSd, ownSd }) => ({
    nominal,
    variation: stock.variation(name, lotSd, ownSd),
  }));
  correlateMate(
    spec,
    features.map(({ variation }) => variation),
  );
  return { stock, features };
}

export function assemble(spec: SpecOf<'assemble'>, plan: Plan): Assemble {
  const { parts, tally, scrap, features, assemblies, rejectsTo } = plan.line;
  const mates = spec.takes.map((name) => mateOf(name, spec.name, plan));
  const mateFeatures = spec.takes.flatMap((name) =>
    (plan.scenario.stocks.find((stock) => stock.name === name)!.features ?? []).map(
      (feature) => `${name}.${feature.name}`,
    ),
  );
  const pairs = spec.fits.map(({ hole, shaft, least, most }): Pair => {
    const partIsHole = !hole.includes('.');
    const feature = features.get(partIsHole ? hole : shaft)!;
    return { feature, mate: mateFeatures.indexOf(partIsHole ? shaft : hole), partIsHole, least, most };
  });
  const made = new Assemble(
    {
      time: timeOf(spec, plan),
      next: plan.next.get(spec.name)!,
      scrap,
      parts,
      tally,
      reader: readerOf(spec, plan),
      mates,
      pairs,
      mateTries: spec.mateTries,
      marked: plan.marked,
      flaw: plan.line.flaw,
      scrapWithoutMates: spec.withoutMates === 'scrap',
    },
    rejectsTo(spec.misfit, spec.name),
    spec.machines,
  );
  assemblies.set(spec.name, made);
  for (const stock of spec.takes) plan.line.takers.push({ stock, taken: () => made.taken });
  return made;
}
