import type { Actuator } from './actuator.ts';
import type { Upset } from './upset.ts';

/** A deviation that is there without any disturbance. */
interface Unrest {
  at(now: number): number;
}

export interface SettingNature {
  /** A deviation that stays: what the sensor does not see. */
  readonly offset: number;
  readonly unrest: readonly Unrest[];
  /** Null where whatever is asked for is in force at once. */
  readonly actuator: Actuator | null;
}

const PLAIN: SettingNature = { offset: 0, unrest: [], actuator: null };

/** A forming setting: how far the actual value lies from the target the features were designed for. */
export class Setting {
  readonly name: string;
  /** What disturbances change. */
  readonly upsets = new Set<Upset>();
  private readonly nature: SettingNature;
  /** What a policy has asked to be added to the target, and by how much it has moved what is aimed at besides. */
  private asked = 0;
  private moved = 0;

  constructor(name: string, nature = PLAIN) {
    this.name = name;
    this.nature = nature;
  }

  /** Asks for `to` to be added to the target from `now`, s, on. */
  adjust(to: number, now: number): void {
    this.asked = to;
    this.nature.actuator?.ask(this.asked + this.moved, now);
  }

  /** Moves the target itself by so much from `now`, s, on; what is asked for comes on top. */
  retarget(by: number, now: number): void {
    this.moved = by;
    this.nature.actuator?.ask(this.asked + this.moved, now);
  }

  /** What is added to the target at `now`. */
  inForce(now: number): number {
    const { actuator } = this.nature;
    return actuator === null ? this.asked + this.moved : actuator.inForce(now);
  }

  /** Actual minus design value at `now`, without the variation from cycle to cycle. */
  deviation(now: number): number {
    const { offset, unrest } = this.nature;
    let sum = this.inForce(now) + offset;
    for (const it of unrest) sum += it.at(now);
    for (const upset of this.upsets) sum += upset.at(now);
    return sum;
  }
}
