import { describe, expect, it } from 'vitest';
import { experimentOf, readExperiment, whyForeign } from '../../../src/experiment/journal/experiment.ts';
import { plan, planTwins } from '../../../src/experiment/plan.ts';
import { EXPERIMENT, SOURCES, TASKS } from './made-up.ts';

const here = EXPERIMENT;

describe('whyForeign', () => {
  it('finds nothing where all that outcomes depend on is the same', () => {
    expect(whyForeign(experimentOf(SOURCES, [...TASKS]), here)).toBeNull();
    expect(whyForeign(readExperiment(JSON.stringify(here))!, here)).toBeNull();
  });

  it.each([
    [{ ...here, format: 'mendline journal 2' }, 'written as "mendline journal 2"'],
    [{ ...here, version: '1.2.2' }, 'by mendline 1.2.2, and this is 1.2.3'],
    [{ ...here, node: 'v1.0.0' }, `under Node v1.0.0, and this is ${process.version}`],
    [{ ...here, scenario: 'abd' }, 'another scenario, or the scenario was altered'],
    [{ ...here, supplements: [] }, 'other supplements, or one was altered'],
    [{ ...here, modules: ['m'] }, 'other policy modules, or one was altered'],
    [experimentOf(SOURCES, plan(['carry on', 'stop'], 2)), 'of other policies'],
    [
      experimentOf(SOURCES, plan(['carry on', 'stöp'], 3)),
      'of 6 runs (2 policies under 3 seeds), and 4 runs (2 policies under 2 seeds) are asked for',
    ],
    [
      experimentOf(SOURCES, planTwins(['carry on', 'stöp'], 2)),
      'of 8 runs (2 policies under 2 seeds, with twins)',
    ],
  ])('says what is not (%#)', (there, why) => {
    expect(whyForeign(there, here)).toContain(why);
  });
});

it('takes nothing for an experiment that does not say it is one', () => {
  for (const json of ['null', '[]', '{}', '"mendline journal 1"', '{"format":"mendline comparison 2"}'])
    expect(readExperiment(json)).toBeNull();
});
