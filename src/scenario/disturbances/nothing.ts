import type { Law } from '../../kernel/distributions/index.ts';
import type { DisturbanceSpec } from '../disturbances.ts';

const always = (law: Law | undefined, value: number): boolean =>
  law === undefined || (law.distribution === 'constant' && law.value === value);

function changesNothing(it: DisturbanceSpec): boolean {
  switch (it.disturbs) {
    case 'setting':
      return always(it.by.law, 0);
    case 'feature':
      return always(it.by, 0) && always(it.spread, 1);
    case 'gauge':
      return always(it.bias, 0) && always(it.spread, 1);
    case 'lot':
      return always(it.by, 0) && always(it.unsound, 0);
    case 'health':
      return always(it.asOften, 1) && always(it.repairsTake, 1);
    case 'reader':
    case 'speed':
    case 'conveyor':
    case 'demand':
      return always(it.to, 1);
    default:
      return false;
  }
}

/** Whether a disturbance does nothing whenever it comes: it lasts no time, or leaves everything as it is. */
export const isNothing = (it: DisturbanceSpec): boolean => always(it.for, 0) || changesNothing(it);
