import type { CloserLook } from '../../experiment/sizing/look-closer.ts';
import type { Configuration, Sized } from '../../experiment/sizing/sized.ts';
import { sizeAt } from '../../scenario/sizings.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { SIZING_FORMAT } from '../documents.ts';
import { keyedUnit } from '../keyed-unit.ts';
import { type MadeFrom, madeFromJson } from '../made-from.ts';
import { sizedVerdict } from './sized-words.ts';

export interface SizedSource extends MadeFrom {
  readonly sized: Sized;
}

const estimateJson = (estimate: Estimate | null) =>
  estimate && {
    ...{ mean: estimate.value, lower: estimate.lower, upper: estimate.upper },
    ...{ level: estimate.level, runs: estimate.runs, method: estimate.method },
  };

/** By name, what stands at the places of each size. */
const valuesJson = ({ sizes }: Sized, values: readonly (number | string)[]) =>
  Object.fromEntries(sizes.map(({ name }, i) => [name, values[i]!]));

const configurationJson = (sized: Sized, one: Configuration) => ({
  sizes: valuesJson(sized, one.values),
  cost: one.cost,
  check: one.word,
  check_runs: one.checkRuns,
  cheapest_of_its_level: one.frontier,
  means: one.means.map(estimateJson),
});

const lookJson = ({ sizes }: Sized, look: CloserLook | null) =>
  look && {
    runs: look.runs,
    fresh_seeds: look.fresh,
    means: look.means.map(estimateJson),
    steps: look.steps.map(({ size, point, cost, changes }) => ({
      size: sizes[size]!.name,
      to: sizeAt(sizes[size]!, point[size]!),
      cost,
      changes: changes.map(estimateJson),
    })),
  };

/** A sizing as a plain object, its keys always in the same order. Numbers are unrounded, in the unit that the target names. */
export function sizedJson({ sized, ...from }: SizedSource) {
  const { sizes, targets, chosen, apparent, configurations } = sized;
  return {
    ...madeFromJson(SIZING_FORMAT, from),
    sizing: sized.name,
    policy: sized.policy,
    money: sized.money,
    sizes: sizes.map((size) => ({
      ...{ size: size.name, at: size.at, least: sizeAt(size, 0), most: sizeAt(size, size.count - 1) },
      ...{ step: size.step, unit: size.unit, cost: size.cost },
    })),
    targets: targets.map((target) => ({
      ...{ key: target.key, name: target.name, unit: keyedUnit(target.key), meaning: target.meaning },
      ...{ must_be: target.better === 'higher' ? 'at least' : 'at most', value: target.value },
      worth: target.worth,
    })),
    sure: sized.sure,
    possible: sized.possible,
    whole: sized.whole,
    first_runs: sized.first,
    runs: sized.runs,
    ended_early: sized.spent !== null,
    verdict: sizedVerdict(sized),
    chosen: chosen && configurationJson(sized, chosen),
    apparent: apparent && configurationJson(sized, apparent),
    closer_look: lookJson(sized, sized.look),
    configurations: configurations.map((one) => configurationJson(sized, one)),
  };
}
