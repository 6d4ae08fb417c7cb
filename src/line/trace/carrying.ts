import type { Scenario } from '../../scenario/scenario.ts';
import type { Line } from '../line.ts';
import type { Log } from './log.ts';
import { tap } from './tap.ts';

/** Writes down which parts are put on carriers and taken off them. What leaves the line leaves its carrier there. */
export function followCarriers(
  { carriers, good, scrap, turnedAway }: Line,
  scenario: Scenario,
  log: Log,
): void {
  for (const { name, from } of scenario.carriers) {
    const own = carriers.get(name)!;
    const tellOff = (row: number) =>
      log.tell(row, { station: log.of(row).station, kind: 'off-carrier', carriers: name });
    let taking = false;
    tap(own, 'take', (inner) => (row) => {
      taking = true;
      inner(row);
      taking = false;
    });
    tap(own, 'put', (inner) => (row, on) => {
      inner(row, on);
      if (taking) log.tell(row, { station: from, kind: 'on-carrier', carriers: name });
      else if (!on) tellOff(row);
      // Put back where the place behind had no room.
      else log.takeBack();
    });
    for (const exit of [good, scrap, turnedAway])
      exit.leaving.push((row) => {
        if (own.has(row)) tellOff(row);
      });
  }
}
