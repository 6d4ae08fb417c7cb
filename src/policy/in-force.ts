import type { Law } from '../kernel/distributions/index.ts';
import type { Controls, Switch } from '../line/controls.ts';
import { signals } from '../scenario/conditions.ts';
import type { Timing } from '../scenario/in-force.ts';
import type { ResponseSpec } from '../scenario/responses.ts';
import { meet } from './condition.ts';
import type { View } from './conditions/view.ts';
import { MOST_AT_ONE_INSTANT, RunawayResponseError } from './runaway.ts';

/** Nothing calls for it, or what does is heeded again only when it begins anew. */
const IDLE = 0;
/** Called for, and not noticed or not acted on yet. */
const COMING = 1;
const ON = 2;
const COOLING = 3;

/** What a response acts at. */
function placeOf(spec: ResponseSpec): string {
  const given = spec as { readonly [key: string]: unknown };
  const key = ['at', 'station', 'setting', 'stock', 'for', 'crew'].find(
    (key) => typeof given[key] === 'string',
  );
  return key === undefined ? spec.do : `${spec.do}/${given[key]}`;
}

/**
 * When a response is in force. Its condition begins to hold, or signals; `notice` later that is known, and `acts-after`
 * later the response is in force. Without `until` and `lasts` it is so while the condition holds, and one that ends
 * before is passed over. With them it comes into force once it was called for, whether the condition still holds or not,
 * and ends when `until` begins to hold or signals, or when it has lasted; while `until` holds it does not begin. After its
 * end it begins again when the condition begins to hold anew, or signals, or, after a `cool-down`, if it still holds then.
 * Signals are heeded in `when` while nothing is under way, in `until` while it is in force, and start anew each time.
 */
export class InForce {
  /** What messages call it. */
  private readonly called: string;
  private readonly spec: Timing;
  private readonly controls: Controls;
  private readonly notice: (() => number) | null;
  private readonly actsAfter: (() => number) | null;
  private readonly lasts: (() => number) | null;
  /** Whether it goes on by itself once it was called for, and whether only for an instant. */
  private readonly latches: boolean;
  private readonly momentary: boolean;
  private readonly listeners: (() => void)[] = [];
  /** What is watched, to start anew when it is heeded again. */
  private readonly callers: (() => void)[] = [];
  private readonly enders: (() => void)[] = [];
  private turn: Switch = () => {};
  private state = IDLE;
  /** Whether its condition holds, and whether that under `until` does. */
  private met = false;
  private barred = false;
  /** Counts changes of state, so that what was planned in an earlier one is dropped. */
  private stamp = 0;
  private began = Number.NEGATIVE_INFINITY;
  private beganAtOnce = 0;

  /** @param number of the response in its policy, from 1 */
  constructor(spec: ResponseSpec, number: number, controls: Controls) {
    const timing = spec as Timing;
    const { name, notice, actsAfter, lasts, until, when } = timing;
    const place = placeOf(spec);
    const sampler = (law: Law | undefined, purpose: string) =>
      law === undefined ? null : controls.sampler(law, `${place}/${purpose}`);
    this.called =
      name === undefined ? `response ${number} (${spec.do})` : `the response "${name}" (${spec.do})`;
    this.spec = timing;
    this.controls = controls;
    this.notice = sampler(notice, 'notice');
    this.actsAfter = sampler(actsAfter, 'acts-after');
    this.lasts = sampler(lasts, 'lasts');
    const signalled = when !== undefined && signals(when);
    this.momentary = signalled && until === undefined && lasts === undefined;
    this.latches = signalled || until !== undefined || lasts !== undefined;
  }

  /**
   * Begins to follow what it goes by.
   * @param turn told whether it is in force, at each change
   */
  start(turn: Switch, onResponse: View['onResponse']): void {
    const { controls, spec, callers, enders } = this;
    this.turn = turn;
    const view = (state: number, watches: (() => void)[]): View => ({
      controls,
      onResponse,
      deaf: () => this.state !== state,
      onHeeded: (startAnew) => void watches.push(startAnew),
    });
    if (spec.until !== undefined)
      meet(spec.until, view(ON, enders), { holds: (now) => this.bar(now), signals: () => this.end() });
    const called = { holds: (now: boolean) => this.call(now), signals: () => this.signal() };
    if (spec.when === undefined) this.call(true);
    else meet(spec.when, view(IDLE, callers), called);
  }

  /** Tells whether it is in force: at once, and by way of the calendar at each change. */
  onChange(tell: Switch): void {
    this.listeners.push(() => this.controls.after(0, () => tell(this.state === ON)));
    tell(this.state === ON);
  }

  /** Of a response that sees to itself: it is in force from now on, or no longer. */
  show(on: boolean): void {
    this.become(on ? ON : IDLE);
    this.tell();
  }

  /** Its condition holds from now on, or no longer. */
  private call(holds: boolean): void {
    if (holds === this.met) return;
    this.met = holds;
    if (holds) this.signal();
    else if (!this.latches) this.end();
  }

  private bar(holds: boolean): void {
    if (holds === this.barred) return;
    this.barred = holds;
    if (holds) this.end();
    else if (this.met) this.signal();
  }

  /** It is called for. */
  private signal(): void {
    if (this.state !== IDLE || this.barred) return;
    const delay = (this.notice?.() ?? 0) + (this.actsAfter?.() ?? 0);
    this.become(COMING);
    if (delay === 0) this.begin();
    else this.later(delay, () => this.begin());
  }

  private begin(): void {
    this.look();
    this.become(ON);
    for (const startAnew of this.enders) startAnew();
    if (this.lasts !== null) this.later(this.lasts(), () => this.end());
    this.turn(true);
    this.tell();
    if (this.momentary) this.end();
  }

  /** Ends, or is called off before it began. */
  private end(): void {
    const { state } = this;
    if (state === ON) {
      this.become(COOLING);
      this.turn(false);
      this.tell();
      if (this.spec.coolDown === undefined) this.rest();
      else this.later(this.spec.coolDown, () => this.goOn());
    } else if (state === COMING) this.rest();
  }

  /** It has cooled down: begins again if it is still called for. */
  private goOn(): void {
    this.rest();
    if (this.met) this.signal();
  }

  private rest(): void {
    this.become(IDLE);
    for (const startAnew of this.callers) startAnew();
  }

  private become(state: number): void {
    this.state = state;
    this.stamp++;
  }

  /** Does something in so many seconds, unless its state has changed by then. */
  private later(delay: number, then: () => void): void {
    const { stamp } = this;
    this.controls.after(delay, () => {
      if (this.stamp === stamp) then();
    });
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }

  /** @throws RunawayResponseError when it begins again and again at one instant */
  private look(): void {
    const { now } = this.controls;
    if (now !== this.began) this.beganAtOnce = 0;
    this.began = now;
    if (++this.beganAtOnce > MOST_AT_ONE_INSTANT) throw new RunawayResponseError(this.called, now);
  }
}
