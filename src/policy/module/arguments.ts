import { suggestion } from '../../scenario/nearest.ts';
import type { Calls } from './calls.ts';

/** A value in the words of a message. */
const shown = (value: unknown): string => {
  if (typeof value === 'string') return `"${value}"`;
  return typeof value === 'object' || typeof value === 'function'
    ? `a value of type ${typeof value}`
    : String(value);
};

/** Checks what a module gives to a call; whatever cannot be ends the run with what was expected. */
export class Arguments {
  private readonly calls: Calls;

  constructor(calls: Calls) {
    this.calls = calls;
  }

  /** Something known by its name; `what` says what is meant. */
  known<One extends { readonly name: string }>(
    call: string,
    given: unknown,
    list: readonly One[],
    what: string,
  ): One {
    const found = list.find(({ name }) => name === given);
    if (found !== undefined) return found;
    const near =
      typeof given === 'string'
        ? suggestion(
            given,
            list.map(({ name }) => name),
          )
        : '';
    return this.calls.refuse(`${call}: ${shown(given)} is no ${what}${near}`);
  }

  /** A number from `least` to `most`. */
  number(
    call: string,
    given: unknown,
    least = Number.NEGATIVE_INFINITY,
    most = Number.POSITIVE_INFINITY,
  ): number {
    if (typeof given === 'number' && Number.isFinite(given) && given >= least && given <= most) return given;
    const bounds = [
      ...(Number.isFinite(least) ? [`from ${least}`] : []),
      ...(Number.isFinite(most) ? [`to ${most}`] : []),
    ];
    return this.calls.refuse(`${call}: ${shown(given)} is not a number ${bounds.join(' ')}`.trimEnd());
  }

  whole(call: string, given: unknown, least: number): number {
    if (Number.isSafeInteger(given) && (given as number) >= least) return given as number;
    return this.calls.refuse(`${call}: ${shown(given)} is not a whole number from ${least}`);
  }

  text(call: string, given: unknown): string {
    if (typeof given === 'string' && given !== '') return given;
    return this.calls.refuse(`${call}: ${shown(given)} is no text`);
  }

  yesNo(call: string, given: unknown): boolean {
    if (typeof given === 'boolean') return given;
    return this.calls.refuse(`${call}: ${shown(given)} is neither true nor false`);
  }

  /** A function of the module, as one that the engine may call. */
  told<Args extends readonly unknown[]>(call: string, given: unknown): (...args: Args) => void {
    if (typeof given !== 'function') return this.calls.refuse(`${call}: ${shown(given)} is no function`);
    const { calls } = this;
    return (...args) => calls.into(() => (given as (...args: Args) => unknown)(...args));
  }

  /** Refuses what belongs into `start` at any other time, when it would come too late to be told of all. */
  starting(call: string): void {
    if (!this.calls.starting)
      this.calls.refuse(`${call}: this is asked for in "start", before the line runs`);
  }
}
