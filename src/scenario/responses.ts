import type { z } from 'zod';
import { kinds } from './fields.ts';
import { match } from './matching.ts';
import { buildAhead } from './responses/build-ahead.ts';
import { cannibalise } from './responses/cannibalise.ts';
import { expedite } from './responses/expedite.ts';
import { hold } from './responses/hold.ts';
import { inspect } from './responses/inspect.ts';
import { keep } from './responses/keep.ts';
import { retarget } from './responses/retarget.ts';
import { retune } from './responses/retune.ts';
import { rework } from './responses/rework.ts';
import { slow } from './responses/slow.ts';
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
  ],
);

export type ResponseSpec = z.output<typeof response>;
export type ResponseOf<Kind extends ResponseSpec['do']> = Extract<ResponseSpec, { do: Kind }>;
