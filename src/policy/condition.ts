import { type ConditionSpec, isWatch } from '../scenario/conditions.ts';
import { meetAll, meetAny } from './conditions/combined.ts';
import { meetReadings } from './conditions/readings.ts';
import { meetSpan } from './conditions/span.ts';
import type { Told, View } from './conditions/view.ts';
import { meetWatched } from './conditions/watched.ts';

/** Tells whether a condition holds (`Told`), or when it signals. */
export function meet(condition: ConditionSpec, view: View, told: Told): void {
  const { controls, onResponse } = view;
  if (isWatch(condition)) meetWatched(condition, view, told);
  else if ('stock' in condition) controls.onLevel(condition.stock, condition, told.holds);
  else if ('buffer' in condition) controls.onBuffer(condition.buffer, condition, told.holds);
  else if ('station' in condition) controls.onState(condition, told.holds);
  else if ('demand' in condition) controls.onDemand(condition.demand, condition, told.holds);
  else if ('calendar' in condition) controls.onCalendar(condition.calendar, told.holds);
  else if ('response' in condition) onResponse(condition.response, told.holds);
  else if ('of' in condition) meetReadings(condition, view, told);
  else if ('all' in condition) meetAll(condition.all, view, told, meet);
  else if ('any' in condition) meetAny(condition.any, view, told, meet);
  else if ('not' in condition) meet(condition.not, view, { ...told, holds: (holds) => told.holds(!holds) });
  else meetSpan(condition, view, told);
}
