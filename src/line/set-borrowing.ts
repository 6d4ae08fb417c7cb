import { borrow } from './borrow.ts';
import type { Line } from './line.ts';

/** Lets repairs that wait for a spare have the pieces of machines of these stations from now on, the first choice first. */
export function setBorrowing(
  { spares, stations, tally }: Line,
  stock: string,
  from: readonly string[],
): void {
  const users = spares.filter((spare) => spare.stock.name === stock);
  const givers = from.flatMap((name) => {
    const { machines } = stations.get(name)!;
    return users.filter(({ machine }) => machines.includes(machine));
  });
  for (const spare of users) {
    const before = spare.onChange;
    spare.onChange = () => {
      before?.();
      if (borrow(users, givers)) tally.cannibalised++;
    };
  }
}
