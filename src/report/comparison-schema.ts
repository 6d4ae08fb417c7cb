import { z } from 'zod';
import { MEASURES } from '../line/measures.ts';
import { SCRAP_CAUSES } from '../line/scrap-causes.ts';
import { STATES } from '../line/state.ts';
import { STOCK_MEASURES } from '../line/supply/stock-measures.ts';
import { COUNT_KEYS } from './count-keys.ts';
import { type ComparisonDocument, FORMAT } from './json.ts';
import { better, csvSha256, madeFrom, maybe, number, policy, text, whole } from './schema-words.ts';
import { STATE_LOOKS } from './state-words.ts';

const unit = text('unit of the numbers in rows; 1 is a plain ratio');

/** An object with these keys, each of which must be there. */
const keyed = <Value extends z.ZodType>(values: readonly (readonly [string, Value])[]) =>
  z.object(Object.fromEntries(values) as Record<string, Value>);

const shares = z.record(z.string(), z.number());
const states = z.record(
  z.string(),
  keyed(STATES.map((state) => [state, number(STATE_LOOKS[state].meaning)])) as unknown as z.ZodType<
    Record<(typeof STATES)[number], number>
  >,
);
const stock = {
  stock: text('name of the limited stock'),
  ...(Object.fromEntries(
    STOCK_MEASURES.map(({ key }) => [key, maybe(`${key.replaceAll('_', ' ')} of the stock`)]),
  ) as Record<(typeof STOCK_MEASURES)[number]['key'], z.ZodNullable<z.ZodNumber>>),
};

const basis = {
  runs: whole('runs that gave a value'),
  level: number('coverage that the interval is made for'),
  method: text('how the interval is made'),
};
const estimate = {
  policy: policy,
  mean: number('mean over the runs'),
  lower: maybe('lower end of the interval of the mean'),
  upper: maybe('upper end of the interval of the mean'),
  ...basis,
};
const judged = {
  difference: maybe('mean of the differences, run by run under the same seed'),
  difference_lower: maybe('lower end of the interval of the difference'),
  difference_upper: maybe('upper end of the interval of the difference'),
  difference_level: maybe('coverage that the intervals of the differences are made for together'),
  difference_method: z.string().nullable().describe('how that is made; null where there is none'),
  verdict: z
    .enum(['better', 'worse', 'no difference worth having', 'undecided'])
    .nullable()
    .describe(
      'what the interval of the difference allows to be said, better and worse by more than is worth having; null where there is none',
    ),
  surely: z
    .enum(['better', 'worse'])
    .nullable()
    .describe('on which side of zero the whole interval lies, worth having or not; null where it holds zero'),
  more_runs: z
    .int()
    .min(1)
    .nullable()
    .describe(
      'about how many more seeds would decide what is undecided; null where it is decided or cannot be told',
    ),
};
const best = z.object({
  policy: estimate.policy,
  difference: number('mean less the mean of the best other policy'),
  difference_lower: maybe('lower end of its interval; 0 where it is not ahead of the best'),
  difference_upper: maybe('upper end of its interval; 0 where it is shown to be behind'),
  difference_level: number('coverage that these intervals are made for together'),
  difference_method: text('how the interval is made'),
  runs: whole('seeds under which every policy that has values gave one'),
  may_be_best: z.boolean().describe('whether the runs leave it open that it is best'),
  surely_best: z.boolean().describe('whether it is shown that no other is better'),
});
const pair = z.object({
  policy: estimate.policy,
  other: text('the policy that it is compared with'),
  runs: whole('seeds under which both gave a value'),
  ...judged,
  chance: maybe(
    'of a mean difference so far from zero were there none, adjusted after Holm for all pairs in all measures',
  ),
});
const measure = z.object({
  key: text('name of the measure in data files, which ends in its unit'),
  name: text('name of the measure in reports'),
  unit,
  better,
  meaning: text('what it is'),
  worth: number('what a difference must exceed to be worth having; 0 where every difference is'),
  rows: z
    .array(z.object({ ...estimate, ...judged }))
    .describe('one a policy that has a value, its difference to the baseline'),
  best: z
    .array(best)
    .describe("Hsu's comparisons with the best, which hold together over all measures; without the bound"),
  pairs: z.array(pair).describe('each policy against each before it, without the bound'),
});

const run = z.object({
  policy: estimate.policy,
  seed: whole('seed of the run'),
  measures: keyed(MEASURES.map(({ key, meaning }) => [key, maybe(meaning)])),
  counts: keyed(COUNT_KEYS.map(([, key]) => [key, whole(`number ${key.replaceAll('_', ' ')}`)])),
  state_shares: states.describe('share of the counted time by station and state'),
  stock_out_shares: shares.describe('share of the counted time with nothing on hand, by limited stock'),
  crew_busy_shares: shares.describe('share of the counted time that members were busy, by crew'),
  stocks: z.array(z.object(stock)).describe('one a limited stock'),
  did: z.record(z.string(), z.number()).exactOptional().describe('what responses did, by name'),
  events: whole('events that happened, warm-up included'),
});

