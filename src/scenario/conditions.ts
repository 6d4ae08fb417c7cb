import { z } from 'zod';
import { type BufferCondition, bufferLevel } from './conditions/buffer.ts';
import { type DemandCondition, demandLevel } from './conditions/demand.ts';
import { hidden } from './conditions/hidden.ts';
import { type ReadingCondition, readingLevel } from './conditions/readings.ts';
import { otherResponse, type ResponseCondition } from './conditions/response.ts';
import { type SightCondition, seen } from './conditions/sights.ts';
import { type StationCondition, stationState } from './conditions/station.ts';
import { type StockCondition, stockLevel } from './conditions/stock.ts';
import { type CalendarCondition, type SpanCondition, spans, working } from './conditions/time.ts';
import { entry } from './fields.ts';
import { type CapabilityWatch, type ChartWatch, capability, chart } from './watches.ts';

interface AllCondition {
  readonly all: readonly ConditionSpec[];
}
interface AnyCondition {
  readonly any: readonly ConditionSpec[];
}
interface NotCondition {
  readonly not: ConditionSpec;
}

/**
 * Something that can be seen of the line or not. Most hold for a while; a watch (sights, a chart, a capability)
 * signals, which is over at once.
 */
export type ConditionSpec =
  | StockCondition
  | BufferCondition
  | StationCondition
  | DemandCondition
  | SpanCondition
  | CalendarCondition
  | ResponseCondition
  | ReadingCondition
  | WatchCondition
  | AllCondition
  | AnyCondition
  | NotCondition;

/** A condition that signals. */
export type WatchCondition = SightCondition | ChartWatch | CapabilityWatch;

const EXPECTED =
  'expected a mapping told by its key: stock, buffer, station, demand, from or to, calendar, response, ' +
  'at with sees, chart, capability, above or below, or all, any, not';

const inner = z.lazy((): z.ZodType<ConditionSpec> => condition);
const list = z
  .array(inner, { error: 'expected a list of conditions' })
  .min(1, { error: 'expected at least one condition' });

/** What a response goes by. Its kind is told by its keys. */
export const condition: z.ZodType<ConditionSpec> = z.union(
  [
    stockLevel,
    bufferLevel,
    stationState,
    demandLevel,
    ...spans,
    working,
    otherResponse,
    seen,
    chart,
    capability,
    readingLevel,
    entry({ all: list.describe('holds while all of these do') }),
    entry({ any: list.describe('holds while any of these does') }),
    entry({ not: inner.describe('holds while this does not') }),
  ],
  { error: ({ input }) => (isMapping(input) ? hidden(input) : EXPECTED) },
);

function isMapping(given: unknown): given is Readonly<Record<string, unknown>> {
  return typeof given === 'object' && given !== null && !Array.isArray(given);
}

export const isWatch = (it: ConditionSpec): it is WatchCondition =>
  'sees' in it || 'chart' in it || 'capability' in it;

/** The conditions that one is made of; itself, where it is of no others. */
export function partsOf(it: ConditionSpec): readonly ConditionSpec[] {
  if ('all' in it) return it.all.flatMap(partsOf);
  if ('any' in it) return it.any.flatMap(partsOf);
  return 'not' in it ? partsOf(it.not) : [it];
}

/** Whether it may signal, which is over at once. */
export const signals = (it: ConditionSpec): boolean => partsOf(it).some(isWatch);
