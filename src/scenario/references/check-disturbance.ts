import type { DisturbanceSpec } from '../disturbances.ts';
import { nameOf } from '../units.ts';
import type { Checker } from './checker.ts';

/** Whether what a disturbance hits is there. */
export function checkDisturbance(check: Checker, it: DisturbanceSpec): void {
  const path = ['disturbances', it.name];
  switch (it.disturbs) {
    case 'setting': {
      const setting = check.settings.get(it.setting);
      if (
        !check.known([...path, 'setting'], it.setting, check.names.settings, 'setting of a forming station')
      )
        return;
      if (setting && setting.dimension !== it.by.dimension) {
        check.say(
          [...path, 'by'],
          `"${it.setting}" is ${nameOf(setting.dimension)}, so expected a change in its units`,
        );
      }
      return;
    }
    case 'supplier': {
      check.known([...path, 'stock'], it.stock, check.names.stock, 'stock');
      const stock = check.stock(it.stock);
      if (stock && stock.reorderAt === undefined)
        check.say([...path, 'stock'], `"${it.stock}" is never ordered, so its supplier cannot fail it`);
      return;
    }
    case 'marks':
      return check.station([...path, 'station'], it.station, ['mark']);
    case 'station':
      return check.station([...path, 'station'], it.station, []);
  }
}