const interval = {
  mean: number('mean over the runs'),
  lower: maybe('lower end of its interval'),
  upper: maybe('upper end of its interval'),
  ...basis,
};
const bound = z.object({
  policy: estimate.policy,
  recoverable_per_h: z
    .object(interval)
    .nullable()
    .describe('what it makes beyond the baseline, good parts per hour; null where only it was run'),
  recovered: z
    .array(z.object({ policy: estimate.policy, ...interval }))
    .nullable()
    .describe('share of that which each policy makes beyond the baseline; null where there is nothing'),
});

const skewness = z
  .object({
    value: number('third central moment in standard deviations'),
    runs_wanted: whole("runs that Cochran's rule asks for"),
    doubtful: z.boolean().describe('whether there are fewer, so that the interval of the mean is doubtful'),
  })
  .describe('how skewed the values are');
const anyEstimate = z.object({
  value: number('the estimate'),
  lower: maybe('lower end of its interval'),
  upper: maybe('upper end of its interval'),
  ...basis,
});
const named = { key: measure.shape.key, name: measure.shape.name };
const spread = z.object({
  bad_share: number('share of runs that are worse than what bad tells'),
  measures: z.array(
    z.object({
      ...{ ...named, unit },
      rows: z.array(
        z.object({
          policy: estimate.policy,
          median: anyEstimate.describe('half of the runs lie below it'),
          bad: anyEstimate.describe('the share bad_share of the runs is worse than this'),
          over_all: anyEstimate
            .nullable()
            .describe(
              'of a ratio, all that is above its line over all that is below it; null of what is none',
            ),
          mean_skewness: skewness,
          difference_skewness: skewness.nullable().describe('of the differences to the baseline'),
        }),
      ),
    }),
  ),
});
const target = z.object({
  ...named,
  unit: text('unit of the limit; 1 is a plain ratio'),
  at: z.enum(['least', 'most']).describe('which of the two the limit is'),
  limit: number('what a run should reach'),
  rows: z.array(
    z.object({
      policy: estimate.policy,
      met: whole('runs that met it'),
      without_value: whole('runs that gave no value, which count as not met'),
      share: anyEstimate.describe('share of all runs that met it'),
    }),
  ),
});

const twins = z.object({
  rolling_s: number('time that the rolling rate goes back over, s'),
  tolerance: z
    .object({ share: number('share of the rate of the twin'), parts: number('parts in the window') })
    .describe('a rolling rate that is down by no more than the larger of the two has recovered'),
  measures: z.array(
    z.object({
      ...{ key: measure.shape.key, name: measure.shape.name, unit, better, meaning: measure.shape.meaning },
      source: text('where the definition is from'),
      rows: z.array(z.object({ ...estimate, mean_skewness: skewness })),
    }),
  ),
  curves: z.array(
    z.object({
      policy: estimate.policy,
      level: number('coverage of the interval at each point by itself'),
      method: text('how these intervals are made'),
      disturbances: z.array(
        z.object({
          name: text('name of the disturbance'),
          from_s: number('its beginning since the start of the run, mean over the seeds, s'),
          to_s: number('its end, s'),
        }),
      ),
      points: z.array(
        z.object({
          time_s: number('end of a window since the start of the run, s'),
          disturbed_per_h: number('rolling rate of the runs, good parts per hour'),
          lower: maybe('lower end of its interval'),
          upper: maybe('upper end of its interval'),
          twin_per_h: number('rolling rate of the twins, good parts per hour'),
        }),
      ),
    }),
  ),
});

const warmUp = z
  .object({
    by: z.enum(['given', 'none', 'pilot']).describe('how it was chosen: by the scenario, or by the pilot'),
    length_s: number('time before anything is counted, s'),
    pilot: z
      .object({
        policy: text('policy of its runs, which are undisturbed'),
        runs: whole('its runs, under seeds of their own'),
        length_s: number('how long each took, s'),
        batch_s: number('length of a batch, s'),
        settled_s: maybe('where MSER-5 would begin to count, s'),
        good_per_h: z.array(z.number()).describe('good parts per hour in each batch, mean over the runs'),
      })
      .describe('how the output of the line settles'),
  })
  .describe('the warm-up');

