import { standardNormal } from '../../kernel/distributions/normal.ts';
import type { SettingSpec } from '../../scenario/forming/setting.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import { Actuator } from '../actuator.ts';
import { Drift } from '../drift.ts';
import { Setting } from '../setting.ts';
import { Wander } from '../wander.ts';
import type { Plan } from './plan.ts';

function actuatorOf({ target, moves }: SettingSpec): Actuator | null {
  if (!moves) return null;
  return new Actuator({
    step: moves.step?.value ?? 0,
    lowest: (moves.from?.value ?? Number.NEGATIVE_INFINITY) - target.value,
    highest: (moves.to?.value ?? Number.POSITIVE_INFINITY) - target.value,
    delay: moves.delay,
  });
}

function settingOf(spec: SettingSpec, station: string, { line }: Plan): Setting {
  const unrest = [];
  if (spec.wander) {
    const { sd, pullBack } = spec.wander;
    unrest.push(
      new Wander(sd.value, pullBack, standardNormal(line.streams.of(`setting/${spec.name}/wander`))),
    );
  }
  if (spec.drift) {
    const drift = new Drift(spec.drift.value, line.calendar);
    unrest.push(drift);
    // A fix sets it back, and it goes on.
    line.curable.get(station)!.add(drift);
  }
  return new Setting(spec.name, {
    offset: -(spec.sensorBias?.value ?? 0),
    unrest,
    actuator: actuatorOf(spec),
  });
}

/** The settings of a forming station; others have none. */
export function addSettings(spec: StationSpec, plan: Plan): void {
  if (spec.does !== 'form') return;
  for (const it of spec.settings ?? []) {
    const setting = settingOf(it, spec.name, plan);
    const remembered = plan.line.parts.column(0);
    plan.line.settings.set(it.name, { setting, remembered, station: spec.name });
  }
}
