import { samplerOf } from '../../kernel/distributions/index.ts';
import { normalBlocks, standardNormal } from '../../kernel/distributions/normal.ts';
import { uniformBlocks } from '../../kernel/distributions/uniform.ts';
import type { SpecOf, StationSpec } from '../../scenario/stations.ts';
import { OnCarriers } from '../carriers.ts';
import type { Feature } from '../features.ts';
import type { Pair } from '../fit.ts';
import type { Operation } from '../machine.ts';
import { Arrive } from '../operations/arrive.ts';
import { Assemble, type Mate } from '../operations/assemble.ts';
import { Batch } from '../operations/batch.ts';
import { Form } from '../operations/form.ts';
import { Gauge } from '../operations/gauge.ts';
import { Mark } from '../operations/mark.ts';
import { Rework } from '../operations/rework.ts';
import { Source } from '../operations/source.ts';
import { Trim } from '../operations/trim.ts';
import { Work } from '../operations/work.ts';
import { Reader } from '../reader.ts';
import { VisitTime } from '../visit-time.ts';
import type { Plan } from './plan.ts';
import { trapsOf } from './traps.ts';

type Named<Kind extends StationSpec['does']> = SpecOf<Kind> & { readonly name: string };

function timeOf(spec: StationSpec, { line }: Plan): VisitTime {
  return new VisitTime(spec.name, spec.cycle, line.parts, line.streams);
}

function madeAt(station: string, { line }: Plan): Feature[] {
  return [...line.features.values()].filter(({ spec }) => spec.madeAt === station);
}

function readerOf(spec: Named<'gauge' | 'assemble'>, { line, marked }: Plan): Reader | null {
  const { parts, streams, tally } = line;
  return spec.reader ? new Reader(spec.reader, spec.name, parts, streams, marked, tally) : null;
}

function sourceParts(spec: StationSpec, takes: string, plan: Plan) {
  const { calendar, parts, tally, streams, stocks } = plan.line;
  const stock = stocks.get(takes)!;
  stock.consumers.push(plan.station(spec.name));
  const cycle = samplerOf(spec.cycle, streams.of(`station/${spec.name}/cycle`));
  return { calendar, parts, tally, stock, cycle };
}

/** Lets the self-check know what a source takes and makes. */
function counted<Of extends Source>(source: Of, stock: string, { line }: Plan): Of {
  line.takers.push({ stock, taken: () => source.taken });
  line.starts.push(() => source.taken * source.perPiece);
  return source;
}

function batch(spec: Named<'work'>, time: VisitTime, { line, scenario }: Plan): Batch {
  const made = new Batch(time, spec.batch);
  const circling = scenario.carriers.filter((it) => trapsOf(scenario.stations, it).includes(spec.name));
  const carriers = circling.map(({ name }) => line.carriers.get(name)!);
  const trap = { name: spec.name, inbox: line.stations.get(spec.name)!.inbox!, batch: spec.batch };
  for (const each of carriers) each.traps.push(trap);
  if (carriers.length > 0) {
    made.onShort = () => {
      for (const each of carriers) each.refuseStandstill();
    };
  }
  return made;
}

function work(spec: Named<'work'>, plan: Plan): Operation {
  if (spec.takes !== undefined)
    return counted(new Source(sourceParts(spec, spec.takes, plan)), spec.takes, plan);
  const time = timeOf(spec, plan);
  return spec.batch > 1 ? batch(spec, time, plan) : new Work(time);
}

function form(spec: Named<'form'>, plan: Plan): Form {
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

function mark(spec: Named<'mark'>, plan: Plan): Mark {
  const { parts, streams, marks } = plan.line;
  const luck = parts.luck(uniformBlocks(streams.of(`station/${spec.name}/mark`)));
  const again = streams.of(`station/${spec.name}/mark/again`);
  const columns = { luck, again, marked: plan.marked };
  const made = new Mark(timeOf(spec, plan), parts, columns, spec.takesHold);
  marks.set(spec.name, made);
  return made;
}

function gauge(spec: Named<'gauge'>, plan: Plan): Gauge {
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
    { time, next, scrap, parts, reader, marked: plan.marked, gaugings },
    spec.every,
    rejects,
  );
  gauges.set(spec.name, made);
  return made;
}

function mateOf(name: string, station: string, plan: Plan): Mate {
  const stock = plan.line.stocks.get(name)!;
  stock.consumers.push(plan.station(station));
  const spec = plan.scenario.stocks.find((candidate) => candidate.name === name)!;
  const features = (spec.features ?? []).map(({ name, nominal, lotSd, ownSd }) => ({
    nominal,
    variation: stock.variation(name, lotSd, ownSd),
  }));
  return { stock, features };
}

function assemble(spec: Named<'assemble'>, plan: Plan): Assemble {
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
      scrapWithoutMates: spec.withoutMates === 'scrap',
    },
    rejectsTo(spec.misfit, spec.name),
    spec.machines,
  );
  assemblies.set(spec.name, made);
  for (const stock of spec.takes) plan.line.takers.push({ stock, taken: () => made.taken });
  return made;
}

function rework(spec: Named<'rework'>, plan: Plan): Rework {
  const { parts, streams, features } = plan.line;
  const corrections = spec.corrects.map(({ name, removes, ownSd }) => ({
    feature: features.get(name)!,
    removes,
    ownSd,
    z: standardNormal(streams.of(`station/${spec.name}/rework/${name}`)),
  }));
  return new Rework(timeOf(spec, plan), parts, corrections);
}

function arrive(spec: Named<'arrive'>, plan: Plan): Arrive {
  const { calendar, parts, tally, streams } = plan.line;
  const between = samplerOf(spec.cycle, streams.of(`station/${spec.name}/cycle`));
  const made = new Arrive({ calendar, parts, tally, between });
  plan.line.starts.push(() => made.came);
  return made;
}

function bare(spec: StationSpec, plan: Plan): Operation {
  switch (spec.does) {
    case 'work':
      return work(spec, plan);
    case 'form':
      return form(spec, plan);
    case 'trim':
      return new Trim(timeOf(spec, plan), plan.line.parts, madeAt(spec.name, plan));
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
    carriers.load = plan.loadOf(spec);
    operation = new OnCarriers(carriers, operation, plan.loadOf(spec));
  }
  return operation;
}
