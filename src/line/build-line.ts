import { samplerOf } from '../kernel/distributions/index.ts';
import { standardNormal } from '../kernel/distributions/normal.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { SpecOf, StationSpec } from '../scenario/stations.ts';
import { Buffer } from './buffer.ts';
import { Exit } from './exit.ts';
import { Feature } from './features.ts';
import type { Pair } from './fit.ts';
import { Line } from './line.ts';
import { Assemble, type Mate } from './operations/assemble.ts';
import { Form } from './operations/form.ts';
import { Gauge } from './operations/gauge.ts';
import { Mark } from './operations/mark.ts';
import { Rework } from './operations/rework.ts';
import { Source } from './operations/source.ts';
import { Trim } from './operations/trim.ts';
import { Work } from './operations/work.ts';
import type { Place } from './place.ts';
import { Reader } from './reader.ts';
import { toRework } from './rejects.ts';
import { Setting } from './setting.ts';
import { type Operation, Station } from './station.ts';
import { Stock } from './stock.ts';
import { VisitTime } from './visit-time.ts';

const capacityOf = (buffer: number | 'unlimited'): number =>
  buffer === 'unlimited' ? Number.POSITIVE_INFINITY : buffer;

/** Builds one line; what it needs on the way lives no longer than the building. */
class Builder {
  readonly line: Line;
  readonly scenario: Scenario;
  /** Column: 1 when the part's mark can be read. Without a marking station every part counts as marked. */
  readonly marked: number;

  constructor(scenario: Scenario, seed: number) {
    this.scenario = scenario;
    this.line = new Line(seed);
    this.marked = this.line.parts.column(scenario.stations.some(({ does }) => does === 'mark') ? 0 : 1);
  }

  build(): Line {
    const { line, scenario } = this;
    const { calendar, parts, tally, streams } = line;
    line.good = new Exit(calendar, parts, tally, true);
    line.scrap = new Exit(calendar, parts, tally, false);
    for (const spec of scenario.stocks) line.stocks.set(spec.name, new Stock(spec, calendar, streams));
    for (const spec of scenario.stations) this.addStation(spec);
    this.addRejects();
    const sheet = scenario.stations.find((spec) => spec.does === 'form')?.takes;
    for (const spec of scenario.parts.flatMap((part) => part.features)) {
      line.features.set(spec.name, new Feature(spec, parts, streams, line.stocks.get(sheet!) ?? null));
    }
    for (const spec of scenario.stations) this.station(spec.name).operation = this.operation(spec);
    // Only now: a breakdown by the clock may not be entered before its station can work.
    for (const spec of scenario.stations) this.addBreakdown(spec);
    return line;
  }

  private station(name: string): Station {
    return this.line.stations.get(name)!;
  }

  private addStation(spec: StationSpec): void {
    const { calendar, parts } = this.line;
    const station = new Station(spec.name, calendar, spec.does === 'form' ? spec.perSheet : 1);
    station.scrap = this.line.scrap;
    if ('buffer' in spec && spec.buffer !== undefined)
      station.inbox = new Buffer(station, capacityOf(spec.buffer));
    this.line.stations.set(spec.name, station);
    this.line.curable.set(spec.name, new Set());
    if (spec.does !== 'form') return;
    for (const { name } of spec.settings ?? []) {
      const setting = { setting: new Setting(name), remembered: parts.column(0), station: spec.name };
      this.line.settings.set(name, setting);
    }
  }

  private addBreakdown({ name, breakdown }: StationSpec): void {
    if (!breakdown) return;
    const draw = (purpose: string) => this.line.streams.of(`station/${name}/${purpose}`);
    const station = this.station(name);
    station.interrupted = breakdown.cycle;
    station.wear({
      life: samplerOf(breakdown.every, draw('life')),
      repair: samplerOf(breakdown.repair, draw('repair')),
      counted: breakdown.counted,
    });
  }

  private addRejects(): void {
    const { line, scenario } = this;
    const reworked = line.parts.column(0);
    const visits = new Map(
      scenario.stations
        .filter(({ does }) => does === 'rework')
        .map(({ name }) => [name, line.parts.column(0)]),
    );
    const specs = new Map(scenario.stations.map((spec) => [spec.name, spec]));
    line.rejectsTo = (place, station) => {
      if (place === 'scrap') return () => line.scrap;
      const next = this.place(specs.get(station)!.to);
      if (place === 'pass') return () => next;
      const bench = specs.get(place) as SpecOf<'rework'>;
      const columns = { visits: visits.get(place)!, reworked };
      return toRework(this.place(place), bench.limit, line.scrap, line.parts, columns, line.tally);
    };
  }

  private place(name: string): Place {
    return name === 'good' ? this.line.good : this.station(name).inbox!;
  }

  private time(spec: StationSpec): VisitTime {
    return new VisitTime(spec.name, spec.cycle, this.line.parts, this.line.streams);
  }

  private madeAt(station: string): Feature[] {
    return [...this.line.features.values()].filter(({ spec }) => spec.madeAt === station);
  }

