import { FATES } from '../line/fate.ts';
import type { Line } from '../line/line.ts';
import type { Upset } from '../line/setting.ts';
import type { DisturbanceSpec } from '../scenario/disturbances.ts';
import type { Effect } from './episode.ts';

type Of<Kind extends DisturbanceSpec['disturbs']> = Extract<DisturbanceSpec, { disturbs: Kind }>;

function setting(spec: Of<'setting'>, line: Line): Effect {
  const { setting: upset, station } = line.settings.get(spec.setting)!;
  let now: Upset | undefined;
  return {
    curedAt: station,
    begin: () => {
      now = { begun: line.calendar.now, by: spec.by.value, ramp: spec.ramp ?? 0 };
      upset.upsets.add(now);
    },
    end: () => {
      if (now) upset.upsets.delete(now);
    },
  };
}

function supplier(spec: Of<'supplier'>, line: Line): Effect {
  const stock = line.stocks.get(spec.stock)!;
  return { begin: () => stock.cutOff(spec.supplier), end: () => stock.supply(spec.supplier) };
}

function marks(spec: Of<'marks'>, line: Line): Effect {
  const { impaired } = line.marks.get(spec.station)!;
  const it = { chance: spec.takesHold ?? null, grades: spec.grades ?? null };
  return { curedAt: spec.station, begin: () => impaired.add(it), end: () => impaired.delete(it) };
}

function station(spec: Of<'station'>, line: Line): Effect {
  const at = line.stations.get(spec.station)!;
  return { begin: () => at.stop(FATES[spec.cycle]), end: () => at.resume() };
}

const effects: { readonly [Kind in DisturbanceSpec['disturbs']]: (spec: Of<Kind>, line: Line) => Effect } = {
  setting,
  supplier,
  marks,
  station,
};

/** What the disturbance does to the line. */
export function effectOf(spec: DisturbanceSpec, line: Line): Effect {
  // Each disturbance meets the function of its own kind, which the type checker cannot follow.
  return effects[spec.disturbs](spec as never, line);
}
