import type { Controls } from '../../line/controls.ts';
import type { Arguments } from './arguments.ts';
import type { Calls } from './calls.ts';
import type { Cell } from './cell.ts';
import type { Named } from './named.ts';
import { sealed } from './sealed.ts';

type Acts = Pick<Cell, 'hold' | 'release' | 'fix' | 'adjust' | 'expedite'>;

/** What a module may do at any time. */
export function acting(controls: Controls, named: Named, calls: Calls, args: Arguments): Acts {
  /** Stations by how often the module holds them. */
  const held = new Map<string, number>();
  const station = (call: string, given: unknown) => args.known(call, given, named.stations, 'station').name;

  return {
    hold: sealed(calls, (given) => {
      const { name } = args.known('hold', given, named.held, 'station that can be held');
      held.set(name, (held.get(name) ?? 0) + 1);
      controls.hold(name);
    }),
    release: sealed(calls, (given) => {
      const name = station('release', given);
      const times = held.get(name) ?? 0;
      if (times === 0) calls.refuse(`release: "${name}" is not held by this policy`);
      held.set(name, times - 1);
      controls.release(name);
    }),
    fix: sealed(calls, (given) => controls.fix(station('fix', given))),
    adjust: sealed(calls, (setting, to) => {
      const { name } = args.known('adjust', setting, named.settings, 'setting of a forming station');
      controls.adjust(name, args.number('adjust', to));
    }),
    expedite: sealed(calls, (stock, order) => {
      const { name } = args.known('expedite', stock, named.expedited, 'stock whose orders can be sped up');
      return controls.expedite(name, order === undefined ? undefined : args.whole('expedite', order, 0));
    }),
  };
}
