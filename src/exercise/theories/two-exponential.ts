import { meanOf } from '../../kernel/distributions/index.ts';
import { mustBePlain, mustBeUndisturbed } from './plain.ts';
import { must, type Theory } from './theory.ts';

/**
 * Two stations with exponential times and places between them, as a birth-death chain of what the first has finished and
 * the second has not.
 */
export const twoExponential: Theory = {
  name: 'two exponential stations',
  says:
    'Count the parts that the first station has finished and the second has not: none up to the places between plus ' +
    'two, since one is in work at the second and one can be stuck, finished, at the first. Each count is as likely as ' +
    'the one below it times the rate of the first over the rate of the second. The line makes parts at the rate of the ' +
    'second, except while that count is none.',
  source: 'G. C. Hunt (1956), Operations Research 4, 674-683 (for unequal rates the chain is solved anew)',
  values(scenario, policy) {
    const { stations, stocks } = scenario;
    mustBeUndisturbed(scenario, policy);
    must(stations.length === 2, 'expected two stations');
    const [first, second] = stations as [(typeof stations)[0], (typeof stations)[0]];
    for (const station of [first, second]) {
      must(station.does === 'work', `"${station.name}" is to do plain work`);
      must(
        station.cycle.distribution === 'exponential',
        `the time of "${station.name}" is to be exponential`,
      );
    }
    mustBePlain(first, second.name, ['takes']);
    mustBePlain(second, 'good', ['buffer']);
    must(
      stocks.every(({ unlimited }) => unlimited === true),
      'the material is to be unlimited',
    );
    const { places, transit } = (second.does === 'work' && second.buffer) || { places: 0, transit: 0 };
    must(places < 1000 && transit === 0, `"${second.name}" is to have a buffer of fewer than 1000 places`);
    const most = places + 2;
    const ratio = meanOf(second.cycle) / meanOf(first.cycle);
    // The likeliest count weighs 1: powers above that would leave the numbers there are.
    const likeliest = ratio > 1 ? most : 0;
    const weights = Array.from({ length: most + 1 }, (_, count) => ratio ** (count - likeliest));
    const busy = weights.slice(1).reduce((sum, weight) => sum + weight, 0);
    const all = weights[0]! + busy;
    const perSecond = busy / all / meanOf(second.cycle);
    // The first station holds a part of its own besides, except while it is stuck with one that is counted.
    const inLine = weights.reduce(
      (sum, weight, count) => sum + (weight / all) * (count < most ? count + 1 : count),
      0,
    );
    return {
      throughput: perSecond * 3600,
      'work in progress': inLine,
      'lead time': inLine / perSecond,
    };
  },
};
