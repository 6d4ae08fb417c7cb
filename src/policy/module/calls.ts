import { lineIn, thrownInWords } from './thrown.ts';

/** A policy module went wrong while it ran: it threw, or asked for something that is not there. */
export class PolicyModuleFault extends Error {
  /** @param time simulated, s */
  constructor(source: string, time: number, what: string) {
    super(`at ${Number(time.toFixed(1))} s its module ${source} ${what}`);
    this.name = 'PolicyModuleFault';
  }
}

/** Is told when code of a module begins and when it is done, so that somebody else can see that it does not come back. */
export interface Pulse {
  /** @param now simulated time, s */
  begin(now: number): void;
  end(): void;
}

/** Thrown into a module in the place of an error of ours, so that no object of the engine gets there. */
const REFUSAL: unknown = Object.freeze(
  Object.assign(Object.create(null), { message: 'the run of this policy has failed' }),
);

/** Heeds nothing. Given to a module, so without a prototype, by which there is a way to the engine. */
const IGNORE: () => void = Object.freeze(Object.setPrototypeOf(() => {}, null));

const isThenable = (value: unknown): value is { then: (done: undefined, failed: () => void) => void } =>
  typeof value === 'object' && value !== null && typeof (value as { then?: unknown }).then === 'function';

/**
 * The border between the engine and the code of one module in one run. Into the module go calls and plain values; out of
 * it come calls of what it was given. The first thing that goes wrong on either side ends the run, whether or not the
 * module catches it.
 */
export class Calls {
  /** Whether the module is being started, which is when it may ask to be told of things. */
  starting = false;
  private failure: Error | null = null;
  private depth = 0;
  private readonly source: string;
  private readonly now: () => number;
  private readonly pulse: Pulse | null;

  /** @param source what to call the module in messages, usually its file's path */
  constructor(source: string, now: () => number, pulse: Pulse | null) {
    this.source = source;
    this.now = now;
    this.pulse = pulse;
  }

  /** Calls code of the module. @throws PolicyModuleFault, and what the engine threw meanwhile */
  into(code: () => unknown): void {
    if (this.depth++ === 0) this.pulse?.begin(this.now());
    try {
      const given = code();
      if (isThenable(given)) {
        // Nobody waits for it, so what becomes of it is no matter.
        given.then(undefined, IGNORE);
        this.fail('returned a promise: a policy acts at once; what is to come later goes by cell.after');
      }
    } catch (thrown) {
      this.fail(`threw${thrownInWords(thrown, this.source)}`);
    } finally {
      if (--this.depth === 0) this.pulse?.end();
    }
    if (this.failure !== null) throw this.depth > 0 ? REFUSAL : this.failure;
  }

  /** Calls the engine for the module. */
  out<Given>(work: () => Given): Given {
    if (this.failure !== null) throw REFUSAL;
    try {
      return work();
    } catch (error) {
      if (error !== REFUSAL) this.blame(error);
      throw REFUSAL;
    }
  }

  /** Ends the run, for the module asks for what is not there. */
  refuse(why: string): never {
    this.fail(`asks for what cannot be${lineIn(new Error().stack, this.source)}: ${why}`);
    throw REFUSAL;
  }

  /**
   * The engine went wrong in a call of the module: by a fault of its own, or since the module calls itself for ever, or
   * what it gave threw as it was looked at, which is of the kind of another context.
   */
  private blame(error: unknown): void {
    if (!(error instanceof Error)) this.fail(`gave what threw${thrownInWords(error, this.source)}`);
    else if (error instanceof RangeError && error.message.includes('call stack'))
      this.fail('calls itself without end');
    else this.failure ??= error;
  }

  private fail(what: string): void {
    this.failure ??= new PolicyModuleFault(this.source, this.now(), what);
  }
}
