import type { z } from 'zod';
import { every } from '../every.ts';
import { count, entry, positiveShare, share } from '../fields.ts';
import { time } from '../laws.ts';
import { money } from './money.ts';

const short = entry({
  chance: positiveShare.describe('share of the deliveries that fall short'),
  share: share.describe('what comes of such an order; the rest never does'),
}).refine(({ chance, share }) => chance < 1 || share > 0, {
  error: 'nothing would ever be delivered; lower the chance, or raise the share',
});

const delivers = entry({
  sound: positiveShare.optional().describe('chance that a piece is sound; left out, all are'),
  short: short.optional().describe('deliveries that bring less than was ordered'),
});

const incoming = entry({
  takes: time.optional().describe('how long a delivery is inspected before it can be used'),
  finds: share.optional().describe('chance that an unsound piece is found and taken out; left out, all are'),
});

const outages = entry({
  every: every.describe('from the end of one outage to the next'),
  for: time.describe('how long the supplier delivers nothing; what falls due meanwhile comes at the end'),
});

/** What one supplier may have in a way of its own; where it has not, what the stock says holds. */
export const supplierKeys = {
  'lead-time': time.optional().describe('from order to delivery'),
  delivers: delivers.optional().describe('what is wrong with deliveries'),
  incoming: incoming.optional().describe('inspection of what comes in'),
  outages: outages.optional().describe('the supplier fails at random'),
  price: money.optional().describe('of a piece, paid for each that comes'),
  'per-order': money.optional().describe('cost of placing an order'),
};

/** One of several suppliers. */
export const supplier = entry({
  share: positiveShare.optional().describe('of the orders that go to it, drawn for each order'),
  rank: count(1).optional().describe('an order goes to the first by rank that is not out of service'),
  ...supplierKeys,
});

export type SupplierSpec = z.output<typeof supplier>;
