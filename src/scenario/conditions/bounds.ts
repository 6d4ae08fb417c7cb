import type { z } from 'zod';

/** From beyond a bound on until back at another: more than `above` until at most `until`, or fewer than `below` until at least `until`. */
export type Bounds = { readonly until: number } & ({ readonly above: number } | { readonly below: number });

/** The keys of a condition on how much there is of something. */
export const bounds = <Amount extends z.ZodType<number>>(amount: Amount, leastBelow = amount) => ({
  above: amount.optional().describe('it begins when there is more than this'),
  below: leastBelow.optional().describe('it begins when there is less than this'),
  until: amount
    .optional()
    .describe('it ends when there is so much again; left out, as much as "above" or "below" says'),
});

interface Given {
  readonly above?: number | undefined;
  readonly below?: number | undefined;
  readonly until?: number | undefined;
}

/** The bounds as they were given, or what is wrong with them. */
export function boundsOf({ above, below, until }: Given, context: z.RefinementCtx): Bounds {
  const say = (key: string, message: string) => context.addIssue({ code: 'custom', message, path: [key] });
  if (below !== undefined && above === undefined) {
    if (until !== undefined && until < below)
      say('until', '"until" must not lie under "below": it ends when there is so much again');
    return { below, until: until ?? below };
  }
  if (above === undefined) say('below', 'expected "below" or "above": how much there is when it begins');
  else if (below !== undefined)
    say('above', 'give either "above" or "below"; two conditions go under "any:"');
  else if (until !== undefined && until > above)
    say('until', '"until" must not lie over "above": it ends when there is so little again');
  return { above: above ?? 0, until: until ?? above ?? 0 };
}
