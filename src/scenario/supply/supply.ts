import { meanOf } from '../../kernel/distributions/index.ts';
import { count, entry, named, positiveDuration, word } from '../fields.ts';
import { time } from '../laws.ts';
import { yesNo } from '../yes-no.ts';
import { money } from './money.ts';
import { supplier, supplierKeys } from './supplier.ts';

const expedite = entry({
  'lead-time': time.describe('from asking until the order comes, if it would not come sooner anyway'),
  price: money.optional().describe('what each piece of an order that was sped up costs more'),
});

const { 'lead-time': leadTime, ...terms } = supplierKeys;

/** How a stock is replenished, kept and paid for. */
export const supplyKeys = {
  reserve: count(1)
    .optional()
    .describe(
      'pieces held back besides those on hand, of the same lot; nothing takes or replaces them, but a policy may put them on hand',
    ),
  'reorder-at': count(0).optional().describe('order when pieces on hand and on order are this few'),
  order: count(1).optional().describe('pieces in one order; each delivery is one lot'),
  'up-to': count(0)
    .optional()
    .describe(
      'order up to so many on hand and on order; without reorder-at, each piece taken is ordered, and with 0 each that is waited for',
    ),
  'lead-time': leadTime,
  review: positiveDuration
    .optional()
    .describe('looked at every so often only, from the start of the run on; left out, at every piece taken'),
  'in-sequence': yesNo.optional().describe('no order of a supplier comes before an earlier one of its own'),
  'least-order': count(1).optional().describe('smallest order that is taken'),
  'lots-of': count(1).optional().describe('orders are rounded up to whole lots of so many pieces'),
  'one-order-at-a-time': yesNo.optional().describe('no order is placed while another is out'),
  'when-short': word(['waits', 'backorders'])
    .optional()
    .describe(
      'what wants a piece waits in either case; under backorders it counts as taken when orders are placed',
    ),
  ...terms,
  suppliers: named(supplier).optional().describe('several, by name: each with what differs'),
  'shelf-life': time
    .refine((law) => meanOf(law) > 0, { error: 'a shelf life must be above zero' })
    .optional()
    .describe(
      'drawn for each lot as it comes; older pieces are thrown away, and the first to expire is used first',
    ),
  holding: money.optional().describe('cost of a piece on hand for a day'),
  'per-short': money
    .optional()
    .describe(
      'cost of each piece that was not on hand when it was asked for, whether waited for or gone without',
    ),
  expedite: expedite.optional().describe('what a policy can ask for: the oldest order out comes sooner'),
};
