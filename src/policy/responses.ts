import type { Controls } from '../line/controls.ts';
import type { ResponseSpec } from '../scenario/responses.ts';
import { buildAhead } from './build-ahead.ts';
import { cannibalise } from './cannibalise.ts';
import { expedite } from './expedite.ts';
import { hold } from './hold.ts';
import { inspect } from './inspect.ts';
import type { Install } from './install.ts';
import { keep } from './keep.ts';
import { match } from './match.ts';
import { retarget } from './retarget.ts';
import { retune } from './retune.ts';
import { rework } from './rework.ts';
import { slow } from './slow.ts';
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
};

/** Puts the responses of a policy to work in their order: where two set the same thing, the later one holds. */
export function follow(responses: readonly ResponseSpec[], controls: Controls): void {
  // Each response meets the installer of its own kind, which the type checker cannot follow.
  for (const spec of responses)
    (installers[spec.do] as (spec: ResponseSpec, controls: Controls) => void)(spec, controls);
}
