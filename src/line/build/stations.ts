import type { BufferSpec } from '../../scenario/buffers.ts';
import { loadOf, type StationSpec } from '../../scenario/stations.ts';
import { Buffer } from '../buffer.ts';
import { Conveyor } from '../conveyor.ts';
import { FATES } from '../fate.ts';
import { Machine } from '../machine.ts';
import type { Consumer } from '../place.ts';
import { Station } from '../station.ts';
import type { Plan } from './plan.ts';
import { addSettings } from './settings.ts';

function bufferFor(consumer: Consumer, spec: BufferSpec, plan: Plan): Buffer {
  return spec.transit > 0
    ? new Conveyor(consumer, spec.places, plan.line.calendar, spec)
    : new Buffer(consumer, spec.places);
}

/** The machines of a station with the buffer they share, not yet able to do anything. */
export function addStation(spec: StationSpec, plan: Plan): void {
  const { line } = plan;
  const habits = {
    slowness: 1 / spec.speed,
    unloadsDown: spec.whileDown !== 'nothing',
    loadsDown: spec.whileDown === 'loads-and-unloads',
    atShiftEnd: spec.shiftEnd === 'finishes' ? null : FATES[spec.shiftEnd],
  };
  const machines = Array.from({ length: spec.machines }, (_, slot) => {
    const name = spec.machines === 1 ? spec.name : `${spec.name} ${slot + 1}`;
    const machine = new Machine(name, slot, line.calendar, loadOf(spec), habits);
    machine.scrap = line.scrapFor(spec.name, 'broken-off');
    if (spec.calendar !== undefined) line.shifts.get(spec.calendar)!.members.push(machine);
    return machine;
  });
  const station = new Station(spec.name, machines);
  line.stations.set(spec.name, station);
  line.curable.set(spec.name, new Set());
  if ('buffer' in spec && spec.buffer !== undefined) {
    // A single machine is asked directly, which is faster.
    const inbox = bufferFor(machines.length === 1 ? machines[0]! : station, spec.buffer, plan);
    for (const machine of machines) machine.inbox = inbox;
  }
  addSettings(spec, plan);
}
