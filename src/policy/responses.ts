import type { Controls, Switch } from '../line/controls.ts';
import { partsOf } from '../scenario/conditions.ts';
import type { Timing } from '../scenario/in-force.ts';
import type { ResponseSpec } from '../scenario/responses.ts';
import { buildAhead } from './build-ahead.ts';
import { callCrew } from './call-crew.ts';
import { cannibalise } from './cannibalise.ts';
import { changeTool } from './change-tool.ts';
import { drawOnReserve } from './draw-on-reserve.ts';
import { expedite } from './expedite.ts';
import { foresee } from './foresee.ts';
import { hold } from './hold.ts';
import { InForce } from './in-force.ts';
import { inspect } from './inspect.ts';
import type { Install } from './install.ts';
import { keep } from './keep.ts';
import { match } from './match.ts';
import { prioritise } from './prioritise.ts';
import { reject } from './reject.ts';
import { reroute } from './reroute.ts';
import { retarget } from './retarget.ts';
import { retune } from './retune.ts';
import { rework } from './rework.ts';
import { skip } from './skip.ts';
import { slow } from './slow.ts';
import { speedUp } from './speed-up.ts';
import { stopAndFix } from './stop-and-fix.ts';
import { substitute } from './substitute.ts';

const installers: { readonly [Kind in ResponseSpec['do']]: Install<Kind> } = {
  'stop-and-fix': stopAndFix,
  inspect,
  retune,
  match,
  rework,
  hold,
  slow,
  expedite,
  retarget,
  substitute,
  'build-ahead': buildAhead,
  cannibalise,
  keep,
  'speed-up': speedUp,
  reject,
  'change-tool': changeTool,
  prioritise,
  'call-crew': callCrew,
  'draw-on-reserve': drawOnReserve,
  skip,
  reroute,
  foresee,
};

/**
 * Puts what a response does to work; what comes back takes whether it is in force, null where it sees to that itself.
 * @param show takes whether it acts, from one that sees to that itself
 */
export function install(spec: ResponseSpec, controls: Controls, show: Switch = () => {}): Switch | null {
  // Each response meets the installer of its own kind, which the type checker cannot follow.
  const own = installers[spec.do] as (spec: ResponseSpec, controls: Controls, show: Switch) => Switch | null;
  return own(spec, controls, show);
}

/**
 * Puts the responses of a policy to work in their order. Where several of those in force set the same thing, the last
 * in the list has its way; when it ends, the last of the others has, and when none is left, what was before.
 * @param turned told whether the response at this place is in force, at each change; whoever listens alters nothing
 */
export function follow(
  responses: readonly ResponseSpec[],
  controls: Controls,
  turned: (response: number, on: boolean) => void = () => {},
): void {
  const inForce = responses.map((spec, i) => new InForce(spec, i + 1, controls));
  const called = (name: string) => responses.findIndex((spec) => 'name' in spec && spec.name === name);
  const onResponse = (name: string, tell: Switch) => inForce[called(name)]!.onChange(tell);
  const turns = responses.map((spec, i) =>
    install(spec, controls, (on) => {
      turned(i, on);
      inForce[i]!.show(on);
    }),
  );
  const started = new Set<number>();
  /** Those first that it goes by, so that it knows which of them are in force from the start on. */
  function start(i: number): void {
    if (started.has(i)) return;
    started.add(i);
    for (const name of goesBy(responses[i]!)) start(called(name));
    const turn = turns[i]!;
    if (turn === null) return;
    const told = (on: boolean) => {
      turned(i, on);
      turn(on);
    };
    inForce[i]!.start(told, onResponse);
  }
  for (const i of responses.keys()) start(i);
}

/** The names of other responses that one goes by. */
function goesBy(spec: ResponseSpec): string[] {
  const { when, until } = spec as Timing;
  const parts = [when, until].flatMap((it) => (it === undefined ? [] : partsOf(it)));
  return parts.flatMap((part) => ('response' in part ? [part.response] : []));
}
