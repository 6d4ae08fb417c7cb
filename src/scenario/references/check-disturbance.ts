import type { DisturbanceSpec } from '../disturbances.ts';
import { isOrdered } from '../supply/suppliers-of.ts';
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
      if (stock && !isOrdered(stock))
        check.say([...path, 'stock'], `"${it.stock}" is never ordered, so its supplier cannot fail it`);
      if (stock && it.supplier !== undefined) {
        const suppliers = (stock.suppliers ?? []).map(({ name }) => name);
        if (suppliers.length === 0)
          check.say([...path, 'supplier'], `"${it.stock}" has only one supplier; leave the name out`);
        else check.known([...path, 'supplier'], it.supplier, suppliers, `supplier of "${it.stock}"`);
      }
      return;
    }
    case 'marks':
      return check.station([...path, 'station'], it.station, ['mark']);
    case 'station':
      return check.station([...path, 'station'], it.station, []);
  }
}
