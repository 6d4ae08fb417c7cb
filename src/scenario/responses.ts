import type { z } from 'zod';
import { kinds } from './fields.ts';
import { match } from './matching.ts';
import { buildAhead } from './responses/build-ahead.ts';
import { callCrew } from './responses/call-crew.ts';
import { cannibalise } from './responses/cannibalise.ts';
import { changeTool } from './responses/change-tool.ts';
import { drawOnReserve } from './responses/draw-on-reserve.ts';
import { expedite } from './responses/expedite.ts';
import { foresee } from './responses/foresee.ts';
import { hold } from './responses/hold.ts';
import { inspect } from './responses/inspect.ts';
import { keep } from './responses/keep.ts';
import { prioritise } from './responses/prioritise.ts';
import { reject } from './responses/reject.ts';
import { reroute } from './responses/reroute.ts';
import { retarget } from './responses/retarget.ts';
import { retune } from './responses/retune.ts';
import { rework } from './responses/rework.ts';
import { skip } from './responses/skip.ts';
import { slow } from './responses/slow.ts';
import { speedUp } from './responses/speed-up.ts';
import { stopAndFix } from './responses/stop-and-fix.ts';
import { substitute } from './responses/substitute.ts';

/** One response. */
export const response = kinds(
  'do',
  [
    'stop-and-fix',
    'inspect',
    'retune',
    'match',
    'rework',
    'hold',
    'slow',
    'expedite',
    'retarget',
    'substitute',
    'build-ahead',
    'cannibalise',
    'keep',
    'speed-up',
    'reject',
    'change-tool',
    'prioritise',
    'call-crew',
    'draw-on-reserve',
    'reroute',
    'skip',
    'foresee',
  ],
  [
    stopAndFix,
    inspect,
    retune,
    match,
    rework,
    hold,
    slow,
    expedite,
    retarget,
    substitute,
    buildAhead,
    cannibalise,
    keep,
    speedUp,
    reject,
    changeTool,
    prioritise,
    callCrew,
    drawOnReserve,
    reroute,
    skip,
    foresee,
  ],
);

export type ResponseSpec = z.output<typeof response>;
export type ResponseOf<Kind extends ResponseSpec['do']> = Extract<ResponseSpec, { do: Kind }>;
