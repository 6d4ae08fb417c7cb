import { meanOf } from '../../kernel/distributions/index.ts';
import type { StockSpec } from '../../scenario/stocks.ts';
import { poissonExcess, poissonUpTo } from '../../statistics/poisson.ts';
import { mustBePlain, mustBeUndisturbed, mustHaveOnly } from './plain.ts';
import { must, type Theory } from './theory.ts';

/** What a formula reads of a stock, and what only costs. */
const READ = [
  ...['name', 'onHand', 'reorderAt', 'order', 'upTo', 'leadTime', 'whenShort'],
  ...['holding', 'perShort', 'perOrder', 'price', 'features'],
];

/** Between which levels pieces on hand and on order, less those owed, go up and down: each as often as the others. */
function positions({ name, reorderAt, order, upTo, ...stock }: StockSpec): readonly number[] {
  must(stock.whenShort === 'backorders', `"${name}" is to count what is waited for as taken ("backorders")`);
  must(
    stock.leadTime?.distribution === 'constant' && stock.suppliers === undefined,
    `the lead time of "${name}" is to be constant, and the supplier one`,
  );
  if (reorderAt !== undefined && order !== undefined)
    return Array.from({ length: order }, (_, i) => reorderAt + 1 + i);
  must(
    upTo !== undefined && reorderAt === undefined,
    `"${name}" needs "reorder-at" and "order", or "up-to" alone`,
  );
  return [upTo];
}

/** A stock that a demand at random takes from. */
export const randomDemand: Theory = {
  name: 'random demand for one stock',
  says:
    'What is on hand a lead time from now is what is on hand and on order now, less the demand meanwhile, which is a ' +
    'Poisson number. What is on hand and on order is, with orders of a fixed size, each of the levels above the reorder ' +
    'point equally often. So all follows from the Poisson law.',
  source:
    'G. Hadley and T. M. Whitin (1963), Analysis of Inventory Systems; W. J. Hopp and M. L. Spearman, Factory Physics, ' +
    'chapter 2 (citation from memory)',
  values(scenario, policy) {
    const { stations, stocks } = scenario;
    mustBeUndisturbed(scenario, policy);
    const arrivals = stations.find(({ does }) => does === 'arrive');
    const taker = stations.find(({ does }) => does === 'assemble');
    must(
      stations.length === 2 && arrivals?.does === 'arrive' && taker?.does === 'assemble',
      'expected arrivals and one assembly',
    );
    must(arrivals.cycle.distribution === 'exponential', 'the time between arrivals is to be exponential');
    mustBePlain(arrivals, taker.name, ['whenFull']);
    mustBePlain(taker, 'good', ['takes', 'fits', 'misfit', 'buffer']);
    const [name] = taker.takes;
    must(taker.takes.length === 1 && taker.fits.length === 0, 'expected one mate, which always fits');
    must(meanOf(taker.cycle) === 0, 'the assembly is to take no time');
    must(taker.buffer.places === Number.POSITIVE_INFINITY, 'as many parts as come are to wait');
    const stock = stocks.find((one) => one.name === name)!;
    must(stock.unlimited !== true, `"${name}" is not to be unlimited`);
    const levels = positions(stock);
    mustHaveOnly(READ, stock, `"${name}"`);
    const mean = meanOf(stock.leadTime!) / meanOf(arrivals.cycle);
    must(mean > 0, `the lead time of "${name}" is to be above zero`);
    const over = (of: (level: number) => number) =>
      levels.reduce((sum, level) => sum + of(level), 0) / levels.length;
    return {
      [`${name} filled at once`]: over((level) => poissonUpTo(level - 1, mean)),
      [`${name} on hand`]: over((level) => level - mean + poissonExcess(level, mean)),
      [`${name} waited for`]: over((level) => poissonExcess(level, mean)),
    };
  },
};
