import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import { checkSupply } from '../supply/check-supply.ts';
import { keptAs } from '../supply/kept-as.ts';
import type { Checker } from './checker.ts';

/** Whether a stock can be kept as a policy says. */
export function checkKeeping(check: Checker, it: ResponseOf<'keep'>, path: Path): void {
  check.known([...path, 'stock'], it.stock, check.names.stock, 'stock');
  const stock = check.stock(it.stock);
  if (!stock) return;
  const { onHand, reorderAt, order, upTo } = it;
  if ([onHand, reorderAt, order, upTo].every((key) => key === undefined))
    return check.say(
      path,
      `say how "${it.stock}" is kept: on-hand, reorder-at, order or up-to, such as "up-to: 2"`,
    );
  if (stock.unlimited)
    return check.say(
      [...path, 'stock'],
      `"${it.stock}" is unlimited, so none of it need be kept; take this out`,
    );
  checkSupply(keptAs(stock, it), (message, ...keys) => {
    const given = keys[0] !== undefined && keys[0] in { 'on-hand': 0, 'reorder-at': 0, order: 0, 'up-to': 0 };
    check.say(given && check.names.given([...path, ...keys]) ? [...path, ...keys] : path, message);
  });
}
