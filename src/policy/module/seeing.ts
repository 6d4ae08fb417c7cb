import type { Controls } from '../../line/controls.ts';
import { furtherCondition } from '../../scenario/further-condition.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Arguments } from './arguments.ts';
import type { Calls } from './calls.ts';
import type { Cell, Drawn, Reading } from './cell.ts';
import type { Named } from './named.ts';
import { guard, mould, sealed } from './sealed.ts';
import { watching } from './watching.ts';

type Seen = Pick<Cell, 'drawn' | 'gain' | 'onReading' | 'onMarkedReading' | 'onSight' | 'onOrder' | 'when'>;

/** What a module may be told of. */
export function seeing(
  controls: Controls,
  scenario: Scenario,
  named: Named,
  calls: Calls,
  args: Arguments,
): Seen {
  const limitsOf = mould(
    guard(calls, 'the limits of a feature', ['lower', 'upper']),
    class {
      lower: number;
      upper: number;
      constructor(given: NonNullable<Drawn['limits']>) {
        this.lower = given.lower;
        this.upper = given.upper;
      }
    },
  );
  const drawnAs = mould(
    guard(calls, 'a feature as drawn', ['aim', 'limits']),
    class {
      aim: number;
      limits: Drawn['limits'];
      constructor(given: Drawn) {
        this.aim = given.aim;
        this.limits = given.limits && limitsOf(given.limits);
      }
    },
  );
  const readAs = mould(
    guard(calls, 'a reading', ['value', 'aim', 'adjustedThen']),
    class {
      value: number;
      aim: number;
      adjustedThen: number | null;
      constructor(given: Reading) {
        this.value = given.value;
        this.aim = given.aim;
        this.adjustedThen = given.adjustedThen;
      }
    },
  );
  const feature = (call: string, given: unknown) => args.known(call, given, named.features, 'feature');
  const setting = (call: string, given: unknown) =>
    args.known(call, given, named.settings, 'setting of a forming station');
  const seenAt = {
    misfits: [named.assemblies, 'station that assembles'],
    'off-limits': [named.gauges, 'station that gauges'],
    unread: [named.readers, 'station with a reader'],
  } as const;
  const sights = (Object.keys(seenAt) as (keyof typeof seenAt)[]).map((name) => ({ name }));

  return {
    drawn: sealed(calls, (given) => drawnAs(controls.drawn(feature('drawn', given).name))),
    gain: sealed(calls, (of, by) => controls.gain(feature('gain', of).name, setting('gain', by).name)),
    onReading: sealed(calls, (at, of, tell) => {
      args.starting('onReading');
      const gauge = args.known('onReading', at, named.gauges, 'station that gauges');
      const { name } = args.known('onReading', of, gauge.measures, `feature that "${gauge.name}" measures`);
      controls.onReadingAt(gauge.name, name, args.told('onReading', tell));
    }),
    onMarkedReading: sealed(calls, (of, by, tell) => {
      args.starting('onMarkedReading');
      const { name } = args.known('onMarkedReading', of, named.gauged, 'feature that is gauged');
      const told = args.told('onMarkedReading', tell);
      controls.onReading(name, setting('onMarkedReading', by).name, (reading) => told(readAs(reading)));
    }),
    onSight: sealed(calls, (station, sight, tell) => {
      args.starting('onSight');
      const sees = args.known('onSight', sight, sights, 'sight').name;
      const [list, what] = seenAt[sees];
      const at = args.known<{ readonly name: string }>('onSight', station, list, what);
      controls.onSight(at.name, sees, args.told('onSight', tell));
    }),
    onOrder: sealed(calls, (stock, tell) => {
      args.starting('onOrder');
      const { name } = args.known('onOrder', stock, named.limited, 'stock with orders');
      controls.onOrder(name, args.told('onOrder', tell));
    }),
    when: sealed(calls, (given, tell) => {
      args.starting('when');
      const read = furtherCondition(given, scenario);
      if ('problems' in read) return calls.refuse(`when: ${read.problems.join('; ')}`);
      watching(read, controls, args.told('when', tell));
    }),
  };
}
