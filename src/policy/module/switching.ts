import type { Controls } from '../../line/controls.ts';
import { furtherAction, furtherResponse } from '../../scenario/further-response.ts';
import type { ResponseSpec } from '../../scenario/responses.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { install } from '../responses.ts';
import type { Arguments } from './arguments.ts';
import type { Calls } from './calls.ts';
import type { Cell } from './cell.ts';
import { sealed } from './sealed.ts';

type Switched = Pick<Cell, 'switching' | 'respond'>;

/**
 * What a module may switch on and off, and the responses of the scenario's format that it may put to work.
 * @param responses takes those that are to work by themselves
 */
export function switching(
  controls: Controls,
  scenario: Scenario,
  calls: Calls,
  args: Arguments,
  responses: ResponseSpec[],
): Switched {
  const switched: ResponseSpec[] = [];

  return {
    switching: sealed(calls, (given) => {
      args.starting('switching');
      const read = furtherAction(given, scenario, switched);
      if ('problems' in read) return calls.refuse(`switching: ${read.problems.join('; ')}`);
      switched.push(read);
      const turn = install(read, controls)!;
      let is = false;
      return sealed(calls, (on) => {
        if (args.yesNo('a switch', on) === is) return;
        is = on;
        turn(on);
      });
    }),
    respond: sealed(calls, (given) => {
      args.starting('respond');
      const read = furtherResponse(given, scenario, responses);
      if ('problems' in read) return calls.refuse(`respond: ${read.problems.join('; ')}`);
      if (read.do === 'keep')
        return calls.refuse('respond: "keep" holds from before the run on; write it in the scenario');
      if (read.do === 'foresee')
        return calls.refuse(
          'respond: "foresee" is a bound, and nothing that a policy could do; write it in the scenario',
        );
      responses.push(read);
    }),
  };
}
