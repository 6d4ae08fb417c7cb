import { parseScenario } from '../../../src/scenario/parse.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';

/** One quantity that theory gives a value for. */
export interface Value {
  readonly quantity: string;
  /** Empty for a pure number. */
  readonly unit: string;
  /** The published number, or the formula worked out. */
  readonly expected: number;
  readonly throughput: boolean;
  /** The largest relative half width that the 99 % interval of the validation may have. */
  readonly sharp: number;
  /** Nothing in the case is random, so that every run must give the expected value itself, but for rounding. */
  readonly exact: boolean;
}

/** A line whose answer is published, and how the engine is asked for it. */
export interface Case {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  /** The option of the scenario that makes our line the published one, where our default differs. */
  readonly option: string;
  readonly values: readonly Value[];
  /** Simulated time of one run of the validation after the warm-up, s. */
  readonly length: number;
  /** The scenario as YAML, for a run of `length` (s). */
  readonly scenario: (length: number) => string;
  /** One run under one seed: what it gives for each of `values`, in their order. */
  readonly run: (length: number, seed: number) => number[];
}

/** A relative half width of 0.3 % is what throughputs are held to. */
export const SHARP_THROUGHPUT = 0.003;
const SHARP = 0.01;

interface ValueOf<Seen> {
  readonly quantity: string;
  readonly unit?: string;
  readonly expected: number;
  readonly throughput?: true;
  readonly sharp?: number;
  readonly of: (seen: Seen) => number;
}

interface CaseOf<Seen> {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly option?: string;
  readonly exact?: true;
  readonly length: number;
  readonly scenario: (length: number) => string;
  /** Does one run and says what was seen in it. */
  readonly see: (scenario: Scenario, seed: number) => Seen;
  readonly values: readonly ValueOf<Seen>[];
}

/** Puts a case together: `see` does a run, and each value is read from what it saw. */
export function caseOf<Seen>({ values, see, option = '', exact, ...rest }: CaseOf<Seen>): Case {
  const parsed = new Map<number, Scenario>();
  const at = (length: number) => {
    if (!parsed.has(length)) parsed.set(length, parseScenario(rest.scenario(length), `${rest.id}.yaml`));
    return parsed.get(length)!;
  };
  return {
    ...rest,
    option,
    values: values.map(({ quantity, unit = '', expected, throughput = false, sharp }) => ({
      quantity,
      unit,
      expected,
      throughput,
      sharp: sharp ?? (throughput ? SHARP_THROUGHPUT : SHARP),
      exact: exact ?? false,
    })),
    run: (length, seed) => {
      const seen = see(at(length), seed);
      return values.map(({ of }) => of(seen));
    },
  };
}
