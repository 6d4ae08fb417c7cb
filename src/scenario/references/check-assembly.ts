import { classFault } from '../clearances.ts';
import type { Path } from '../problem.ts';
import { originalsOf } from '../stand-ins.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

/** The mate that has the feature of this name, where the station does not take it. */
function untaken(check: Checker, station: SpecOf<'assemble'>, named: string): string | undefined {
  const dot = named.indexOf('.');
  const mate = dot < 0 ? undefined : check.stock(named.slice(0, dot));
  if (!mate || station.takes.includes(mate.name)) return undefined;
  return mate.features?.some(({ name }) => name === named.slice(dot + 1)) ? mate.name : undefined;
}

/** The stocks and mating pairs of an assembling station. */
export function checkAssembly(check: Checker, station: SpecOf<'assemble'>, path: Path): void {
  for (const [i, stock] of station.takes.entries()) {
    check.known([...path, 'takes', i], stock, check.names.stock, 'stock');
    if (station.takes.indexOf(stock) < i) check.say([...path, 'takes', i], `"${stock}" is listed twice`);
    const original = originalsOf(stock, check.raw.stock)
      .slice(1)
      .find((name) => station.takes.includes(name));
    if (original !== undefined)
      check.say(
        [...path, 'takes', i],
        `"${stock}" stands in for "${original}", which this station takes already; take one of them out`,
      );
  }
  const ofMates = check.raw.stock
    .filter((stock) => station.takes.includes(stock.name))
    .flatMap((stock) => (stock.features ?? []).map((feature) => `${stock.name}.${feature.name}`));
  const allMatesSound = station.takes.every((name) => check.raw.stock.some((stock) => stock.name === name));
  for (const [i, pair] of station.fits.entries()) {
    const { hole, shaft } = pair;
    const sides = { hole, shaft };
    for (const side of ['hole', 'shaft'] as const) {
      const named = sides[side];
      if (named.includes('.') && !allMatesSound) continue;
      const mate = untaken(check, station, named);
      if (mate !== undefined) {
        check.say(
          [...path, 'fits', i, side],
          `"${named}" is of a mate that this station does not take; add "${mate}" to "takes"`,
        );
        continue;
      }
      check.known(
        [...path, 'fits', i, side],
        named,
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
    const fault = classFault(pair, { stocks: check.raw.stock, parts: check.raw.parts ?? [] });
    if (fault !== undefined) check.say([...path, 'fits', i], fault);
  }
  for (const key of ['misfit', 'tight', 'loose'] as const) {
    const place = station[key];
    if (place !== undefined) check.reject([...path, key], place, ['scrap']);
  }
}
