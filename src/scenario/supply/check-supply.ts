import type { Law } from '../../kernel/distributions/index.ts';
import { kebab } from '../fields.ts';
import type { SupplierSpec } from './supplier.ts';
import { supplyKeys } from './supply.ts';

/** What is judged of a stock. */
interface Given {
  readonly unlimited?: true | undefined;
  readonly onHand?: number | undefined;
  readonly reorderAt?: number | undefined;
  readonly order?: number | undefined;
  readonly upTo?: number | undefined;
  readonly whenShort?: 'waits' | 'backorders' | undefined;
  readonly reserve?: number | undefined;
  readonly shelfLife?: Law | undefined;
  readonly leadTime?: Law | undefined;
  readonly suppliers?: readonly (SupplierSpec & { readonly name: string })[] | undefined;
}

/** Says what is wrong, at a key of the stock or at the stock itself. */
type Say = (message: string, ...path: string[]) => void;

/** Keys that say how pieces are kept, which also hold for what is never ordered. */
const KEPT = ['reserve', 'shelfLife', 'holding', 'perShort'];
/** Keys of the rules, which are judged together. */
const RULE = ['reorderAt', 'order', 'upTo', 'leadTime'];

const ALL_THREE =
  'reordering needs all three of reorder-at, order and lead-time, or "up-to" instead of order; "up-to" and lead-time alone order each piece taken';

const isZero = (law: Law | undefined): boolean => law?.distribution === 'constant' && law.value === 0;

function checkShares(suppliers: readonly (SupplierSpec & { readonly name: string })[], say: Say): void {
  if (suppliers.length === 0) return say('expected at least one supplier, or leave it out', 'suppliers');
  const shares = suppliers.map(({ share }) => share);
  const ranks = suppliers.map(({ rank }) => rank);
  if (shares.every((share) => share !== undefined) && ranks.every((rank) => rank === undefined)) {
    const sum = shares.reduce((sum, share) => sum + share!, 0);
    if (Math.abs(sum - 1) > 1e-9)
      say(
        `the shares of the suppliers add up to ${Number((sum * 100).toPrecision(6))} %, not to 100 %`,
        'suppliers',
      );
  } else if (ranks.every((rank) => rank !== undefined) && shares.every((share) => share === undefined)) {
    if (new Set(ranks).size < ranks.length || Math.max(...ranks.map(Number)) > ranks.length)
      say(`expected the ranks 1 to ${ranks.length}, each once`, 'suppliers');
  } else say('expected a "share" for each supplier (70 %), or a "rank" for each (1, 2, ...)', 'suppliers');
}

function checkRule(given: Given, say: Say): void {
  const { reorderAt, order, upTo, leadTime, suppliers } = given;
  if (order !== undefined && upTo !== undefined)
    return say(
      'expected one of "order" (so many a time) and "up-to" (as many as are missing), not both',
      'up-to',
    );
  const missing = suppliers?.filter((supplier) => supplier.leadTime === undefined) ?? [];
  const led = leadTime !== undefined || (suppliers !== undefined && missing.length === 0);
  if (leadTime === undefined && suppliers && missing.length > 0) {
    for (const { name } of missing)
      say('"lead-time" is missing: give it here, or at the stock for all suppliers', 'suppliers', name);
  } else if (!led || (order !== undefined && reorderAt === undefined)) say(ALL_THREE);
  if (reorderAt !== undefined && upTo !== undefined && reorderAt >= upTo)
    say(
      `the reorder point ${reorderAt} is not below "up-to", ${upTo}, so that an order could be of no piece; lower it, or raise "up-to"`,
      'reorder-at',
    );
  if (upTo === 0 && given.whenShort !== 'backorders')
    say(
      'nothing would ever be ordered: up to 0, only what is waited for is, with "when-short: backorders"; else give at least 1',
      'up-to',
    );
  const times = suppliers?.map((supplier) => supplier.leadTime ?? leadTime) ?? [leadTime];
  if (given.onHand === 0 && times.every(isZero))
    say(
      'with nothing on hand and no lead time this stock neither holds nor lacks anything: give pieces on hand, a lead time, or "unlimited: true" instead',
      'on-hand',
    );
}

/** Whether what a stock says of its supply goes together. */
export function checkSupply(given: Given, say: Say): void {
  const keys = Object.entries(given).flatMap(([key, value]) => (value === undefined ? [] : [key]));
  const supplied = keys.filter((key) => kebab(key) in supplyKeys);
  if (given.unlimited) {
    const needless = [...(given.onHand === undefined ? [] : ['onHand']), ...supplied];
    if (needless.length > 0) say(`an unlimited stock needs no ${needless.map(kebab).join(', ')}`);
    return;
  }
  if (given.onHand === undefined) say('expected "on-hand: 400" (pieces at the start) or "unlimited: true"');
  if (given.reserve !== undefined && given.shelfLife)
    say('what has a shelf life does not keep in a reserve; take out "reserve" or "shelf-life"', 'reserve');
  if (given.suppliers) checkShares(given.suppliers, say);
  if (given.order !== undefined || given.upTo !== undefined) return checkRule(given, say);
  if (RULE.some((key) => keys.includes(key))) return say(ALL_THREE);
  for (const key of supplied.filter((key) => !KEPT.includes(key)))
    say(
      `this stock is never ordered, so take it out, or give reorder-at, order and lead-time, or "up-to" and lead-time`,
      kebab(key),
    );
}
