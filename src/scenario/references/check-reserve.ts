import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import type { Checker } from './checker.ts';

/** Whether the stock is there and has a reserve. */
export function checkDrawn(check: Checker, { stock }: ResponseOf<'draw-on-reserve'>, path: Path): void {
  const at = [...path, 'stock'];
  if (!check.known(at, stock, check.names.stock, 'stock')) return;
  const found = check.stock(stock);
  if (found?.unlimited) check.say(at, `"${stock}" is unlimited, so it needs no reserve; name another stock`);
  else if (found && found.reserve === undefined)
    check.say(at, `"${stock}" has no reserve; give the stock one, such as "reserve: 200"`);
}
