import { samplerOf } from '../../kernel/distributions/index.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import type { TaskSpec } from '../../scenario/tasks.ts';
import { Breakdown } from '../breakdown.ts';
import { BY_ITSELF, type Service } from '../crew.ts';
import { FATES } from '../fate.ts';
import { Handling } from '../handling.ts';
import type { Machine } from '../machine.ts';
import { Renewal } from '../renewal.ts';
import { Spare } from '../spare.ts';
import { DOWN, SET_UP } from '../state.ts';
import { Task } from '../task.ts';
import { Upkeep } from '../upkeep.ts';
import { WarmUp } from '../warm-up.ts';
import { Wear } from '../wear.ts';
import type { Plan } from './plan.ts';

function crewOf(name: string | undefined, plan: Plan): Service {
  return name === undefined ? BY_ITSELF : plan.line.crews.get(name)!;
}

/** Streams of one machine; those of the first are called after the station alone. */
function drawsOf(spec: StationSpec, machine: Machine, plan: Plan) {
  const own = machine.slot === 0 ? '' : `/${machine.slot + 1}`;
  return (purpose: string) => plan.line.streams.of(`station/${spec.name}${own}/${purpose}`);
}

/** Puts a new tool into the machine, where what is called `name` ends with one; else null. */
function newTool(name: string, spec: StationSpec, machine: Machine, plan: Plan): (() => void) | null {
  if (spec.does !== 'trim' || !spec.tool?.renewedBy.includes(name)) return null;
  const tool = plan.tools.get(spec.name)![machine.slot]!;
  return () => tool.renew();
}

function renewalOf(stock: string | undefined, { line }: Plan): Renewal | null {
  if (stock === undefined) return null;
  const renewal = new Renewal(line.stocks.get(stock)!, line.calendar);
  line.takers.push({ stock, taken: () => renewal.taken, heldSeconds: () => renewal.held.seconds() });
  return renewal;
}

function upkeepOf(spec: StationSpec, machine: Machine, plan: Plan): Upkeep | null {
  const draw = drawsOf(spec, machine, plan);
  const task = (state: number, kind: string) => (it: TaskSpec) => {
    const { cycles, every, counted } = it;
    const onDone = newTool(it.name, spec, machine, plan);
    const made = new Task(it.name, plan.place(spec.name), machine, plan.line.calendar, {
      counts: cycles === undefined ? counted! : 'cycles',
      every: cycles === undefined ? samplerOf(every!, draw(`${kind}/${it.name}/every`)) : () => cycles,
      takes: samplerOf(it.takes, draw(`${kind}/${it.name}/takes`)),
      state,
      crew: crewOf(it.crew, plan),
      priority: it.priority,
      renewal: renewalOf(it.spare, plan),
      onDone,
    });
    if (onDone !== null) plan.line.toolChanges.push({ machine, task: made });
    return made;
  };
  const tasks = [
    ...spec.maintenance.map(task(DOWN, 'maintenance')),
    ...spec.setUps.map(task(SET_UP, 'set-up')),
  ];
  return tasks.length > 0 ? new Upkeep(tasks) : null;
}

function warmUpOf(spec: StationSpec, machine: Machine, plan: Plan): WarmUp | null {
  if (!spec.warmUp) return null;
  const { after, takes } = spec.warmUp;
  const draw = drawsOf(spec, machine, plan)('warm-up');
  return new WarmUp(machine, plan.line.calendar, { after, takes: samplerOf(takes, draw) });
}

function handlingOf(spec: StationSpec, machine: Machine, plan: Plan): Handling | null {
  if (!spec.handling) return null;
  const { by, load, unload, priority } = spec.handling;
  const rules = { load, unload, crew: crewOf(by, plan), priority };
  return new Handling(plan.place(spec.name), machine, plan.line.calendar, rules);
}

function spareOf(stock: string | undefined, machine: Machine, { line }: Plan): Spare | null {
  if (stock === undefined) return null;
  const spare = new Spare(line.stocks.get(stock)!, machine, line.calendar);
  line.spares.push(spare);
  line.takers.push({ stock, taken: () => spare.taken, heldSeconds: () => spare.held.seconds() });
  return spare;
}

function addBreakdowns(spec: StationSpec, machine: Machine, plan: Plan): void {
  const draw = drawsOf(spec, machine, plan);
  const wear = new Wear(machine);
  machine.wear = wear;
  const known = plan.line.breakdowns.get(spec.name) ?? [];
  plan.line.breakdowns.set(spec.name, known);
  for (const it of spec.breakdowns) {
    const repair = samplerOf(it.repair, draw(`breakdown/${it.name}/repair`));
    const rules = {
      life: samplerOf(it.every, draw(`breakdown/${it.name}/life`)),
      repair,
      refit:
        it.spare === undefined ? repair : samplerOf(it.repair, draw(`breakdown/${it.name}/repair/again`)),
      counted: it.counted,
      fate: FATES[it.cycle],
      crew: crewOf(it.crew, plan),
      priority: it.priority,
      spare: spareOf(it.spare, machine, plan),
      onDone: newTool(it.name, spec, machine, plan),
    };
    const place = plan.place(spec.name);
    const breakdown = new Breakdown(it.name, place, machine, plan.line.calendar, rules, () => wear.settle());
    if (it.counted === 'working') wear.breakdowns.push(breakdown);
    known.push(breakdown);
    breakdown.renew();
  }
}

/** Gives the machines of a station their breakdowns, set-ups, maintenance, warm-up and handling. */
export function equip(spec: StationSpec, plan: Plan): void {
  for (const machine of plan.station(spec.name).machines) {
    if (spec.breakdowns.length > 0) addBreakdowns(spec, machine, plan);
    const upkeep = upkeepOf(spec, machine, plan);
    const warmUp = warmUpOf(spec, machine, plan);
    const handling = handlingOf(spec, machine, plan);
    if (upkeep || warmUp || handling || knowsWhenItWorked(spec)) machine.care = { upkeep, warmUp, handling };
  }
}

/** Whether something goes by when the machine last worked, which it keeps where it has any care. */
const knowsWhenItWorked = (spec: StationSpec): boolean =>
  spec.does === 'form' && (spec.settings ?? []).some(({ whenCold }) => whenCold !== undefined);
