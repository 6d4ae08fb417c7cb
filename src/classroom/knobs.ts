import type { Exercise, Setting } from '../exercise/exercise.ts';
import { refusalOf, startOf } from '../exercise/setting.ts';
import { controlId } from '../report/classroom/controls.ts';
import { byId } from './elements.ts';

const controlOf = (i: number): HTMLInputElement => byId<HTMLInputElement>(controlId(i));

/** The controls of an exercise's knobs. */
export class Knobs {
  private readonly exercise: Exercise;

  constructor(exercise: Exercise) {
    this.exercise = exercise;
  }

  /** Where the exercise starts, unless a setting is given. */
  turnTo(setting: Setting = startOf(this.exercise)): void {
    for (const [i, { name }] of this.exercise.knobs.entries()) controlOf(i).value = String(setting[name]);
  }

  /** Where they stand; else what keeps one from standing there is told, with that knob in focus. */
  setting(refuse: (why: string) => void): Setting | null {
    const setting: Record<string, number | string> = {};
    for (const [i, knob] of this.exercise.knobs.entries()) {
      const control = controlOf(i);
      const value = knob.kind === 'number' ? Number(control.value || Number.NaN) : control.value;
      const refused = refusalOf(knob, value);
      control.setAttribute('aria-invalid', String(refused !== null));
      if (refused !== null) {
        refuse(refused);
        control.focus();
        return null;
      }
      setting[knob.name] = value;
    }
    return setting;
  }

  focus(): void {
    controlOf(0).focus();
  }
}
