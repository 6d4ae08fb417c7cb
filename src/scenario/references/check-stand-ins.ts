import type { Path } from '../problem.ts';
import { originalsOf } from '../stand-ins.ts';
import type { SpecOf } from '../stations.ts';
import type { StockSpec } from '../stocks.ts';
import { nameOf } from '../units.ts';
import type { Checker } from './checker.ts';

/** Whether a stock that stands in for another has what that one has. */
function checkLikeness(check: Checker, spec: StockSpec, original: StockSpec, path: Path): void {
  if (original.thickness && !spec.thickness)
    check.say(path, `"${original.name}" has a thickness, so what stands in for it needs one`);
  if (!original.thickness && spec.thickness)
    check.say(
      [...path, 'thickness'],
      `"${original.name}" has no thickness to compare it with; give it one, or take this out`,
    );
  const has = (original.features ?? []).map(({ name }) => name);
  const own = (spec.features ?? []).map(({ name }) => name);
  for (const name of own)
    check.known([...path, 'features', name], name, has, `feature of "${original.name}"`);
  const missing = has.filter((name) => !own.includes(name));
  if (missing.length > 0)
    check.say(
      spec.features ? [...path, 'features'] : path,
      `"${original.name}" has "${missing.join('" and "')}" besides, so what stands in for it needs the same`,
    );
}

/** Whether the settings are those of the stations that form it, and the features those that they make. */
function checkFormed(check: Checker, spec: StockSpec, formers: readonly Former[], path: Path): void {
  const settings = formers.flatMap((former) => former.settings ?? []);
  for (const { name, target } of spec.settings ?? []) {
    const at = [...path, 'settings', name];
    const names = settings.map((setting) => setting.name);
    if (!check.known(at, name, names, 'setting of a station that forms it')) continue;
    const own = settings.find((setting) => setting.name === name)!;
    const { from, to } = own.moves ?? {};
    if (target.dimension !== own.target.dimension)
      check.say(at, `"${name}" is ${nameOf(own.target.dimension)}, so expected one`);
    else if ((from && target.value < from.value) || (to && target.value > to.value))
      check.say(at, `"${name}" cannot be moved there; see its "moves"`);
  }
  const made = (check.raw.parts ?? []).flatMap((part) =>
    part.features.flatMap(({ name, madeAt }) => (formers.some((it) => it.name === madeAt) ? [name] : [])),
  );
  for (const { name } of spec.shifts ?? [])
    check.known([...path, 'shifts', name], name, made, 'feature that is formed from it');
}

type Former = SpecOf<'form'> & { readonly name: string };

/** What stands in for what, without circles, and whether it can. */
export function checkStandIns(check: Checker): void {
  const told = new Set<string>();
  for (const spec of check.raw.stock) {
    const { name, standsInFor } = spec;
    if (standsInFor === undefined) continue;
    const path = ['stock', name];
    const at = [...path, 'stands-in-for'];
    if (!check.known(at, standsInFor, check.names.stock, 'stock')) continue;
    const originals = originalsOf(name, check.raw.stock);
    const last = check.stock(originals.at(-1)!);
    if (standsInFor === name)
      check.say(at, 'a stock cannot stand in for itself; name the one whose place it takes');
    else if (last?.standsInFor === name) {
      if (!told.has(name))
        check.say(
          at,
          `these stand in for each other in a circle: ${[...originals, name].join(' > ')}; let one of them stand in for none`,
        );
      for (const one of originals) told.add(one);
    } else {
      const original = check.stock(standsInFor);
      if (original) checkLikeness(check, spec, original, path);
      const formers = check.raw.stations.filter(
        (station): station is Former => station.does === 'form' && originals.includes(station.takes),
      );
      if (check.stations.size === check.names.stations.length) checkFormed(check, spec, formers, path);
    }
  }
}
