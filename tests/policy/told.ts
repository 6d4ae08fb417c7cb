import { disturb } from '../../src/disturbance/disturb.ts';
import { buildLine } from '../../src/line/build/build-line.ts';
import { Controls } from '../../src/line/controls.ts';
import type { Line } from '../../src/line/line.ts';
import { meet } from '../../src/policy/condition.ts';
import { InForce } from '../../src/policy/in-force.ts';
import type { Timing } from '../../src/scenario/in-force.ts';
import type { PolicySpec, Scenario } from '../../src/scenario/scenario.ts';
import { small } from '../line/small-line.ts';

/** Builds the line, lets `watch` follow it from before the start on, and runs it for so many seconds. */
function follow(
  scenario: Scenario,
  seconds: number,
  watch: (line: Line, policy: PolicySpec, controls: Controls) => void,
): void {
  const line = buildLine(scenario, 1);
  watch(line, scenario.policies[0]!, new Controls(line));
  disturb(line, scenario.disturbances);
  line.start();
  line.calendar.run(seconds);
}

const scenarioOf = (body: string, seconds: number, responses: readonly string[]) =>
  small(`${seconds} s`, `${body}\npolicies:\n  p: [${responses.map((text) => `{ ${text} }`).join(', ')}]\n`);

/** When a condition of a station's hold changed and signalled, s. */
export function told(body: string, station: string, when: string, seconds: number) {
  const holds: [number, boolean][] = [];
  const signals: number[] = [];
  const scenario = scenarioOf(body, seconds, [`do: hold, station: ${station}, lasts: 1 s, when: ${when}`]);
  follow(scenario, seconds, ({ calendar }, { responses: [response] }, controls) => {
    const view = { controls, deaf: () => false, onHeeded: () => {}, onResponse: () => {} };
    meet((response as Timing).when!, view, {
      holds: (now) => holds.push([calendar.now, now]),
      signals: () => signals.push(calendar.now),
    });
  });
  return { holds, signals };
}

/** When the first of these responses came into force and ended, s; those behind it are followed, too. */
export function turns(body: string, seconds: number, ...responses: string[]): [number, boolean][] {
  const turned: [number, boolean][] = [];
  follow(scenarioOf(body, seconds, responses), seconds, ({ calendar }, { responses: specs }, controls) => {
    const inForce = specs.map((spec, i) => new InForce(spec, i + 1, controls));
    const byName = (name: string) => inForce[specs.findIndex((spec) => (spec as Timing).name === name)]!;
    for (const [i, it] of inForce.entries())
      it.start(
        (on) => {
          if (i === 0) turned.push([calendar.now, on]);
        },
        (name, tell) => byName(name).onChange(tell),
      );
  });
  return turned;
}
