/**
 * What a policy written as code is, and all that it may see and do. This file stands alone: it is what the package
 * exports as `mendline/policy`, for the types of a module.
 *
 * Units: time in s, length in mm, settings in the unit of their kind (°C, kPa, s), shares from 0 to 1. Stations, stocks,
 * settings and features are called by their names in the scenario. Whatever is asked for that is not there ends the run
 * with an error that names the policy, the simulated time and the seed.
 */

/** A policy as code: what a module gives by `export default`. */
export interface PolicyModule {
  /** What reports call it; it must differ from the names of the scenario's policies. */
  readonly name: string;
  /**
   * Puts the policy to work on a line before it starts. Called once a run, on a module that was loaded anew, so that
   * nothing it keeps outlives the run. It returns at once: promises are refused.
   */
  start(cell: Cell): void;
}

/** Takes whether something holds from now on. */
export type Switch = (on: boolean) => void;

/** What can be seen at a station, one yes or no at a time. */
export type Sight = 'misfits' | 'off-limits' | 'unread';

/** A reading of a part whose mark tells how it was formed. */
export interface Reading {
  /** What the gauge says, mm. */
  readonly value: number;
  /** What the feature should be, mm. */
  readonly aim: number;
  /**
   * What was added to the setting's target when the part was formed; null when its mark does not tell, or when the part
   * was reworked since.
   */
  readonly adjustedThen: number | null;
}

/** A feature as drawn, mm. */
export interface Drawn {
  readonly aim: number;
  readonly limits: { readonly lower: number; readonly upper: number } | null;
}

/** A response in the words of a scenario, such as `{ do: 'retune', setting: 'heater', by: 'rim', ... }`. */
export interface Response {
  readonly do: string;
  readonly [key: string]: unknown;
}

/** A condition in the words of a scenario, such as `{ stock: 'frame', below: 100, until: 400 }`. */
export interface Condition {
  readonly [key: string]: unknown;
}

/** What a policy may see and do: what a response of a scenario could, and no more. */
export interface Cell {
  /** Simulated time since the run began, s. */
  readonly now: number;
  /** Calls `then` in `delay` seconds. */
  after(delay: number, then: () => void): void;
  /** Uniform numbers from 0 to 1 from a stream of the policy's own, the same ones under the same seed. */
  random(purpose: string): () => number;
  /** Times in s by a law in the words of a scenario, such as `{ distribution: 'gamma', mean: '5 min', cv: '30 %' }`. */
  times(law: string | object, purpose: string): () => number;

  /** What a feature should be. */
  drawn(feature: string): Drawn;
  /** How much a feature changes per unit of a setting, as designed, mm per unit. */
  gain(feature: string, setting: string): number;

  // What is seen. These are asked for in `start`.

  /** Tells of each reading of a feature at one gauge, mm, also of parts whose mark could not be read. */
  onReading(gauge: string, feature: string, tell: (value: number) => void): void;
  /** Tells of each reading of a feature at any gauge, with what the setting was adjusted by when the part was formed. */
  onMarkedReading(feature: string, setting: string, tell: (reading: Reading) => void): void;
  /** Tells of each attempt, judgement or reading attempt at a station whether it went wrong. */
  onSight(station: string, sight: Sight, tell: (wrong: boolean) => void): void;
  /** Tells of each order of a stock as it is placed, by its number. */
  onOrder(stock: string, tell: (order: number) => void): void;
  /**
   * Tells whether a condition of the scenario's format holds: at once (of states, once the line has started), and at each
   * change. Of one that signals, such as a chart, it tells `true` at each signal.
   */
  when(condition: Condition, tell: Switch): void;

  // What is switched. These are asked for in `start`: where several set one thing, the last asked for has its way.

  /** What a response of the scenario's format does, without its conditions and times: the module says when. */
  switching(response: Response): Switch;
  /** Puts a response of the scenario's format to work by itself, behind all that is switched. */
  respond(response: Response): void;

  // What is done, at any time.

  /** Lets the station take nothing new until `release`. */
  hold(station: string): void;
  /** Ends a hold of this policy. */
  release(station: string): void;
  /** Ends what disturbs the station's settings, features, marks, reader, gauge or speed, and sets drifts back. */
  fix(station: string): void;
  /** Asks for what is to be added to a setting's target; it goes there as far, as finely and as soon as it can. */
  adjust(setting: string, to: number): void;
  /** Asks for the order of this number, or else the oldest on its way, to come sooner, and says whether it will. */
  expedite(stock: string, order?: number): boolean;
}
