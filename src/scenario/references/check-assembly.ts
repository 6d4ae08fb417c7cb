import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

/** The stocks and mating pairs of an assembling station. */
export function checkAssembly(check: Checker, station: SpecOf<'assemble'>, path: Path): void {
  for (const [i, stock] of station.takes.entries()) {
    check.known([...path, 'takes', i], stock, check.names.stock, 'stock');
    if (station.takes.indexOf(stock) < i) check.say([...path, 'takes', i], `"${stock}" is listed twice`);
  }
  const ofMates = check.raw.stock
    .filter((stock) => station.takes.includes(stock.name))
    .flatMap((stock) => (stock.features ?? []).map((feature) => `${stock.name}.${feature.name}`));
  const allMatesSound = station.takes.every((name) => check.raw.stock.some((stock) => stock.name === name));
  for (const [i, { hole, shaft }] of station.fits.entries()) {
    const sides = { hole, shaft };
    for (const side of ['hole', 'shaft'] as const) {
      if (sides[side].includes('.') && !allMatesSound) continue;
      check.known(
        [...path, 'fits', i, side],
        sides[side],
        [...check.names.features, ...ofMates],
        'feature of the part or of a mate this station takes',
      );
    }
    if (hole.includes('.') === shaft.includes('.')) {
      check.say(
        [...path, 'fits', i],
        'a pair needs one feature of the part and one of a mate (written MATE.FEATURE)',
      );
    }
  }
  check.reject([...path, 'misfit'], station.misfit, ['scrap']);
}
