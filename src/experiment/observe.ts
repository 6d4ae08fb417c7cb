import { buildLine } from '../line/build/build-line.ts';
import type { Line } from '../line/line.ts';
import { FeatureProbe } from '../line/probes/feature-probe.ts';
import { FitProbe } from '../line/probes/fit-probe.ts';
import { FormingProbe } from '../line/probes/forming-probe.ts';
import { GaugeProbe } from '../line/probes/gauge-probe.ts';
import { selfCheck } from '../line/self-check.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** What was seen between the end of the warm-up and the end of a run, by names of the scenario. */
export interface Observed {
  readonly forming: ReadonlyMap<string, FormingProbe>;
  readonly features: ReadonlyMap<string, FeatureProbe>;
  readonly fits: ReadonlyMap<string, FitProbe>;
  readonly gauges: ReadonlyMap<string, GaugeProbe>;
  /** Attempts to read a mark at each station that has a reader, and those that failed. */
  readonly readers: ReadonlyMap<string, { attempts: number; unread: number }>;
}

/** Puts fresh probes in place of those that were there. */
function look(line: Line, { stations }: Scenario): Observed {
  const forming = new Map(
    [...line.formingFlaws].map(([name, flaws]) => {
      flaws.probe = new FormingProbe();
      return [name, flaws.probe];
    }),
  );
  const features = new Map(
    [...line.features].map(([name, feature]) => {
      const probe = new FeatureProbe(feature.spec);
      feature.made = probe;
      return [name, probe];
    }),
  );
  const fits = new Map(
    stations.flatMap((spec) => {
      if (spec.does !== 'assemble') return [];
      const probe = new FitProbe(spec.fits.length);
      line.assemblies.get(spec.name)!.probe = probe;
      return [[spec.name, probe] as const];
    }),
  );
  const gauges = new Map(
    [...line.gauges].map(([name, gauge]) => {
      gauge.probe = new GaugeProbe();
      return [name, gauge.probe];
    }),
  );
  const readers = new Map(
    [...line.gauges, ...line.assemblies].flatMap(([name, { reader }]) => {
      if (!reader) return [];
      const seen = { attempts: 0, unread: 0 };
      reader.listeners.push((unread) => {
        seen.attempts++;
        if (unread) seen.unread++;
      });
      return [[name, seen] as const];
    }),
  );
  return { forming, features, fits, gauges, readers };
}

/**
 * The line with every mate tried once: a part that meets a mate which another part did not fit is no fair sample, for
 * neighbours share their sheet, and neither are the parts that then meet a new one.
 */
const newMates = (scenario: Scenario): Scenario => ({
  ...scenario,
  stations: scenario.stations.map((at) => (at.does === 'assemble' ? { ...at, mateTries: 1 } : at)),
});

/**
 * One run of the line without disturbances and under no policy, with probes that see what a real line could not: true
 * dimensions, pair by pair. Every attempt to assemble has a new mate.
 * @throws StandstillError, EndlessLoopError, SelfCheckError
 */
export function observe(scenario: Scenario, seed: number): Observed {
  const { warmUp, length } = scenario.run;
  const line = buildLine(newMates(scenario), seed);
  let seen = look(line, scenario);
  line.start();
  if (warmUp > 0) {
    line.calendar.run(warmUp);
    seen = look(line, scenario);
  }
  line.calendar.run(warmUp + length);
  selfCheck(line);
  return seen;
}
