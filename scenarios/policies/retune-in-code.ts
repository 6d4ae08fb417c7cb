// The policy "retune forming" of tray-cell.yaml, written as code: the two give the same outcomes under every seed.
//
//   mendline compare scenarios/tray-cell.yaml --policy-module scenarios/policies/retune-in-code.ts
import type { Cell, PolicyModule } from 'mendline/policy';

/** Weight of the newest reading in the running estimate of how far the rim is off. */
const WEIGHT = 0.2;
/** The setting is left alone while the rim is expected to be off by less than this, mm. */
const DEADBAND = 0.03;

export default {
  name: 'retune in code',
  start(cell: Cell): void {
    const gain = cell.gain('rim', 'heater');
    let offset = 0;
    let adjusted = 0;
    cell.onMarkedReading('rim', 'heater', ({ value, aim, adjustedThen }) => {
      // A part whose mark cannot be read does not tell how the heater stood when it was formed.
      if (adjustedThen === null) return;
      const asIfLeftAlone = value - aim - gain * adjustedThen;
      offset = WEIGHT * asIfLeftAlone + (1 - WEIGHT) * offset;
      if (Math.abs(offset + gain * adjusted) <= DEADBAND) return;
      adjusted = -offset / gain;
      cell.adjust('heater', adjusted);
    });
  },
} satisfies PolicyModule;
