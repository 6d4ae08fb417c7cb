import { clearances, sideNamed } from '../../../scenario/clearances.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import type { Pair } from '../../fit.ts';
import { Forcing } from '../../forcing.ts';
import type { Mate } from '../../hand.ts';
import { Assemble } from '../../operations/assemble.ts';
import { correlateMate } from '../correlate.ts';
import type { Plan } from '../plan.ts';
import { readerOf } from './reader.ts';
import { timeOf } from './visits.ts';

function mateOf(name: string, station: string, plan: Plan): Mate {
  const stock = plan.line.stocks.get(name)!;
  const spec = plan.scenario.stocks.find((candidate) => candidate.name === name)!;
  const features = (spec.features ?? []).map(({ name, aim, lotSd, ownSd }) => ({
    aim,
    variation: stock.variation(name, lotSd, ownSd),
  }));
  correlateMate(
    spec,
    features.map(({ variation }) => variation),
  );
  return { stock, want: stock.want(plan.station(station)), features };
}

function pairsOf(spec: SpecOf<'assemble'>, { scenario, line }: Plan): Pair[] {
  const mateFeatures = spec.takes.flatMap((name) =>
    (scenario.stocks.find((stock) => stock.name === name)!.features ?? []).map(
      (feature) => `${name}.${feature.name}`,
    ),
  );
  return spec.fits.map((pair): Pair => {
    const partIsHole = !pair.hole.includes('.');
    const [part, mate] = partIsHole ? [pair.hole, pair.shaft] : [pair.shaft, pair.hole];
    return {
      feature: line.features.get(part)!,
      mate: mateFeatures.indexOf(mate),
      mateAim: sideNamed(mate, scenario)!.aim,
      partIsHole,
      ...clearances(pair, scenario),
    };
  });
}

export function assemble(spec: SpecOf<'assemble'>, plan: Plan): Assemble {
  const { parts, streams, tally, scrap, assemblies, rejectsTo } = plan.line;
  const { misfit, tight = misfit, loose = misfit } = spec;
  const made = new Assemble(
    {
      time: timeOf(spec, plan),
      next: plan.next.get(spec.name)!,
      scrap,
      parts,
      tally,
      reader: readerOf(spec, plan),
      mates: spec.takes.map((name) => mateOf(name, spec.name, plan)),
      pairs: pairsOf(spec, plan),
      mateTries: spec.mateTries,
      marked: plan.marked,
      flaw: plan.line.flaw,
      forcing: spec.forcing ? new Forcing(spec.forcing, spec.name, parts, streams) : null,
      scrapWithoutMates: spec.withoutMates === 'scrap',
    },
    { tight: rejectsTo(tight, spec.name), loose: rejectsTo(loose, spec.name) },
    spec.machines,
  );
  assemblies.set(spec.name, made);
  for (const stock of spec.takes) plan.line.takers.push({ stock, taken: () => made.taken });
  return made;
}
