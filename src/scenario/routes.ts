import { z } from 'zod';
import { entry, kinds, positiveShare } from './fields.ts';

/** Where the parts of a station go on to. */
export interface RouteSpec {
  /** How one of several is chosen; `only` where there is one. */
  readonly by: 'only' | 'share' | 'priority' | 'state';
  /** In the order of the file. The share is that of the parts, where it goes by share, and 1 elsewhere. */
  readonly routes: readonly { readonly to: string; readonly share: number }[];
}

const NEXT =
  'say where its parts go: a station by its name, or "good", or several, such as { by: priority, routes: [a, b] }';
const target = z.string({ error: NEXT }).min(1, { error: NEXT });

/** Shares are written in decimal and added in binary. */
const TOLERANCE = 1e-9;

const shares = z
  .record(target, positiveShare, {
    error: 'expected a mapping from stations to shares, such as { a: 60 %, b: 40 % }',
  })
  .superRefine((given, context) => {
    const sum = Object.values(given).reduce((all, one) => all + one, 0);
    if (Math.abs(sum - 1) <= TOLERANCE) return;
    context.addIssue({
      code: 'custom',
      message: `the shares sum to ${Number((100 * sum).toPrecision(10))} %; every part goes one way, so they must sum to 100 %`,
    });
  });

const WAYS = 'expected a list of stations, such as [a, b]';
const ways = z
  .array(target, { error: WAYS })
  .min(1, { error: WAYS })
  .superRefine((given, context) => {
    for (const [i, one] of given.entries()) {
      if (given.indexOf(one) === i) continue;
      context.addIssue({
        code: 'custom',
        message: `"${one}" is listed twice; keep one of the two`,
        path: [i],
      });
    }
  });

const plain = (by: 'priority' | 'state') =>
  entry({ by: z.literal(by), routes: ways }).transform(
    ({ routes }): RouteSpec => ({ by, routes: routes.map((to) => ({ to, share: 1 })) }),
  );

/** One next place by its name, or several with the rule that chooses among them. */
export const route = z.union(
  [
    kinds(
      'by',
      ['share', 'priority', 'state'],
      [
        entry({ by: z.literal('share'), routes: shares }).transform(
          ({ by, routes }): RouteSpec => ({
            by,
            routes: Object.entries(routes).map(([to, share]) => ({ to, share })),
          }),
        ),
        plain('priority'),
        plain('state'),
      ],
    ),
    target.transform((to): RouteSpec => ({ by: 'only', routes: [{ to, share: 1 }] })),
  ],
  { error: (issue) => (issue.input === undefined ? NEXT : undefined) },
);

/** The names of the places a station passes its parts to. */
export const routesOf = ({ to }: { readonly to: RouteSpec }): string[] => to.routes.map((one) => one.to);
