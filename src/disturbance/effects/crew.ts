import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';

/** Sends some of a crew away. */
export function crew(spec: Disturbing<'crew'>, { line }: Making): Effect {
  const crew = line.crews.get(spec.crew)!;
  return { begin: () => crew.sendAway(spec.away), end: () => crew.comeBack(spec.away) };
}
