import { meanOf } from '../../kernel/distributions/index.ts';
import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import { nameOf, secondsText } from '../units.ts';
import type { Checker } from './checker.ts';

function checkSheet(check: Checker, station: SpecOf<'form'>, path: Path): void {
  const sheet = check.stock(station.takes);
  if (!sheet) return;
  if (sheet.thickness === undefined) {
    for (const key of ['heating', 'cooling'] as const)
      if (station[key])
        check.say([...path, key], `${key} goes by thickness, but the stock "${station.takes}" has none`);
    if (station.wall)
      check.say(
        [...path, 'wall'],
        `the wall is drawn from the thickness of the sheet, but the stock "${station.takes}" has none`,
      );
  }
  const part = check.raw.parts?.find(({ name }) => name === station.makes);
  if (sheet.shrinkage && part?.features.every(({ mould }) => mould === undefined))
    check.say(
      ['stock', sheet.name, 'shrinkage'],
      `no feature of "${part.name}" has a "mould" that it shrinks from`,
    );
}

function checkSettings(check: Checker, station: SpecOf<'form'>, path: Path): void {
  const cycle = meanOf(station.cycle);
  for (const { name, wander } of station.settings ?? []) {
    if (name === 'thickness')
      check.sayOf(
        [...path, 'settings', name],
        name,
        '"thickness" is that of the sheet wherever a feature follows it; give the setting another name',
      );
    if (wander && wander.pullBack < cycle)
      check.say(
        [...path, 'settings', name, 'wander', 'pull-back'],
        `shorter than a cycle (${secondsText(cycle)}); what changes as fast as that is "cycle-sd"`,
      );
  }
}

function checkWindow(check: Checker, station: SpecOf<'form'>, path: Path): void {
  const { window, wall, settings = [] } = station;
  if (wall?.thinning && !window)
    check.say(
      [...path, 'wall', 'thinning'],
      'thinning goes by the setting of the "window", which is missing',
    );
  if (!window) return;
  const at = [...path, 'window'];
  const names = settings.map(({ name }) => name);
  if (!check.known([...at, 'setting'], window.setting, names, 'setting of this station')) return;
  const { target } = settings.find(({ name }) => name === window.setting)!;
  const unlike = (['from', 'to'] as const).filter(
    (end) => window[end] && window[end].dimension !== target.dimension,
  );
  for (const end of unlike)
    check.say([...at, end], `"${window.setting}" is ${nameOf(target.dimension)}, so expected one`);
  if (wall?.thinning && wall.thinning.per !== target.dimension)
    check.say(
      [...path, 'wall', 'thinning'],
      `"${window.setting}" is ${nameOf(target.dimension)}, so expected a share per ${target.dimension}`,
    );
  if (unlike.length > 0) return;
  const { from, to } = window;
  if (from && to && from.value >= to.value) check.say([...at, 'from'], '"from" must lie below "to"');
  else if (from && from.value > target.value)
    check.say([...at, 'from'], `the target of "${window.setting}" lies below it, outside the window`);
  else if (to && to.value < target.value)
    check.say([...at, 'to'], `the target of "${window.setting}" lies above it, outside the window`);
}

/** The sheet and the part of a forming station, its settings, and what it makes of the sheet. */
export function checkForming(check: Checker, station: SpecOf<'form'>, path: Path): void {
  check.known([...path, 'takes'], station.takes, check.names.stock, 'stock');
  check.known([...path, 'makes'], station.makes, check.names.parts, 'kind of part');
  checkSheet(check, station, path);
  checkSettings(check, station, path);
  checkWindow(check, station, path);
}
