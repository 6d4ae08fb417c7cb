import type { Controls } from '../../line/controls.ts';
import { findings } from '../../scenario/findings.ts';
import { inWords } from '../../scenario/in-words.ts';
import { time as law } from '../../scenario/laws.ts';
import type { ResponseSpec } from '../../scenario/responses.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { follow } from '../responses.ts';
import { acting } from './acting.ts';
import { Arguments } from './arguments.ts';
import { Calls, type Pulse } from './calls.ts';
import type { Cell, PolicyModule } from './cell.ts';
import { namedIn } from './named.ts';
import { guard, sealed } from './sealed.ts';
import { seeing } from './seeing.ts';
import { switching } from './switching.ts';

/** All that the module gets hold of: calls that go through the controls, and nothing beside them. */
function cellOf(controls: Controls, scenario: Scenario, calls: Calls, responses: ResponseSpec[]): Cell {
  const args = new Arguments(calls);
  const named = namedIn(scenario);
  const uniform = { distribution: 'uniform', low: 0, high: 1 } as const;
  const fields: Omit<Cell, 'now'> = {
    after: sealed(calls, (delay, then) =>
      controls.after(args.number('after', delay, 0), args.told('after', then)),
    ),
    random: sealed(calls, (purpose) => {
      const draw = controls.sampler(uniform, `module/random/${args.text('random', purpose)}`);
      return sealed(calls, draw);
    }),
    times: sealed(calls, (given, purpose) => {
      const read = law.safeParse(given);
      if (!read.success) return calls.refuse(`times: ${findings(read.error, given).map(inWords).join('; ')}`);
      return sealed(calls, controls.sampler(read.data, `module/times/${args.text('times', purpose)}`));
    }),
    ...seeing(controls, scenario, named, calls, args),
    ...switching(controls, scenario, calls, args, responses),
    ...acting(controls, named, calls, args),
  };
  const now = sealed(calls, () => controls.now);
  const over = guard(calls, 'the cell', ['now', ...Object.keys(fields)]);
  const made = Object.create(over, { now: { get: now, enumerable: true } });
  for (const [name, value] of Object.entries(fields))
    Object.defineProperty(made, name, { value, enumerable: true });
  return Object.freeze(made);
}

/**
 * Puts a policy module to work on a line that has not started.
 * @param source what to call the module in messages
 * @throws PolicyModuleFault, here or from an event of the run
 */
export function startModule(
  module: PolicyModule,
  controls: Controls,
  scenario: Scenario,
  source: string,
  pulse: Pulse | null = null,
): void {
  const calls = new Calls(source, () => controls.now, pulse);
  const responses: ResponseSpec[] = [];
  const cell = cellOf(controls, scenario, calls, responses);
  calls.starting = true;
  calls.into(() => module.start(cell));
  calls.starting = false;
  follow(responses, controls);
}