  private operation(spec: StationSpec): Operation {
    const { parts, streams } = this.line;
    const next = this.place(spec.to);
    switch (spec.does) {
      case 'work':
        return spec.takes === undefined ? new Work(this.time(spec), next) : this.source(spec, spec.takes);
      case 'form':
        return this.form(spec);
      case 'trim':
        return new Trim(this.time(spec), next, parts, this.madeAt(spec.name));
      case 'mark': {
        const luck = parts.luck(streams.of(`station/${spec.name}/mark`));
        const again = streams.of(`station/${spec.name}/mark/again`);
        const mark = new Mark(
          this.time(spec),
          next,
          parts,
          { luck, again, marked: this.marked },
          spec.takesHold,
        );
        this.line.marks.set(spec.name, mark);
        return mark;
      }
      case 'gauge':
        return this.gauge(spec);
      case 'assemble':
        return this.assemble(spec);
      case 'rework': {
        const corrections = spec.corrects.map(({ name, removes, ownSd }) => ({
          feature: this.line.features.get(name)!,
          removes,
          ownSd,
          z: standardNormal(streams.of(`station/${spec.name}/rework/${name}`)),
        }));
        return new Rework(this.time(spec), next, parts, corrections);
      }
    }
  }

  private sourceParts(spec: StationSpec, takes: string) {
    const { calendar, parts, tally, streams } = this.line;
    const stock = this.line.stocks.get(takes)!;
    stock.consumers.push(this.station(spec.name));
    const cycle = samplerOf(spec.cycle, streams.of(`station/${spec.name}/cycle`));
    return { calendar, parts, tally, stock, cycle, next: this.place(spec.to) };
  }

  private source(spec: StationSpec, takes: string): Source {
    return new Source(this.sourceParts(spec, takes));
  }

  private form(spec: SpecOf<'form'> & { readonly name: string }): Form {
    const { settings, features, streams } = this.line;
    const sheet = this.scenario.stocks.find(({ name }) => name === spec.takes)!;
    return new Form(
      this.sourceParts(spec, spec.takes),
      spec,
      sheet,
      settings,
      [...features.values()],
      streams,
    );
  }

  private reader(spec: SpecOf<'gauge' | 'assemble'> & { readonly name: string }): Reader | null {
    const { parts, streams, tally } = this.line;
    return spec.reader ? new Reader(spec.reader, spec.name, parts, streams, this.marked, tally) : null;
  }

  private gauge(spec: SpecOf<'gauge'> & { readonly name: string }): Gauge {
    const { parts, streams, scrap, features } = this.line;
    const gaugings = spec.measures.map(({ name, bias, repeatability }) => ({
      feature: features.get(name)!,
      bias,
      repeatability,
      luck: parts.luck(standardNormal(streams.of(`station/${spec.name}/reading/${name}`))),
      again: standardNormal(streams.of(`station/${spec.name}/reading/${name}/again`)),
    }));
    const rejects = this.line.rejectsTo(spec.offLimits, spec.name);
    const next = this.place(spec.to);
    const gauge = new Gauge(
      { time: this.time(spec), next, scrap, parts, reader: this.reader(spec), marked: this.marked, gaugings },
      spec.every,
      rejects,
    );
    this.line.gauges.set(spec.name, gauge);
    return gauge;
  }

  private assemble(spec: SpecOf<'assemble'> & { readonly name: string }): Assemble {
    const { parts, tally, scrap } = this.line;
    const mates = spec.takes.map((name) => this.mate(name, spec.name));
    const mateFeatures = spec.takes.flatMap((name) =>
      (this.scenario.stocks.find((stock) => stock.name === name)!.features ?? []).map(
        (feature) => `${name}.${feature.name}`,
      ),
    );
    const pairs = spec.fits.map(({ hole, shaft, least, most }): Pair => {
      const partIsHole = !hole.includes('.');
      const feature = this.line.features.get(partIsHole ? hole : shaft)!;
      return { feature, mate: mateFeatures.indexOf(partIsHole ? shaft : hole), partIsHole, least, most };
    });
    const assemble = new Assemble(
      {
        time: this.time(spec),
        next: this.place(spec.to),
        scrap,
        parts,
        tally,
        reader: this.reader(spec),
        mates,
        pairs,
        mateTries: spec.mateTries,
        marked: this.marked,
        scrapWithoutMates: spec.withoutMates === 'scrap',
      },
      this.line.rejectsTo(spec.misfit, spec.name),
    );
    this.line.assemblies.set(spec.name, assemble);
    return assemble;
  }

  private mate(name: string, station: string): Mate {
    const stock = this.line.stocks.get(name)!;
    stock.consumers.push(this.station(station));
    const spec = this.scenario.stocks.find((candidate) => candidate.name === name)!;
    const features = (spec.features ?? []).map(({ name, nominal, lotSd, ownSd }) => ({
      nominal,
      variation: stock.variation(name, lotSd, ownSd),
    }));
    return { stock, features };
  }
}

/** Wires up the scenario's line for one seed, undisturbed and without a policy. */
export function buildLine(scenario: Scenario, seed: number): Line {
  return new Builder(scenario, seed).build();
}
