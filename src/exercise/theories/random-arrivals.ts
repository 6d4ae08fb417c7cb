import { meanOf, varianceOf } from '../../kernel/distributions/index.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import { mustBePlain, mustBeUndisturbed, mustHaveOnly } from './plain.ts';
import { must, type Theory } from './theory.ts';

/** Mean (s) and variance (s²) of the time from the start of a part to its end, with the stops in between. */
function completion(station: StationSpec): { mean: number; variance: number } {
  let stretch = 1;
  let bySecond = 0;
  for (const breakdown of station.breakdowns) {
    const { name, every, counted, repair, cycle } = breakdown;
    mustHaveOnly(['name', 'every', 'counted', 'repair', 'cycle', 'priority'], breakdown, `"${name}"`);
    must(every.distribution === 'exponential', `the time to "${name}" is to be exponential`);
    must(counted === 'working' && cycle === 'resumes', `"${name}" is to count work and let the cycle resume`);
    // The stops in the work of a part are a Poisson number.
    stretch += meanOf(repair) / every.mean;
    bySecond += (varianceOf(repair) + meanOf(repair) ** 2) / every.mean;
  }
  const mean = meanOf(station.cycle);
  return { mean: mean * stretch, variance: varianceOf(station.cycle) * stretch ** 2 + mean * bySecond };
}

/** One station that parts come to at random; it may break down. */
export const randomArrivals: Theory = {
  name: 'random arrivals at one station',
  says:
    'Take all the time from the start of a part to its end, stops included: its mean times the rate of arrivals is the ' +
    'load, its standard deviation over its mean the variation. A part waits load / (1 - load) x (1 + variation squared) ' +
    '/ 2 of these mean times, and then takes one itself. The number in the line is the rate of arrivals times that ' +
    '(Little).',
  source:
    'F. Pollaczek (1930) and A. Y. Khinchine (1932); with stops W. J. Hopp and M. L. Spearman, Factory Physics, ' +
    'chapter 8 (citation from memory)',
  values(scenario, policy) {
    const { stations } = scenario;
    mustBeUndisturbed(scenario, policy);
    must(stations.length === 2, 'expected arrivals and one station');
    const arrivals = stations.find(({ does }) => does === 'arrive');
    const station = stations.find(({ does }) => does !== 'arrive');
    must(arrivals?.does === 'arrive' && station?.does === 'work', 'expected arrivals and one plain station');
    const { distribution } = arrivals.cycle;
    must(
      distribution === 'exponential',
      `the time between arrivals at "${arrivals.name}" is to be exponential`,
    );
    mustBePlain(arrivals, station.name, ['whenFull']);
    mustBePlain(station, 'good', ['buffer', 'breakdowns']);
    const { places, transit } = station.buffer ?? { places: 0, transit: 0 };
    const endless = places === Number.POSITIVE_INFINITY && transit === 0;
    must(endless, `"${station.name}" is to have an unlimited buffer`);
    const rate = 1 / meanOf(arrivals.cycle);
    const { mean, variance } = completion(station);
    const load = rate * mean;
    if (load >= 1) return null;
    const time = mean + ((load / (1 - load)) * mean * (1 + variance / mean ** 2)) / 2;
    return { throughput: rate * 3600, 'lead time': time, 'work in progress': rate * time };
  },
};
