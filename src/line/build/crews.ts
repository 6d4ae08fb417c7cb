import type { CrewSpec } from '../../scenario/crew.ts';
import { Carriers } from '../carriers.ts';
import { Crew } from '../crew.ts';
import { Shifts } from '../shifts.ts';
import type { Plan } from './plan.ts';

function travelOf({ move, moves }: CrewSpec, plan: Plan): (from: number, to: number) => number {
  const exceptions = new Map<string, number>();
  for (const { between, takes } of moves) {
    const [a, b] = [plan.place(between[0]), plan.place(between[1])];
    exceptions.set(`${a} ${b}`, takes);
    exceptions.set(`${b} ${a}`, takes);
  }
  if (exceptions.size === 0) return (from, to) => (from === to ? 0 : move);
  return (from, to) => (from === to ? 0 : (exceptions.get(`${from} ${to}`) ?? move));
}

/** The calendars, the crews that work by them, and the carriers. */
export function addCrews(plan: Plan): void {
  const { line, scenario } = plan;
  for (const spec of scenario.calendars) line.shifts.set(spec.name, new Shifts(spec, line.calendar));
  for (const spec of scenario.crew) {
    const rules = { serves: spec.serves, travel: travelOf(spec, plan) };
    const crew = new Crew(spec.name, spec.number, line.calendar, rules);
    line.crews.set(spec.name, crew);
    if (spec.calendar !== undefined) line.shifts.get(spec.calendar)!.members.push(crew);
  }
  for (const spec of scenario.carriers) {
    const carriers = new Carriers(spec, line.calendar, line.parts);
    line.carriers.set(spec.name, carriers);
    // Whatever way a part leaves, its carrier stays.
    for (const exit of [line.good, line.scrap, line.turnedAway]) {
      exit.leaving.push((row) => {
        if (carriers.has(row)) carriers.sendBack();
      });
    }
  }
}
