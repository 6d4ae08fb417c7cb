import type { ConditionSpec } from '../conditions.ts';
import type { Path } from '../problem.ts';
import type { Checker } from './checker.ts';

/** Whether what a condition goes by is there and can become so. */
export function checkCondition(check: Checker, { stock }: ConditionSpec, path: Path): void {
  if (!check.known([...path, 'stock'], stock, check.names.stock, 'stock')) return;
  if (check.stock(stock)?.unlimited)
    check.say(
      [...path, 'stock'],
      `"${stock}" is unlimited, so it is never low; give it "on-hand", or name another stock`,
    );
}
