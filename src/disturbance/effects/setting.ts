import type { Disturbing } from '../../scenario/disturbances.ts';
import type { Effect, Making } from '../effect.ts';
import { sized } from '../sized.ts';

/** Moves a setting while its target stays. */
export function setting(spec: Disturbing<'setting'>, making: Making): Effect {
  const { setting, station } = making.line.settings.get(spec.setting)!;
  return { curedAt: station, ...sized('by', spec.by.law, 0, [setting.upsets], making) };
}