const halfWidth = z.object({
  by: text('key of the measure'),
  half_width: number('half the width that was asked for, in the unit of the measure'),
  first_stage: whole('seeds from which the spread was told'),
  at_most: whole('seeds after which it ends anyhow'),
  rows: z.array(
    z.object({
      policy: estimate.policy,
      needed: whole('runs that it takes, by the spread of the first stage'),
      mean: number('mean over the runs'),
      lower: maybe('mean less the half width, where that many runs were made'),
      upper: maybe('mean and the half width'),
    }),
  ),
});
const perThousand = (what: string) => number(`${what} for each 1000 parts started, all runs together`);
const causes = {
  scrap_causes: z
    .array(
      z.object({
        policy: estimate.policy,
        station: text('where they were scrapped'),
        cause: z.enum(SCRAP_CAUSES).describe('why they were scrapped'),
        parts: whole('parts scrapped in all runs'),
        parts_per_1000_started: perThousand('parts scrapped'),
      }),
    )
    .exactOptional()
    .describe('why parts were scrapped; without what no policy met'),
  misfit_pairs: z
    .array(
      z.object({
        policy: estimate.policy,
        station: text('where they were to be assembled'),
        hole: text('feature that is the hole'),
        shaft: text('feature that is the shaft'),
        tight_per_1000_started: perThousand('attempts at which this pair was the tightest'),
        loose_per_1000_started: perThousand('attempts at which this pair was the loosest'),
      }),
    )
    .exactOptional()
    .describe('which mating pairs decided that parts did not fit; without those that never did'),
};

const looked = {
  sizes: z
    .array(
      z.object({
        of: text('a feature, or a station and one of its mating pairs'),
        kind: z.enum(['dimension', 'clearance']).describe('what is counted'),
        lower_mm: number('lower limit'),
        upper_mm: number('upper limit'),
        first_edge_mm: number('lower edge of the first bin'),
        bin_mm: number('width of a bin'),
        policies: z.array(
          z.object({
            policy: estimate.policy,
            below: whole('how many were below all bins'),
            counts: z.array(whole('how many were in a bin')).describe('by bin'),
            above: whole('how many were above all bins'),
          }),
        ),
      }),
    )
    .exactOptional()
    .describe('true sizes of features as made and true clearances of first attempts, in the runs looked at'),
  levels: z
    .object({
      runs: whole('runs of each policy that were looked at'),
      times_s: z.array(number('time since the start of the run')).describe('when the levels were looked at'),
      of: z.array(
        z.object({
          name: text('a limited stock, or the station behind a limited buffer'),
          kind: z.enum(['stock', 'buffer']).describe('what it is'),
          policies: z.array(
            z.object({
              policy: estimate.policy,
              mean_pieces: z.array(number('mean level over the runs')).describe('by time'),
            }),
          ),
        }),
      ),
    })
    .exactOptional()
    .describe('how many pieces were on hand, and parts in buffers'),
};

/** The format of comparison.json; what the document is made by must give what this says. */
const schema = z.object({
  ...madeFrom(FORMAT),
  seeds: z.array(whole('a seed')).describe('every policy was run under each of these'),
  level: number('coverage of the interval of a mean, and of all those of differences together'),
  comparisons: whole('differences to the baseline that hold together'),
  pair_comparisons: whole('differences of all pairs, in all measures, that hold together'),
  baseline: text('the policy that the others are compared with'),
  policies: z.array(z.string()).describe('names in the order of the scenario'),
  measures: z.array(measure).describe('those that some run gives a value for'),
  state_shares: z
    .record(z.string(), states)
    .describe('mean share of the counted time by policy, station and state'),
  crew_busy_shares: z
    .record(z.string(), shares)
    .describe('mean share of the counted time that members were busy, by policy and crew'),
  stocks: z
    .array(
      z.object({
        policy: estimate.policy,
        estimated_fill_rate: maybe('what theory says of the fill rate before any run'),
        ...stock,
      }),
    )
    .describe('mean over the runs that give a value, for each policy and limited stock'),
  spread: spread.exactOptional().describe('how the runs lie, beyond their means'),
  targets: z.array(target).exactOptional().describe('how often each policy met what was asked for'),
  ...causes,
  ...looked,
  runs: z.array(run),
  csv_sha256: csvSha256
    .exactOptional()
    .describe('SHA-256 of the CSV files that belong to this document, by name'),
  half_width: halfWidth
    .exactOptional()
    .describe('where the runs stopped by the width of the intervals of the means'),
  bound: bound.exactOptional().describe('the policy that knows what no line can know, for reference'),
  warm_up: warmUp.exactOptional(),
  twins: twins.exactOptional().describe('what the disturbances cost against undisturbed twins'),
}) satisfies z.ZodType<ComparisonDocument>;

/**
 * The format of comparison.json as JSON Schema, 2020-12. What it does not name may stand there, too: the number of the
 * format changes only when a reader would go wrong. `closed` refuses what is not named, for tests.
 */
export function comparisonJsonSchema(closed = false): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: closed ? 'output' : 'input', reused: 'ref' });
  return { $schema, title: FORMAT, ...rest };
}
