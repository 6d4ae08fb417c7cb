import { LEVEL } from '../experiment/comparison.ts';
import { percentLevel } from './cells.ts';

const SHARE = percentLevel(LEVEL);

/** What the words and numbers of a comparison mean, for the page and the README. */
export const VERDICT_TERMS: readonly (readonly [term: string, meaning: string])[] = [
  [
    `mean, ${SHARE} % interval`,
    `over runs, each under its own seed: were the whole experiment repeated often, ${SHARE} of 100 such intervals would hold ` +
      'the mean that endlessly many runs would give. It tells how sure the simulation is, not how true the model is',
  ],
  [
    'difference',
    'the policy less the first policy, run by run under the same seed, so that both meet the same luck; then the mean of ' +
      'these. Much of the luck drops out',
  ],
  [
    'its interval',
    `together with those of all other policies and measures it holds at ${SHARE} %: each is widened for their number, by ` +
      "Bonferroni's inequality. It rests on means of runs being near normal",
  ],
  [
    'worth having',
    'what --worth says a difference must exceed to matter. In a measure that it does not name every difference does',
  ],
  [
    'better, worse',
    'the whole interval of the difference lies beyond what is worth having: beyond zero where every difference is',
  ],
  [
    'no difference worth having',
    'the whole interval lies within what is worth having: whatever the difference is, it does not matter. Where every ' +
      'difference matters, this is said only of no change in any run',
  ],
  [
    'undecided: run about N more',
    'the interval holds both what would be worth having and what would not. It is not the same as no difference. With N more seeds ' +
      'it would be decided, were mean and spread what they seem now; look again after that many',
  ],
  [
    'surely better, surely worse',
    'the interval lies on one side of zero, but within what is worth having (by too little) or not wholly beyond it ' +
      '(not surely by enough)',
  ],
  [
    'may be best, surely best',
    `all policies that are not shown to be behind another; where one is left, it is ahead of all, by however little. These are Hsu's ` +
      `comparisons with the best, which hold together over all measures at ${SHARE} %. They ask less than a verdict, who leads and ` +
      'not by how much, so they may be sure of what a verdict leaves undecided',
  ],
  [
    'chance',
    'of all pairs: how likely a mean difference so far from zero would be were there none, adjusted after Holm for all pairs in all ' +
      'measures. At most 0.05 shows a difference, be it worth having or not',
  ],
];
