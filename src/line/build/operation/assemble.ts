import { clearances, sideNamed } from '../../../scenario/clearances.ts';
import { kindsOf } from '../../../scenario/stand-ins.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import type { Pair } from '../../fit.ts';
import { Forcing } from '../../forcing.ts';
import { Intake } from '../../intake.ts';
import { Mate, type MateKind } from '../../mate.ts';
import { Mates } from '../../mates.ts';
import { Assemble } from '../../operations/assemble.ts';
import { Holding } from '../../supply/holding.ts';
import { correlateMate } from '../correlate.ts';
import type { Plan } from '../plan.ts';
import { readerOf } from './reader.ts';
import { timeOf } from './visits.ts';

/** One kind of a mate; the features of a stand-in in the order of `features`, which are those of the mate itself. */
function kindOf(
  name: string,
  features: readonly string[],
  station: string,
  standsIn: boolean,
  plan: Plan,
): MateKind {
  const stock = plan.line.stocks.get(name)!;
  const spec = plan.scenario.stocks.find((candidate) => candidate.name === name)!;
  const own = (spec.features ?? []).map(({ name, aim, lotSd, ownSd }) => ({
    name,
    aim,
    variation: stock.variation(name, lotSd, ownSd),
  }));
  correlateMate(
    spec,
    own.map(({ variation }) => variation),
  );
  return {
    stock,
    want: stock.want(plan.station(station), standsIn),
    features: features.map((name) => own.find((feature) => feature.name === name)!),
    standsIn,
    held: new Holding(plan.line.calendar),
    used: 0,
    thrown: 0,
  };
}

function mateOf(name: string, station: string, plan: Plan): Mate {
  const { stocks } = plan.scenario;
  const features = (stocks.find((spec) => spec.name === name)!.features ?? []).map(({ name }) => name);
  const kinds = kindsOf(name, stocks);
  const mate = new Mate(kinds.map((kind, i) => kindOf(kind, features, station, i > 0, plan)));
  const wake = () => plan.line.wake(plan.station(station));
  const intake = new Intake(kinds, wake, (place) => mate.use(place));
  plan.line.substitution.intakes.push(intake);
  return mate;
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
  const { line } = plan;
  const { parts, streams, tally, assemblies, rejectsTo } = line;
  const { misfit, tight = misfit, loose = misfit } = spec;
  const made = new Assemble(
    {
      time: timeOf(spec, plan),
      next: plan.next.get(spec.name)!,
      noMates: line.scrapFor(spec.name, 'no-mates'),
      unread: line.scrapFor(spec.name, 'unread'),
      spoilt: line.scrapFor(spec.name, 'spoilt'),
      parts,
      tally,
      reader: readerOf(spec, plan),
      mates: new Mates(spec.takes.map((name) => mateOf(name, spec.name, plan))),
      pairs: pairsOf(spec, plan),
      mateTries: spec.mateTries,
      marked: plan.marked,
      flaw: plan.line.flaw,
      forcing: spec.forcing ? new Forcing(spec.forcing, spec.name, parts, streams) : null,
      scrapWithoutMates: spec.withoutMates === 'scrap',
    },
    {
      tight: rejectsTo(tight, spec.name, 'tight'),
      loose: rejectsTo(loose, spec.name, 'loose'),
      flawed: rejectsTo(loose, spec.name, 'flawed'),
    },
    spec.machines,
  );
  assemblies.set(spec.name, made);
  for (const kind of made.on.mates.all.flatMap(({ kinds }) => kinds))
    plan.line.takers.push({
      stock: kind.stock.name,
      taken: () => made.taken(kind),
      heldSeconds: () => made.heldSeconds(kind),
    });
  return made;
}
